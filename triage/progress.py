"""Progress and cancelling for long work, without any knowledge of a screen."""

from __future__ import annotations

from typing import Protocol


class Cancelled(Exception):
    """The user stopped the work. Not an error: nothing went wrong."""


class Progress(Protocol):
    """Called often by long work; may raise :class:`Cancelled` to stop it."""

    def __call__(self, fraction: float, stage: str) -> None:
        """Report how much is done.

        Parameters
        ----------
        fraction : float
            Done share of the whole work, 0 to 1, never falling.
        stage : str
            What is being done, in a few words for the user.
        """


def no_progress(fraction: float, stage: str) -> None:
    """Report to nobody."""


def part_of(progress: Progress, begin: float, end: float) -> Progress:
    """Map the fraction of a sub-task into ``begin`` to ``end`` of the whole."""

    def report(fraction: float, stage: str) -> None:
        progress(begin + (end - begin) * min(max(fraction, 0.0), 1.0), stage)

    return report
