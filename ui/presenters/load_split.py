"""What side load does to a wheel, as bars and sentences."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, SIDE_SIGN
from triage.evidence.findings import format_value
from triage.signals.measurement import Measurement, NotMeasurable
from ui.presenters.wording import cause_name, sentence
from ui.state.opening import Opened

if TYPE_CHECKING:
    from triage.signals.load_split import Estimate, LoadShare

LOAD_TEXTS: Final = {
    "outer": "outer, loaded",
    "straight": "straight on",
    "inner": "inner, relieved",
}
CLEAR_SIGMA: Final = 3.0
"""From this many standard uncertainties on a difference is called clear."""

SIDE_LOAD_MEASURES: Final = (
    "side-load-contrast",
    "load-rest-ratio",
    "loaded-line",
    "cage-line",
    "side-coupling",
)
NEEDED: Final = "Five steady curves to each side at 40 to 60 km/h, as brisk as the road and the law allow."


@dataclass(frozen=True, slots=True)
class LoadBar:
    """One bar; value and uncertainty in the unit of its group, None where the drive does not carry it."""

    label: str
    value: float | None
    std_uncertainty: float
    text: str


@dataclass(frozen=True, slots=True)
class LoadGroup:
    """One quantity under the three loads.

    Attributes
    ----------
    title, unit, help : str
    bars : three LoadBar
        As outer wheel, straight on, as inner wheel.
    full_scale : float
        Largest value with its uncertainty; 1 where there is none.
    verdict : str
        What the outer wheel does against the inner.
    """

    title: str
    unit: str
    help: str
    bars: tuple[LoadBar, ...]
    full_scale: float
    verdict: str


def build_load_groups(shares: tuple[LoadShare, ...]) -> tuple[LoadGroup, ...]:
    """Return ripple, noise and losses of a wheel under the three loads."""
    return (
        _group(
            (
                "Swing once a turn",
                "%",
                "Part of the ripple that repeats with the turn: run-out, tilt of the hub.",
            ),
            shares,
            lambda share: share.wave_ratio,
            factor=100.0,
        ),
        _group(
            ("Noise", "%", "What is left of the ripple when swing and slow course are taken out."),
            shares,
            lambda share: share.noise_ratio,
            factor=100.0,
        ),
        _group(
            ("Losses", "1/min", "How often the signal is lost or briefly low, for the time spent so."),
            shares,
            lambda share: share.losses_per_min,
            factor=1.0,
        ),
    )


def build_load_sentences(opened: Opened, row: int, shares: tuple[LoadShare, ...]) -> tuple[str, ...]:
    """Return which curves load the wheel, how long it was driven so, and what the measurements say."""
    corner = CORNERS[row]
    loading, relieving = ("right", "left") if SIDE_SIGN[corner] > 0 else ("left", "right")
    outer_s, straight_s, inner_s = (f"{share.seconds:.0f} s" for share in shares)
    sides = (
        f"The {CORNER_NAMES[corner]} wheel is the outer, loaded one in {loading}-hand curves and the inner "
        f"one in {relieving}-hand curves. Driven so: {outer_s} and {inner_s}; straight on: {straight_s}."
    )
    return (
        sides,
        *((f"The verdict takes in: {'; '.join(found)}.",) if (found := _measured(opened, row)) else ()),
        *(_missing(opened, row) or _too_little(shares)),
    )


def _too_little(shares: tuple[LoadShare, ...]) -> tuple[str, ...]:
    outer, _, inner = shares
    compared = outer.noise_ratio is not None and inner.noise_ratio is not None
    return () if compared else (f"Would help: {NEEDED}",)


def _group(
    words: tuple[str, str, str],
    shares: tuple[LoadShare, ...],
    pick: Callable[[LoadShare], Estimate | None],
    *,
    factor: float,
) -> LoadGroup:
    title, unit, text = words
    bars = tuple(_bar(share, pick(share), factor=factor) for share in shares)
    reach = [bar.value + bar.std_uncertainty for bar in bars if bar.value is not None]
    return LoadGroup(title, unit, text, bars, max([*reach, 1e-9]) if reach else 1.0, _verdict(bars))


def _bar(share: LoadShare, estimate: Estimate | None, *, factor: float) -> LoadBar:
    label = LOAD_TEXTS[share.load]
    if estimate is None:
        return LoadBar(label, None, 0.0, f"too little driving ({share.seconds:.0f} s)")
    value, std = factor * estimate.value, factor * estimate.std_uncertainty
    return LoadBar(label, value, std, format_value(value, std, ""))


def _verdict(bars: tuple[LoadBar, ...]) -> str:
    outer, _, inner = bars
    if outer.value is None or inner.value is None:
        return "Loaded and relieved cannot be compared."
    apart = outer.value - inner.value
    std = float(np.hypot(outer.std_uncertainty, inner.std_uncertainty))
    if abs(apart) < CLEAR_SIGMA * std:
        return "No clear difference between loaded and relieved."
    return f"Clearly {'more' if apart > 0 else 'less'} when loaded than when relieved."


def _measured(opened: Opened, row: int) -> tuple[str, ...]:
    found: dict[str, Measurement] = {
        one.id: one for one in opened.result.measurements if one.corner == CORNERS[row]
    }
    return tuple(
        f"{_title(opened, name)}: {format_value(one.value, one.std_uncertainty, one.unit)}"
        for name in SIDE_LOAD_MEASURES
        if (one := found.get(name)) is not None
    )


def _missing(opened: Opened, row: int) -> tuple[str, ...]:
    found: dict[tuple[str, str], list[NotMeasurable]] = {}
    for one in opened.result.not_measurable:
        if one.id in SIDE_LOAD_MEASURES and one.corner in (None, CORNERS[row]):
            found.setdefault((one.reason, one.needed), []).append(one)
    return tuple(
        f"Not measurable: {', '.join(_title(opened, one.id) for one in group)}. {sentence(reason)} "
        f"Would help: {sentence(needed)}"
        for (reason, needed), group in found.items()
    )


def _title(opened: Opened, name: str) -> str:
    return opened.measurement_titles.get(name) or cause_name(name)
