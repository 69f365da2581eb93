"""The Qt binding must survive a working day: 6.12.0 aborts on Python 3.11 after some 570 emissions."""

import subprocess
import sys

EMITTING = """
from PySide6.QtCore import QCoreApplication, QObject, Signal
class Source(QObject):
    told = Signal(object)
application = QCoreApplication([])
source, heard = Source(), []
source.told.connect(heard.append)
for number in range(5000):
    source.told.emit(number)
assert heard == list(range(5000))
print("heard", len(heard))
"""


def test_five_thousand_signals_in_a_fresh_process() -> None:
    command = [sys.executable, "-c", EMITTING]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, check=False)
    assert (done.returncode, done.stdout.strip()) == (0, "heard 5000"), done.stderr
