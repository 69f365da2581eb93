"""What depends on the rule book alone is worked out once for each rule book, and never for another."""

from __future__ import annotations

import copy
import pickle
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS, VEHICLE, Place
from triage.evidence.atoms import Atom, all_atoms, scale_row
from triage.evidence.judge import judge
from triage.evidence.posterior import believe
from triage.evidence.rule_tables import Scale
from triage.evidence.rulebook import Rulebook, load_rulebook

PLACES: tuple[Place, ...] = (*CORNERS, VEHICLE)


@pytest.fixture
def rulebook() -> Rulebook:
    return load_rulebook()


def test_kept_tables_say_what_the_rows_say(rulebook: Rulebook) -> None:
    tables = all_atoms(rulebook)
    for source in (*rulebook.measurements, *rulebook.checks):
        scale = rulebook.scale(source)
        assert scale is not None
        for place in PLACES:
            kept = tables.outcome_table(source, place)
            np.testing.assert_array_equal(kept, [_row(scale, place, one) for one in tables.atoms])
            rows = [scale_row(scale, place, atom) or scale.table.rows["sound"] for atom in tables.atoms]
            np.testing.assert_array_equal(kept, rows, err_msg=source)


def _row(scale: Scale, place: Place, atom: Atom) -> list[float]:
    """Look the row up plainly: sound out of reach, outcomes exchanged with their mirror on the right."""
    if place != VEHICLE and atom.blamed not in (place, VEHICLE):
        return list(scale.table.rows["sound"])
    row = dict(zip(scale.names, scale.table.row(atom.variant), strict=True))
    on_the_right = atom.blamed in ("FR", "RR")
    return [row[scale.mirror.get(name, name) if on_the_right else name] for name in scale.names]


def test_what_depends_on_the_rule_book_alone_is_worked_out_once(rulebook: Rulebook) -> None:
    asked: list[Rulebook] = []

    def count(book: Rulebook) -> int:
        asked.append(book)
        return len(book.checks)

    assert rulebook.once(count) == rulebook.once(count) == len(rulebook.checks)
    assert all_atoms(rulebook) is all_atoms(rulebook)
    assert asked == [rulebook]


def test_a_changed_rule_book_has_tables_of_its_own(rulebook: Rulebook) -> None:
    judge((), (), rulebook)
    name = "rock-wheel"
    check = rulebook.checks[name]
    turned = {cause: row[::-1] for cause, row in check.table.rows.items()}
    changed = replace(
        rulebook,
        checks={**rulebook.checks, name: replace(check, table=replace(check.table, rows=turned))},
        causes={id_: replace(cause, prior=1.0) for id_, cause in rulebook.causes.items()},
    )
    assert not changed.worked_out.made
    np.testing.assert_array_equal(
        all_atoms(changed).expected(name).told, all_atoms(rulebook).expected(name).told[:, ::-1]
    )
    assert not np.array_equal(believe((), changed).prior, believe((), rulebook).prior)
    assert judge((), (), changed) != judge((), (), rulebook)


def test_copies_for_other_processes_carry_nothing_worked_out(rulebook: Rulebook) -> None:
    first = judge((), (), rulebook)
    for twin in (pickle.loads(pickle.dumps(rulebook)), copy.deepcopy(rulebook)):  # noqa: S301 - our own
        assert twin == rulebook
        assert not twin.worked_out.made
        assert judge((), (), twin) == first


def test_nobody_can_change_what_all_verdicts_share(rulebook: Rulebook) -> None:
    belief, expected = believe((), rulebook), all_atoms(rulebook).expected("rock-wheel")
    shared = (belief.prior, belief.tables.belongs, belief.tables.index, expected.told, expected.sound)
    assert not any(array.flags.writeable for array in (*shared, belief.tables.reached("FL")))


def test_a_finding_unknown_to_the_rule_book_is_told_by_its_name(rulebook: Rulebook) -> None:
    with pytest.raises(KeyError, match="never-heard-of"):
        all_atoms(rulebook).expected("never-heard-of")
