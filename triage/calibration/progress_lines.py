"""Progress of long work as text: one line that is written over on a terminal, few lines elsewhere."""

from __future__ import annotations

from typing import Final, TextIO

from triage.progress import Progress

LINES: Final = 10
"""Lines that long work writes into a file or a pipe."""


def show_progress_on(stream: TextIO) -> Progress:
    """Return a progress that writes to a stream.

    Parameters
    ----------
    stream : text stream
        On a terminal every call writes over the last; elsewhere a line is written for every tenth done.

    Returns
    -------
    Progress
    """
    over = stream.isatty()
    told = 0

    def show(fraction: float, stage: str) -> None:
        nonlocal told
        tenths = int(LINES * fraction + 1e-9)
        if over:
            stream.write(f"\r{fraction:6.1%} {stage}" + ("\n" if fraction >= 1.0 else ""))
        elif tenths > told:
            stream.write(f"{fraction:6.1%} {stage}\n")
        told = max(tenths, told)
        stream.flush()

    return show
