"""Writing the likelihood table: what is written can be loaded, and never half."""

from __future__ import annotations

import shutil
import tomllib
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.errors import OutputError
from triage.evidence.likelihoods import LikelihoodTable, format_likelihoods, normalised_row, write_likelihoods
from triage.evidence.rulebook import Rulebook, load_rulebook

counts = st.lists(st.floats(0.0, 1e6), min_size=2, max_size=12).filter(lambda row: sum(row) > 0.0)


@given(counts)
def test_any_counts_become_a_row_the_rule_book_accepts(weights: list[float]) -> None:
    row = normalised_row(tuple(weights))
    assert abs(sum(row) - 1.0) < 1e-9
    assert all(0.0 < share < 1.0 for share in row)
    total = sum(weights)
    assert all(abs(share - weight / total) < 2e-4 for share, weight in zip(row, weights, strict=True))


@pytest.mark.parametrize(
    "weights", [(), (1.0,), (0.0, 0.0), (1.0, -1.0), (float("nan"), 1.0), (float("inf"), 1.0)]
)
def test_what_is_no_row_is_refused(weights: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="at least two finite weights"):
        normalised_row(weights)


def test_writing_what_was_loaded_changes_nothing(rulebook: Rulebook, tmp_path: Path) -> None:
    folder = tmp_path / "rules"
    shutil.copytree(Path(str(files("rules"))), folder, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    write_likelihoods(folder / "likelihoods.toml", rulebook.likelihoods, rulebook.variants)
    again = load_rulebook(folder)
    assert again.likelihoods == rulebook.likelihoods
    assert again.variants == rulebook.variants
    assert list(again.variants) == list(rulebook.variants)
    assert sorted(file.name for file in folder.iterdir()) == sorted(
        file.name for file in Path(str(files("rules"))).iterdir() if file.suffix == ".toml"
    )


def test_any_evidence_text_survives() -> None:
    evidence = 'python -m x "a\\b"\nsecond line\ttab\x01\x7f 𝔸'
    table = LikelihoodTable("simulated", evidence, {"sound": (0.5, 0.5), "other": (0.4, 0.6)})
    read = tomllib.loads(format_likelihoods({"dip-share": table}))["likelihood"]["dip-share"]
    assert read["evidence"] == evidence
    assert read["rows"] == {"sound": [0.5, 0.5], "other": [0.4, 0.6]}


def test_a_weight_is_written_where_it_is_not_one() -> None:
    table = LikelihoodTable("simulated", "x", {"sound": (0.5, 0.5), "other": (0.5, 0.5)}, weight=0.31)
    text = format_likelihoods({"dip-share": table, "noise-ratio": replace(table, weight=1.0)})
    read = tomllib.loads(text)["likelihood"]
    assert read["dip-share"]["weight"] == 0.31
    assert "weight" not in read["noise-ratio"]


def test_shares_of_variants_are_written_as_they_are_read() -> None:
    table = LikelihoodTable("simulated", "x", {"sound": (0.5, 0.5), "other": (0.5, 0.5)})
    shares = {"air-gap": (0.25, 0.75), "sensor-fault": (1.0, 1.0, 2.0)}
    read = tomllib.loads(format_likelihoods({"dip-share": table}, shares))
    assert read["variants"] == {"air-gap": [0.25, 0.75], "sensor-fault": [0.25, 0.25, 0.5]}
    assert set(read["likelihood"]) == {"dip-share"}
    assert "variants" not in tomllib.loads(format_likelihoods({"dip-share": table}, {}))


def test_a_folder_that_is_not_there_is_an_output_error(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="could not be written"):
        write_likelihoods(tmp_path / "nowhere" / "likelihoods.toml", {})


def test_a_failed_write_leaves_the_old_file(tmp_path: Path) -> None:
    file = tmp_path / "likelihoods.toml"
    file.write_text("old", "utf-8")
    bad = LikelihoodTable("simulated", "x", {"sound": (0.0, 0.0)})
    with pytest.raises(ValueError, match="weights"):
        write_likelihoods(file, {"dip-share": bad})
    assert [entry.name for entry in tmp_path.iterdir()] == ["likelihoods.toml"]
    assert file.read_text("utf-8") == "old"
