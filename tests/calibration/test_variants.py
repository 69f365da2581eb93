"""Sorting the drives of one cause into the ways in which it shows itself."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import pytest

from triage.calibration.variants import FEWEST_DRIVES, MOST_VARIANTS, sort_into_variants

NAMES = ("dead", "dips", "line", "ratio")
PASSIVE = {"dead": (0.05, 0.15, 0.8), "dips": (0.8, 0.15, 0.05), "line": (0.7, 0.3), "ratio": (0.6, 0.4)}
ACTIVE = {"dead": (0.9, 0.05, 0.05), "dips": (0.05, 0.15, 0.8), "line": (0.2, 0.8), "ratio": (0.6, 0.4)}
SLOW = {"dead": (0.05, 0.9, 0.05), "dips": (0.05, 0.9, 0.05), "line": (0.1, 0.9), "ratio": (0.02, 0.98)}

Class = Mapping[str, Sequence[float]]
Drive = dict[str, tuple[float, ...]]


def draw_drive(kind: Class, rng: np.random.Generator) -> Drive:
    """Bands drawn independently, each found with little doubt."""
    drive = {}
    for name, shares in kind.items():
        band = rng.choice(len(shares), p=shares)
        doubt = rng.dirichlet(np.ones(len(shares)))
        drive[name] = tuple((0.9 * np.eye(len(shares))[band] + 0.1 * doubt).tolist())
    return drive


def draw_drives(kinds: Sequence[Class], counts: Sequence[int], seed: int) -> tuple[list[Drive], np.ndarray]:
    """Drives of several classes in a random order, and the class of each."""
    rng = np.random.default_rng(seed)
    truth = rng.permutation(np.repeat(np.arange(len(kinds)), counts))
    return [draw_drive(kinds[number], rng) for number in truth], truth


def weights(drives: Sequence[Drive], weight: float = 1.0) -> list[dict[str, float]]:
    return [dict.fromkeys(drive, weight) for drive in drives]


def sort(drives: Sequence[Drive]) -> np.ndarray:
    return sort_into_variants(drives, weights(drives))


@pytest.mark.parametrize("seed", range(5))
def test_two_clearly_different_classes_are_told_apart(seed: int) -> None:
    drives, truth = draw_drives([PASSIVE, ACTIVE], [90, 60], seed)
    labels = sort(drives)
    assert set(labels.tolist()) == {0, 1}
    # Some drives of one class look by chance like the other: the truth is reached to a few hundredths.
    assert np.mean(labels == truth) > 0.9


def test_three_classes_are_told_apart_the_largest_first() -> None:
    drives, truth = draw_drives([SLOW, ACTIVE, PASSIVE], [40, 110, 70], 1)
    labels = sort(drives)
    count = np.bincount(labels)
    assert count.size == 3
    assert count.tolist() == sorted(count.tolist(), reverse=True)
    assert np.mean(np.array([2, 0, 1])[truth] == labels) > 0.85


def test_classes_without_any_doubt_are_found_without_error() -> None:
    kinds = [{name: tuple(np.eye(3)[i]) for name in NAMES} for i in (0, 2)]
    drives, truth = draw_drives(kinds, [30, 50], 3)
    assert sort(drives).tolist() == (1 - truth).tolist()


@pytest.mark.parametrize("kind", [PASSIVE, ACTIVE, dict.fromkeys(NAMES, (0.25,) * 4)])
@pytest.mark.parametrize("seed", range(4))
def test_one_class_stays_one(kind: Class, seed: int) -> None:
    drives, _ = draw_drives([kind], [150], seed)
    assert not sort(drives).any()


def test_drives_that_are_all_alike_are_one_class() -> None:
    drive = {"dead": (0.0, 1.0), "dips": (1.0, 0.0)}
    assert not sort([drive] * 100).any()


def test_no_more_variants_than_a_verdict_can_use() -> None:
    more = MOST_VARIANTS + 2
    kinds = [{name: tuple(np.eye(more)[i]) for name in NAMES} for i in range(more)]
    drives, _ = draw_drives(kinds, [30] * more, 1)
    assert 1 < np.unique(sort(drives)).size <= MOST_VARIANTS


def test_the_same_drives_are_sorted_the_same_way() -> None:
    # More classes than may be told apart: which of them are taken together hangs on where the search starts.
    kinds = [{name: 0.8 * np.eye(6)[i] + 0.2 / 6 for name in NAMES} for i in range(6)]
    drives, _ = draw_drives(kinds, [25] * 6, 4)
    first = sort(drives)
    assert np.unique(first).size > 1
    assert sort(drives).tolist() == first.tolist()
    assert sort([dict(reversed(drive.items())) for drive in drives]).tolist() == first.tolist()


def test_tiny_sets_stay_one_class() -> None:
    for size in (0, 1, 2, 5, 2 * FEWEST_DRIVES - 1):
        drives, _ = draw_drives([PASSIVE, ACTIVE], [size // 2, size - size // 2], 1)
        labels = sort(drives)
        assert labels.shape == (size,)
        assert not labels.any()


def test_a_class_seen_too_rarely_is_not_told_apart() -> None:
    kinds = [{name: tuple(np.eye(3)[i]) for name in NAMES} for i in (0, 2)]
    few, _ = draw_drives(kinds, [100, FEWEST_DRIVES - 1], 1)
    enough, _ = draw_drives(kinds, [100, FEWEST_DRIVES], 1)
    assert not sort(few).any()
    assert np.bincount(sort(enough)).tolist() == [100, FEWEST_DRIVES]


def test_missing_measurements_do_no_harm() -> None:
    drives, truth = draw_drives([PASSIVE, ACTIVE], [100, 80], 6)
    rng = np.random.default_rng(6)
    for drive in drives:
        for name in NAMES:
            if rng.random() < 0.3:
                del drive[name]
    labels = sort(drives)
    told = np.array([len(drive.keys() & {"dead", "dips"}) == 2 for drive in drives])
    assert set(labels.tolist()) == {0, 1}
    assert np.mean((labels == truth)[told]) > 0.9


def test_drives_without_any_measurement_join_some_class() -> None:
    drives, truth = draw_drives([PASSIVE, ACTIVE], [100, 60], 7)
    labels = sort([*drives, {}, {}])
    assert labels.shape == (162,)
    assert np.mean(labels[:160] == truth) > 0.9
    assert labels[160] == labels[161] == 0
    assert not sort([{}] * 40).any()


def test_that_a_measurement_is_missing_tells_nothing() -> None:
    """Else short drives and long ones would be taken for two ways in which a cause shows itself."""
    drives, _ = draw_drives([PASSIVE], [160], 8)
    for drive in drives[::2]:
        del drive["dead"], drive["line"]
    assert not sort(drives).any()


def test_measurements_without_weight_do_not_part_classes() -> None:
    drives, _ = draw_drives([PASSIVE, ACTIVE], [80, 80], 9)
    assert sort(drives).any()
    assert not sort_into_variants(drives, weights(drives, 0.0)).any()
