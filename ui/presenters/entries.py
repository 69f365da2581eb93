"""Texts beside the plots: next checks, what could not be measured, and how the log was read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from triage.corners import CORNER_NAMES, CORNERS
from triage.evidence.check_words import meaning_words, why_words
from triage.evidence.hypotheses import CheckSuggestion, ExpectedOutcome, Hypothesis, UndecidedPair
from triage.signals.measurement import NotMeasurable
from triage.speed_log import SpeedLog
from triage.texts import Text, as_text, in_english, instead_of, joined
from triage.units import format_share, to_kmh
from triage.vehicle import Vehicle
from triage.verdict_text import PAIRS_SHOWN, advice_of, pairs_by_advice
from ui.presenters.notices import notice_heading
from ui.presenters.verdict import cause_text, claim_name
from ui.presenters.wording import cause_name, format_duration, place_name, sentence
from ui.state.opening import Opened

if TYPE_CHECKING:
    from triage.run import TriageResult

AXLES: Final = {
    "front": Text("front"),
    "rear": Text("rear"),
    "both": Text("both"),
    "unknown": Text("not known"),
}


@dataclass(frozen=True, slots=True)
class Entry:
    """A short text with a title.

    Attributes
    ----------
    title, subtitle, text : str
        Each may be empty.
    facts : tuple of (str, str)
        Name and value, one line each.
    cautions : tuple of str
        Warnings that must stand out.
    """

    title: str
    subtitle: str = ""
    text: str = ""
    facts: tuple[tuple[str, str], ...] = ()
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WheelRow:
    """How one wheel was read."""

    wheel: str
    source: str
    unit: str
    samples: str
    invalid: str
    step: str


def build_check_entries(result: TriageResult) -> tuple[Entry, ...]:
    """Return the next checks in the order of the result, with reason, minutes and cautions."""
    return tuple(_check_entry(number, check) for number, check in enumerate(result.next_checks, start=1))


def _check_entry(number: int, check: CheckSuggestion) -> Entry:
    minutes, gain = f"{check.minutes_min:g}", f"{check.gain_bit:.2f}"
    effort = Text("{minutes} min, expected gain {gain} bit", minutes=minutes, gain=gain)
    needs = (Text("needs {access}", access=check.access),) if check.access else ()
    return Entry(
        title=Text("{number}. {check}", number=number, check=check.title),
        subtitle=joined(" · ", (place_name(check.corner), effort, *needs)),
        text=why_words(check),
        facts=tuple((_outcome_name(outcome), meaning_words(outcome)) for outcome in check.outcomes),
        cautions=check.cautions,
    )


def _outcome_name(outcome: ExpectedOutcome) -> str:
    """Return the outcome: id, as it is typed in the terminal, and words in any other language."""
    spoken = instead_of(outcome.name, outcome.words)
    return in_english(spoken, lambda name: name.replace("-", " "))


def build_undecided_entries(opened: Opened) -> tuple[Entry, ...]:
    """Return the pairs of causes between which nothing is decided, and what would tell them apart."""
    return tuple(
        Entry(
            title=joined("; ", (_question(opened, pair) for pair in pairs)),
            facts=tuple((verb, sentence(text)) for verb, text in advice_of(pairs[0]).items()),
        )
        for pairs in pairs_by_advice(opened.result)[:PAIRS_SHOWN]
    )


def _question(opened: Opened, pair: UndecidedPair) -> str:
    first, second = (_claim(opened, claim, probability) for claim, probability in pair.claims)
    return Text("{first} or {second}?", first=first, second=second)


def _claim(opened: Opened, claim: Hypothesis, probability: float) -> str:
    name = claim_name(cause_text(opened.causes, claim.cause).title, claim.corner)
    return Text("{claim} ({share})", claim=name, share=format_share(probability))


def build_missing_entries(opened: Opened) -> tuple[Entry, ...]:
    """Return what the recording could not show; what lacks for the same reason is told once."""
    by_reason: dict[tuple[str, str], list[NotMeasurable]] = {}
    for missing in opened.result.not_measurable:
        by_reason.setdefault((missing.reason, missing.needed), []).append(missing)
    return tuple(
        Entry(
            title=_missing_title(group, opened.measurement_titles),
            text=sentence(as_text(reason)),
            facts=((Text("Would help"), sentence(as_text(needed))),) if needed else (),
        )
        for (reason, needed), group in by_reason.items()
    )


def _missing_title(group: list[NotMeasurable], titles: Mapping[str, str]) -> str:
    names = list(dict.fromkeys(titles.get(missing.id) or cause_name(missing.id) for missing in group))
    places = list(dict.fromkeys(missing.corner for missing in group))
    if None in places or len(places) == len(CORNERS):
        return joined(", ", names)
    return Text(
        "{names} ({places})", names=joined(", ", names), places=", ".join(str(place) for place in places)
    )


def build_log_summary(log: SpeedLog) -> str:
    """Word file, kind, length and rate in one line."""
    rows = log.instants_s.size
    told = [log.format, format_duration(log.duration_s), Text("{n} rows", n=_grouped(rows))]
    if rows > 1 and log.duration_s > 0:
        told.append(Text("{rate} rows/s", rate=f"{(rows - 1) / log.duration_s:.1f}"))
    if log.start is not None:
        told.append(f"{log.start:%Y-%m-%d %H:%M:%S}")
    return joined(" · ", told)


def build_wheel_rows(log: SpeedLog) -> tuple[WheelRow, ...]:
    """Return which signal was taken for which wheel, and how good it is."""
    return tuple(
        WheelRow(
            wheel=Text("{corner} {wheel}", corner=corner, wheel=CORNER_NAMES[corner]),
            source=trace.source,
            unit=trace.unit,
            samples=_grouped(trace.valid_count),
            invalid=_grouped(trace.invalid.size - trace.valid_count),
            step=f"{to_kmh(trace.resolution_mps):.3f}" if trace.resolution_mps > 0 else "–",
        )
        for corner, trace in ((corner, log.wheels[corner]) for corner in CORNERS)
    )


def _grouped(count: int) -> str:
    """Write a count with gaps between the thousands from five digits on; nobody reads them as a point."""
    return f"{count:,}".replace(",", "\u202f") if count >= 10_000 else str(count)


def build_vehicle_entry(vehicle: Vehicle | None) -> Entry:
    """Return what was taken for the car."""
    car = vehicle or Vehicle()
    sought = Text("sought in the recording")
    ordinary = Text("An ordinary passenger car; nothing more was said about it.")
    return Entry(
        Text("Taken for the car"),
        text=ordinary if vehicle is None else "",
        facts=(
            (Text("Between the wheels of an axle"), f"{car.track_m:g} m"),
            (Text("Between the axles"), f"{car.wheelbase_m:g} m"),
            (
                Text("Rolling circumference"),
                sought if car.circumference_m is None else f"{car.circumference_m:.3f} m",
            ),
            (
                Text("Pulses in one turn"),
                AXLES["unknown"] if car.pulses_per_rev is None else f"{car.pulses_per_rev:g}",
            ),
            (Text("Driven axle"), AXLES[car.driven_axle]),
        ),
    )


def build_notice_entries(log: SpeedLog) -> tuple[Entry, ...]:
    """Return the warnings of the reader, with how often each occurred."""
    return tuple(
        Entry(
            title=joined(
                "", (notice_heading(notice.code), f" ({notice.count} ×)" if notice.count > 1 else "")
            ),
            text=sentence(as_text(notice.message)),
        )
        for notice in log.notices
    )
