"""What Qt complains about fails the test it is said in, as a warning of Python does."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]

COMPLAINING = """
from PySide6.QtCore import QObject, {name}

def test_complaint(qtbot):
    {name}("something is not as it should be")

def test_complaint_without_the_fixture():
    {name}("something is not as it should be")

def test_of_qt_itself(qtbot):
    from PySide6.QtCore import QTimer
    from threading import Thread
    thread = Thread(target=lambda: QTimer.singleShot(5, lambda: None) or QObject().startTimer(5))
    thread.start()
    thread.join()
"""


@pytest.mark.parametrize(("name", "failed"), [("qWarning", 3), ("qCritical", 3), ("qDebug", 1)])
def test_complaints_of_qt_fail(tmp_path: Path, name: str, failed: int) -> None:
    file = tmp_path / "test_complaining.py"
    file.write_text(COMPLAINING.format(name=name), encoding="utf-8")
    settings = ("-c", str(ROOT / "pyproject.toml"), "--rootdir", str(tmp_path), "-p", "no:cacheprovider")
    command = [sys.executable, "-m", "pytest", "-q", *settings, str(file)]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, timeout=120, check=False)
    assert f"{failed} failed" in done.stdout, done.stdout + done.stderr
