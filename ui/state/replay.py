"""A recording played again as on the road: pause, step, scrub, half to twenty times the speed.

Knows no clock: whoever owns it says what time it is.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.speed_log import FloatArray
from ui.state.topic import Topic

SPEEDS: Final = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
"""How many seconds of the recording pass in one second."""


class Replay:
    """Where in a recording the replay stands.

    Parameters
    ----------
    instants_s : float64[N]
        Instants of the samples, rising; single steps go from one to the next.

    Attributes
    ----------
    at_s : float
        Seconds of the log that have been played.
    moved : Topic
        Told ``at_s`` whenever it changes.
    running_changed : Topic
        Told whether the replay runs.
    """

    def __init__(self, instants_s: FloatArray) -> None:
        self._instants_s = instants_s
        self.begin_s = float(instants_s[0]) if instants_s.size else 0.0
        self.end_s = float(instants_s[-1]) if instants_s.size else 0.0
        self.at_s = self.begin_s
        self.speed = 1.0
        self.running = False
        self.moved: Topic[float] = Topic()
        self.running_changed: Topic[bool] = Topic()
        self._clock_s: float | None = None

    @property
    def ended(self) -> bool:
        """Whether everything has been played."""
        return self.at_s >= self.end_s

    def set_speed(self, speed: float) -> None:
        """Play at another speed; others than those of :data:`SPEEDS` are ignored."""
        if speed in SPEEDS:
            self.speed = speed

    def change_speed(self, steps: int) -> None:
        """Play faster or slower by so many of the speeds there are."""
        at = SPEEDS.index(self.speed) + steps
        self.set_speed(SPEEDS[min(max(at, 0), len(SPEEDS) - 1)])

    def play(self, clock_s: float) -> None:
        """Begin or go on; from the start when everything has been played."""
        if self.running:
            return
        if self.ended:
            self._move(self.begin_s)
        self._clock_s = clock_s
        self._set_running(True)

    def pause(self) -> None:
        """Stand still."""
        if self.running:
            self._clock_s = None
            self._set_running(False)

    def tick(self, clock_s: float) -> None:
        """Say what time it is; a clock that goes back moves nothing."""
        if not self.running or self._clock_s is None:
            return
        passed_s = max(clock_s - self._clock_s, 0.0)
        self._clock_s = clock_s
        self._move(self.at_s + self.speed * passed_s)
        if self.ended:
            self.pause()

    def step(self, samples: int) -> None:
        """Stand still and go on, or back, by so many samples."""
        self.pause()
        if not self._instants_s.size:
            return
        if samples > 0:
            now = int(np.searchsorted(self._instants_s, self.at_s, side="right")) - 1
        else:
            now = int(np.searchsorted(self._instants_s, self.at_s, side="left"))
        at = min(max(now + samples, 0), self._instants_s.size - 1)
        self._move(float(self._instants_s[at]))

    def scrub(self, to_s: float) -> None:
        """Go to a place of the recording; running or not, it stays so."""
        self._move(to_s)

    def _move(self, to_s: float) -> None:
        at_s = min(max(to_s, self.begin_s), self.end_s)
        if at_s != self.at_s:
            self.at_s = at_s
            self.moved.tell(at_s)

    def _set_running(self, running: bool) -> None:
        self.running = running
        self.running_changed.tell(running)
