"""Experience: the arithmetic by a sampled Dirichlet, the file, the switch, and the command."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from triage.command_line import main
from triage.errors import SettingsError
from triage.evidence.judge import judge
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.experience.ledger import (
    Ledger,
    Outcome,
    add_outcome,
    format_ledger,
    load_ledger,
    remove_outcome,
    save_ledger,
)
from triage.experience.priors import prior_changes, updated_priors, with_priors


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def _ledger(rulebook: Rulebook, cars: int = 20, *, on: bool = True) -> Ledger:
    ledger = Ledger(on=on)
    for _ in range(cars):
        ledger = add_outcome(
            ledger, Outcome(0, "vans", "encoder-debris", "RL", "2026-11-25", "rust"), rulebook
        )
    return add_outcome(ledger, Outcome(0, "coupés", "tyre-size"), rulebook)


def test_the_mean_is_that_of_sampled_dirichlets_weighed_by_the_counts() -> None:
    """Importance sampling: draws from the prior weighed by the multinomial likelihood of the counts."""
    priors, cars = {"a": 0.5, "b": 0.3, "c": 0.2}, {"a": 1, "c": 4}
    draws = np.random.default_rng(1).dirichlet([12.0 * share for share in priors.values()], 400_000)
    weight = draws[:, 0] ** 1 * draws[:, 2] ** 4
    mean = weight @ draws / weight.sum()
    assert list(updated_priors(priors, cars, prior_cars=12.0).values()) == pytest.approx(mean, abs=3e-3)


def test_priors_move_towards_what_was_found_and_stay_probabilities(rulebook: Rulebook) -> None:
    changes = {one.cause: one for one in prior_changes(_ledger(rulebook), "vans", rulebook)}
    assert sum(one.after for one in changes.values()) == pytest.approx(1.0, abs=1e-12)
    dirt = changes["encoder-debris"]
    assert dirt.after == pytest.approx((50.0 * dirt.before + 20) / 70.0)
    assert all(one.after < one.before for name, one in changes.items() if name != "encoder-debris")
    assert all(one.after > 0.0 for one in changes.values())


def test_the_rule_book_handed_in_carries_the_change_and_says_so(rulebook: Rulebook) -> None:
    changes = prior_changes(_ledger(rulebook), "vans", rulebook)
    changed = with_priors(rulebook, changes)
    assert changed.digest != rulebook.digest
    share = {
        book.digest: sum(
            line.probability
            for line in judge((), (), book).posterior.ranking
            if line.hypothesis.cause == "encoder-debris"
        )
        for book in (rulebook, changed)
    }
    assert share[changed.digest] == pytest.approx(changed.causes["encoder-debris"].prior, abs=1e-9)
    assert share[changed.digest] > 2 * share[rulebook.digest]


def test_off_until_turned_on_and_only_for_known_groups(rulebook: Rulebook) -> None:
    assert not Ledger().on
    with pytest.raises(SettingsError, match="off"):
        prior_changes(_ledger(rulebook, on=False), "vans", rulebook)
    with pytest.raises(SettingsError, match="group 'lorries'") as refusal:
        prior_changes(_ledger(rulebook), "lorries", rulebook)
    assert "vans, coupés" in refusal.value.hint


def test_removing_takes_it_back_and_numbers_are_not_given_twice(tmp_path: Path, rulebook: Rulebook) -> None:
    ledger = _ledger(rulebook, 2)
    less = remove_outcome(ledger, 3)
    assert [one.number for one in less.outcomes] == [1, 2]
    save_ledger(tmp_path / "e.toml", less)
    again = add_outcome(load_ledger(tmp_path / "e.toml", rulebook), Outcome(0, "vans", "other"), rulebook)
    assert again.outcomes[-1].number == 4
    with pytest.raises(SettingsError, match="no outcome 9"):
        remove_outcome(ledger, 9)


def test_what_is_saved_is_read_back(tmp_path: Path, rulebook: Rulebook) -> None:
    ledger = replace(_ledger(rulebook, 3), prior_cars=12.5)
    save_ledger(tmp_path / "e.toml", ledger)
    assert load_ledger(tmp_path / "e.toml", rulebook) == ledger
    assert load_ledger(tmp_path / "none.toml", rulebook) == Ledger()


@pytest.mark.parametrize(
    ("old", "new", "word"),
    [
        ("experience/1", "experience/9", "schema"),
        ("on = true", 'on = "yes"', "on or outcome"),
        ("on = true", "onn = true", "onn"),
        ("50.0", "0", "prior_cars"),
        ("50.0", "nan", "prior_cars"),
        ("encoder-debris", "encoder-moon", "no cause 'encoder-moon'"),
        ("number = 2", "number = 1", "given twice"),
        ("number = 2", "number = true", "whole number"),
        ('group = "vans"', "", "cannot be understood"),
        ('group = "vans"', "group = 3", "no text"),
        ("[[outcome]]", "[[outcome", "cannot be read"),
    ],
)
def test_nonsense_is_refused_with_its_file(
    tmp_path: Path, rulebook: Rulebook, old: str, new: str, word: str
) -> None:
    path = tmp_path / "e.toml"
    text = format_ledger(_ledger(rulebook, 2))
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")
    with pytest.raises(SettingsError, match=word) as refusal:
        load_ledger(path, rulebook)
    assert refusal.value.file == str(path)
    assert refusal.value.hint


def test_the_command_from_adding_to_the_verdict_and_back(tmp_path: Path, capsys, monkeypatch) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    log = str(tmp_path / "drive.csv")
    assert main(["simulate", "--cause", "no-fault-found", "--seconds", "20", "--out", log]) == 0
    assert main(["rank", log, "--json"]) == 0
    plain = json.loads(capsys.readouterr().out)
    for _ in range(3):
        assert (
            main(["experience", "add", "--group", "vans", "--cause", "bearing-roughness", "--corner", "rl"])
            == 0
        )
    assert main(["rank", log, "--experience", "vans"]) == 3
    assert "experience on" in capsys.readouterr().err
    assert main(["experience", "on"]) == 0
    capsys.readouterr()
    assert main(["rank", log, "--json", "--experience", "vans"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["experience"]["cars"] == 3
    assert told["experience"]["without"] == [
        {name: line[name] for name in ("corner", "cause", "probability")} for line in plain["ranking"][:5]
    ]
    assert told["ranking"] != plain["ranking"]
    assert told["rulebook"] != plain["rulebook"]
    assert main(["rank", log, "--experience", "vans"]) == 0
    assert "The workshop's experience with vans (3 cars)" in capsys.readouterr().out
    assert main(["experience", "list"]) == 0
    assert "vans: bearing-roughness RL" in capsys.readouterr().out
    for number in ("1", "2", "3"):
        assert main(["experience", "remove", number]) == 0
    assert main(["experience", "remove", "3"]) == 3
    assert main(["rank", log, "--experience", "vans"]) == 3
    assert main(["experience", "off"]) == 0
    assert main(["experience", "add", "--group", " ", "--cause", "other"]) == 3
    assert main(["experience", "add", "--group", "a", "--cause", "moon"]) == 3
    assert main(["experience"]) == 2
    capsys.readouterr()
    assert main(["rank", log, "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == plain
