"""The rule book: the packaged one holds together, and every problem of a foreign one is told at once."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest

from triage.corners import CORNERS
from triage.errors import RulebookError
from triage.evidence.rulebook import LARGEST_FILE_BYTES, Rulebook, load_rulebook

CAUSES = {
    "corner": (
        *(
            "encoder-debris",
            "encoder-damage",
            "encoder-runout",
            "encoder-mismatch",
            "air-gap",
            "sensor-fault",
        ),
        *("harness-fault", "bearing-play", "bearing-roughness", "tyre-size"),
    ),
    "vehicle": ("channels-swapped", "common-cause", "no-fault-found", "other"),
}
Edit = Callable[[str, str, str], Path]


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    folder = tmp_path / "rules"
    shutil.copytree(Path(str(files("rules"))), folder, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    return folder


@pytest.fixture
def edit(copy: Path) -> Edit:
    """Replace the first match of a pattern in a file of the copy."""

    def replace(name: str, pattern: str, by: str) -> Path:
        file = copy / name
        text, count = re.subn(pattern, by, file.read_text("utf-8"), count=1, flags=re.DOTALL)
        assert count == 1, f"{pattern} is not in {name}"
        file.write_text(text, "utf-8")
        return copy

    return replace


def problems_of(folder: Path) -> tuple[str, ...]:
    with pytest.raises(RulebookError) as caught:
        load_rulebook(folder)
    assert all(problem in str(caught.value) for problem in caught.value.problems)
    return caught.value.problems


def test_packaged_rules_name_every_cause_that_can_be_claimed(rulebook: Rulebook) -> None:
    for where, names in CAUSES.items():
        assert {cause.id for cause in rulebook.causes.values() if cause.where == where} == set(names)
    assert len(rulebook.hypotheses) == 4 * len(CAUSES["corner"]) + len(CAUSES["vehicle"])
    assert len(set(rulebook.hypotheses)) == len(rulebook.hypotheses)


def test_every_measurement_can_tell_something_from_a_sound_corner(rulebook: Rulebook) -> None:
    for name, table in rulebook.likelihoods.items():
        sound = table.rows["sound"]
        assert any(max(map(abs, map(float.__sub__, row, sound))) > 0.01 for row in table.rows.values()), name


def test_every_table_of_the_packaged_rules_tells_where_its_numbers_come_from(rulebook: Rulebook) -> None:
    tables = [*rulebook.likelihoods.values(), *(check.table for check in rulebook.checks.values())]
    assert all(table.basis in ("simulated", "published", "judgement") and table.evidence for table in tables)


def test_some_check_can_confirm_every_corner_cause(rulebook: Rulebook) -> None:
    for cause in CAUSES["corner"]:
        best = max(
            seen / sound
            for check in rulebook.checks.values()
            for seen, sound in zip(check.table.row(cause), check.table.row("sound"), strict=True)
        )
        assert best >= 5.0, cause


def test_dangerous_work_is_never_suggested_without_a_caution(rulebook: Rulebook) -> None:
    for check in rulebook.checks.values():
        covered = {access for name in check.cautions for access in rulebook.cautions[name].covers}
        assert check.access in covered or not rulebook.access[check.access].hazardous, check.id
    assert any(access.hazardous for access in rulebook.access.values())


def test_cautions_leave_torque_and_limits_to_the_maker(rulebook: Rulebook) -> None:
    words = " ".join(caution.text for caution in rulebook.cautions.values())
    assert not re.search(r"\d\s*N\s?·?m\b", words)
    assert "maker's figure" in words
    assert rulebook.cautions["driver-drives"].always


def test_digest_depends_on_the_text_and_not_on_line_endings(copy: Path, rulebook: Rulebook) -> None:
    assert load_rulebook(copy).digest == rulebook.digest
    file = copy / "checks.toml"
    file.write_bytes(b"\xef\xbb\xbf" + file.read_bytes().replace(b"\n", b"\r\n"))
    assert load_rulebook(copy).digest == rulebook.digest
    file.write_bytes(file.read_bytes() + b"# a remark\r\n")
    assert load_rulebook(copy).digest != rulebook.digest


ANY_LIST = r"\[[^\]]*\]"
ANY_PRIOR = r"prior = 0\.\d+"
BROKEN = [
    ("causes.toml", ANY_PRIOR, "prior = 0.99", ["[cause], prior", "priors sum to 1."]),
    ("causes.toml", ANY_PRIOR, "prior = 0", ["[cause.sensor-fault], prior", "0 or 1"]),
    (
        "causes.toml",
        r'where = "corner"',
        'where = "wheel"',
        ["[cause.sensor-fault], where", "corner, vehicle"],
    ),
    ("causes.toml", ANY_PRIOR, 'prior = "much"', ["[cause.sensor-fault], prior", "number"]),
    ("causes.toml", ANY_PRIOR, "prior = nan", ["[cause.sensor-fault], prior", "finite"]),
    ("causes.toml", ANY_PRIOR, "prior = 1" + "0" * 400, ["[cause.sensor-fault], prior", "finite"]),
    ("causes.toml", ANY_PRIOR, r"\g<0>\ncolour = 1", ["colour", "unknown field"]),
    ("causes.toml", r'title = "Sensor fault"', 'title = ""', ["[cause.sensor-fault], title", "empty"]),
    ("causes.toml", r'title = "Sensor fault"', f'title = "{"x" * 2001}"', ["longer than"]),
    ("causes.toml", r"\[cause\.other\]", "[cause.another]", ["[cause.other]", "missing"]),
    ("causes.toml", r"\[cause\.sensor-fault\]", "[cause.Sensor_Fault]", ["small letters"]),
    ("causes.toml", r'cautions = \["lift-and-support"\]', 'cautions = ["care"]', ["cautions", "'care'"]),
    ("measurements.toml", f"edges = {ANY_LIST}", "edges = [3, 3, 9]", ["dead-share], edges", "rise"]),
    ("measurements.toml", f"edges = {ANY_LIST}", "edges = [1.0]", ["4 bands need 3 edges, not 1"]),
    ("measurements.toml", f"edges = {ANY_LIST}", "edges = [-1, 3, 9]", ["dead-share], edges", "lognormal"]),
    ("measurements.toml", f"sound_at_least = {ANY_LIST}", "sound_at_least = [0.5]", ["one share below 1"]),
    ("measurements.toml", r'"lognormal"', '"gamma"', ["dead-share], distribution", "normal"]),
    (
        "measurements.toml",
        r'group = "losses"',
        'group = "loss"',
        ["[measurement.dead-share], group", "'loss'"],
    ),
    ("measurements.toml", r'source = "physics"', 'source = "me"', ["dead-share], source", "'me'"]),
    (
        "measurements.toml",
        r"reads nothing for \{value\}",
        "reads {value.real}",
        ["statement", "{value.real}"],
    ),
    (
        "measurements.toml",
        "alone in reading nothing",
        "alone in reading {value}",
        ["[measurement.dead-share], nothing", "{value}"],
    ),
    (
        "measurements.toml",
        "alone in reading nothing",
        "alone in reading nothing for {least}",
        ["[measurement.dead-share], nothing", "{least}"],
    ),
    (
        "measurements.toml",
        r'(statement = "On straight)',
        r'nothing = "It is none."\n\1',
        ["[measurement.ratio-offset], nothing", "lowest band"],
    ),
    ("measurements.toml", r"floor = 1e-6", "floor = 0.0", ["[scoring], floor", "between"]),
    ("measurements.toml", r"\[scoring\]", "[scorings]", ["scorings", "unknown field"]),
    (
        "likelihoods.toml",
        f"sound = {ANY_LIST}",
        "sound = [0.6, 0.1, 0.1, 0.1]",
        ["rows, sound", "sums to 0.9"],
    ),
    (
        "likelihoods.toml",
        f"sound = {ANY_LIST}",
        "sound = [1.0, 0.0, 0.0, 0.0]",
        ["rows, sound", "be neither"],
    ),
    ("likelihoods.toml", f"sound = {ANY_LIST}", "sound = [0.5, 0.5]", ["needs 4 probabilities, has 2"]),
    ("likelihoods.toml", r"weight = [^\n]*", "weight = 0.0", ["weight", "between 0.1 and 3"]),
    ("likelihoods.toml", r"other = [^\n]*\n", "", ["[likelihood.dead-share], rows", "other is missing"]),
    ("likelihoods.toml", r"sound = ", "air-gab = [0.5, 0.5]\nsound = ", ["rows", "'air-gab'"]),
    (
        "likelihoods.toml",
        r"swap-gain(.*)swap-gain",
        r"swap-win\1swap-win",
        ["swap-gain]: the table is missing"],
    ),
    ("checks.toml", r'cautions = \["lift-and-support", "turning-wheel"\]', "cautions = []", ["can get hurt"]),
    ("checks.toml", r'access = "lifted"', 'access = "flying"', ["[check.rock-wheel], access", "'flying'"]),
    ("checks.toml", r'yes = "clear"', 'yes = "certainly"', ["[check.rock-wheel], aliases", "'certainly'"]),
    ("checks.toml", r'also = \["turn-wheel"\]', 'also = ["play"]', ["the name play", "more than one"]),
    (
        "checks.toml",
        r'louder-in-left = "louder-in-right"',
        'louder-in-left = "none"',
        ["mirror", "point back"],
    ),
    ("checks.toml", r"minutes = 3", "minutes = -3", ["[check.rock-wheel], minutes", "between"]),
    (
        "cautions.toml",
        r'covers = \["road"\]',
        'covers = ["sea"]',
        ["[caution.driver-drives], covers", "'sea'"],
    ),
    ("cautions.toml", r'sources = \["road-glance"\]', 'sources = "x"', ["sources", "list of texts"]),
    ("sources.toml", r'kind = "practice"', 'kind = "rumour"', ["kind", "published, practice"]),
    ("sources.toml", r"\[source\.practice\]", "[source.practice", ["sources.toml", "no TOML"]),
    ("sources.toml", r"\[source\.practice\]", "x = " + "[" * 5000, ["sources.toml", "no TOML"]),
]


@pytest.mark.parametrize(("name", "pattern", "by", "told"), BROKEN, ids=lambda value: str(value)[:40])
def test_a_broken_rule_book_is_refused_with_file_and_place(
    edit: Edit, name: str, pattern: str, by: str, told: list[str]
) -> None:
    problems = problems_of(edit(name, pattern, by))
    assert any(problem.startswith(name) or name in problem for problem in problems)
    assert any(all(word in problem for word in told) for problem in problems), problems


def test_all_problems_are_told_at_once(edit: Edit) -> None:
    edit("causes.toml", ANY_PRIOR, "prior = 0.99")
    edit("measurements.toml", f"edges = {ANY_LIST}", "edges = [3, 3, 9]")
    edit("checks.toml", r"minutes = 3", "minutes = 0")
    problems = problems_of(edit("cautions.toml", r'covers = \["road"\]', 'covers = ["sea"]'))
    assert [problem.split(":")[0] for problem in sorted(problems)] == [
        *("causes.toml", "cautions.toml", "checks.toml", "measurements.toml")
    ]


def test_a_field_that_cannot_be_read_is_one_problem_only(edit: Edit) -> None:
    problems = problems_of(edit("measurements.toml", f"edges = {ANY_LIST}", 'edges = "rising"'))
    assert len(problems) == 1


def test_missing_files_are_told_without_a_trail_of_broken_references(copy: Path) -> None:
    (copy / "causes.toml").unlink()
    (copy / "sources.toml").write_bytes(b"\xff\xfe\x00")
    problems = problems_of(copy)
    assert [problem.split(":")[0] for problem in problems] == ["causes.toml", "sources.toml"]


def test_a_huge_file_is_refused_unread(copy: Path) -> None:
    (copy / "checks.toml").write_bytes(b"#" * (LARGEST_FILE_BYTES + 1))
    assert "larger" in problems_of(copy)[0]


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    assert "no such folder" in problems_of(tmp_path / "nowhere")[0]


def test_hypotheses_put_corner_causes_at_every_corner(rulebook: Rulebook) -> None:
    corners = [hypothesis.corner for hypothesis in rulebook.hypotheses if hypothesis.cause == "air-gap"]
    assert tuple(corners) == CORNERS
