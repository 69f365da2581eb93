"""Signs that a log states are kept, even against the wheels."""

from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs import read_log
from triage.logs.signs import stated_sign

SWAPPED = {"FL": "FR", "FR": "FL", "RL": "RR", "RR": "RL"}


def _table(drive, name: str, values: np.ndarray, *, swapped: bool) -> str:
    speeds = [drive.kmh[SWAPPED[corner] if swapped else corner] for corner in CORNERS]
    header = ",".join(["time_s", *(f"{corner}_kmh" for corner in CORNERS), name])
    rows = zip(drive.time_s, *speeds, values, strict=True)
    return "\n".join([header, *(",".join(f"{value:.6g}" for value in row) for row in rows)])


@pytest.mark.parametrize(
    ("label", "sign"),
    [
        ("yaw_rate_radps [rad/s]", 1),
        ("yaw_rate_radps", 1),
        ("yaw_rate [deg/s]", 0),
        ("YawRate", 0),
        ("yaw_left_positive_deg_s", 1),
        ("Gierrate links positiv", 1),
        ("yaw rate (positive to right)", -1),
        ("ESP.yaw_right_pos", -1),
        ("yaw_iso8855", 1),
    ],
)
def test_names_state_a_side_or_do_not(label: str, sign: int) -> None:
    assert stated_sign("yaw_rate_radps", label) == sign


@pytest.mark.parametrize("swapped", [False, True])
def test_a_stated_sign_is_not_turned_to_fit_exchanged_wheels(drive, write, swapped: bool) -> None:
    log = read_log([write(_table(drive, "yaw_rate_radps [rad/s]", drive.yaw_radps, swapped=swapped))])
    channel = log.channels["yaw_rate_radps"]
    np.testing.assert_allclose(channel.value, drive.yaw_radps, atol=2e-3)
    assert not channel.turned
    assert [notice.code for notice in log.notices].count("sign-doubtful") == int(swapped)


def test_a_sign_stated_to_the_right_is_turned_without_doubt(drive, write) -> None:
    name = "yaw_right_positive_rad_s"
    log = read_log([write(_table(drive, name, -drive.yaw_radps, swapped=False))])
    channel = log.channels["yaw_rate_radps"]
    np.testing.assert_allclose(channel.value, drive.yaw_radps, atol=2e-3)
    assert not channel.turned
    assert "sign-doubtful" not in [notice.code for notice in log.notices]


def test_a_sign_nobody_states_is_turned_and_marked(drive, write) -> None:
    log = read_log([write(_table(drive, "yaw_rad_s", drive.yaw_radps, swapped=True))])
    channel = log.channels["yaw_rate_radps"]
    assert channel.turned
    np.testing.assert_allclose(channel.value, -drive.yaw_radps, atol=2e-3)
    (notice,) = [one for one in log.notices if one.code == "sign-doubtful"]
    assert "exchanged" in notice.message
