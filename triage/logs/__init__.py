"""Reading recordings: one reader for each kind of file, the wheels found by name and plausibility."""

from __future__ import annotations

from typing import TYPE_CHECKING

from triage.logs.options import ReadOptions

if TYPE_CHECKING:
    from triage.logs.reading import read_log

__all__ = ["ReadOptions", "read_log"]


def __getattr__(name: str) -> object:
    """Load the readers when the first recording is read: options alone must not wait for pandas and scipy."""
    if name == "read_log":
        from triage.logs.reading import read_log  # noqa: PLC0415

        return read_log
    raise AttributeError(name)
