"""``check-rules``: every problem with its line, own checks beside the seven files, and weak rule books."""

from __future__ import annotations

import re
import shutil
import tomllib
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest

from triage.command_line import main
from triage.errors import RulebookError
from triage.evidence.rule_lines import number_lines, with_line
from triage.evidence.rulebook import Rulebook, examine_rulebook, load_rulebook

PRACTICE = r'sources = \["practice"\]\nbasis = "judgement"'
UNSOURCED = 'sources = ["practice"]\nbasis = "published"'
SOUND = r"sound = \[0\.93, 0\.06, 0\.01\]"
CARE = r'cautions = \["lift-and-support", "turning-wheel"\]'
OWN_CHECK = """
[check.smell]
title = "Smell the wheel"
question = "Does this wheel smell burnt after the drive?"
where = "corner"
minutes = 2
access = "on-ground"
sources = ["practice"]
basis = "judgement"
evidence = "a tight bearing runs hot"
[check.smell.outcomes]
no = "no smell"
burnt = "smells burnt"
[check.smell.rows]
sound = [0.97, 0.03]
other = [0.9, 0.1]
bearing-roughness = [0.7, 0.3]
"""


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    folder = tmp_path / "rules"
    shutil.copytree(Path(str(files("rules"))), folder, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    return folder


@pytest.fixture
def own(tmp_path: Path) -> Path:
    folder = tmp_path / "own"
    folder.mkdir()
    (folder / "checks_own.toml").write_text(OWN_CHECK, "utf-8")
    return folder


def change(file: Path, pattern: str, by: str) -> None:
    text, count = re.subn(pattern, by, file.read_text("utf-8"), count=1)
    assert count == 1, pattern
    file.write_text(text, "utf-8")


def test_the_rule_book_of_the_program_has_no_problem(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check-rules"]) == 0
    assert "no problem" in capsys.readouterr().out


def test_every_table_and_field_of_the_packaged_files_has_its_line() -> None:
    for file in Path(str(files("rules"))).glob("*.toml"):
        text = file.read_text("utf-8")
        lines, rows = number_lines(text), text.split("\n")
        for path in paths(tomllib.loads(text)):
            name = path[-1]
            parent = ".".join(path[:-1])
            # an inline table is one line; a table that is only a step on the way has none
            known = lines.get(".".join(path), lines.get(parent))
            assert known is None or name in rows[known - 1] or "{" in rows[known - 1], path
            assert known is not None or isinstance(value_at(tomllib.loads(text), path), dict), path


def paths(table: dict[str, object], above: tuple[str, ...] = ()) -> list[tuple[str, ...]]:
    found = []
    for name, value in table.items():
        found.append((*above, name))
        if isinstance(value, dict):
            found += paths(value, (*above, name))
    return found


def value_at(table: object, path: tuple[str, ...]) -> object:
    for name in path:
        assert isinstance(table, dict)
        table = table[name]
    return table


def test_a_problem_stands_at_its_line(copy: Path, capsys: pytest.CaptureFixture[str]) -> None:
    change(copy / "checks.toml", r"minutes = 3\n", "minutes = -3\n")
    change(copy / "checks.toml", SOUND, "sound = [0.9, 0.06, 0.01]")
    change(copy / "causes.toml", r'where = "corner"', 'where = "wheel"')
    assert main(["check-rules", str(copy)]) == 3
    out, err = capsys.readouterr()
    told = {(name, int(line)) for name, line in re.findall(r"^(\S+): line (\d+),", out, re.MULTILINE)}
    rows = (copy / "checks.toml").read_text("utf-8").split("\n")
    causes = (copy / "causes.toml").read_text("utf-8").split("\n")
    assert ("checks.toml", rows.index("minutes = -3") + 1) in told
    assert ("checks.toml", rows.index("sound = [0.9, 0.06, 0.01]") + 1) in told
    assert ("causes.toml", causes.index('where = "wheel"') + 1) in told
    assert "problems" in err
    assert "Traceback" not in err


def test_a_missing_field_is_told_at_the_line_of_its_table(copy: Path) -> None:
    change(copy / "checks.toml", r"(\[check\.turn-by-hand\]\n)title = [^\n]*\n", r"\1")
    _, problems = examine_rulebook(copy)
    row = (copy / "checks.toml").read_text("utf-8").split("\n").index("[check.turn-by-hand]") + 1
    assert problems == (f"checks.toml: line {row}, [check.turn-by-hand], title: a text is missing",)


def test_a_problem_of_a_file_without_lines_stays_as_it_is() -> None:
    assert with_line("a.toml: this is no TOML: x", {"a.toml": {}}) == "a.toml: this is no TOML: x"
    assert with_line("a folder: there is none", {}) == "a folder: there is none"


@pytest.mark.parametrize(
    ("name", "pattern", "by", "told"),
    [
        ("checks.toml", r'(\[check\.rock-wheel\]\n)', r'\1basis_of = "x"\n', "basis_of: unknown field"),
        ("checks.toml", r'question = "Grip[^\n]*', "", "question: a text is missing"),
        ("checks.toml", SOUND, "sound = [0.8, 0.06, 0.01]", "sums to 0.87, not 1"),
        ("checks.toml", SOUND, "sound = [0.94, 0.06, 0.0]", "be neither"),
        ("checks.toml", 'minutes = 3\naccess = "lifted"', 'minutes = 3\naccess = "air"', "there is no 'air'"),
        ("checks.toml", CARE, "cautions = []", "can get hurt"),
        ("checks.toml", r'basis = "judgement"\n', "", "basis: a text is missing"),
        ("checks.toml", r'evidence = "a hand[^\n]*\n', "", "evidence: a text is missing"),
        ("checks.toml", PRACTICE, UNSOURCED, "needs a published"),
        ("measurements.toml", r'unit = "1/min"', 'unit = "furlong"', "'furlong' is none of"),
        ("cautions.toml", "Do not blow", "Tighten to 120 Nm. Do not", "tightening torque"),
        ("cautions.toml", "Do not blow", "Tighten to 90 lb-ft. Do not", "tightening torque"),
    ],
)  # fmt: skip
def test_each_kind_of_problem_is_told(copy: Path, name: str, pattern: str, by: str, told: str) -> None:
    change(copy / name, pattern, by)
    _, problems = examine_rulebook(copy)
    assert any(problem.startswith(f"{name}: line ") and told in problem for problem in problems), problems


def test_a_cause_that_nothing_separates_from_another_is_told(
    make_book: Callable[..., Rulebook], tmp_path: Path
) -> None:
    priors = {"dirt": ("corner", 0.3), "rust": ("corner", 0.2), "gap": ("corner", 0.2)}
    priors |= {"no-fault-found": ("vehicle", 0.2), "other": ("vehicle", 0.1)}
    rows = {"sound": [0.9, 0.1], "other": [0.5, 0.5], "no-fault-found": [0.9, 0.1], "gap": [0.2, 0.8]}
    rows |= {"dirt": [0.3, 0.7], "rust": [0.3, 0.7]}
    idle = {"sound": [0.5, 0.5], "other": [0.4, 0.6]}
    make_book(priors, checks={"look": ("corner", rows), "idle": ("corner", idle)})
    _, problems = examine_rulebook(tmp_path / "book")
    text = "\n".join(problems)
    assert "[cause.rust]: no measurement and no check tells it from dirt" in text
    assert "[cause.gap]" not in text
    assert "[check.idle], rows: the check tells nothing" in text
    assert load_rulebook(tmp_path / "book").causes


def test_own_checks_alone_add_to_the_rule_book_of_the_program(own: Path, rulebook: Rulebook) -> None:
    book = load_rulebook(own)
    assert set(book.checks) == {*rulebook.checks, "smell"}
    assert book.checks["smell"].file == "checks_own.toml"
    assert book.digest != rulebook.digest
    assert main(["check-rules", str(own)]) == 0


def test_own_checks_stand_beside_the_seven_files_too(copy: Path) -> None:
    (copy / "checks_own.toml").write_text(OWN_CHECK, "utf-8")
    assert "smell" in load_rulebook(copy).checks


def test_own_figures_of_the_workshop_alone_are_enough(tmp_path: Path) -> None:
    text = (Path(str(files("rules"))) / "workshop.toml").read_text("utf-8")
    changed = re.sub(r"money_per_hour = [\d.]+", "money_per_hour = 123.0", text)
    (tmp_path / "workshop.toml").write_text(changed, "utf-8")
    assert load_rulebook(tmp_path).workshop.money_per_hour == 123.0


def test_problems_of_an_own_check_name_its_file_and_line(own: Path) -> None:
    change(own / "checks_own.toml", r"\[0\.97, 0\.03\]", "[0.97, 0.04]")
    with pytest.raises(RulebookError) as caught:
        load_rulebook(own)
    row = OWN_CHECK.split("\n").index("sound = [0.97, 0.03]") + 1
    assert caught.value.problems == (
        f"checks_own.toml: line {row}, [check.smell], rows, sound: sums to 1.01, not 1",
    )


def test_an_id_that_is_taken_is_told_with_both_files(own: Path) -> None:
    (own / "checks_own.toml").write_text(OWN_CHECK.replace("smell", "rock-wheel"), "utf-8")
    _, problems = examine_rulebook(own)
    assert any("checks_own.toml: line 2" in one and "checks.toml has it" in one for one in problems)


def test_a_folder_that_is_empty_or_not_there_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check-rules", str(tmp_path / "nowhere")]) == 3
    assert "no such folder" in capsys.readouterr().out
    assert main(["check-rules", str(tmp_path)]) == 3
    assert "causes.toml: the file cannot be read" in capsys.readouterr().out
