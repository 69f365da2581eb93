"""State, presenters and theme must work where no Qt is installed."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]

BLOCKING = """
import importlib, sys
class NoQt:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in ("PySide6", "shiboken6", "pyqtgraph"):
            raise ImportError("no Qt here: " + name)
sys.meta_path.insert(0, NoQt())
for name in sys.argv[1:]:
    importlib.import_module(name)
print("imported", len(sys.argv) - 1)
"""


def qt_free_modules() -> list[str]:
    files = [*(ROOT / "ui" / "state").glob("*.py"), *(ROOT / "ui" / "presenters").glob("*.py")]
    files += [ROOT / "ui" / f"{name}.py" for name in ("theme", "pacing", "opening")]
    return sorted(".".join(file.relative_to(ROOT).with_suffix("").parts) for file in files)


def run_blocked(modules: list[str]) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-c", BLOCKING, *modules]
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=120, check=False)


def test_state_and_presenters_import_without_qt() -> None:
    modules = qt_free_modules()
    assert len(modules) > 10
    done = run_blocked(modules)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == f"imported {len(modules)}"


@pytest.mark.parametrize("module", ["ui.window", "ui.runner"])
def test_the_block_really_blocks(module: str) -> None:
    done = run_blocked([module])
    assert done.returncode != 0
    assert "no Qt here" in done.stderr
