"""A trouble code as an answer: the same code means different wheels in different lists, so the list is named.

Written ``C0035 in c0031-left-front``, with a failure type as ``C0035-14`` or ``C0035:14``. That byte is shown
and not put into words: documents give the same one different meanings. A code is evidence like any other
answer: it sets an outcome of its check, never a cause.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from triage.corners import CORNER_NAMES, Corner
from triage.errors import SettingsError
from triage.evidence.check_tables import Check, CodeFamily
from triage.evidence.rule_tables import Rulebook
from triage.texts import Text, joined

_CODE: Final = re.compile(
    r"(?P<code>[pcbu][0-9a-f]{4})(?:[-:](?P<failure>[0-9a-f]{2}))?(?:-in-(?P<family>.+))?"
)


@dataclass(frozen=True, slots=True)
class CodeReading:
    """What a code says in its list."""

    corner: Corner
    outcome: str
    words: str


def is_code(plain: str) -> bool:
    """Say whether an answer, in small letters with hyphens for blanks, is a trouble code."""
    return _CODE.fullmatch(plain) is not None


def read_code(plain: str, check: Check, rulebook: Rulebook) -> CodeReading:
    """Look up a trouble code in the list that the answer names.

    Parameters
    ----------
    plain : str
        In small letters with hyphens for blanks.
    check : Check
    rulebook : Rulebook

    Returns
    -------
    CodeReading

    Raises
    ------
    SettingsError
        When the check takes no codes, no list or an unknown one is named, or the list does not have the code.
    """
    found = _CODE.fullmatch(plain)
    if found is None or not check.takes_codes:
        raise SettingsError(
            Text("the check {check} takes no trouble code", check=check.id),
            hint=Text("Its outcomes: {outcomes}.", outcomes=", ".join(check.outcomes)),
        )
    code = found["code"].upper()
    family = rulebook.code_families.get(found["family"] or "")
    if family is None:
        raise _without_list(code, found["family"], check, rulebook)
    if code not in family.codes:
        raise SettingsError(
            Text("the list {list} has no {code}", list=family.id, code=code),
            hint=Text("Take wheel and kind from the maker's list: {answer}.", answer=_by_hand(check)),
        )
    corner, outcome = family.codes[code]
    failure = Text(", failure type {type}", type=str(found["failure"]).upper()) if found["failure"] else ""
    words = Text("{code}{failure} by the list {family}", code=code, failure=failure, family=family.id)
    return CodeReading(corner, outcome, words)


def _without_list(code: str, named: str | None, check: Check, rulebook: Rulebook) -> SettingsError:
    meanings = [
        Text("{wheel} in {list}", wheel=CORNER_NAMES[family.codes[code][0]], list=family.id)
        for family in rulebook.code_families.values()
        if code in family.codes
    ]
    told = (
        Text("it is {meanings}", meanings=joined(", ", meanings))
        if meanings
        else Text("none of the lists here has it")
    )
    what = (
        Text("there is no list {list} of trouble codes", list=repr(named))
        if named
        else Text("{code} alone does not name a wheel", code=code)
    )
    hint = Text(
        "See in the maker's list which code is the left front wheel's, then write '{code} in LIST' "
        "(lists: {lists}), or wheel and kind: {answer}.",
        code=code,
        lists=", ".join(rulebook.code_families),
        answer=_by_hand(check),
    )
    return SettingsError(joined("; ", (what, told)), hint=hint)


def code_example(rulebook: Rulebook) -> str:
    """Return a trouble code with its list as it is typed, from the first list; empty when there is none."""
    family = next(iter(rulebook.code_families.values()), None)
    return f"{next(iter(family.codes))} in {family.id}" if family and family.codes else ""


def _by_hand(check: Check) -> str:
    return Text("{check}@FL={outcomes}", check=check.id, outcomes=joined(Text(" or "), tuple(check.outcomes)))


def family_problems(family: CodeFamily, rulebook: Rulebook) -> list[str]:
    """Return what is wrong with a list of codes, each with file and place."""
    known = {outcome for check in rulebook.checks.values() if check.takes_codes for outcome in check.outcomes}
    place = f"checks.toml: [code_family.{family.id}]"
    return [
        f"{place}, codes, {code}: there is no {outcome!r} among the outcomes of a check that takes codes"
        for code, (_, outcome) in family.codes.items()
        if outcome not in known
    ] + ([] if family.source in rulebook.sources else [f"{place}, source: there is no {family.source!r}"])
