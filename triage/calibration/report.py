"""What an evaluation found, as text."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np

from triage.calibration.score import BLAMED_FROM, Reliability, Verdict, accepted, measure_reliability
from triage.calibration.trace import NO_TRACE
from triage.evidence.rule_tables import NO_FAULT, OTHER

SEVERITY_CLASSES: Final = ((0.0, 0.4), (0.4, 0.7), (0.7, 1.0))
"""Slight, clear and blatant."""

SURE: Final = 0.5
"""A wrong fault stated with so much misleads; below it the verdict says itself that it is undecided."""

BAR: Final = 40
"""Characters of a whole bar."""


def format_evaluation(verdicts: Sequence[Verdict]) -> str:
    """Write down how right and how honest the verdicts are.

    Parameters
    ----------
    verdicts : sequence of Verdict
        At least one.

    Returns
    -------
    str
        By cause; who is mistaken for whom; by severity; by look-alike of healthy cars; the reliability
        diagram and the scores of the stated probabilities. Several lines, with a line feed at the end.
    """
    parts = (
        by_cause(verdicts),
        confusion(verdicts),
        by_severity(verdicts),
        healthy_look_alikes(verdicts),
        reliability_diagram(verdicts),
    )
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def format_reliability(verdicts: Sequence[Verdict]) -> str:
    """Write down the reliability of the verdicts of all severities together, with their number."""
    title = f"all severities together, {len(verdicts)} tests"
    return "\n".join((title, "", *reliability_diagram(verdicts))) + "\n"


def format_hidden(verdicts: Sequence[Verdict]) -> str:
    """Say which verdicts are left out because no log shows the fault; empty for none."""
    hidden = [verdict for verdict in verdicts if NO_TRACE in verdict.traits]
    if not hidden:
        return ""
    counted = Counter(verdict.truth.cause for verdict in hidden)
    named = ", ".join(f"{cause} {number}" for cause, number in counted.most_common())
    misled = sum(_misleads(verdict) for verdict in hidden)
    return (
        f"left out, for the log is as good as without the fault: {named}; "
        f"a wrong fault at {SURE:g} or more in {misled}\n\n"
    )


def by_cause(verdicts: Sequence[Verdict]) -> list[str]:
    """Shares of right answers for every cause, and what it is mistaken for."""
    titles = f"{'cause':<18} {'tests':>5} {'first':>7} {'of two':>7} {'corner':>7} {'blamed':>7}"
    lines = [f"{titles}   most often mistaken for"]
    for cause in _causes(verdicts):
        own = [verdict for verdict in verdicts if verdict.truth.cause == cause]
        wrong = Counter(_answer(verdict) for verdict in own if not verdict.right)
        mistaken = ", ".join(f"{name} {number}" for name, number in wrong.most_common(3))
        lines.append(f"{_shares_line(cause, own)}   {mistaken}".rstrip())
    low, high = wilson_interval(sum(verdict.right for verdict in verdicts), len(verdicts))
    lines.append(f"{_shares_line('all', verdicts)}   first: 95 % interval {low:.1%} to {high:.1%}")
    lines.append(f"blamed: any single wheel at {BLAMED_FROM:g} or more")
    return lines


def confusion(verdicts: Sequence[Verdict]) -> list[str]:
    """Count how often each true cause (rows) stood behind each first place (columns)."""
    causes = _causes(verdicts)
    given = [*dict.fromkeys((*causes, NO_FAULT, OTHER))]
    columns = [str(number + 1) for number in range(len(given))]
    lines = [
        "first place by true cause; 'elsewhere' is the right cause at a wrong corner",
        f"{'':<22}" + "".join(f"{name:>5}" for name in columns) + "  elsewhere",
    ]
    for cause in causes:
        own = [verdict for verdict in verdicts if verdict.truth.cause == cause]
        count = Counter(_first_cause(verdict) for verdict in own)
        cells = "".join(f"{count[name] or '.':>5}" for name in given)
        lines.append(f"{given.index(cause) + 1:>3} {cause:<18}{cells}  {count[_ELSEWHERE] or '.':>9}")
    lines += [f"{len(causes) + 1 + number:>3} {name}" for number, name in enumerate(given[len(causes) :])]
    return lines


def by_severity(verdicts: Sequence[Verdict]) -> list[str]:
    """Share of causes and corners that stand first in every class of severity; nothing for a single class."""
    faulty = [verdict for verdict in verdicts if verdict.truth.cause != NO_FAULT]
    faulty = [verdict for verdict in faulty if np.isfinite(verdict.severity)]
    if len({_severity_class(verdict.severity) for verdict in faulty}) < 2:
        return []
    titles = "".join(f"{f'{low:g} to {high:g}':>18}" for low, high in SEVERITY_CLASSES)
    lines = ["cause and corner first by severity (tests)", f"{'':<18}{titles}"]
    for cause in (*_causes(faulty), "all"):
        own = [verdict for verdict in faulty if cause in (verdict.truth.cause, "all")]
        lines.append(f"{cause:<18}" + "".join(_cell(own, number) for number in range(len(SEVERITY_CLASSES))))
    return lines


def healthy_look_alikes(verdicts: Sequence[Verdict]) -> list[str]:
    """For healthy cars, how often each look-alike passed as healthy, and how often a wheel was blamed."""
    healthy = [verdict for verdict in verdicts if verdict.truth.cause == NO_FAULT]
    if not any(verdict.traits for verdict in healthy):
        return []
    lines = [f"{'healthy cars with':<22} {'tests':>5} {'healthy':>8} {'blamed':>7}"]
    names = sorted({name for verdict in healthy for name in verdict.traits})
    for name in (*names, "none of these"):
        own = [one for one in healthy if name in (one.traits or ("none of these",))]
        if own:
            shares = ([one.right for one in own], [one.blames_corner for one in own])
            lines.append(f"{name:<22} {len(own):>5} {_share(shares[0]):>8} {_share(shares[1]):>7}")
    return lines


def reliability_diagram(verdicts: Sequence[Verdict]) -> list[str]:
    """Stated probability of the first place against how often it was right, with bars, and the scores."""
    stated = np.array([verdict.stated for verdict in verdicts])
    happened = np.array([float(verdict.right) for verdict in verdicts])
    result = measure_reliability(stated, happened)
    lines = ["stated  observed  tests   # observed, | stated"]
    lines += [
        f"{s:6.3f}  {o:8.3f}  {n:5d}   {_bar(s, o)}"
        for s, o, n in zip(result.stated, result.observed, result.count, strict=True)
    ]
    return [*lines, *_scores(result, verdicts)]


def seeded_drives(verdicts: Sequence[Verdict]) -> list[str]:
    """For faults built into real drives: what was found in each, what no log shows, and every miss.

    Parameters
    ----------
    verdicts : sequence of Verdict
        Their first trait is the name of the recording; ``NO_TRACE`` marks what it cannot show.
    """
    lines = [f"{'recording':<36} {'shown':>6} {'first':>7} {'misled':>7} {'no trace':>9} {'misled':>7}"]
    for file in sorted({verdict.traits[0] for verdict in verdicts}):
        own = [verdict for verdict in verdicts if verdict.traits[0] == file]
        shown = [verdict for verdict in own if NO_TRACE not in verdict.traits]
        unseen = [verdict for verdict in own if NO_TRACE in verdict.traits]
        lines.append(
            f"{file[-36:]:<36} {len(shown):>6} {_share([one.right for one in shown]):>7}"
            f" {_share([_misleads(one) for one in shown]):>7}"
            f" {len(unseen):>9} {_share([_misleads(one) for one in unseen]):>7}"
        )
    lines.append(
        "no trace: the drive does not show the fault, such as bearing play where there are no curves"
    )
    lines.append(f"misled: a wrong fault stands first at {SURE:g} or more")
    return lines + [_miss(one) for one in verdicts if not one.right and NO_TRACE not in one.traits]


def _misleads(verdict: Verdict) -> bool:
    first = verdict.posterior.first
    return not verdict.right and first.hypothesis.cause not in (NO_FAULT, OTHER) and first.probability >= SURE


def _miss(verdict: Verdict) -> str:
    first = verdict.posterior.first
    return (
        f"  {verdict.traits[0][-24:]}: {verdict.truth.corner} {verdict.truth.cause}"
        f" at {_probability_of_truth(verdict):.2f}, first {first.hypothesis.corner} {first.hypothesis.cause}"
        f" at {first.probability:.2f}"
    )


def wilson_interval(hits: int, number: int, *, deviations: float = 1.96) -> tuple[float, float]:
    """Bounds between which the true share lies, given the hits among a number of tests.

    References
    ----------
    E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209 (cited from memory): the score interval.
    """
    if number == 0:
        return 0.0, 1.0
    share, square = hits / number, deviations**2 / number
    centre = share + square / 2.0
    reach = deviations * float(np.sqrt(share * (1.0 - share) / number + square / (4.0 * number)))
    return max((centre - reach) / (1.0 + square), 0.0), min((centre + reach) / (1.0 + square), 1.0)


_ELSEWHERE: Final = "right cause elsewhere"


def _scores(result: Reliability, verdicts: Sequence[Verdict]) -> Iterator[str]:
    yield (
        f"Brier {result.brier:.4f} = reliability {result.reliability:.4f}"
        f" - resolution {result.resolution:.4f} + uncertainty {result.uncertainty:.4f}"
        f" + within bins {result.within_bins:.4f}"
    )
    surprise = [-np.log2(max(_probability_of_truth(verdict), 1e-12)) for verdict in verdicts]
    yield (
        f"expected calibration error {result.expected_calibration_error:.4f};"
        f" the truth came with {np.mean(surprise):.3f} bit of surprise"
    )


def _probability_of_truth(verdict: Verdict) -> float:
    right = accepted(verdict.truth)
    return sum(line.probability for line in verdict.posterior.ranking if line.hypothesis in right)


def _bar(stated: float, observed: float) -> str:
    bar = list(("#" * round(BAR * observed)).ljust(BAR + 1))
    bar[round(BAR * min(stated, 1.0))] = "|"
    return "".join(bar).rstrip()


def _causes(verdicts: Sequence[Verdict]) -> list[str]:
    return list(dict.fromkeys(verdict.truth.cause for verdict in verdicts))


def _severity_class(severity: float) -> int:
    return sum(severity >= low for low, _ in SEVERITY_CLASSES[1:])


def _cell(verdicts: Sequence[Verdict], number: int) -> str:
    flags = [verdict.right for verdict in verdicts if _severity_class(verdict.severity) == number]
    return f"{f'{_share(flags)} ({len(flags)})':>18}"


def _shares_line(title: str, verdicts: Sequence[Verdict]) -> str:
    """One line: number of tests, right verdict, right among two, right corner, any corner blamed."""
    shares = (
        [verdict.right for verdict in verdicts],
        [verdict.right_among_two for verdict in verdicts],
        [verdict.right_corner for verdict in verdicts],
        [verdict.blames_corner for verdict in verdicts],
    )
    return f"{title:<18} {len(verdicts):5d} " + " ".join(f"{_share(flags):>7}" for flags in shares)


def _first_cause(verdict: Verdict) -> str:
    first = verdict.posterior.first.hypothesis
    if first.cause == verdict.truth.cause and first.corner != verdict.truth.corner:
        return _ELSEWHERE
    return first.cause


def _answer(verdict: Verdict) -> str:
    """First place in words: where it stands matters only for a wrong corner."""
    first = verdict.posterior.first.hypothesis
    same = first.corner in (verdict.truth.corner, "vehicle")
    return first.cause if same else f"{first.cause} elsewhere"


def _share(flags: Sequence[bool]) -> str:
    return f"{np.mean(flags):.1%}" if flags else "-"
