"""The window starts without the heavy libraries, and ends without a sound: seen in processes of their own."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
HEAVY = ("scipy", "pandas", "finufft", "asammdf", "can", "cantools", "pyarrow", "openpyxl")
LATE = (
    "numpy",
    "pyqtgraph",
    "ui.widgets.result_page",
    "ui.widgets.bench_page",
    "ui.widgets.exercise_page",
    "ui.state.bench",
    "ui.trying",
    "triage.walk.assessment",
    "triage.planning",
    "triage.evidence",
    "triage.signals",
)
"""What the pages after the start page bring with them."""

START = """
import sys
from PySide6.QtCore import QTimer
from ui import window
from ui.presenters.samples import default_samples_folder, find_samples
from ui.widgets.styling import qt_application
application = qt_application()
shown = window.MainWindow(samples=find_samples(default_samples_folder()))
window.follow_theme(application, shown)
shown.show()
"""

HEAVY_ONES = f"shown.close(); print([name for name in {(*HEAVY, *LATE)!r} if name in sys.modules])"

LOAD_ON_A_WORKER = """
import gc, threading
from PySide6.QtCore import QObject
from ui.warming import load_pages
from ui.widgets.styling import qt_application
application = qt_application()
before = {id(one) for one in gc.get_objects() if isinstance(one, QObject)}
worker = threading.Thread(target=load_pages, args=(None,))
worker.start()
worker.join()
import sys
assert "pyqtgraph" in sys.modules
print([one for one in gc.get_objects() if isinstance(one, QObject) and id(one) not in before])
"""

END_AFTER_A_LOG = """
def after(reply):
    assert reply.error is None, reply.error
    shown.close()
    application.quit()
shown.runner.finished.connect(after)
QTimer.singleShot(0, lambda: shown.open_files([sys.argv[1]]))
raise SystemExit(application.exec())
"""


def run_fresh(code: str, *arguments: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run code in a process of its own, with a home that need not exist."""
    environment = {
        **os.environ,
        "QT_QPA_PLATFORM": "offscreen",
        "PYTHONPATH": str(ROOT),
        "XDG_CONFIG_HOME": str(folder),
        "APPDATA": str(folder),
    }
    command = [sys.executable, "-c", code, *arguments]
    return subprocess.run(
        command, cwd=ROOT, env=environment, capture_output=True, text=True, timeout=120, check=False
    )


ERROR_BEFORE_THE_LOOP = """
from ui import window
def fail(*_arguments):
    raise RuntimeError("the desktop is odd")
window.follow_text_size = fail
window.main([])
"""


def test_start_loads_no_heavy_library(tmp_path: Path) -> None:
    done = run_fresh(START + HEAVY_ONES, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == "[]"


def test_what_a_worker_loads_makes_no_object_that_would_belong_to_it(tmp_path: Path) -> None:
    done = run_fresh(LOAD_ON_A_WORKER, folder=tmp_path)
    assert (done.returncode, done.stdout.strip()) == (0, "[]"), done.stderr


def test_end_after_a_recording_is_quiet(tmp_path: Path) -> None:
    log = sorted((ROOT / "sample_logs").glob("*.csv"))[0]
    done = run_fresh(START + END_AFTER_A_LOG, str(log), folder=tmp_path)
    said = [line for line in done.stderr.splitlines() if "propagateSizeHints" not in line]
    assert (done.returncode, said) == (0, [])


def test_end_between_two_pieces_of_a_page_is_quiet(tmp_path: Path) -> None:
    done = run_fresh(START + "shown.result.make_plots(); shown.close(); print('closed')", folder=tmp_path)
    said = [line for line in done.stderr.splitlines() if "propagateSizeHints" not in line]
    assert (done.returncode, done.stdout.strip(), said) == (0, "closed", [])


def test_error_before_the_loop_is_told_and_does_not_abort(tmp_path: Path) -> None:
    done = run_fresh(ERROR_BEFORE_THE_LOOP, folder=tmp_path)
    assert done.returncode == 1, done.stderr
    assert "the desktop is odd" in done.stderr
    assert "QThread" not in done.stderr
