"""The verdict in words: headline, ranked causes, and the evidence of one of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from triage.corners import CORNER_NAMES, CORNERS, VEHICLE, Corner, Place
from triage.texts import Text, in_english
from triage.units import format_share
from ui.presenters.wording import cause_name, format_spans, place_name
from ui.state.opening import CauseText, Opened

if TYPE_CHECKING:
    from triage.evidence.hypotheses import Finding, Posterior, RankedHypothesis
    from triage.run import TriageResult
    from triage.signals.measurement import Span

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
    next_step : str
        What is to be done now, with its wheel and minutes.
    corner_probability : mapping of corner to float
        Probability that the fault sits at that corner.
    suspect : corner or None
        The corner to be marked; None when none stands out.
    """

    title: str
    detail: str
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
        tab = Text("Next checks") if result.undecided else Text("Not shown")
        detail = Text("{detail}. See “{tab}” for the driving that would help", detail=detail, tab=tab)
    return Headline(title, detail, _next_step(result), shares, suspect)


def _title(
    first: RankedHypothesis, suspect: Corner | None, shares: Mapping[Corner, float], *, text: CauseText
) -> str:
    cause = first.hypothesis.cause
    if suspect is not None:
        share = format_share(shares[suspect])
        return Text("Suspected: {wheel} ({share})", wheel=CORNER_NAMES[suspect], share=share)
    if first.probability < DECIDED:
        return Text("Not decided yet: this recording alone cannot tell")
    if cause == SOUND_CAUSE:
        return Text("No wheel end is suspected")
    return Text("{place}: {cause}", place=place_name("vehicle"), cause=in_english(text.title, str.lower))


def _detail(first: RankedHypothesis, causes: Mapping[str, CauseText]) -> str:
    share = format_share(first.probability)
    return Text("Most probable: {claim}, {share}", claim=line_name(first, causes), share=share)


def line_name(line: RankedHypothesis, causes: Mapping[str, CauseText]) -> str:
    """Name cause and wheel of a line of the ranking."""
    return claim_name(cause_text(causes, line.hypothesis.cause).title, line.hypothesis.corner)


def claim_name(cause: str, place: Place) -> str:
    """Name a cause with its wheel, where it sits at one."""
    if place == VEHICLE:
        return cause
    return Text("{cause}, {wheel}", cause=cause, wheel=CORNER_NAMES[place])


def _next_step(result: TriageResult) -> str:
    from triage.planning.plan_text import next_step_name  # noqa: PLC0415 - the start page need not wait

    return Text("Next step: {step}", step=next_step_name(result.plan))


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
    where = format_spans(finding.spans) or Text("not from the recording")
    return EvidenceLine(finding.id, side, weight_bit, finding.statement, where, finding.spans)


def cause_text(causes: Mapping[str, CauseText], cause: str) -> CauseText:
    """Return the rule book's words for a cause, or its id in words."""
    return causes.get(cause) or CauseText(cause_name(cause))
