"""The files in which the window remembers things between two runs. Knows no Qt."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from triage.mapping_store import store_path


@dataclass(frozen=True, slots=True)
class UserFolder:
    """Where settings, recent recordings and the window's place are kept."""

    path: Path

    @property
    def settings(self) -> Path:
        """What the user chose on the page of settings; TOML."""
        return self.path / "settings.toml"

    @property
    def recent(self) -> Path:
        """Recordings opened of late; TOML."""
        return self.path / "recent.toml"

    @property
    def places(self) -> Path:
        """Size and place of the window and of its panels; INI, written by Qt."""
        return self.path / "window.ini"


def user_folder(environment: Mapping[str, str] = os.environ) -> UserFolder:
    """Return the folder in which confirmed mappings are kept too."""
    return UserFolder(store_path(environment).parent)
