"""Full searches for garbage wait until the work is done, and leave loaded libraries aside."""

from __future__ import annotations

import gc
import sys
from types import ModuleType

import pytest

from ui.collecting import USUAL, LoadedLibraries, no_full_collection


def test_full_searches_wait_and_come_back() -> None:
    full: list[str] = []

    def watch(phase: str, found: dict[str, int]) -> None:
        if phase == "start" and found["generation"] == 2:
            full.append(phase)

    gc.callbacks.append(watch)
    try:
        with no_full_collection():
            kept = [[number] for number in range(400_000)]
        assert full == []
    finally:
        gc.callbacks.remove(watch)
    assert len(kept) == 400_000
    assert gc.get_threshold() == USUAL


def test_an_error_brings_them_back_too() -> None:
    with pytest.raises(ValueError, match="odd"), no_full_collection():
        raise ValueError("odd")
    assert gc.get_threshold() == USUAL


def test_libraries_are_set_aside_once(monkeypatch: pytest.MonkeyPatch) -> None:
    frozen: list[bool] = []
    monkeypatch.setattr(gc, "freeze", lambda: frozen.append(True))
    loaded = LoadedLibraries()
    assert not loaded.set_aside()
    monkeypatch.setitem(sys.modules, "a_library_that_came", ModuleType("a_library_that_came"))
    assert loaded.set_aside()
    assert not loaded.set_aside()
    assert frozen == [True]
