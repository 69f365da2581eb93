"""Numbers that are no car's: no measurement, no warning of the array library, and nobody blamed."""

from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.rulebook import load_rulebook
from triage.run import run_triage
from triage.signals.conditioning import put_on_common_clock
from triage.signals.plausible_speed import find_implausible_speed


def _speeds(seconds: float = 60.0) -> tuple[np.ndarray, np.ndarray]:
    time_s = np.arange(0.0, seconds, 0.02)
    course = 12.0 + 4.0 * np.sin(0.2 * time_s)
    return time_s, course + np.random.default_rng(2).normal(0.0, 0.02, (4, time_s.size))


@pytest.mark.parametrize("rows", [[1], [0, 1, 2, 3]])
@pytest.mark.parametrize("factor", [100.0, 1e9, 1e300])
def test_absurd_factors_withhold_the_verdict(log_from, rows: list[int], factor: float) -> None:
    time_s, speed = _speeds()
    speed[rows] *= factor
    result = run_triage(log_from(time_s, speed), load_rulebook())
    assert not result.measurements
    (missing,) = result.not_measurable
    assert missing.corner is None
    assert "360 km/h" in missing.reason
    blamed = [one.probability for one in result.posterior.ranking if one.hypothesis.corner in CORNERS]
    assert max(blamed) < 0.1


def test_single_peaks_and_fast_driving_do_not(log_from) -> None:
    time_s, speed = _speeds()
    speed[0, ::10] = 300.0
    assert find_implausible_speed(put_on_common_clock(log_from(time_s, speed))) is None
    assert (
        find_implausible_speed(put_on_common_clock(log_from(time_s, speed[1:2] * np.ones((4, 1)) * 4.0)))
        is None
    )
