"""What all tests share: nothing of the user's own settings is seen or changed."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture(autouse=True)
def own_settings(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Point the folder of settings to an empty place."""
    folder = tmp_path_factory.getbasetemp() / "no-settings"
    for name in ("XDG_CONFIG_HOME", "APPDATA"):
        monkeypatch.setenv(name, str(folder))
    return folder
