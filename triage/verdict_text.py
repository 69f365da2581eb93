"""The verdict as the JSON document of ``rank`` and as a text to read in a terminal."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING, Any, Final

from triage.corners import CORNER_NAMES
from triage.errors import printable
from triage.evidence.check_words import why_words
from triage.evidence.contradictions import Contradiction
from triage.evidence.hypotheses import (
    CheckSuggestion,
    Finding,
    Hypothesis,
    RankedHypothesis,
    UndecidedPair,
)
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.rule_tables import Rulebook
from triage.inspection import build_inspection
from triage.planning.plan_text import build_plan, next_step_name, step_line
from triage.signals.measurement import NotMeasurable, Span
from triage.texts import Text, shaped, without_stop
from triage.units import format_share

if TYPE_CHECKING:
    from triage.run import TriageResult

SCHEMA: Final = "wheel-triage/rank/1"

WIDTH: Final = 100
LINES_SHOWN: Final = 5
LEAST_SHOWN: Final = 0.01

PROBABLE_FROM: Final = 0.6
"""Below this the first cause is no claim, only the best guess so far."""

BAR_LENGTH: Final = 20
SPANS_SHOWN: Final = 3
PAIRS_SHOWN: Final = 3


def build_verdict(result: TriageResult) -> dict[str, Any]:
    """Build the JSON document of ``rank``.

    Parameters
    ----------
    result : TriageResult

    Returns
    -------
    dict
        Only what JSON can hold.
    """
    return {
        "schema": SCHEMA,
        "log": build_inspection(result.log),
        "ranking": [_ranked(line) for line in result.posterior.ranking],
        "findings": [_finding(finding) for finding in result.findings],
        "not_measurable": [_missing(one) for one in result.not_measurable],
        "next_checks": [_check(check) for check in result.next_checks],
        "contradictions": [_contradiction(one) for one in result.contradictions],
        "undecided": [_undecided(pair) for pair in result.undecided],
        "plan": build_plan(result.plan),
        "cautions": list(result.cautions),
        "rulebook": result.rulebook_digest,
        "program": result.program_version,
    }


def format_verdict(result: TriageResult, rulebook: Rulebook) -> str:
    """Format the verdict as a text of at most 100 columns."""
    blocks = [
        _headline(result, rulebook),
        _ranking_block(result, rulebook),
        _evidence_block(result),
        _contradictions_block(result),
        _undecided_block(result, rulebook),
        _missing_block(result, rulebook),
        _plan_block(result),
        _checks_block(result),
        _cautions_block(result),
        _notices_block(result),
    ]
    return printable("\n\n".join(block for block in blocks if block) + "\n")


def format_spans(spans: tuple[Span, ...]) -> str:
    """Write spans as seconds of the log, the first few only.

    Examples
    --------
    >>> format_spans(((3.0, 4.25), (10.0, 11.0)))
    '3.0-4.2 s, 10.0-11.0 s'
    """
    shown = ", ".join(f"{begin:.1f}-{end:.1f} s" for begin, end in spans[:SPANS_SHOWN])
    more = len(spans) - SPANS_SHOWN
    return f"{shown} and {more} more" if more > 0 else shown


def _ranked(line: RankedHypothesis) -> dict[str, Any]:
    return {
        "corner": line.hypothesis.corner,
        "cause": line.hypothesis.cause,
        "probability": line.probability,
        "because": list(line.because),
        "against": list(line.against),
    }


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "id": finding.id,
        "corner": finding.corner,
        "statement": finding.statement,
        "value": finding.value,
        "unit": finding.unit,
        "std_uncertainty": finding.std_uncertainty,
        "where": [[round(begin, 4), round(end, 4)] for begin, end in finding.spans],
    }


def _missing(one: NotMeasurable) -> dict[str, Any]:
    return {"id": one.id, "corner": one.corner, "reason": one.reason, "needed": one.needed}


def _check(check: CheckSuggestion) -> dict[str, Any]:
    return {
        "check": check.check,
        "corner": check.corner,
        "minutes": check.minutes_min,
        "gain_bits": check.gain_bit,
        "why": why_words(check),
    }


def _contradiction(one: Contradiction) -> dict[str, Any]:
    return {
        "finding": one.finding,
        "against": one.against,
        "surprise_bits": one.surprise_bit,
        "text": one.text,
    }


def _undecided(pair: UndecidedPair) -> dict[str, Any]:
    drive, check = pair.driving, pair.check
    return {
        "between": [_claim(claim, probability) for claim, probability in pair.claims],
        "driving": drive
        and {
            "measurement": drive.measurement,
            "corner": drive.corner,
            "text": drive.text,
            "gain_bits": drive.gain_bit,
        },
        "check": check
        and {
            "check": check.check,
            "corner": check.corner,
            "minutes": check.minutes_min,
            "gain_bits": check.gain_bit,
        },
    }


def _claim(hypothesis: Hypothesis, probability: float) -> dict[str, Any]:
    return {"corner": hypothesis.corner, "cause": hypothesis.cause, "probability": probability}


def _headline(result: TriageResult, rulebook: Rulebook) -> str:
    first = result.posterior.first
    cause = rulebook.causes[first.hypothesis.cause]
    where = (
        ""
        if first.hypothesis.corner == "vehicle"
        else f" at the {CORNER_NAMES[first.hypothesis.corner]} wheel"
    )
    verdict = f"{_certainty(first.probability)}: {cause.title}{where} ({format_share(first.probability)})."
    if first.probability >= PROBABLE_FROM:
        verdict = f"{verdict} {cause.claim}"
    advice = f"What to do first: {next_step_name(result.plan)}."
    if first.probability < PROBABLE_FROM and any(pair.driving for pair in result.undecided):
        advice += " Another drive may settle it too: see the undecided below."
    return "\n".join((result.log.file, _wrapped(verdict), _wrapped(advice)))


def _certainty(probability: float) -> str:
    if probability >= 0.9:
        return "Very probable"
    if probability >= PROBABLE_FROM:
        return "Probable"
    return "Not decided; most probable so far"


def _ranking_block(result: TriageResult, rulebook: Rulebook) -> str:
    lines = ["Causes, most probable first"]
    for line in result.posterior.ranking[:LINES_SHOWN]:
        if line.probability < LEAST_SHOWN and line is not result.posterior.first:
            break
        filled = round(BAR_LENGTH * line.probability)
        bar = "#" * filled + "." * (BAR_LENGTH - filled)
        place = CORNER_NAMES[line.hypothesis.corner]
        title = rulebook.causes[line.hypothesis.cause].title
        share = format_share(line.probability)
        lines.append(f"  {share:>10} {bar} {place:<14} {title} [{line.hypothesis.cause}]")
    return "\n".join(lines)


def _evidence_block(result: TriageResult) -> str:
    first = result.posterior.first
    by_id = {finding.id: finding for finding in result.findings}
    lines = []
    for title, names, sign in (("For it", first.because, "+"), ("Against it", first.against, "-")):
        if names:
            lines.append(title)
        for name in names[:LINES_SHOWN]:
            bits = abs(first.contributions_bit[name])
            where = format_spans(by_id[name].spans)
            text = f"{by_id[name].statement} {f'Seconds: {where}.' if where else ''}"
            lines.append(_wrapped(text, indent=f"  {sign}{bits:4.1f} bit  "))
    return "\n".join(lines)


def _contradictions_block(result: TriageResult) -> str:
    if not result.contradictions:
        return ""
    return "\n".join(
        ["Answers that contradict", *(_wrapped(one.text, indent="  ? ") for one in result.contradictions)]
    )


def _undecided_block(result: TriageResult, rulebook: Rulebook) -> str:
    if not result.undecided:
        return ""
    lines = ["Undecided, and what would tell them apart"]
    for pairs in pairs_by_advice(result)[:PAIRS_SHOWN]:
        for pair in pairs:
            first, second = (
                f"{hypothesis_name(claim, rulebook)} ({format_share(probability)})"
                for claim, probability in pair.claims
            )
            lines.append(_wrapped(f"{first} or {second}?", indent="  - "))
        lines += [_wrapped(text, indent=f"    {verb}: ") for verb, text in advice_of(pairs[0]).items()]
    return "\n".join(lines)


def pairs_by_advice(result: TriageResult) -> list[tuple[UndecidedPair, ...]]:
    """Put the undecided pairs together that the same drive and check would tell apart, a few of each."""
    groups: dict[tuple[str, ...], list[UndecidedPair]] = {}
    for pair in result.undecided:
        groups.setdefault(tuple(advice_of(pair).values()), []).append(pair)
    return [tuple(pairs[:LINES_SHOWN]) for pairs in groups.values()]


def advice_of(pair: UndecidedPair) -> dict[str, str]:
    """Word what would tell two claims apart, under ``Drive`` and ``Check``."""
    drive, check = pair.driving, pair.check
    driving: str = Text("no drive known to the program would tell them apart.")
    checking: str = Text("no check known to the program would tell them apart.")
    if drive:
        told = shaped(drive.text, without_stop)
        driving = Text("{drive} ({gain} bit).", drive=told, gain=f"{drive.gain_bit:.2f}")
    if check:
        checking = Text(
            "{check} ({wheel}), {minutes} min ({gain} bit).",
            check=check.title,
            wheel=CORNER_NAMES[check.corner],
            minutes=f"{check.minutes_min:g}",
            gain=f"{check.gain_bit:.2f}",
        )
    return {"Drive": driving, "Check": checking}


def _missing_block(result: TriageResult, rulebook: Rulebook) -> str:
    """Tell what the log does not carry, once per driving that would show it."""
    by_need: dict[str, list[str]] = {}
    for one in result.not_measurable:
        rule = rulebook.measurements.get(one.id)
        title = rule.title.lower() if rule else one.reason
        names = by_need.setdefault(one.needed, [])
        if title not in names:
            names.append(title)
    if not by_need:
        return ""
    lines = ["Not measurable on this log, and the driving that would show it"]
    for need, names in list(by_need.items())[: 2 * LINES_SHOWN]:
        lines.append(_wrapped(f"{', '.join(names)}: {need}.", indent="  - "))
    return "\n".join(lines)


def _checks_block(result: TriageResult) -> str:
    if not result.next_checks:
        return ""
    lines = ["Next checks, most information per minute first"]
    for check in result.next_checks[:LINES_SHOWN]:
        place = CORNER_NAMES[check.corner]
        head = f"{check.title} ({place}), {check.minutes_min:g} min, {check.gain_bit:.2f} bit"
        lines.append(_wrapped(f"{head}: {why_words(check)}", indent=f"  - [{check.check}] "))
    return "\n".join(lines)


def _plan_block(result: TriageResult) -> str:
    lines = ["Next step", _wrapped(step_line(result.plan), indent="  ")]
    # the rest stands under the verdict anyway
    own = [text for text in result.plan.next_step.cautions if text not in result.cautions]
    return "\n".join([*lines, *(_wrapped(text, indent="  ! ") for text in own)])


def _cautions_block(result: TriageResult) -> str:
    return (
        "\n".join(["Cautions", *(_wrapped(text, indent="  ! ") for text in result.cautions)])
        if result.cautions
        else ""
    )


def _notices_block(result: TriageResult) -> str:
    lines = [_wrapped(f"{notice.message} [{notice.code}]", indent="  * ") for notice in result.log.notices]
    return "\n".join(["How the log was read", *lines]) if lines else ""


def _wrapped(text: str, *, indent: str = "") -> str:
    return textwrap.fill(
        text.strip(), WIDTH, initial_indent=indent, subsequent_indent=" " * min(len(indent), 14)
    )
