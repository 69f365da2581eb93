"""What side load does to a wheel, as bars and sentences."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, SIDE_SIGN
from triage.evidence.value_words import format_value
from triage.signals.measurement import Measurement, NotMeasurable
from triage.texts import Text, as_text, joined
from ui.presenters.wording import cause_name, sentence
from ui.state.opening import Opened

if TYPE_CHECKING:
    from triage.signals.load_split import Estimate, LoadShare

LOAD_TEXTS: Final = {
    "outer": Text("outer, loaded"),
    "straight": Text("straight on"),
    "inner": Text("inner, relieved"),
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
NEEDED: Final = Text(
    "Five steady curves to each side at 40 to 60 km/h, as brisk as the road and the law allow."
)


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
                Text("Swing once a turn"),
                "%",
                Text("Part of the ripple that repeats with the turn: run-out, tilt of the hub."),
            ),
            shares,
            lambda share: share.wave_ratio,
            factor=100.0,
        ),
        _group(
            (
                Text("Noise"),
                "%",
                Text("What is left of the ripple when swing and slow course are taken out."),
            ),
            shares,
            lambda share: share.noise_ratio,
            factor=100.0,
        ),
        _group(
            (
                Text("Losses"),
                "1/min",
                Text("How often the signal is lost or briefly low, for the time spent so."),
            ),
            shares,
            lambda share: share.losses_per_min,
            factor=1.0,
        ),
    )


def build_load_sentences(opened: Opened, row: int, shares: tuple[LoadShare, ...]) -> tuple[str, ...]:
    """Return which curves load the wheel, how long it was driven so, and what the measurements say."""
    corner = CORNERS[row]
    loading, relieving = (Text("right-hand"), Text("left-hand"))[:: SIDE_SIGN[corner]]
    outer_s, straight_s, inner_s = (f"{share.seconds:.0f} s" for share in shares)
    sides = Text(
        "The {wheel} wheel is the outer, loaded one in {loading} curves and the inner one in {relieving} "
        "curves. Driven so: {outer} and {inner}; straight on: {straight}.",
        wheel=CORNER_NAMES[corner],
        loading=loading,
        relieving=relieving,
        outer=outer_s,
        inner=inner_s,
        straight=straight_s,
    )
    found = _measured(opened, row)
    return (
        sides,
        *((Text("The verdict takes in: {findings}.", findings=joined("; ", found)),) if found else ()),
        *(_missing(opened, row) or _too_little(shares)),
    )


def _too_little(shares: tuple[LoadShare, ...]) -> tuple[str, ...]:
    outer, _, inner = shares
    compared = outer.noise_ratio is not None and inner.noise_ratio is not None
    return () if compared else (Text("Would help: {driving}", driving=NEEDED),)


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
        little = Text("too little driving ({seconds} s)", seconds=f"{share.seconds:.0f}")
        return LoadBar(label, None, 0.0, little)
    value, std = factor * estimate.value, factor * estimate.std_uncertainty
    return LoadBar(label, value, std, format_value(value, std, ""))


def _verdict(bars: tuple[LoadBar, ...]) -> str:
    outer, _, inner = bars
    if outer.value is None or inner.value is None:
        return Text("Loaded and relieved cannot be compared.")
    apart = outer.value - inner.value
    std = float(np.hypot(outer.std_uncertainty, inner.std_uncertainty))
    if abs(apart) < CLEAR_SIGMA * std:
        return Text("No clear difference between loaded and relieved.")
    if apart > 0:
        return Text("Clearly more when loaded than when relieved.")
    return Text("Clearly less when loaded than when relieved.")


def _measured(opened: Opened, row: int) -> tuple[str, ...]:
    found: dict[str, Measurement] = {
        one.id: one for one in opened.result.measurements if one.corner == CORNERS[row]
    }
    return tuple(
        Text(
            "{measurement}: {value}",
            measurement=_title(opened, name),
            value=format_value(one.value, one.std_uncertainty, one.unit),
        )
        for name in SIDE_LOAD_MEASURES
        if (one := found.get(name)) is not None
    )


def _missing(opened: Opened, row: int) -> tuple[str, ...]:
    found: dict[tuple[str, str], list[NotMeasurable]] = {}
    for one in opened.result.not_measurable:
        if one.id in SIDE_LOAD_MEASURES and one.corner in (None, CORNERS[row]):
            found.setdefault((one.reason, one.needed), []).append(one)
    return tuple(
        Text(
            "Not measurable: {measurements}. {reason} Would help: {driving}",
            measurements=joined(", ", (_title(opened, one.id) for one in group)),
            reason=sentence(as_text(reason)),
            driving=sentence(as_text(needed)),
        )
        for (reason, needed), group in found.items()
    )


def _title(opened: Opened, name: str) -> str:
    return opened.measurement_titles.get(name) or cause_name(name)
