"""Pulse arithmetic: encoder, sensor and control unit at constant speed against published numbers."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from triage.simulator.control_unit import estimate_speeds, held_speed
from triage.simulator.encoder import WHEEL_ORDERS, WHEEL_SHARE, Ring, make_ring, pass_poles, runout_shift_pole
from triage.simulator.sensor import SensorConditions, sense_edges, spacing_loss
from triage.simulator.setup import ControlUnit, Sensor, draw_setup
from triage.simulator.vehicle_path import GRID_S
from triage.speed_log import FloatArray
from triage.units import KMH

QUIET_SENSOR = Sensor(
    kind="active",
    threshold_ratio=0.3,
    amplitude_noise_ratio=0.0,
    vibration_gap_mm=0.0,
    jitter_pole_ratio=0.0,
    cut_in_mps=0.0,
)


def perfect_ring(pairs: int) -> Ring:
    return Ring(np.ones(2 * pairs), np.zeros(2 * pairs), np.zeros(2 * pairs))


def plain_unit(circumference_m: float, cycle_s: float = 0.01) -> ControlUnit:
    return ControlUnit(
        circumference_m=circumference_m,
        cycle_s=cycle_s,
        averaging_cycles=1,
        hold_s=0.02,
        timeout_s=0.3,
        filter_s=0.0,
        zero_below_mps=0.0,
        jump_limit_mps2=float("inf"),
        jump_reaction="none",
        mark_silent_after_s=float("inf"),
    )


def steady_edges(
    ring: Ring,
    *,
    speed_mps: float,
    circumference_m: float,
    duration_s: float = 20.0,
    sensor: Sensor = QUIET_SENSOR,
    extra_gap_mm: float = 0.0,
    both_edges: bool = False,
) -> FloatArray:
    count = round(duration_s / GRID_S)
    rate = np.full(count, speed_mps / circumference_m)
    angle = 1.0 + np.arange(count) * GRID_S * rate
    conditions = SensorConditions(np.full(count, extra_gap_mm), np.ones(count), rate * circumference_m, 5.0)
    return sense_edges(
        pass_poles(angle, rate, ring),
        ring,
        sensor=sensor,
        conditions=conditions,
        both_edges=both_edges,
        rng=np.random.default_rng(0),
    )


def _frequency_hz(pairs: int, speed_kmh: float, circumference_m: float) -> float:
    edges = steady_edges(perfect_ring(pairs), speed_mps=speed_kmh * KMH, circumference_m=circumference_m)
    return float((edges.size - 1) / (edges[-1] - edges[0]))


def test_pulse_frequency_at_high_speed() -> None:
    # S-31: f = n v / C; published pair 1700 Hz at 250 km/h (open workshop manual), 1.985 m and 48 pulses.
    frequency = _frequency_hz(48, 250.0, 1.985)
    assert frequency == pytest.approx(1679.0, rel=1e-3)
    assert frequency == pytest.approx(1700.0, rel=0.02)


@pytest.mark.parametrize(
    ("speed_kmh", "hertz"), [(1.0, 6.919), (5.0, 34.60), (50.0, 345.96), (100.0, 691.92)]
)
def test_pulse_frequency_of_48_pulses_on_1927_mm(speed_kmh: float, hertz: float) -> None:
    # S-32, computed from f = n v / C.
    assert _frequency_hz(48, speed_kmh, 1.927) == pytest.approx(hertz, rel=2e-4)


def test_frequency_limits_of_sensors_as_speeds() -> None:
    # S-33: 1 Hz with 44 pulses is 0.158 km/h; 2000 Hz is 315.3 km/h; 2500 Hz with 48 is 361.3 km/h.
    assert _frequency_hz(44, 31.53, 1.927) == pytest.approx(200.0, rel=1e-3)
    assert _frequency_hz(48, 36.13, 1.927) == pytest.approx(250.0, rel=1e-3)
    slow = plain_unit(1.927)
    pitch_m = 1.927 / 44
    edges = np.arange(0.05, 20.0, 1.0)
    read = held_speed(edges, np.arange(2.0, 19.0, 0.5), replace(slow, timeout_s=1.5), pitch_m=pitch_m)
    assert read.max() / KMH == pytest.approx(0.158, abs=1e-3)


def _mean_over_turns(edges: FloatArray, edges_per_rev: int, circumference_m: float) -> float:
    return float((edges.size - 1) / edges_per_rev * circumference_m / (edges[-1] - edges[0]))


@pytest.mark.parametrize("both_edges", [False, True])
@pytest.mark.parametrize("pole", [20, 21])
def test_one_lost_pole_of_48_pairs_reads_one_48th_low(both_edges: bool, pole: int) -> None:
    # S-34: one pole pair missing of 48 reads 1/48 = 2.083 % low over a turn.
    ring = perfect_ring(48)
    weak = Ring(np.where(np.arange(96) == pole, 0.1, 1.0), ring.border_shift_pole, ring.unsteadiness)
    whole = steady_edges(ring, speed_mps=20.0, circumference_m=2.0, both_edges=both_edges)
    edges = steady_edges(weak, speed_mps=20.0, circumference_m=2.0, both_edges=both_edges)
    assert 1.0 - edges.size / whole.size == pytest.approx(1.0 / 48.0, abs=3e-4)
    intervals = np.diff(edges)
    if both_edges:
        # Two neighbouring edges vanish, so that one interval is three poles long.
        assert intervals.max() / np.median(intervals) == pytest.approx(3.0, rel=1e-6)
    else:
        assert intervals.max() / np.median(intervals) == pytest.approx(2.0, rel=1e-6)
    unit = plain_unit(2.0)
    times = np.arange(100, 1900) * unit.cycle_s
    read = held_speed(edges, times, unit, pitch_m=2.0 / (96 if both_edges else 48))
    # The unit weighs intervals by the cycles they fall in; the mean stays at the turn's to 0.3 %.
    assert read.mean() == pytest.approx(20.0 * (1.0 - 1.0 / 48.0), rel=3e-3)


@pytest.mark.parametrize("speed_mps", [3.0, 30.0])
def test_wrong_count_is_a_constant_ratio(speed_mps: float) -> None:
    # S-35: 48 instead of 47 counts is 2.128 %, whatever the speed.
    edges = steady_edges(perfect_ring(48), speed_mps=speed_mps, circumference_m=2.0)
    assert _mean_over_turns(edges, 47, 2.0) / speed_mps - 1.0 == pytest.approx(0.02128, abs=1e-5)


def test_gap_weakens_by_the_spacing_law() -> None:
    # Wallace spacing law: one wavelength over 2 pi of extra gap leaves 1/e.
    assert spacing_loss(np.array([5.0 / (2.0 * math.pi)]), 5.0)[0] == pytest.approx(math.exp(-1.0), rel=1e-12)
    limit_mm = -math.log(0.3) * 5.0 / (2.0 * math.pi)
    near = steady_edges(perfect_ring(48), speed_mps=10.0, circumference_m=2.0, extra_gap_mm=limit_mm * 0.99)
    far = steady_edges(perfect_ring(48), speed_mps=10.0, circumference_m=2.0, extra_gap_mm=limit_mm * 1.01)
    assert near.size == pytest.approx(4800, abs=2)
    assert far.size == 0


@pytest.mark.parametrize(("speed_kmh", "reads"), [(3.0, False), (6.0, True)])
def test_passive_sensor_is_silent_below_its_cut_in(speed_kmh: float, reads: bool) -> None:
    # Induced voltage is proportional to speed (Faraday); cut-in here at 4 km/h.
    coil = replace(QUIET_SENSOR, kind="passive", cut_in_mps=4.0 * KMH)
    edges = steady_edges(perfect_ring(48), speed_mps=speed_kmh * KMH, circumference_m=2.0, sensor=coil)
    assert (edges.size > 0) is reads


def test_wider_gap_raises_the_cut_in_of_a_passive_sensor() -> None:
    coil = replace(QUIET_SENSOR, kind="passive", cut_in_mps=4.0 * KMH)
    third_mm = math.log(3.0) * 5.0 / (2.0 * math.pi)
    counts = [
        steady_edges(
            perfect_ring(48), speed_mps=kmh * KMH, circumference_m=2.0, sensor=coil, extra_gap_mm=third_mm
        ).size
        for kmh in (11.0, 13.0)
    ]
    assert counts[0] == 0
    assert counts[1] > 0


@pytest.mark.parametrize("both_edges", [False, True])
def test_runout_reads_as_a_sine_of_its_amplitude(both_edges: bool) -> None:
    ring = perfect_ring(48)
    bent = Ring(ring.strength, runout_shift_pole(96, 0.01, phase_rev=0.2), ring.unsteadiness)
    edges = steady_edges(bent, speed_mps=10.0, circumference_m=2.0, both_edges=both_edges)
    speed = 2.0 / (96 if both_edges else 48) / np.diff(edges)
    turn = 10.0 / 2.0 * (edges[1:] + edges[:-1]) / 2.0
    line = 2.0 * abs(np.mean((speed / 10.0 - 1.0) * np.exp(-2j * np.pi * turn)))
    assert line == pytest.approx(0.01, rel=0.02)


def test_a_sound_wheel_has_higher_orders_below_its_first() -> None:
    """On 200 rings without pitch errors; beyond the orders of the wheel nothing is left."""
    exact = replace(draw_setup(np.random.default_rng(1)).encoder, pitch_error_ratio=0.0)
    swing = []
    for seed in range(200):
        ring = make_ring(exact, 0, np.random.default_rng(seed))
        # Only the borders in one direction: the other ones of a pair are out by a share of their own.
        order = np.abs(np.fft.rfft(ring.border_shift_pole[::2]))
        swing.append(np.arange(order.size) * order)
    share = np.array(swing)[:, 1:] / np.array(swing)[:, 1:2]
    least, greatest = WHEEL_SHARE
    for order in WHEEL_ORDERS:
        found = share[:, order - 1] * (order - 1)
        assert least * 0.999 < found.min() < 2.0 * least
        assert greatest / 2.0 < found.max() < greatest * 1.001
    assert share[:, max(WHEEL_ORDERS) :].max() < 1e-9


def test_unit_reads_a_perfect_wheel_exactly() -> None:
    edges = steady_edges(perfect_ring(48), speed_mps=15.0, circumference_m=2.0)
    output = estimate_speeds([edges] * 4, plain_unit(2.0), edges_per_rev=48, duration_s=20.0)
    np.testing.assert_allclose(output.speed_mps[:, 20:-5], 15.0, rtol=1e-9)
    assert not output.marked.any()
    assert not output.fault.any()


def test_unit_holds_decays_and_times_out() -> None:
    edges = steady_edges(perfect_ring(48), speed_mps=15.0, circumference_m=2.0, duration_s=5.0)
    edges = edges[edges < 2.0]
    unit = plain_unit(2.0)
    output = estimate_speeds([edges] * 4, unit, edges_per_rev=48, duration_s=5.0)
    wait = output.time_s - edges[-1]
    speed = output.speed_mps[0]
    held = (wait > 0.0) & (wait < unit.hold_s)
    fading = (wait > unit.hold_s + 1e-9) & (wait < unit.timeout_s)
    np.testing.assert_allclose(speed[held], 15.0, rtol=1e-9)
    np.testing.assert_allclose(speed[fading], 2.0 / 48.0 / wait[fading], rtol=1e-9)
    assert np.all(speed[wait > unit.timeout_s] == 0.0)


@pytest.mark.parametrize("reaction", ["hold", "mark"])
def test_unit_doubts_a_jump_no_wheel_can_make(reaction: str) -> None:
    edges = steady_edges(perfect_ring(48), speed_mps=15.0, circumference_m=2.0)
    noisy = np.sort(np.concatenate((edges, np.linspace(8.0, 8.05, 60))))
    unit = replace(plain_unit(2.0), jump_limit_mps2=500.0, jump_reaction=reaction)  # type: ignore[arg-type]
    output = estimate_speeds([noisy, edges, edges, edges], unit, edges_per_rev=48, duration_s=20.0)
    assert output.fault[0].any()
    assert not output.fault[1:].any()
    assert output.marked[0].any() is np.bool_(reaction == "mark")


def test_unit_marks_a_wheel_silent_for_long() -> None:
    edges = steady_edges(perfect_ring(48), speed_mps=15.0, circumference_m=2.0)
    unit = replace(plain_unit(2.0), mark_silent_after_s=1.0)
    output = estimate_speeds(
        [edges[edges < 5.0], edges, edges, edges], unit, edges_per_rev=48, duration_s=20.0
    )
    first = output.time_s[np.argmax(output.marked[0])]
    assert first == pytest.approx(5.0 + unit.timeout_s + 1.0, abs=0.1)
    assert not output.marked[1:].any()
