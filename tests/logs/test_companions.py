from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs import read_log


def table(drive, extra: dict[str, np.ndarray], speeds: dict[str, np.ndarray] | None = None) -> str:
    speeds = speeds or drive.kmh
    names = [*(f"{c}_kmh" for c in CORNERS), *extra]
    values = np.stack([*(speeds[c] for c in CORNERS), *extra.values()], axis=1)
    rows = [",".join(["time_s", *names])]
    rows += [
        f"{t:.3f}," + ",".join(f"{v:.6g}" for v in row) for t, row in zip(drive.time_s, values, strict=True)
    ]
    return "\n".join(rows)


def codes(log) -> list[str]:
    return [notice.code for notice in log.notices]


def mean_kmh(drive) -> np.ndarray:
    return np.mean([drive.kmh[c] for c in CORNERS], axis=0)


@pytest.mark.parametrize(
    ("name", "factor"),
    [("yaw_deg_s", 180 / np.pi), ("yaw_rad_s", 1.0), ("YawRate", 1.0), ("YawRate", 180 / np.pi)],
)
@pytest.mark.parametrize("sign", [1, -1])
def test_yaw_rate_comes_out_positive_to_the_left(drive, write, name, factor, sign) -> None:
    log = read_log([write(table(drive, {name: sign * factor * drive.yaw_radps}))])
    np.testing.assert_allclose(log.channels["yaw_rate_radps"].value, drive.yaw_radps, atol=2e-3)
    assert ("sign-doubtful" in codes(log)) == (sign < 0)


@pytest.mark.parametrize("sign", [1, -1])
def test_steering_and_accelerations_are_turned_the_iso_way(drive, write, sign) -> None:
    speed = mean_kmh(drive) / 3.6
    steering = np.degrees(16 * 2.7 * drive.yaw_radps / np.maximum(speed, 1.0))
    extra = {
        "steer_deg": sign * steering,
        "lat_acc_ms2": sign * drive.yaw_radps * speed,
        "accel_x_ms2": sign * np.gradient(speed, drive.time_s),
    }
    log = read_log([write(table(drive, extra))])
    np.testing.assert_allclose(log.channels["steering_rad"].value, np.radians(steering), atol=1e-3)
    np.testing.assert_allclose(log.channels["lateral_mps2"].value, drive.yaw_radps * speed, atol=1e-3)
    assert codes(log).count("sign-doubtful") == (3 if sign < 0 else 0)


def test_straight_driving_settles_no_sign(drive, write) -> None:
    same = dict.fromkeys(CORNERS, mean_kmh(drive))
    log = read_log([write(table(drive, {"yaw_rad_s": -0.001 * np.sin(drive.time_s)}, same))])
    assert log.channels["yaw_rate_radps"].value[100] < 0
    assert "sign-doubtful" not in codes(log)


def test_one_dead_wheel_turns_no_sign(drive, write) -> None:
    speeds = drive.kmh | {"FR": np.zeros(drive.time_s.size)}
    log = read_log([write(table(drive, {"yaw_rad_s": drive.yaw_radps}, speeds))])
    np.testing.assert_allclose(log.channels["yaw_rate_radps"].value, drive.yaw_radps, atol=1e-5)


@pytest.mark.parametrize(
    ("name", "factor"),
    [("speed_kph", 3.6), ("vehicle_speed_mps", 1.0), ("VehSpd", 3.6), ("VEHICLE_SPEED", 1.0)],
)
def test_reference_speed_with_unit_or_judged_by_the_wheels(drive, write, name, factor) -> None:
    log = read_log([write(table(drive, {name: mean_kmh(drive) / 3.6 * factor}))])
    np.testing.assert_allclose(log.channels["reference_mps"].value, mean_kmh(drive) / 3.6, atol=1e-3)


def test_brake_bit_that_follows_is_kept_and_one_that_never_changes_is_not(drive, write) -> None:
    braking = np.gradient(mean_kmh(drive), drive.time_s) < -3.6
    kept = read_log([write(table(drive, {"brake_pressed": braking.astype(float)}))])
    assert set(np.unique(kept.channels["brake"].value)) == {0.0, 1.0}
    assert "stuck-channel" not in codes(kept)
    stuck = read_log([write(table(drive, {"brake_pressed": np.zeros(drive.time_s.size)}))])
    assert "brake" not in stuck.channels
    assert "stuck-channel" in codes(stuck)


def test_a_yaw_rate_that_never_changes_on_a_drive_is_left_out(drive, write) -> None:
    log = read_log([write(table(drive, {"yaw_rad_s": np.full(drive.time_s.size, 0.01)}))])
    assert "yaw_rate_radps" not in log.channels
    assert "stuck-channel" in codes(log)


def test_pulses_and_fault_bits_by_corner(drive, write) -> None:
    pulses = np.floor(np.cumsum(mean_kmh(drive) / 3.6 * 0.02 * 48)) % 255
    fault = (drive.time_s > 20).astype(float)
    log = read_log([write(table(drive, {"imp_fl": pulses, "imp_rr": pulses, "FL_fault": fault}))])
    assert (np.diff(log.channels["pulses_RR"].value) >= 0).all()
    assert log.channels["fault_FL"].value[-1] == 1.0
