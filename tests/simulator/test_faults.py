"""Single fault models against what is known of the faults: variety, place, and their mark on the edges."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.simulator.encoder import make_ring
from triage.simulator.equipment import Setup
from triage.simulator.faults import FAULT_MODELS, FaultEffect, FaultSite, channels_swapped, encoder_damage
from triage.simulator.setup import draw_setup
from triage.simulator.vehicle_path import VehiclePath, plan_path
from triage.simulator.wheel_motion import WheelMotion, move_wheels

MODELS = {model.cause: model for model in FAULT_MODELS}
DRAWN = draw_setup(np.random.default_rng(11))
SETUP: Setup = replace(
    DRAWN,
    encoder=replace(DRAWN.encoder, pole_pairs=48, both_edges=True, pitch_error_ratio=0.0),
    sensor=replace(DRAWN.sensor, kind="active", cut_in_mps=0.0, threshold_ratio=0.3),
    drive=replace(DRAWN.drive, legs=("town", "parking"), lead_in_s=0.0, hits_per_km=20.0),
)


@pytest.fixture(scope="module")
def path() -> VehiclePath:
    return plan_path(SETUP.drive, 90.0, np.random.default_rng(1))


@pytest.fixture(scope="module")
def motion(path: VehiclePath) -> WheelMotion:
    rngs = tuple(np.random.default_rng((2, part)) for part in range(5))
    return move_wheels(path, SETUP.car, rngs, noise_ratio=np.ones(4), drive=SETUP.drive)


@pytest.fixture(scope="module")
def sites(path: VehiclePath, motion: WheelMotion) -> dict[tuple[int, float, int], FaultSite]:
    ring = make_ring(SETUP.encoder, 0, np.random.default_rng(3))
    return {
        (row, severity, seed): FaultSite(
            row=row,
            severity=severity,
            setup=SETUP,
            path=path,
            motion=motion,
            ring=ring,
            rng=np.random.default_rng(seed),
        )
        for row in (0, 2)
        for severity in (0.25, 0.5, 1.0)
        for seed in range(40)
    }


def _struck(
    sites: dict[tuple[int, float, int], FaultSite], cause: str, severity: float, row: int = 0
) -> list[FaultEffect]:
    fresh = [replace(sites[row, severity, seed], rng=np.random.default_rng(seed)) for seed in range(40)]
    return [MODELS[cause].strike(site) for site in fresh]


Sites = dict[tuple[int, float, int], FaultSite]


def test_damage_is_one_narrow_spot(sites: Sites) -> None:
    for severity in (0.25, 0.5, 1.0):
        for effect in _struck(sites, "encoder-damage", severity):
            assert len(effect.sectors) == 1
            assert effect.sectors[0].width_rev * 96 <= 4.5


def test_damage_may_be_missing_weak_or_cracked(sites: Sites) -> None:
    least = [effect.ring.strength.min() for effect in _struck(sites, "encoder-damage", 0.5) if effect.ring]
    assert min(least) < 0.05, "missing"
    assert any(0.1 < strength < 0.35 for strength in least), "weak"
    assert any(strength > 0.35 for strength in least), "cracked"


def test_an_open_crack_makes_one_pitch_long_and_keeps_the_turn(sites: Sites) -> None:
    site = replace(sites[0, 0.5, 0], rng=np.random.default_rng(0))
    ring = encoder_damage._cracked(site, (np.arange(96) - 30) % 96).ring
    assert ring is not None
    moved = ring.border_shift_pole - site.ring.border_shift_pole
    pitches = np.diff(moved, append=moved[0]) + 1.0
    opening = pitches[29] - 1.0
    assert 0.4 < opening < 1.2
    others = np.delete(pitches, 29)
    np.testing.assert_allclose(others, others[0], rtol=1e-12)
    assert pitches.sum() == pytest.approx(96.0, abs=1e-12)


def test_some_open_cracks_are_read_as_a_border_once_a_turn(sites: Sites, motion: WheelMotion) -> None:
    """On the pole behind the crack: the one that follows the long pitch."""

    def read(severity: float) -> list[FaultEffect]:
        effects = _struck(sites, "encoder-damage", severity)
        return [effect for effect in effects if effect.false_edges_s is not None]

    slight, blatant = read(0.25), read(1.0)
    assert 1 <= len(slight) == len(blatant) <= 8
    for few, many in zip(slight, blatant, strict=True):
        assert few.false_edges_s is not None
        assert many.false_edges_s is not None
        assert many.ring is not None
        angle_rev = np.interp(
            many.false_edges_s, 0.001 * np.arange(motion.angle_rev.shape[1]), motion.angle_rev[0]
        )
        longest = int(np.argmax(np.diff(many.ring.border_shift_pole, append=many.ring.border_shift_pole[:1])))
        behind_pole = (angle_rev * 96 - longest - 1 + 48.0) % 96 - 48.0
        assert np.all((behind_pole > 0.1) & (behind_pole < 0.9))
        assert np.diff(angle_rev).min() > 0.9
        assert 0.3 * many.false_edges_s.size < few.false_edges_s.size < 0.8 * many.false_edges_s.size


def test_some_damage_is_a_bent_tooth(sites: Sites) -> None:
    """Its two borders moved the same way, and no pole weaker than before."""
    bent = 0
    for effect in _struck(sites, "encoder-damage", 0.5):
        assert effect.ring is not None
        moved = effect.ring.border_shift_pole - sites[0, 0.5, 0].ring.border_shift_pole
        there = np.flatnonzero(np.abs(moved) > 1e-9)
        same = there.size == 2 and moved[there[0]] == pytest.approx(moved[there[1]])
        bent += bool(same and effect.ring.strength.min() > 0.9)
    assert 1 <= bent <= 10


def test_some_gaps_under_load_shake(sites: Sites) -> None:
    """A gap that swings with turn and cage has no kinks, one that shakes by chance has."""
    shaking = 0
    for seed in range(40):
        site = replace(sites[0, 0.5, seed], rng=np.random.default_rng(seed))
        gap = MODELS["bearing-play"].strike(site).extra_gap_mm
        assert gap is not None
        shaking += bool(np.diff(gap, 2).std() > 5e-4 * gap.std())
    assert 2 <= shaking <= 14


def test_debris_covers_one_to_four_sectors_and_up_to_six_tenths(sites: Sites) -> None:
    effects = _struck(sites, "encoder-debris", 0.5)
    assert {len(effect.sectors) for effect in effects} >= {1, 2, 3}
    covered = [sum(sector.width_rev for sector in effect.sectors) for effect in effects]
    assert np.quantile(covered, 0.3) < 0.2
    assert 0.3 < max(covered) < 0.62


def test_some_dirt_is_caked_and_most_thins_out(sites: Sites) -> None:
    """Of a cake the poles are covered to more than half of the thickest, or not at all."""
    caked = 0
    effects = _struck(sites, "encoder-debris", 0.5)
    for effect in effects:
        assert effect.ring is not None
        covered = effect.ring.unsteadiness / effect.ring.unsteadiness.max()
        caked += bool(np.mean((covered > 0.02) & (covered < 0.5)) == 0.0)
    assert 0.1 < caked / len(effects) < 0.6


def test_some_dirt_is_one_lump(sites: Sites) -> None:
    lumps = 0
    for effect in _struck(sites, "encoder-debris", 0.5):
        assert effect.ring is not None
        lumps += bool(np.mean(effect.ring.unsteadiness > 0.0) < 0.14)
    assert 2 <= lumps <= 14


def test_some_dirt_is_steel_that_moves_borders_and_loses_no_pole(sites: Sites) -> None:
    moved: dict[bool, list[float]] = {True: [], False: []}
    for effect in _struck(sites, "encoder-debris", 0.5):
        assert effect.ring is not None
        covered = effect.ring.unsteadiness > 0.5 * effect.ring.unsteadiness.max()
        moved[bool(effect.ring.strength.min() > 0.5)].append(
            float(np.std(effect.ring.border_shift_pole[covered]))
        )
    assert 2 <= len(moved[True]) <= 14
    assert np.median(moved[True]) > 1.5 * np.median(moved[False])


def test_some_play_opens_the_gap_steadily_under_an_active_sensor(sites: Sites) -> None:
    def steady(site: FaultSite) -> bool:
        effect = MODELS["bearing-play"].strike(site)
        assert effect.extra_gap_mm is not None
        loaded = site.outward_load_mps2 > 1.5
        tilt = np.clip((site.outward_load_mps2[loaded] - 0.4) / 1.6, 0.0, 1.3)
        opened, turn = effect.extra_gap_mm[loaded] / tilt, np.floor(site.motion.angle_rev[0, loaded])
        within = np.mean([np.std(opened[turn == one]) for one in np.unique(turn)])
        return bool(within < 0.2 * opened.mean())

    fresh = [replace(sites[0, 0.5, seed], rng=np.random.default_rng(seed)) for seed in range(40)]
    assert 4 <= sum(steady(site) for site in fresh) <= 18
    passive = replace(SETUP, sensor=replace(SETUP.sensor, kind="passive", cut_in_mps=0.5))
    fresh = [
        replace(sites[0, 0.5, seed], setup=passive, rng=np.random.default_rng(seed)) for seed in range(40)
    ]
    assert not any(steady(site) for site in fresh)


def test_some_play_lets_the_hub_shake_under_load(sites: Sites) -> None:
    """Beside the lines of turn and cage, of which a mean over 40 ms leaves out hardly anything."""
    shaking = 0
    for seed in range(40):
        site = replace(sites[0, 0.5, seed], rng=np.random.default_rng(seed))
        effect = MODELS["bearing-play"].strike(site)
        assert effect.lead_rev is not None
        assert np.all(effect.lead_rev[site.outward_load_mps2 == 0.0] == 0.0)
        rest = effect.lead_rev - np.convolve(effect.lead_rev, np.ones(41) / 41.0, mode="same")
        shaking += bool(rest.std() > 0.1 * effect.lead_rev.std())
    assert 3 <= shaking <= 18


def test_some_play_tilts_the_hub_and_hardly_moves_the_gap(sites: Sites) -> None:
    ratios = []
    for effect in _struck(sites, "bearing-play", 0.5):
        assert effect.extra_gap_mm is not None
        assert effect.lead_rev is not None
        ratios.append(float(effect.extra_gap_mm.max() / np.abs(effect.lead_rev).max()))
    lowest, middle = np.min(ratios), np.median(ratios)
    assert lowest < 0.3 * middle


def test_runout_is_a_sine_of_order_one(sites: Sites) -> None:
    for severity, low, high in ((0.25, 0.003, 0.009), (1.0, 0.02, 0.036)):
        for effect in _struck(sites, "encoder-runout", severity):
            assert effect.ring is not None
            assert low < effect.ring.ripple_ratio(both_edges=True) < high + 0.002
            # Far from the sensor's limit, so that no pulse is lost.
            assert effect.ring.strength.min() > 0.55


def test_a_loose_sensor_changes_its_gap_and_a_seated_one_does_not(sites: Sites) -> None:
    spreads = [
        float(np.ptp(effect.extra_gap_mm))
        for effect in _struck(sites, "air-gap", 0.5)
        if effect.extra_gap_mm is not None
    ]
    assert 8 <= np.count_nonzero(np.array(spreads) == 0.0) <= 32
    assert max(spreads) > 0.05


def test_noisy_sensor_adds_edges_in_bursts_or_at_any_time(sites: Sites, path: VehiclePath) -> None:
    noisy = [effect for effect in _struck(sites, "sensor-fault", 0.5) if effect.false_edges_s is not None]
    always = [effect for effect in noisy if not effect.spans_s]
    assert 0 < len(always) < len(noisy)
    for effect in always:
        assert effect.false_edges_s is not None
        filled = np.histogram(effect.false_edges_s, bins=9, range=(0.0, 90.0))[0]
        assert np.count_nonzero(filled) == 9


def test_sensor_fails_in_five_ways(sites: Sites) -> None:
    effects = _struck(sites, "sensor-fault", 0.5)
    silent = [effect for effect in effects if effect.false_edges_s is None]
    assert any(effect.lead_rev is not None for effect in silent), "unsteady"
    assert any(len(effect.spans_s) == 1 for effect in silent), "dead"
    assert any(len(effect.spans_s) > 1 for effect in silent), "fading"
    assert any(effect.frozen_spans_s is not None for effect in silent), "held by the unit"


def test_an_unsteady_sensor_scatters_by_a_part_of_a_pole(sites: Sites) -> None:
    def scatters(severity: float) -> list[float]:
        leads = [effect.lead_rev for effect in _struck(sites, "sensor-fault", severity)]
        return [float(lead.std()) * 96 for lead in leads if lead is not None]

    slight, blatant = scatters(0.25), scatters(1.0)
    assert 1 <= len(slight) == len(blatant) <= 12
    assert max(slight) < 0.1
    assert min(blatant) > 0.15
    assert max(blatant) < 1.0


def test_harness_losses_last_5_ms_to_1_s_and_differ_from_car_to_car(sites: Sites) -> None:
    medians = []
    for effect in _struck(sites, "harness-fault", 0.5):
        assert effect.open_spans_s is not None
        lengths = np.diff(effect.open_spans_s, axis=1)
        assert np.all((lengths > 0.005 - 1e-9) & (lengths < 1.0 + 1e-9))
        medians.append(float(np.median(lengths)))
    assert max(medians) > 4.0 * min(medians)


def test_lead_of_a_rear_wheel_does_not_mind_the_steering(sites: Sites, path: VehiclePath) -> None:
    def turned(row: int) -> float:
        spans = [effect.open_spans_s for effect in _struck(sites, "harness-fault", 1.0, row)]
        starts = np.concatenate([some[:, 0] for some in spans if some is not None])
        place = np.minimum((starts * 1000).astype(int), path.time_s.size - 1)
        return float(np.mean(np.abs(path.curvature_radpm[place]) > 0.1))

    assert turned(0) > 2.0 * turned(2)


def test_bearing_play_swings_at_the_turn_and_below_it(sites: Sites, motion: WheelMotion) -> None:
    for seed in range(5):
        site = replace(sites[0, 0.5, 0], rng=np.random.default_rng(seed))
        effect = MODELS["bearing-play"].strike(site)
        assert effect.lead_rev is not None
        loaded = site.outward_load_mps2 > 1.5
        angle, lead = motion.angle_rev[0, loaded], effect.lead_rev[loaded]
        orders = np.arange(0.3, 1.3, 0.01)
        size = np.array([abs(np.mean(lead * np.exp(-2j * np.pi * order * angle))) for order in orders])
        below = orders[size == size[orders < 0.7].max()][0]
        assert 0.3 < below < 0.53
        assert size[np.abs(orders - 1.0) < 0.05].max() > 3.0 * np.median(size)
        # Nothing at all while the wheel is the unloaded inner one.
        assert np.all(effect.lead_rev[site.outward_load_mps2 == 0.0] == 0.0)


def test_every_exchange_is_one_and_those_of_an_axle_prevail() -> None:
    wirings = [wiring for _, wiring in channels_swapped._EXCHANGES]
    assert len(set(wirings)) == len(wirings)
    for wiring in wirings:
        assert sorted(wiring) == [0, 1, 2, 3]
        # Twice the same exchange puts everything back.
        assert [wiring[wheel] for wheel in wiring] == [0, 1, 2, 3]
    same_axle = sum(share for share, wiring in channels_swapped._EXCHANGES if set(wiring[:2]) == {0, 1})
    assert 0.6 < same_axle < 0.75
    assert len(CORNERS) == 4
