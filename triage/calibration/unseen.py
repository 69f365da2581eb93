"""Cars, encoders, control units and recorders that the calibration never draws.

A verdict that holds only for the cars its tables were counted on is worth little at the next car. What judges
the tables is therefore drawn from wider ranges, and between the round numbers of
:func:`triage.simulator.setup.draw_setup`.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from triage.simulator.equipment import Car, ControlUnit, Encoder, Recorder, Sensor, Setup
from triage.simulator.setup import draw_setup
from triage.units import KMH

PAIRS: Final = (24, 101)
"""Pole pairs, the last one not included: any number, where calibration prefers those seen in print."""

FEW_EDGES: Final = 70
"""Control units with so few edges per revolution smooth their estimate, as those of the calibration do."""


def draw_unseen_setup(rng: np.random.Generator) -> Setup:
    """Draw a car, encoder, sensor, control unit and recorder outside the choices of the calibration.

    Parameters
    ----------
    rng : numpy.random.Generator
        Source of every choice.

    Returns
    -------
    Setup
        What is not named here (manner of driving, companion channels, reactions) is drawn as for the
        calibration.

    Notes
    -----
    Ranges are judgement: vans and small cars beside passenger cars; cycle times of 4 to 22 ms, where the
    calibration knows 5, 7, 10 and 20; one to six cycles of averaging; filters up to 50 ms; 10 to 100 frames
    per second in any number.
    """
    known = draw_setup(rng)
    encoder = _encoder(known.encoder, rng)
    car = _car(known.car, rng)
    return replace(
        known,
        car=car,
        encoder=encoder,
        sensor=_sensor(known.sensor, encoder.pair_length_mm, rng),
        unit=_unit(known.unit, car, encoder, rng),
        recorder=_recorder(known.recorder, rng),
    )


def _car(known: Car, rng: np.random.Generator) -> Car:
    return replace(
        known,
        track_m=float(rng.uniform(1.3, 1.8)),
        wheelbase_m=float(rng.uniform(2.15, 3.8)),
        circumference_m=float(rng.uniform(1.72, 2.45)),
        slip_per_mps2=float(rng.uniform(0.0015, 0.007)),
        wheel_noise_ratio=float(0.0008 * 4.5 ** rng.uniform()),
        road_noise_ratio=float(0.0008 * 4.5 ** rng.uniform()),
    )


def _encoder(known: Encoder, rng: np.random.Generator) -> Encoder:
    pairs = int(rng.integers(*PAIRS))
    return replace(
        known,
        pole_pairs=pairs,
        both_edges=bool(pairs < FEW_EDGES and rng.uniform() < 0.5),
        pitch_error_ratio=float(rng.uniform(0.0005, 0.007)),
        pair_length_mm=float(rng.uniform(170.0, 330.0)) / pairs,
    )


def _sensor(known: Sensor, pair_length_mm: float, rng: np.random.Generator) -> Sensor:
    return replace(
        known,
        threshold_ratio=float(rng.uniform(0.2, 0.4)),
        amplitude_noise_ratio=float(rng.uniform(0.01, 0.045)),
        # A healthy sensor is laid out for its ring: short poles weaken quickly with the gap.
        vibration_gap_mm=float(rng.uniform(0.001, 0.007)) * pair_length_mm,
        jitter_pole_ratio=float(rng.uniform(0.0003, 0.003)),
        cut_in_mps=float(rng.uniform(1.0, 4.5)) * KMH if known.kind == "passive" else 0.0,
    )


def _unit(known: ControlUnit, car: Car, encoder: Encoder, rng: np.random.Generator) -> ControlUnit:
    cycle_s = float(rng.uniform(0.004, 0.022))
    counts = known.method == "counting"
    window_s = known.averaging_cycles * known.cycle_s * float(rng.uniform(0.8, 1.3))
    # Who only counts must count for long, or the speed would come in steps of metres per second.
    cycles = round(window_s / cycle_s) if counts else min(int(rng.integers(1, 7)), round(0.05 / cycle_s))
    smooth = counts or encoder.edges_per_rev <= FEW_EDGES or rng.uniform() < 0.6
    return replace(
        known,
        circumference_m=car.circumference_m * float(rng.uniform(0.98, 1.02)),
        cycle_s=cycle_s,
        averaging_cycles=max(cycles, 1),
        hold_s=max(float(rng.uniform(0.008, 0.07)), 1.5 * cycle_s),
        timeout_s=float(0.08 * 10.0 ** rng.uniform()),
        filter_s=float(rng.uniform(0.005, 0.05)) if smooth else 0.0,
        zero_below_mps=float(rng.uniform(0.2, 3.2)) * KMH,
        jump_limit_mps2=float(rng.uniform(450.0, 1100.0)),
    )


def _recorder(known: Recorder, rng: np.random.Generator) -> Recorder:
    rate_hz = float(10.0 * 10.0 ** np.sqrt(rng.uniform()))
    rates = known.wheel_rate_hz
    if rates is not None:
        first, second, third, fourth = (rate_hz * one / known.rate_hz for one in rates)
        rates = (first, second, third, fourth)
    return replace(
        known,
        wheel_rate_hz=rates,
        rate_hz=rate_hz,
        jitter_s=float(rng.uniform(0.005, 0.08)) / rate_hz,
        step_kmh=float(rng.choice([0.01, 0.018, 0.02, 0.036, 0.04, 0.05, 0.05625, 0.0625])),
        lost_frame_ratio=float(rng.choice([0.0, 0.0, 0.001, 0.005])),
        gaps_per_min=float(rng.choice([0.0, 0.0, 0.0, 5.0])),
        rear_offset_s=float(rng.uniform(0.1, 0.6)) / rate_hz if rng.uniform() < 0.25 else 0.0,
    )
