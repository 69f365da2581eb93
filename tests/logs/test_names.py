from __future__ import annotations

import pytest

from triage.logs.names import read_name
from triage.logs.roles import sense_signal
from triage.logs.unit_texts import normal_unit


@pytest.mark.parametrize(
    ("name", "corner", "unit"),
    [
        ("FL", "FL", ""),
        ("front left", "FL", ""),
        ("Front Right [km/h]", "FR", "km/h"),
        ("whl_spd_fl", "FL", ""),
        ("WheelSpeedFrontLeft", "FL", ""),
        ("v_rr_ms", "RR", "m/s"),
        ("v_rl_mps", "RL", "m/s"),
        ("w_fl_rad_s", "FL", "rad/s"),
        ("omega_RR_rad_s", "RR", "rad/s"),
        ("VL [km/h]", "FL", "km/h"),
        ("HR (m/s)", "RR", "m/s"),
        ("Rad vorne links", "FL", ""),
        ("Raddrehzahl hinten rechts [1/min]", "RR", "rpm"),
        ("Raddrehzahl_VR", "FR", ""),
        ("LF", "FL", ""),
        ("LR_kph", "RL", "km/h"),
        ("WhlSpd_RR[km/h]", "RR", "km/h"),
        ("wheelspeedrl", "RL", ""),
        ("whlspdfr_mph", "FR", "mph"),
        ("LFWheelSpeed", "FL", ""),
        ("vFL", "FL", ""),
        ("Wheel_Speed_Front_L", "FL", ""),
        ("WheelSpd_R_Left", "RL", ""),
        ("FL_rpm", "FL", "rpm"),
        ("pulse_rate_fl_hz", "FL", "hz"),
        ("avant gauche km/h", "FL", "km/h"),
    ],
)
def test_corner_and_unit_are_read_from_many_styles(name: str, corner: str, unit: str) -> None:
    reading = read_name(name)
    assert (reading.corner, reading.unit) == (corner, unit)


@pytest.mark.parametrize(
    "name",
    [
        "WHEEL_SPEED_FL_FAULT",
        "wheel_speed_fl_valid",
        "WhlSpdFLQf",
        "act_fl",
        "tpms_press_fl",
        "BrakePressure_FL",
        "BrakeTemp FL [°C]",
        "imp_fl",
        "WHEEL_IMPULSE_FR",
        "suspension_height_rl",
        "wheel_slip_fl",
        "wheel_torque_rr",
        "door_fl",
        "DamperAccel_FR [m/s2]",
        "FL_status",
    ],
)
def test_names_that_are_no_speed_are_not_taken_for_one(name: str) -> None:
    assert sense_signal(name, "").role != "wheel"


@pytest.mark.parametrize(
    "name", ["frontal", "curly", "error", "flow", "hrs", "vehicle_speed", "time_s", "slr"]
)
def test_other_words_name_no_corner(name: str) -> None:
    assert read_name(name).corner is None


@pytest.mark.parametrize(
    ("name", "unit", "role"),
    [
        ("steer_deg", "", "steering_rad"),
        ("STEER_ANGLE_SENSOR.STEER_ANGLE", "deg", "steering_rad"),
        ("Lenkradwinkel [°]", "°", "steering_rad"),
        ("steering_rate_deg_s", "", ""),
        ("yaw_rad_s", "", "yaw_rate_radps"),
        ("KINEMATICS.YAW_RATE", "deg/s", "yaw_rate_radps"),
        ("Gierrate", "°/s", "yaw_rate_radps"),
        ("lat_ms2", "", "lateral_mps2"),
        ("KINEMATICS.ACCEL_Y", "m/s^2", "lateral_mps2"),
        ("Querbeschleunigung [m/s²]", "m/s²", "lateral_mps2"),
        ("accel_x_ms2", "", "longitudinal_mps2"),
        ("brake_pressed", "", "brake"),
        ("brake_pressure", "bar", ""),
        ("speed_kph", "", "reference_mps"),
        ("VEH_SPD.VehSpd", "km/h", "reference_mps"),
        ("Fahrzeuggeschwindigkeit", "km/h", "reference_mps"),
        ("engine_speed", "rpm", ""),
        ("cruise_set_speed", "km/h", ""),
        ("ABS_5.WHEEL_IMPULSE_FL", "", "pulses_FL"),
        ("WHEEL_SPEEDS.WHEEL_SPEED_RR_FAULT", "", "fault_RR"),
        ("accelerator_pedal_pos", "%", ""),
    ],
)
def test_companion_channels_are_known_by_name_and_unit(name: str, unit: str, role: str) -> None:
    assert sense_signal(name, unit).role == role


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("km/h", "km/h"),
        ("KPH", "km/h"),
        ("m/sec", "m/s"),
        ("m*s^-1", "m/s"),
        ("U/min", "rpm"),
        ("m/s²", "m/s2"),
        ("°/s", "deg/s"),
    ],
)
def test_unit_texts_come_to_one_spelling(text: str, unit: str) -> None:
    assert normal_unit(text) == unit


def test_names_of_any_length_end_soon() -> None:
    assert read_name("fl" * 5000).corner in (None, "FL")
