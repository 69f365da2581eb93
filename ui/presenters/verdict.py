"""The verdict in words: headline, ranked causes, and the evidence of one of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from triage.corners import CORNERS, Corner
from triage.evidence.hypotheses import Finding, Posterior, RankedHypothesis
from triage.signals.measurement import Span
from triage.units import format_share
from ui.presenters.wording import cause_name, format_spans, place_name
from ui.state.opening import CauseText, Opened

if TYPE_CHECKING:
    from triage.run import TriageResult

DECIDED: Final = 0.6
"""From this probability on the first place is worded as the suspect (judgement)."""

SOUND_CAUSE: Final = "no-fault-found"


@dataclass(frozen=True, slots=True)
class Headline:
    """What the top of the window says.

    Attributes
    ----------
    title, detail : str
        The verdict in one line and what it rests on in another.
    to_do : str
        The remedy of a decided cause; empty while nothing is decided.
    next_step : str
        The step that is expected to save most, with its wheel and minutes.
    corner_probability : mapping of corner to float
        Probability that the fault sits at that corner.
    suspect : corner or None
        The corner to be marked; None when none stands out.
    """

    title: str
    detail: str
    to_do: str
    next_step: str
    corner_probability: Mapping[Corner, float]
    suspect: Corner | None


@dataclass(frozen=True, slots=True)
class RankingRow:
    """One line of the list of causes."""

    place: str
    cause: str
    probability: float
    percent: str
    claim: str


@dataclass(frozen=True, slots=True)
class EvidenceLine:
    """One finding that speaks for or against a hypothesis."""

    finding_id: str
    side: Literal["for", "against"]
    weight_bit: float
    statement: str
    where: str
    spans: tuple[Span, ...]


def build_headline(opened: Opened) -> Headline:
    """Word the verdict for the top of the window."""
    result = opened.result
    first = result.posterior.first
    shares = corner_probabilities(result)
    suspect = suspected_corner(shares)
    title = _title(first, suspect, shares, text=cause_text(opened.causes, first.hypothesis.cause))
    detail = _detail(first, opened.causes)
    if first.probability < DECIDED and suspect is None and result.not_measurable:
        tab = "Next checks" if result.undecided else "Not shown"
        detail += f". See “{tab}” for the driving that would help"
    return Headline(title, detail, _to_do(opened), _next_step(result), shares, suspect)


def _title(
    first: RankedHypothesis, suspect: Corner | None, shares: Mapping[Corner, float], *, text: CauseText
) -> str:
    cause = first.hypothesis.cause
    if suspect is not None:
        return f"Suspected: {place_name(suspect).lower()} ({format_share(shares[suspect])})"
    if first.probability < DECIDED:
        return "Not decided yet: this recording alone cannot tell"
    if cause == SOUND_CAUSE:
        return "No wheel end is suspected"
    return f"{place_name('vehicle')}: {text.title.lower()}"


def _detail(first: RankedHypothesis, causes: Mapping[str, CauseText]) -> str:
    return f"Most probable: {line_name(first, causes)}, {format_share(first.probability)}"


def line_name(line: RankedHypothesis, causes: Mapping[str, CauseText]) -> str:
    """Name cause and wheel of a line of the ranking."""
    corner = line.hypothesis.corner
    place = "" if corner == "vehicle" else f", {place_name(corner).lower()}"
    return f"{cause_text(causes, line.hypothesis.cause).title}{place}"


def _to_do(opened: Opened) -> str:
    first = opened.result.posterior.first
    remedy = cause_text(opened.causes, first.hypothesis.cause).what_to_do
    return f"What to do: {remedy}" if first.probability >= DECIDED and remedy else ""


def _next_step(result: TriageResult) -> str:
    step = result.plan.next_step
    minutes = f", {step.minutes_min:.0f} min" if step.minutes_min else ""
    return f"Next step: {step.title} ({place_name(step.place).lower()}{minutes})"


def corner_probabilities(result: TriageResult) -> dict[Corner, float]:
    """Return the probability that the fault sits at each corner, summed over the causes."""
    return corner_shares(result.posterior)


def corner_shares(posterior: Posterior) -> dict[Corner, float]:
    """Return the probability that the fault sits at each corner, summed over the causes."""
    shares: dict[Corner, float] = dict.fromkeys(CORNERS, 0.0)
    for ranked in posterior.ranking:
        if ranked.hypothesis.corner != "vehicle":
            shares[ranked.hypothesis.corner] += ranked.probability
    return shares


def suspected_corner(shares: Mapping[Corner, float]) -> Corner | None:
    """Return the corner that stands out, None when none does."""
    likeliest = max(CORNERS, key=lambda corner: shares[corner])
    return likeliest if shares[likeliest] >= DECIDED else None


def build_ranking_rows(opened: Opened) -> tuple[RankingRow, ...]:
    """Return every hypothesis as a line, most probable first."""
    return tuple(_ranking_row(ranked, opened.causes) for ranked in opened.result.posterior.ranking)


def _ranking_row(ranked: RankedHypothesis, causes: Mapping[str, CauseText]) -> RankingRow:
    text = cause_text(causes, ranked.hypothesis.cause)
    return RankingRow(
        place=place_name(ranked.hypothesis.corner),
        cause=text.title,
        probability=ranked.probability,
        percent=format_share(ranked.probability),
        claim=text.claim,
    )


def build_evidence(result: TriageResult, rank: int) -> tuple[EvidenceLine, ...]:
    """Return the evidence of one line of the ranking: for, then against, each strongest first."""
    ranked = result.posterior.ranking[rank]
    findings = {finding.id: finding for finding in result.findings}
    sides: tuple[tuple[Literal["for", "against"], tuple[str, ...]], ...] = (
        ("for", ranked.because),
        ("against", ranked.against),
    )
    return tuple(
        _evidence_line(findings[name], side, abs(ranked.contributions_bit[name]))
        for side, names in sides
        for name in names
        if name in findings
    )


def _evidence_line(finding: Finding, side: Literal["for", "against"], weight_bit: float) -> EvidenceLine:
    where = format_spans(finding.spans) or "not from the recording"
    return EvidenceLine(finding.id, side, weight_bit, finding.statement, where, finding.spans)


def cause_text(causes: Mapping[str, CauseText], cause: str) -> CauseText:
    """Return the rule book's words for a cause, or its id in words."""
    return causes.get(cause) or CauseText(cause_name(cause))
