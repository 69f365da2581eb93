"""The truth beside the log: angles, sectors, ratios, run-out, cut-off speeds, losses, two faults."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS, Corner
from triage.errors import SettingsError
from triage.simulator.encoder import Ring, runout_shift_pole
from triage.simulator.equipment import Setup
from triage.simulator.road_test import RoadTest, simulate_road_test
from triage.simulator.sectors import find_sectors
from triage.simulator.setup import draw_setup
from triage.simulator.truth import Fault
from triage.simulator.truth_of_wheels import find_lost_spans


def _plain(kind: str = "active") -> Setup:
    drawn = draw_setup(np.random.default_rng(11))
    return replace(
        drawn,
        car=replace(drawn.car, wheel_ratio=(1.0, 1.0, 1.0, 1.0)),
        encoder=replace(drawn.encoder, pole_pairs=48, both_edges=True),
        sensor=replace(drawn.sensor, kind=kind, cut_in_mps=1.0 if kind == "passive" else 0.0),  # type: ignore[arg-type]
        unit=replace(drawn.unit, jump_reaction="none", method="timing", zero_below_mps=0.05),
        drive=replace(drawn.drive, legs=("country", "town"), lead_in_s=0.0, hits_per_km=1.0),
    )


def _test(
    cause: str,
    corner: Corner | None = "FL",
    *,
    severity: float = 0.6,
    seed: int = 3,
    setup: Setup | None = None,
    second: Fault | None = None,
) -> RoadTest:
    return simulate_road_test(
        cause=cause,
        corner=corner,
        severity=severity,
        duration_s=60.0,
        seed=seed,
        setup=_plain() if setup is None else setup,
        second=second,
    )


def test_sectors_of_a_known_profile() -> None:
    harm = np.zeros(100)
    harm[[98, 99, 0, 1]] = 1.0
    harm[40:50] = 0.8
    harm[44] = 0.0
    harm[70:75] = 0.3
    sectors = find_sectors("RL", harm)
    assert [sector.width_rev for sector in sectors] == [0.04, 0.1]
    assert [sector.centre_rev for sector in sectors] == pytest.approx([0.0, 0.45])
    assert [sector.depth for sector in sectors] == [1.0, 0.8]
    assert find_sectors("RL", np.zeros(100)) == ()
    assert find_sectors("RL", np.ones(100))[0].width_rev == 1.0


@pytest.mark.parametrize("cause", ["encoder-debris", "encoder-damage"])
@pytest.mark.parametrize("seed", [1, 4, 6])
def test_losses_lie_in_the_sectors_by_the_marks_angle(cause: str, seed: int) -> None:
    test = _test(cause, severity=0.9, seed=seed)
    truth = test.truth
    spans = find_lost_spans(truth, "FL", test.edges["FL"])
    assert spans.shape[0] > 100
    middle = truth.angle_rev("FL", spans.mean(axis=1))
    away = [
        np.abs((middle - sector.centre_rev + 0.5) % 1.0 - 0.5) - sector.width_rev / 2.0
        for sector in truth.sectors
    ]
    assert {sector.corner for sector in truth.sectors} == {"FL"}
    assert np.mean(np.min(away, axis=0) < 0.035) > 0.9
    assert sum(sector.width_rev for sector in truth.sectors) < (0.7 if cause == "encoder-debris" else 0.05)


def test_angle_gives_the_count_of_edges() -> None:
    test = _test("no-fault-found", None)
    edges = test.edges["RR"]
    turned = np.ptp(test.truth.angle_rev("RR", edges[[100, -1]]))
    assert turned * 96 == pytest.approx(edges.size - 101, rel=1e-3)


def test_truth_of_a_wrong_count_and_of_a_tyre() -> None:
    setup = _plain()
    count = _test("encoder-mismatch", setup=setup).truth.read_ratio
    assert count[1:] == (1.0, 1.0, 1.0)
    assert round((count[0] - 1.0) * 48, 9) in {-5.0, -4.0, -3.0, -2.0, -1.0, 1.0, 2.0, 3.0, 4.0, 5.0}
    tyre = _test("tyre-size", setup=setup, severity=0.5).truth
    assert 0.005 < abs(tyre.read_ratio[0] - 1.0) < 0.05
    sound = _test("no-fault-found", None, setup=setup, severity=0.0).truth
    ends = np.array([0.0, 59.0])
    turned = np.diff(tyre.angle_rev("FL", ends)) / np.diff(sound.angle_rev("FL", ends))
    # A soft tyre grows with speed, so that the mean over the way and that over time differ a little.
    assert turned[0] == pytest.approx(tyre.read_ratio[0], abs=0.003)


def test_runout_of_a_ring_is_what_it_was_made_with() -> None:
    ring = Ring(np.ones(96), runout_shift_pole(96, 0.012, phase_rev=0.3), np.zeros(96))
    assert ring.ripple_ratio(both_edges=True) == pytest.approx(0.012, rel=1e-12)
    assert ring.ripple_ratio(both_edges=False) == pytest.approx(0.012, rel=1e-12)
    struck = _test("encoder-runout", severity=0.7).truth.runout_ratio
    assert struck[0] > 4.0 * max(struck[1:])


def test_cut_off_of_a_passive_sensor_is_where_its_edges_begin() -> None:
    test = _test("air-gap", setup=_plain("passive"))
    truth = test.truth
    assert truth.cut_off_mps[1:] == (1.0, 1.0, 1.0)
    assert truth.cut_off_mps[0] > 1.5
    edges = test.edges["FL"]
    rate = np.diff(edges)
    reads = truth.setup.car.circumference_m / 96 / rate[rate < 0.05]
    assert np.quantile(reads, 0.002) == pytest.approx(truth.cut_off_mps[0], rel=0.25)


def test_open_leads_are_lost_spans() -> None:
    test = _test("harness-fault", severity=0.8)
    spans = find_lost_spans(test.truth, "FL", test.edges["FL"])
    longest = max(test.truth.event_spans, key=lambda span: span[1] - span[0])
    assert np.any((spans[:, 0] <= longest[0] + 1e-3) & (spans[:, 1] >= longest[1] - 1e-3))


def test_two_faults_at_two_wheels_are_both_there() -> None:
    both = _test("tyre-size", "FL", second=Fault("encoder-damage", "RR", 0.8))
    assert [(fault.cause, fault.corner) for fault in both.truth.faults] == [
        ("tyre-size", "FL"),
        ("encoder-damage", "RR"),
    ]
    alone = _test("tyre-size", "FL")
    for corner in ("FL", "FR", "RL"):
        np.testing.assert_array_equal(both.edges[corner], alone.edges[corner])
    assert both.edges["RR"].size < alone.edges["RR"].size
    assert {sector.corner for sector in both.truth.sectors} == {"RR"}
    assert "encoder-damage RR" in both.log.history[0].detail


def test_two_faults_at_one_wheel_add_up() -> None:
    debris = _test("encoder-debris", severity=0.8)
    both = _test("encoder-debris", severity=0.8, second=Fault("encoder-damage", "FL", 1.0))
    ring, first = both.truth.rings[0], debris.truth.rings[0]
    assert np.all(ring.strength <= first.strength + 1e-12)
    assert ring.strength.sum() < first.strength.sum()
    assert len(both.truth.sectors) == len(debris.truth.sectors) + 1


def test_a_second_exchange_carries_the_fault_along() -> None:
    alone = _test("encoder-debris")
    swapped = _test("encoder-debris", second=Fault("channels-swapped", None, 1.0))
    moved = [corner for corner in CORNERS if not np.array_equal(swapped.edges[corner], alone.edges[corner])]
    assert len(moved) >= 2
    assert swapped.truth.faults[1].corner == "vehicle"
    everything = [np.sort([test.edges[corner].size for corner in CORNERS]) for test in (alone, swapped)]
    np.testing.assert_array_equal(*everything)


def test_the_same_fault_twice_at_one_place_is_refused() -> None:
    with pytest.raises(SettingsError, match="twice"):
        _test("air-gap", second=Fault("air-gap", "FL", 0.2))
    with pytest.raises(SettingsError, match="severity"):
        _test("air-gap", second=Fault("air-gap", "FR", 2.0))
