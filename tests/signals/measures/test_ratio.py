"""Constant ratios: tyres and encoder counts, against pulse arithmetic."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.signals.measures.ratio import (
    count_evidence,
    own_offset,
    plausible_counts,
    single_wheel_offset,
)
from triage.signals.measures.table import measure_all
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.vehicle import Vehicle

Values = dict
Measure = Callable[..., Values]


@pytest.mark.parametrize("size", [0.98, 0.995, 1.0, 1.01, 1.04])
def test_another_tyre_reads_its_ratio_within_three_standard_uncertainties(
    size: float, simulated: Callable[..., RoadTest], plain_setup: Setup, values: Measure
) -> None:
    """A tyre 2 % smaller turns 1 / 0.98 as fast: 2.04 % high. Its own turn stays one turn."""
    setup = replace(plain_setup, car=replace(plain_setup.car, wheel_ratio=(1.0, 1.0, size, 1.0)))
    for seed in (1, 2, 3):
        got = values(simulated(setup=setup, severity=0.0, duration_s=120.0, seed=seed).log)
        for row, corner in enumerate(CORNERS):
            expected = 100.0 * (1.0 / setup.car.wheel_ratio[row] - 1.0)
            one = got["ratio-offset", corner]
            assert abs(one.value - expected) < 3.0 * one.std_uncertainty, corner
            assert one.std_uncertainty < 0.25
        if ("revolution-offset", "RL") in got:
            turn = got["revolution-offset", "RL"]
            assert abs(turn.value) < 4.0 * turn.std_uncertainty


@pytest.mark.parametrize(("pairs", "step"), [(48, 1), (48, -1), (47, 1), (44, -1)])
def test_one_pole_pair_more_or_less_is_its_exact_ratio(
    pairs: int,
    step: int,
    simulated: Callable[..., RoadTest],
    plain_setup: Setup,
    values: Measure,
) -> None:
    """Pulse arithmetic: 48 counts where 47 are expected read 1/47 = 2.128 % high at every speed."""
    setup = replace(plain_setup, encoder=replace(plain_setup.encoder, pole_pairs=pairs))
    expected = 100.0 * step / pairs
    if (pairs, step) == (47, 1):
        assert expected == pytest.approx(2.128, abs=5e-4)
    found = 0
    for seed in range(6):
        log = simulated("encoder-mismatch", "RR", 0.2, setup=setup, duration_s=120.0, seed=seed).log
        got = values(log, Vehicle(pulses_per_rev=float(pairs)))
        offset = got["ratio-offset", "RR"]
        if abs(offset.value - expected) > 0.7:
            continue
        found += 1
        assert abs(offset.value - expected) < 3.0 * offset.std_uncertainty
        assert got["ratio-count-fit", "RR"].value > -0.5
        if ("revolution-offset", "RR") in got:
            turn = got["revolution-offset", "RR"]
            assert abs(turn.value - expected) < 4.0 * turn.std_uncertainty
    assert found >= 2


def test_one_pole_pair_of_48_lost_reads_one_48th_low(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    """Pulse arithmetic: 2.083 % of the mean speed. Holding the last value hides a part when slow."""
    sound = simulated(setup=plain_setup, severity=0.0, duration_s=180.0, seed=5).log.wheels["FL"].speed_mps
    broken = simulated("encoder-damage", "FL", 0.3, setup=plain_setup, duration_s=180.0, seed=5)
    hurt = broken.log.wheels["FL"]
    fast = sound > 10.0
    loss = 100.0 * (1.0 - hurt.speed_mps[fast].mean() / sound[fast].mean())
    assert loss == pytest.approx(100.0 / 48.0, abs=0.2)
    assert pytest.approx(2.083, abs=5e-4) == 100.0 / 48.0


def test_ratio_that_needs_no_explaining_gets_no_count(healthy_analysis: object) -> None:
    missing = {one.id: one for one in measure_all(healthy_analysis)[1]}  # type: ignore[arg-type]
    assert "no constant ratio" in missing["ratio-count-fit"].reason


def test_a_misfit_of_the_counts_says_more_the_better_the_count_is_known(
    simulated: Callable[..., RoadTest], plain_setup: Setup, values: Measure
) -> None:
    """1.03125 is 3.125 % high: half way between one and two of 48 poles."""
    setup = replace(plain_setup, car=replace(plain_setup.car, wheel_ratio=(1.0, 1.0, 1.0, 1.0 / 1.03125)))
    log = simulated(setup=setup, severity=0.0, duration_s=150.0, seed=3).log
    unknown = values(log)["ratio-count-fit", "RR"].value
    known = values(log, Vehicle(pulses_per_rev=48.0))["ratio-count-fit", "RR"].value
    assert known < -2.0
    assert abs(unknown) < 0.5


@pytest.mark.parametrize("poles", [29, 44, 48])
def test_an_exact_ratio_of_known_counts_is_likelier_by_the_step_over_its_uncertainty(poles: int) -> None:
    """Closed form: one normal law on every step against as many spread evenly over the steps."""
    std = 0.0005
    counts, share = plausible_counts(float(poles))
    on_step = count_evidence(1.0 / poles, std, counts, share)
    assert on_step == pytest.approx(np.log10(1.0 / poles / (std * np.sqrt(2.0 * np.pi))), abs=1e-6)
    spread = [
        10.0 ** count_evidence(x / poles, 0.1 / poles, counts, share) for x in np.linspace(1.5, 2.5, 41)
    ]
    assert np.trapezoid(spread, dx=1.0 / 40.0) == pytest.approx(1.0, abs=1e-3)


def test_a_ratio_smaller_than_a_pole_of_the_finest_ring_is_no_count() -> None:
    """One pole of 120, the finest ring thought of, is 0.83 %."""
    counts, share = plausible_counts(None)
    assert share.sum() == pytest.approx(1.0)
    assert count_evidence(0.0065, 0.0005, counts, share) < -1.5
    assert abs(count_evidence(0.03, 0.0005, counts, share)) < 0.5


def test_drive_slip_does_not_make_the_partner_the_odd_one(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    """A driven front axle leads by its slip, in which a large front left tyre must not hide."""
    car = replace(
        plain_setup.car, driven_axle="front", slip_per_mps2=0.007, wheel_ratio=(1.0 / 0.991, 1.0, 1.0, 1.0)
    )
    for seed in (3, 4, 5):
        log = simulated(setup=replace(plain_setup, car=car), severity=0.0, duration_s=150.0, seed=seed).log
        reference = analyse(log).reference
        tyres = reference.scale_ratio - reference.axle_slip_ratio / 2.0 * np.array([1.0, 1.0, -1.0, -1.0])
        assert reference.axle_slip_ratio > 0.001
        assert (tyres[0] + tyres[1] - tyres[2] - tyres[3]) / 2.0 == pytest.approx(-0.0045, abs=0.0015)
        assert own_offset(reference, 0)[0] == pytest.approx(0.991 - 1.0, abs=0.0015)
        assert own_offset(reference, 1)[0] == 0.0


def test_a_dead_wheel_has_no_ratio(
    simulated: Callable[..., RoadTest], healthy: object, edited: Callable
) -> None:
    def kill(rows: list[np.ndarray], time: np.ndarray) -> list[np.ndarray]:
        rows[0][:] = 0.0
        return rows

    missing = {(one.id, one.corner): one for one in measure_all(analyse(edited(healthy, kill)))[1]}
    assert "lost too often" in missing["ratio-offset", "FL"].reason


@pytest.mark.parametrize(
    ("scales", "odd"),
    [
        ((0.02, 0.0, 0.0, 0.0), (0.02, 0.0, 0.0, 0.0)),
        ((0.0, 0.0, 0.0, -0.02), (0.0, 0.0, 0.0, -0.02)),
        ((0.03, 0.03, 0.0, 0.0), (0.0, 0.0, 0.0, 0.0)),
        ((0.02, 0.03, 0.0, 0.0), (-0.01, 0.01, 0.0, 0.0)),
        ((0.02, np.nan, 0.0, 0.0), (0.02, np.nan, 0.0, 0.0)),
        ((np.nan, np.nan, 0.01, 0.0), (np.nan, np.nan, 0.01, -0.01)),
        ((0.03, 0.02, 0.0, 0.0), (0.01, -0.01, 0.0, 0.0)),
        ((0.08, -0.01, 0.0, 0.0), (0.09, 0.0, 0.0, 0.0)),
        ((0.011, 0.001, 0.0, 0.0), (0.01, 0.0, 0.0, 0.0)),
        ((0.0, 0.0, -0.001, 0.009), (0.0, 0.0, 0.0, 0.01)),
        ((0.01, np.nan, np.nan, np.nan), (np.nan, np.nan, np.nan, np.nan)),
    ],
)
def test_a_wheel_is_odd_only_by_what_its_axle_does_not_share(
    scales: tuple[float, ...], odd: tuple[float, ...]
) -> None:
    got = [single_wheel_offset(np.array(scales), row) for row in range(4)]
    np.testing.assert_allclose(got, odd, atol=1e-12)


def test_other_tyres_on_one_axle_blame_no_wheel(
    simulated: Callable[..., RoadTest], plain_setup: Setup, values: Measure
) -> None:
    """Axles with other tyres in front than behind are a matter of design."""
    setup = replace(plain_setup, car=replace(plain_setup.car, wheel_ratio=(1.0, 1.0, 1.02, 1.02)))
    got = values(simulated(setup=setup, severity=0.0, duration_s=120.0, seed=2).log)
    for corner in CORNERS:
        assert abs(got["ratio-offset", corner].value) < 0.3
