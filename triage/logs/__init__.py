"""Reading recordings: one reader for each kind of file, the wheels found by name and plausibility."""

from triage.logs.options import ReadOptions
from triage.logs.reading import read_log

__all__ = ["ReadOptions", "read_log"]
