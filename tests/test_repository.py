"""The repository as a whole: what lies in it, and that its texts and its code say the same."""

from __future__ import annotations

import ast
import re
import shutil
import subprocess
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from triage.evidence.rulebook import load_rulebook
from triage.simulator.faults import FAULT_MODELS

ROOT = Path(__file__).resolve().parents[1]

TOP_LEVEL = {
    ".ci",
    ".gitignore",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "constraints.txt",
    "pyproject.toml",
    "rules",
    "sample_logs",
    "tests",
    "triage",
    "ui",
}

CAUSES = (
    "encoder-debris",
    "encoder-damage",
    "encoder-runout",
    "encoder-mismatch",
    "air-gap",
    "sensor-fault",
    "harness-fault",
    "bearing-play",
    "bearing-roughness",
    "tyre-size",
    "channels-swapped",
    "common-cause",
    "no-fault-found",
    "other",
)
"""What other programs may rely on finding in a ranking."""

WARNING_CODES = {
    "clock-went-back",
    "clock-reset",
    "duplicate-instants",
    "gaps-in-log",
    "invalid-samples",
    "unit-assumed",
    "unit-doubtful",
    "decimal-comma",
    "low-rate",
    "too-short",
    "no-motion",
    "coarse-resolution",
    "message-on-two-buses",
    "log-incomplete",
    "frames-skipped",
    "mapping-guessed",
    "sign-doubtful",
    "stuck-channel",
}
"""What other programs may rely on; there may be more."""


@pytest.fixture(scope="module")
def files() -> list[Path]:
    """Everything that belongs to the repository, caches and the like left out."""
    if shutil.which("git") is None or not (ROOT / ".git").exists():
        pytest.skip("needs a git checkout to tell the repository's files from others")
    command = [
        "git",
        "-c",
        "safe.directory=*",
        "ls-files",
        "-z",
        "--cached",
        "--others",
        "--exclude-standard",
    ]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    found = [ROOT / name for name in done.stdout.split("\0") if name]
    return [path for path in found if path.is_file()]


def section(text: str, name: str) -> str:
    """Lines of README.md between the marks of a table that is held against the code."""
    begin, end = f"<!-- {name} -->", f"<!-- end {name} -->"
    assert text.count(begin) == text.count(end) == 1, name
    return text.split(begin)[1].split(end, maxsplit=1)[0]


def first_cells(table: str) -> list[str]:
    return re.findall(r"^\| `([^`]+)` \|", table, re.MULTILINE)


def readme() -> str:
    return (ROOT / "README.md").read_text("utf-8")


def test_top_level_holds_nothing_else(files: list[Path]) -> None:
    assert {path.relative_to(ROOT).parts[0] for path in files} == TOP_LEVEL


def texts(files: list[Path]) -> Iterator[tuple[Path, str]]:
    for path in files:
        if path.suffix not in (".png", ".gz", ".qm") and path != Path(__file__).resolve():
            yield path, path.read_text("utf-8")


def test_no_text_knows_this_machine_or_a_registry(files: list[Path]) -> None:
    machine = re.compile(r"(?<![\w.])/(?:work|home|Users|opt|root)/\w")
    registry = re.compile(
        r"pypi|pythonhosted|index-url|extra-index|find-links|npmjs|deb\.debian", re.IGNORECASE
    )
    guilty = [
        f"{path.relative_to(ROOT)}: {found.group()}"
        for path, text in texts(files)
        for pattern in (machine, registry)
        if (found := pattern.search(text)) is not None
    ]
    assert not guilty


def test_every_code_file_is_short(files: list[Path]) -> None:
    code = [path for path in files if path.suffix == ".py"]
    assert len(code) > 150
    long = [path.name for path in code if len(path.read_text("utf-8").splitlines()) >= 400]
    assert not long


def test_the_checks_run_the_test_command_of_the_readme() -> None:
    command = "bash .ci/prepare test && QT_QPA_PLATFORM=offscreen .venv/bin/python -m pytest"
    assert f"    {command}\n" in readme()
    assert f"bash -c '{command}'\n" in (ROOT / ".ci" / "run").read_text("utf-8")


def test_files_named_in_the_texts_exist() -> None:
    for name in ("README.md", "DEVELOPERS.md"):
        text = (ROOT / name).read_text("utf-8")
        links = [target for target in re.findall(r"\]\(([^)#]+)\)", text) if "://" not in target]
        samples = re.findall(r"sample_logs/[\w.-]+\.csv(?:\.gz)?", text)
        assert [target for target in (*links, *samples) if not (ROOT / target).exists()] == []


def notice_codes(path: Path) -> set[str]:
    calls = [node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(node, ast.Call)]
    made = [call for call in calls if getattr(call.func, "id", getattr(call.func, "attr", "")) == "Notice"]
    codes = [call.args[0] for call in made]
    assert all(isinstance(code, ast.Constant) for code in codes), (
        f"{path}: the code of a notice must stand there"
    )
    return {str(code.value) for code in codes if isinstance(code, ast.Constant)}


def test_readme_tells_every_warning_code() -> None:
    in_code = set().union(*(notice_codes(path) for path in (ROOT / "triage").rglob("*.py")))
    told = first_cells(section(readme(), "warning codes"))
    assert sorted(told) == sorted(in_code)
    assert in_code >= WARNING_CODES


def test_readme_tells_every_check_and_outcome() -> None:
    rows = re.findall(r"^\| `([^`]+)` \| (.*) \|$", section(readme(), "checks"), re.MULTILINE)
    told = {check: re.findall(r"`([^`]+)`", outcomes) for check, outcomes in rows}
    assert told == {check.id: list(check.outcomes) for check in load_rulebook().checks.values()}


def test_readme_tells_every_sample_log() -> None:
    index = tomllib.loads((ROOT / "sample_logs" / "INDEX.toml").read_text("utf-8"))
    assert first_cells(section(readme(), "sample logs")) == [log["file"] for log in index["log"]]
    assert {path.name for path in (ROOT / "sample_logs").glob("*.csv*")} == {
        log["file"] for log in index["log"]
    }


def test_every_cause_has_its_row_and_its_model() -> None:
    causes = tomllib.loads((ROOT / "rules" / "causes.toml").read_text("utf-8"))["cause"]
    assert sorted(causes) == sorted(CAUSES)
    assert {model.cause for model in FAULT_MODELS} == set(CAUSES) - {"other"}


def test_the_rule_book_holds_no_code() -> None:
    held = {path.name for path in (ROOT / "rules").iterdir() if path.is_file()}
    assert {name for name in held if not name.endswith(".toml")} == {"__init__.py"}
    body = ast.parse((ROOT / "rules" / "__init__.py").read_text("utf-8")).body
    assert len(body) == 1
    assert ast.get_docstring(ast.parse((ROOT / "rules" / "__init__.py").read_text("utf-8")))


def test_every_dependency_is_used_and_pinned() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    pinned = {
        line.split("==")[0].lower().replace("_", "-")
        for line in (ROOT / "constraints.txt").read_text("utf-8").splitlines()
        if "==" in line
    }
    modules = {"python-can": "can", "pyside6-essentials": "PySide6"}
    used = set().union(
        *(imported_names(path) for part in ("triage", "ui") for path in (ROOT / part).rglob("*.py"))
    )
    for requirement in project["dependencies"]:
        name = re.split(r"[<>=]", requirement)[0].lower()
        assert name in pinned, f"{name} has no version in constraints.txt"
        assert modules.get(name, name) in used, f"{name} is imported nowhere"


def imported_names(path: Path) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name.split(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            names.add(node.module.split(".")[0])
    return names
