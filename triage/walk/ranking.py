"""The ranking as a walk tells it: a cause of which no wheel stands out is one line, not four."""

from __future__ import annotations

from dataclasses import dataclass

from triage.corners import CORNERS
from triage.evidence.hypotheses import Hypothesis, Posterior
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.rule_tables import Rulebook
from triage.texts import Text
from triage.units import format_share


@dataclass(frozen=True, slots=True)
class RankLine:
    """A cause with its probability.

    Attributes
    ----------
    name : str
        With its wheel, or ``any wheel`` where the four are alike.
    probability : float
        Of all wheels together where they are alike.
    before : float or None
        The same before the newest answer; None when nothing was before, or it looks the same.
    """

    name: str
    probability: float
    before: float | None = None


def ranked_lines(
    posterior: Posterior, rulebook: Rulebook, *, before: Posterior | None = None, number: int
) -> tuple[RankLine, ...]:
    """Return the first lines of the ranking, most probable first.

    Parameters
    ----------
    posterior : Posterior
    rulebook : Rulebook
    before : Posterior, optional
        That before the newest answer.
    number : int
        How many at most.
    """
    share = {line.hypothesis: line.probability for line in posterior.ranking}
    earlier = {line.hypothesis: line.probability for line in before.ranking} if before else {}
    alike = {cause for cause in rulebook.causes if _is_alike(cause, share)}
    lines: dict[tuple[str, str], tuple[str, tuple[Hypothesis, ...]]] = {}
    for hypothesis in share:
        if hypothesis.cause in alike:
            name: str = Text("{cause}, any wheel", cause=rulebook.causes[hypothesis.cause].title)
            members = tuple(Hypothesis(corner, hypothesis.cause) for corner in CORNERS)
            lines[hypothesis.cause, "any"] = name, members
        else:
            lines[hypothesis.cause, hypothesis.corner] = hypothesis_name(hypothesis, rulebook), (hypothesis,)
    told = (_line(name, members, share, earlier) for name, members in lines.values())
    return tuple(sorted(told, key=lambda line: -line.probability)[:number])


def _is_alike(cause: str, share: dict[Hypothesis, float]) -> bool:
    wheels = [share.get(Hypothesis(corner, cause)) for corner in CORNERS]
    return None not in wheels and len(set(wheels)) == 1


def _line(
    name: str,
    members: tuple[Hypothesis, ...],
    share: dict[Hypothesis, float],
    earlier: dict[Hypothesis, float],
) -> RankLine:
    now = sum(share[one] for one in members)
    was = sum(earlier[one] for one in members) if earlier else None
    moved = was is not None and format_share(was) != format_share(now)
    return RankLine(name, now, was if moved else None)
