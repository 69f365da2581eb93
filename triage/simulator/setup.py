"""Draws plausible road tests: ordinary cars, and the odd but healthy ones that look like a fault."""

from __future__ import annotations

from dataclasses import replace
from typing import Final, Literal

import numpy as np

from triage.corners import CORNERS
from triage.simulator.equipment import (
    Car,
    ControlUnit,
    Drive,
    Encoder,
    FourRatios,
    JumpReaction,
    LegKind,
    Recorder,
    Sensor,
    Setup,
)
from triage.units import KMH

__all__ = [
    "Car",
    "ControlUnit",
    "Drive",
    "Encoder",
    "LegKind",
    "Recorder",
    "Sensor",
    "Setup",
    "draw_setup",
]

_REACTIONS: Final[tuple[JumpReaction, ...]] = ("none", "hold", "mark")
_RATES_HZ: Final = (10.0, 20.0, 40.0, 50.0, 83.0, 100.0)
_STEPS_KMH: Final = (0.01, 0.0173, 0.03125, 0.0625)
_ROUTES: Final[tuple[tuple[LegKind, ...], ...]] = (
    ("town", "country", "town", "yard"),
    ("town", "town", "country"),
    ("country", "town", "yard", "country"),
    ("town", "motorway", "town"),
    ("yard", "town", "country"),
)
_FAULT_BITS: Final = tuple(f"fault_{corner}" for corner in CORNERS)
_PULSES: Final = tuple(f"pulses_{corner}" for corner in CORNERS)
_CHANNEL_SETS: Final[tuple[tuple[str, ...], ...]] = (
    (),
    ("steering_rad", "brake"),
    ("steering_rad", "yaw_rate_radps", "lateral_mps2"),
    ("steering_rad", "yaw_rate_radps", "lateral_mps2", "longitudinal_mps2", "brake"),
    ("yaw_rate_radps", "lateral_mps2"),
)


def draw_setup(rng: np.random.Generator) -> Setup:
    """Draw a plausible car with its encoders, sensors, control unit, recorder and drive.

    Parameters
    ----------
    rng : numpy.random.Generator
        Source of every choice.

    Returns
    -------
    Setup
    """
    car = _draw_car(rng)
    encoder = _draw_encoder(rng)
    unit = _draw_unit(rng, car, encoder)
    ordinary = Setup(
        car=car,
        encoder=encoder,
        sensor=_draw_sensor(rng),
        unit=unit,
        recorder=_draw_recorder(rng, unit),
        drive=_draw_drive(rng),
    )
    return _with_oddities(ordinary, rng)


def _draw_car(rng: np.random.Generator) -> Car:
    spread = np.clip(rng.normal(0.0, 0.0012, 4), -0.003, 0.003)
    inflation = np.repeat(rng.normal(0.0, 0.0008, 2), 2)
    return Car(
        track_m=float(rng.uniform(1.42, 1.68)),
        wheelbase_m=float(rng.uniform(2.35, 3.3)),
        circumference_m=float(rng.uniform(1.8, 2.35)),
        wheel_ratio=_four(1.0 + spread + inflation),
        driven_axle=("front", "front", "rear", "both")[int(rng.integers(4))],
        slip_per_mps2=float(rng.uniform(0.002, 0.006)),
        steering_ratio=float(rng.uniform(13.0, 18.0)),
        wheel_noise_ratio=float(0.001 * 3.0 ** rng.uniform(0.0, 1.0)),
        road_noise_ratio=float(0.0005 * 6.0 ** rng.uniform(0.0, 1.0)),
    )


def _draw_encoder(rng: np.random.Generator) -> Encoder:
    style = rng.uniform()
    if style < 0.75:
        pairs = int(rng.choice([43, 44, 46, 48, 48, 48, 52, 60]))
    elif style < 0.9:
        pairs = int(rng.integers(40, 51))
    else:
        pairs = int(rng.integers(80, 101))
    ring_length_mm = float(rng.uniform(190.0, 300.0))
    return Encoder(
        pole_pairs=pairs,
        both_edges=bool(pairs <= 50 and rng.uniform() < 0.5),
        runout_ratio=_four(0.0004 * 3.75 ** rng.uniform(0.0, 1.0, 4)),
        runout_phase_rev=_four(rng.uniform(0.0, 1.0, 4)),
        pitch_error_ratio=float(rng.uniform(0.001, 0.005)),
        pair_length_mm=ring_length_mm / pairs,
    )


def _draw_sensor(rng: np.random.Generator) -> Sensor:
    passive = rng.uniform() < 0.25
    return Sensor(
        kind="passive" if passive else "active",
        threshold_ratio=float(rng.uniform(0.22, 0.38)),
        amplitude_noise_ratio=float(rng.uniform(0.02, 0.04)),
        vibration_gap_mm=float(rng.uniform(0.01, 0.03)),
        jitter_pole_ratio=float(rng.uniform(0.0005, 0.002)),
        cut_in_mps=float(rng.uniform(1.5, 4.0)) * KMH if passive else 0.0,
    )


def _draw_unit(rng: np.random.Generator, car: Car, encoder: Encoder) -> ControlUnit:
    cycle_s = float(rng.choice([0.005, 0.007, 0.01, 0.01, 0.02]))
    reaction = _REACTIONS[int(rng.choice(3, p=(0.75, 0.15, 0.1)))]
    # Few edges in a cycle make a rough estimate, and a unit with few edges smooths it.
    filters_s = (0.0, 0.0, 0.01, 0.02, 0.04) if encoder.edges_per_rev > 70 else (0.01, 0.02, 0.02, 0.04)
    return ControlUnit(
        circumference_m=car.circumference_m * float(rng.uniform(0.99, 1.01)),
        cycle_s=cycle_s,
        averaging_cycles=min(int(rng.choice([1, 1, 1, 2, 4])), round(0.04 / cycle_s)),
        hold_s=max(float(rng.choice([0.01, 0.02, 0.02, 0.05])), 1.5 * cycle_s),
        timeout_s=float(rng.uniform(0.1, 0.6)),
        filter_s=float(rng.choice(filters_s)),
        zero_below_mps=float(rng.choice([0.3, 0.7, 1.0, 1.8, 2.8])) * KMH,
        # Published monitors take 500 and 980 m/s2 (open workshop manual).
        jump_limit_mps2=float(rng.uniform(500.0, 980.0)),
        jump_reaction=reaction,
        mark_silent_after_s=float(rng.uniform(0.5, 3.0)) if rng.uniform() < 0.25 else float("inf"),
    )


def _draw_recorder(rng: np.random.Generator, unit: ControlUnit) -> Recorder:
    rate_hz = float(rng.choice(_RATES_HZ, p=(0.05, 0.07, 0.08, 0.3, 0.15, 0.35)))
    channels = _CHANNEL_SETS[int(rng.integers(len(_CHANNEL_SETS)))]
    if unit.jump_reaction != "none" and rng.uniform() < 0.5:
        channels += _FAULT_BITS
    return Recorder(
        rate_hz=rate_hz,
        jitter_s=float(rng.uniform(0.01, 0.05)) / rate_hz,
        step_kmh=float(rng.choice(_STEPS_KMH)),
        lost_frame_ratio=float(rng.choice([0.0, 0.0, 0.0005, 0.003])),
        gaps_per_min=float(rng.choice([0.0, 0.0, 0.0, 3.0])),
        rear_offset_s=0.4 / rate_hz if rng.uniform() < 0.2 else 0.0,
        channels=channels,
    )


def _draw_drive(rng: np.random.Generator) -> Drive:
    return Drive(
        legs=_ROUTES[int(rng.integers(len(_ROUTES)))],
        lead_in_s=float(rng.uniform(4.0, 15.0)) if rng.uniform() < 0.4 else 0.0,
        briskness=float(rng.uniform(0.85, 1.15)),
        hits_per_km=float(1.0 * 60.0 ** rng.uniform()),
    )


def _with_oddities(setup: Setup, rng: np.random.Generator) -> Setup:
    """Add what some sound cars, units, logs and drives do that looks like a fault."""
    return replace(
        setup,
        car=_odd_tyres(setup.car, rng),
        unit=_odd_unit(setup.unit, rng),
        recorder=_odd_recorder(setup.recorder, rng),
        drive=_odd_drive(setup.drive, rng),
    )


def _odd_tyres(car: Car, rng: np.random.Generator) -> Car:
    """Other tyres on one axle than on the other, by design or by habit."""
    odd, difference = rng.uniform() < 0.15, rng.uniform(-0.03, 0.03)
    if not odd:
        return car
    axle = 1.0 + difference / 2.0 * np.array([1.0, 1.0, -1.0, -1.0])
    return replace(car, wheel_ratio=_four(np.asarray(car.wheel_ratio) * axle))


def _odd_unit(unit: ControlUnit, rng: np.random.Generator) -> ControlUnit:
    """Let some units only count edges, and some put other wheels' speed in an implausible one's place."""
    counts, window_s, filter_s = rng.uniform() < 0.08, rng.uniform(0.06, 0.15), rng.uniform(0.02, 0.06)
    if counts:
        cycles = max(round(window_s / unit.cycle_s), 1)
        return replace(unit, method="counting", averaging_cycles=cycles, filter_s=filter_s)
    if rng.uniform() < 0.06:
        kind: Literal["others", "partner"] = "others" if rng.uniform() < 0.5 else "partner"
        tells = bool(rng.uniform() < 0.5)
        return replace(unit, jump_reaction="substitute", substitute=kind, tells_fault=tells)
    return unit


def _odd_recorder(recorder: Recorder, rng: np.random.Generator) -> Recorder:
    """Give some logs pulse counters, and some a slower axle or wheel."""
    if rng.uniform() < 0.25:
        recorder = replace(
            recorder,
            channels=(*recorder.channels, *_PULSES),
            pulse_modulus=int(rng.choice([255, 256, 256, 1024, 4096, 32768, 65536])),
        )
    slower = recorder.rate_hz * float(rng.choice([0.5, 0.5, 0.4, 0.2]))
    if rng.uniform() >= 0.12 or slower < 10.0:
        return recorder
    late = np.zeros(4, dtype=np.bool_)
    one_wheel, place = rng.uniform() < 0.3, int(rng.integers(4))
    late[place if one_wheel else slice(place // 2 * 2, place // 2 * 2 + 2)] = True
    return replace(recorder, wheel_rate_hz=_four(np.where(late, slower, recorder.rate_hz)))


def _odd_drive(drive: Drive, rng: np.random.Generator) -> Drive:
    """Draw the grip, the surface and the driver's haste; a few drives are all of one kind."""
    loose, split, hasty, rough, kind = (float(draw) for draw in rng.uniform(size=5))
    legs = drive.legs
    if kind < 0.15:
        legs = (*legs[:1], "parking", *legs[1:], "queue")
    elif kind < 0.21:
        legs = ("cruise",) if kind < 0.18 else ("queue", "parking", "queue")
    return replace(
        drive,
        legs=legs,
        spin_ratio=0.1 + 0.3 * float(rng.uniform()),
        loose_ground=loose < 0.06,
        slip_ratio=0.2 + 0.4 * float(rng.uniform()),
        split_grip=split < 0.06,
        hard_stop_ratio=float(rng.uniform(0.2, 0.8)) if hasty < 0.2 else 0.0,
        rough_ratio=float(rng.uniform(0.1, 1.0)) if rough < 0.2 else 0.0,
        rough_factor=float(2.0 * 4.0 ** rng.uniform()),
    )


def _four(values: np.ndarray[tuple[int], np.dtype[np.float64]]) -> FourRatios:
    first, second, third, fourth = (float(value) for value in values)
    return first, second, third, fourth
