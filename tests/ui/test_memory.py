"""The window remembers a mapping that was confirmed in it, says so, and never fails for the store's sake."""

from __future__ import annotations

from pathlib import Path

import pytest

from triage.corners import CORNERS
from triage.logs import ReadOptions, read_log
from triage.mapping_store import load_mappings, store_path
from ui.memory import keep, recall
from ui.state.opening import OpenOrder, ReadingAnswers

MAPPING = dict(zip(CORNERS, "ABCD", strict=True))


@pytest.fixture
def order(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> OpenOrder:
    for name in ("XDG_CONFIG_HOME", "APPDATA"):
        monkeypatch.setenv(name, str(tmp_path / "settings"))
    rows = [f"{n * 0.02:.2f},{n % 90},{n % 90},{n % 90 + 1},{n % 90 + 2}" for n in range(400)]
    path = tmp_path / "odd.csv"
    path.write_text("\n".join(["time_s,A,B,C,D", *rows]), "utf-8")
    return OpenOrder((str(path),))


def test_what_was_confirmed_is_remembered_and_offered_again(order: OpenOrder) -> None:
    answered = order.with_answers(ReadingAnswers(MAPPING, "km/h"))
    log = read_log(answered.files, answered.options)
    assert [notice.code for notice in keep(answered, log)] == ["mapping-remembered"]
    options, heard = recall(order)
    assert heard == []
    assert read_log(order.files, options).wheels["RR"].source == "D"


def test_what_came_with_the_command_is_not_remembered(order: OpenOrder) -> None:
    given = OpenOrder(order.files, ReadOptions(mapping=MAPPING, unit="km/h"))
    assert keep(given, read_log(given.files, given.options)) == []
    assert load_mappings(store_path()) == ()


def test_a_damaged_store_is_told_and_left_aside(order: OpenOrder) -> None:
    store_path().parent.mkdir(parents=True)
    store_path().write_text("{", "utf-8")
    options, heard = recall(order)
    assert options == order.options
    assert "mappings.json" in heard[0].message
    assert "\n" not in heard[0].message
    answered = order.with_answers(ReadingAnswers(MAPPING, "km/h"))
    said = keep(answered, read_log(answered.files, answered.options))
    assert "could not be remembered" in said[0].message
