"""The instant of a recording that is looked at, and a second one to measure from."""

from __future__ import annotations

import numpy as np

from triage.speed_log import FloatArray
from ui.state.topic import Topic


class TimeCursor:
    """Both instants lie on samples of the common clock.

    Attributes
    ----------
    time_s : float or None
        The instant looked at.
    mark_s : float or None
        The instant measured from; only while there is one to look at.
    changed : Topic
        Told the cursor itself after every move.
    """

    def __init__(self) -> None:
        self.time_s: float | None = None
        self.mark_s: float | None = None
        self.changed: Topic[TimeCursor] = Topic()
        self._clock_s: FloatArray = np.empty(0)

    def start_over(self, clock_s: FloatArray) -> None:
        """Forget both instants; from now on they lie on these, float64[N], rising."""
        self._clock_s = clock_s
        self.clear()

    def clear(self) -> None:
        """Look at no instant."""
        self.time_s = self.mark_s = None
        self.changed.tell(self)

    def place(self, time_s: float) -> None:
        """Look at the sample nearest to an instant."""
        if self._clock_s.size:
            self.time_s = self._nearest(time_s)
            self.changed.tell(self)

    def place_mark(self, time_s: float) -> None:
        """Measure from the sample nearest to an instant; it is looked at too when none is yet."""
        if self._clock_s.size:
            self.mark_s = self._nearest(time_s)
            self.time_s = self.mark_s if self.time_s is None else self.time_s
            self.changed.tell(self)

    def mark_here(self) -> None:
        """Measure from the instant looked at."""
        if self.time_s is not None:
            self.place_mark(self.time_s)

    def step(self, samples: int, *, otherwise_s: float) -> None:
        """Go on by so many samples; without a cursor, place it at ``otherwise_s``."""
        if self.time_s is None:
            self.place(otherwise_s)
        elif self._clock_s.size:
            at = int(np.searchsorted(self._clock_s, self.time_s)) + samples
            self.place(float(self._clock_s[min(max(at, 0), self._clock_s.size - 1)]))

    def _nearest(self, time_s: float) -> float:
        after = min(int(np.searchsorted(self._clock_s, time_s)), self._clock_s.size - 1)
        before = max(after - 1, 0)
        nearer_before = time_s - self._clock_s[before] < self._clock_s[after] - time_s
        return float(self._clock_s[before if nearer_before else after])
