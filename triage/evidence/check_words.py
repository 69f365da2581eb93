"""Why a check is suggested and what its outcomes would mean, in words.

They are made where they are shown: of a hundred checks that a verdict suggests, most are never looked at.
"""

from __future__ import annotations

from typing import Final

from triage.evidence.hypotheses import CheckSuggestion, ExpectedOutcome
from triage.texts import Text, joined
from triage.units import format_share

BRANCHES_TOLD: Final = 3
"""How many outcomes the reason for a check spells out, the likeliest first."""

_RISES: Final = Text("rises from")
_FALLS: Final = Text("falls from")


def why_words(check: CheckSuggestion) -> Text:
    """Word what a check is expected to settle, and what its likeliest outcomes would put first."""
    likeliest = sorted(check.outcomes, key=lambda outcome: -outcome.probability)[:BRANCHES_TOLD]
    branches = [
        Text(
            "“{outcome}” ({share} likely) would put first: {leader}",
            outcome=outcome.words,
            share=format_share(outcome.probability),
            leader=Text(
                "{claim} at {share}", claim=outcome.first.claim, share=format_share(outcome.first.after)
            ),
        )
        for outcome in likeliest
    ]
    return Text(
        "Expected to settle {gain} of {doubt} bits of doubt in {minutes} min. {branches}.",
        gain=f"{check.gain_bit:.2f}",
        doubt=f"{check.doubt_bit:.2f}",
        minutes=f"{check.minutes_min:g}",
        branches=joined("; ", branches),
    )


def meaning_words(outcome: ExpectedOutcome) -> Text:
    """Word what an outcome would mean for the verdict: what rises and what falls most."""
    return joined(
        "; ",
        [
            Text(
                "{claim} {moves} {before} to {after}",
                claim=shift.claim,
                moves=moves,
                before=format_share(shift.before),
                after=format_share(shift.after),
            )
            for shift, moves in ((outcome.risen, _RISES), (outcome.fallen, _FALLS))
        ],
    )
