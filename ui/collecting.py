"""Keeps the search for garbage from holding up the window. Knows no Qt.

Python looks for reference cycles while it holds its lock, in whichever thread happens to make an object. With
the libraries for recordings loaded, a full search goes through some hundred thousand objects that will never
be garbage; measured: 107 ms on the worker, in which the window does not move.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

USUAL: Final = gc.get_threshold()
NEVER: Final = 1_000_000


@contextmanager
def no_full_collection() -> Iterator[None]:
    """Search only among young objects while work goes on; that takes less than a millisecond."""
    gc.set_threshold(USUAL[0], USUAL[1], NEVER)
    try:
        yield
    finally:
        gc.set_threshold(*USUAL)


@contextmanager
def no_collection() -> Iterator[None]:
    """Search for no garbage while Qt goes through all widgets; one found would be deleted under its hands.

    Seen as a crash when the size of the texts changed while a closed page was still to be collected.
    """
    usual = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if usual:
            gc.enable()


class LoadedLibraries:
    """Takes what libraries made when they were loaded out of all later searches."""

    def __init__(self) -> None:
        self._modules = len(sys.modules)

    def set_aside(self) -> bool:
        """Set aside what lives now, if libraries came since the last time; returns whether it was done.

        What is set aside still goes when nothing refers to it. Only cycles stay, so this must not be done
        after every recording.
        """
        if len(sys.modules) <= self._modules:
            return False
        gc.freeze()
        self._modules = len(sys.modules)
        return True
