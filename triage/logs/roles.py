"""Which companion channel a signal is, by its name and unit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from triage.logs.names import NameReading, read_name
from triage.logs.unit_texts import is_speed_unit, normal_unit
from triage.logs.vocabulary import word_set


@dataclass(frozen=True, slots=True)
class SignalSense:
    """What a signal can be.

    Attributes
    ----------
    role : str
        ``wheel`` for a possible wheel speed, a channel name, or empty for nothing of interest.
    strength : int
        How clearly name and unit say so; more is clearer.
    reading : NameReading
    unit : str
        Normal unit, from the file or else from the name.
    """

    role: str
    strength: int
    reading: NameReading
    unit: str


_RATE: Final = word_set("rate geschw geschwindigkeit velocity speed spd gradient")
_STEER: Final = word_set(
    "steer steering lenk lenkrad lenkwinkel str strg stw swa sas eps handwheel lenkradwinkel"
)
_YAW: Final = word_set("yaw gier gierrate psi yawrate yawspeed")
_ACCELERATION: Final = word_set("acc accel acceleration beschl beschleunigung a ax ay g")
_LATERAL: Final = word_set("lat lateral quer querbeschleunigung ay y latacc")
_LONGITUDINAL: Final = word_set(
    "long longitudinal laengs längs ax x lon laengsbeschleunigung längsbeschleunigung"
)
_BRAKE: Final = word_set("brake brk brakes bremse bremslicht bls braking bremspedal")
_BRAKE_BIT: Final = word_set(
    "pressed switch light lamp active act status stat sts pedal on bit state applied sw"
)
_VEHICLE: Final = word_set(
    "vehicle veh car fahrzeug fzg vehspd vehspeed ego speedo tacho gps gnss ref reference"
)
_SPEED: Final = word_set(
    "speed spd velocity vel v geschwindigkeit geschw speedometer fahrzeuggeschwindigkeit"
)
_NOT_VEHICLE_SPEED: Final = word_set(
    "engine motor eng fan turbine wiper target set cruise acc max min limit desired cmd setpoint old "
    "yaw steer steering angle rate wheel whl rad input output shaft gear transmission pump rel "
    "relative lead front other valid validity quality qf status counter fault err error crc checksum "
    "offset wind"
)
_SPOILERS: Final = word_set(
    "valid validity quality qf qual status stat sts counter cnt fault flt err error crc checksum chk "
    "chksum offset raw target desired cmd setpoint torque trq tq moment force pressure pedal pos "
    "position motor req request temp bias std sigma fraction sign dir direction calib calibrated "
    "init"
)


def sense_signal(name: str, unit_text: str) -> SignalSense:
    """Judge what a signal can be from its name and unit.

    Parameters
    ----------
    name : str
        Column name or ``Message.Signal``; the message name counts for less.
    unit_text : str
        Unit as the file gives it.
    """
    reading = read_name(name.rpartition(".")[2] if _is_qualified(name) else name)
    unit = normal_unit(unit_text) or reading.unit
    if reading.corner is None and _is_qualified(name):
        reading = _with_corner_of_message(name, reading)
    if reading.corner is not None:
        role, strength = _corner_role(reading, unit)
    else:
        role, strength = _companion_role(frozenset(reading.words), unit)
    return SignalSense(role, strength, reading, unit)


def _is_qualified(name: str) -> bool:
    message, _, signal = name.rpartition(".")
    return bool(message) and bool(signal) and " " not in message and "[" not in message


def _with_corner_of_message(name: str, reading: NameReading) -> NameReading:
    """Take the corner from the message when the signal is plainly a speed, as in ``WHEEL_FL.Speed``."""
    message = read_name(name.rpartition(".")[0])
    if message.corner is None or not message.names_wheel or reading.names_other:
        return reading
    return NameReading((*message.words, *reading.words), message.corner, reading.unit)


def _corner_role(reading: NameReading, unit: str) -> tuple[str, int]:
    if reading.names_fault:
        return f"fault_{reading.corner}", 1
    if reading.names_pulses and not is_speed_unit(unit):
        return f"pulses_{reading.corner}", 1
    if reading.names_other or (unit and not is_speed_unit(unit)):
        return "", 0
    strength = 2 * reading.names_speed + 2 * is_speed_unit(unit) + reading.names_wheel
    # a bare corner is a wheel speed only when nothing else stands in the name
    return ("wheel", strength) if strength or not reading.words else ("", 0)


def _companion_role(words: frozenset[str], unit: str) -> tuple[str, int]:
    for role, test in _COMPANIONS:
        strength = test(words, unit)
        if strength:
            return role, strength
    return "", 0


def _steering(words: frozenset[str], unit: str) -> int:
    if not words & _STEER or words & (_RATE | _SPOILERS) or unit not in ("", "deg", "rad"):
        return 0
    return 1 + (unit != "") + bool(words & {"angle", "winkel", "lenkwinkel", "swa", "lenkradwinkel"})


def _yaw(words: frozenset[str], unit: str) -> int:
    if (
        not words & _YAW
        or words & (_SPOILERS | {"acc", "acceleration"})
        or unit not in ("", "deg/s", "rad/s")
    ):
        return 0
    return 1 + (unit != "") + bool(words & _RATE)


def _acceleration(words: frozenset[str], unit: str, axis: frozenset[str]) -> int:
    if not words & axis or words & (_SPOILERS | {"accelerator", "yaw"}) or unit not in ("", "m/s2", "g"):
        return 0
    named = bool(words & _ACCELERATION) or any("beschl" in word for word in words)
    return (unit != "") + named + (unit != "" and named)


def _lateral(words: frozenset[str], unit: str) -> int:
    return _acceleration(words, unit, _LATERAL)


def _longitudinal(words: frozenset[str], unit: str) -> int:
    return _acceleration(words, unit, _LONGITUDINAL)


def _brake(words: frozenset[str], unit: str) -> int:
    rest = words - _BRAKE
    if (
        not words & _BRAKE
        or unit not in ("", "0/1", "bool", "1")
        or rest & {"pressure", "torque", "temp", "fault"}
    ):
        return 0
    return 1 + bool(rest & _BRAKE_BIT)


def _reference(words: frozenset[str], unit: str) -> int:
    speed, vehicle = bool(words & _SPEED), bool(words & _VEHICLE)
    if words & _NOT_VEHICLE_SPEED or not (speed or vehicle) or unit not in ("", "km/h", "m/s", "mph", "mm/s"):
        return 0
    if not vehicle and len(words) > 1:
        return 0
    return speed + vehicle + (unit != "") if speed or unit else 0


_COMPANIONS: Final[tuple[tuple[str, Callable[[frozenset[str], str], int]], ...]] = (
    ("yaw_rate_radps", _yaw),
    ("steering_rad", _steering),
    ("lateral_mps2", _lateral),
    ("longitudinal_mps2", _longitudinal),
    ("brake", _brake),
    ("reference_mps", _reference),
)
