"""What the start of the window waits for."""

from __future__ import annotations

import os
import subprocess
import sys

HEAVY = ("scipy", "pandas", "finufft", "can", "cantools", "asammdf", "openpyxl", "pyarrow")

MAKE_A_WINDOW = """
import sys
import ui.window
from ui.presenters.samples import default_samples_folder, find_samples
from ui.widgets.styling import qt_application

application = qt_application()
window = ui.window.MainWindow(samples=find_samples(default_samples_folder()))
window.show()
application.processEvents()
window.close()
print(*sorted({name.split(".")[0] for name in sys.modules}))
"""


def test_the_start_page_waits_for_no_library_that_only_a_recording_needs() -> None:
    """scipy and pandas take longer to load than the window takes to stand."""
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, "-c", MAKE_A_WINDOW], env=environment, capture_output=True, text=True, check=True
    )
    loaded = done.stdout.split()
    assert "pyqtgraph" in loaded
    assert not set(HEAVY) & set(loaded)
