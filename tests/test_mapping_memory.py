"""A mapping that was confirmed is used again, said, exported, imported and forgotten."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from triage.command_line import main
from triage.corners import CORNERS
from triage.errors import OutputError, SettingsError
from triage.logs import ReadOptions, read_log
from triage.logs.remembered import RememberedMapping, find_remembered, signal_names
from triage.mapping_store import load_mappings, merged, save_mappings, store_path

NAMED = ("A", "B", "C", "D")
MAP = [text for pair in zip(CORNERS, NAMED, strict=True) for text in ("--map", "=".join(pair))]
DBC = """VERSION ""

NS_ :

BS_:

BU_: ECU

BO_ 416 SPD: 8 ECU
 SG_ Sig_1 : 0|16@1+ (0.01,0) [0|655.35] "" ECU
 SG_ Sig_2 : 16|16@1+ (0.01,0) [0|655.35] "" ECU
 SG_ Sig_3 : 32|16@1+ (0.01,0) [0|655.35] "" ECU
 SG_ Sig_4 : 48|16@1+ (0.01,0) [0|655.35] "" ECU
"""


@pytest.fixture(autouse=True)
def settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "settings"
    for name in ("XDG_CONFIG_HOME", "APPDATA"):
        monkeypatch.setenv(name, str(folder))
    return folder


@pytest.fixture
def log(tmp_path: Path) -> str:
    rows = [f"{n * 0.02:.2f},{n % 90},{n % 90},{n % 90 + 1},{n % 90 + 2}" for n in range(400)]
    path = tmp_path / "odd.csv"
    path.write_text("\n".join(["time_s,A,B,C,D", *rows]), "utf-8")
    return str(path)


def warnings_of(log: str, capsys: pytest.CaptureFixture[str], *more: str) -> list[str]:
    assert main(["inspect", log, "--json", *more]) == 0
    return [warning["code"] for warning in json.loads(capsys.readouterr().out)["warnings"]]


def remember(log: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["inspect", log, *MAP, "--unit", "km/h", "--remember"]) == 0
    capsys.readouterr()


def test_a_remembered_mapping_is_used_and_said(log, capsys) -> None:
    assert main(["inspect", log]) == 3
    remember(log, capsys)
    assert "mapping-remembered" in warnings_of(log, capsys)
    assert "mapping-remembered" not in warnings_of(log, capsys, *MAP)


def test_nothing_is_remembered_without_being_asked(log, capsys, settings) -> None:
    warnings_of(log, capsys, *MAP)
    assert not settings.exists()


def test_memory_can_be_left_aside(log, capsys) -> None:
    remember(log, capsys)
    assert main(["inspect", log, "--no-memory"]) == 3


def test_another_set_of_columns_is_another_log(log, capsys) -> None:
    remember(log, capsys)
    text = Path(log).read_text("utf-8")
    Path(log).write_text(text.replace("time_s,A,", "time_s,Z,"), "utf-8")
    assert main(["inspect", log]) == 3


def test_what_the_user_maps_now_goes_before_what_is_remembered(log, capsys) -> None:
    remember(log, capsys)
    turned = ["--map", "FL=B", "--map", "FR=A", "--map", "RL=C", "--map", "RR=D"]
    assert main(["inspect", log, "--json", *turned, "--remember"]) == 0
    assert json.loads(capsys.readouterr().out)["wheels"]["FL"]["source"] == "B"
    assert main(["inspect", log, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["wheels"]["FL"]["source"] == "B"


def test_export_forget_import_is_a_round_trip(log, capsys, tmp_path) -> None:
    remember(log, capsys)
    before = load_mappings(store_path())
    out = str(tmp_path / "mine.json")
    assert main(["mappings", "export", out]) == 0
    assert main(["mappings", "forget", before[0].fingerprint]) == 0
    assert load_mappings(store_path()) == ()
    assert main(["inspect", log]) == 3
    assert main(["mappings", "import", out]) == 0
    assert load_mappings(store_path()) == before
    capsys.readouterr()
    assert main(["mappings", "list"]) == 0
    assert before[0].fingerprint in capsys.readouterr().out


@pytest.mark.parametrize("words", [["forget"], ["export"], ["import"]])
def test_wrong_use_is_told(words, capsys) -> None:
    assert main(["mappings", *words]) == 2
    assert "needs" in capsys.readouterr().err


def test_unknown_ones_are_refused(capsys) -> None:
    assert main(["mappings", "forget", "abc"]) == 3
    assert main(["mappings", "import", "nowhere.json"]) == 3


@pytest.mark.parametrize(
    "text",
    [
        "{",
        "[]",
        '{"schema": "wheel-triage/mappings/2", "mappings": []}',
        '{"schema": "wheel-triage/mappings/1", "mappings": 3}',
        '{"schema": "wheel-triage/mappings/1", "mappings": [7]}',
        '{"schema": "wheel-triage/mappings/1", "mappings": [{"signals": ["a"], "wheels": {"XX": "a"}}]}',
        '{"schema": "wheel-triage/mappings/1", "mappings": [{"signals": ["a"], "wheels": {"FL": 3}}]}',
        '{"schema": "wheel-triage/mappings/1", "mappings": [{"signals": "a", "wheels": {"FL": "a"}}]}',
        "[" * 100_000,
        "\x00\x01",
    ],
)
def test_a_damaged_store_is_told_with_its_file(text, log, capsys) -> None:
    path = store_path()
    path.parent.mkdir(parents=True)
    path.write_text(text, "utf-8")
    assert main(["inspect", log]) == 3
    said = capsys.readouterr().err
    assert "mappings.json" in said
    assert "--no-memory" in said
    assert main(["inspect", log, *MAP]) == 0


def test_a_store_that_is_a_folder_is_refused(capsys, log) -> None:
    store_path().mkdir(parents=True)
    with pytest.raises((SettingsError, OutputError)):
        save_mappings(store_path(), [])
    assert main(["inspect", log]) == 3


def test_folders_follow_the_rule_of_the_platform() -> None:
    home = {"HOME": "/h", "USERPROFILE": "/h"}
    assert store_path(home, "linux").as_posix() == "/h/.config/wheel-triage/mappings.json"
    assert store_path({**home, "XDG_CONFIG_HOME": "relative"}, "linux").as_posix().startswith("/h/.config")
    assert "Application Support" in store_path(home, "darwin").as_posix()
    assert store_path({**home, "APPDATA": "/a"}, "win32").as_posix() == "/a/wheel-triage/mappings.json"


def test_of_two_for_the_same_signals_the_fresh_one_stays() -> None:
    old, new = (RememberedMapping(("a", "b"), {"FL": name}) for name in "ab")
    assert merged([old], [new]) == (new,)


def test_a_mapping_of_frames_is_found_beside_others(tmp_path: Path) -> None:
    dbc, log = tmp_path / "x.dbc", tmp_path / "x.log"
    dbc.write_text(DBC, "utf-8")
    numbers = [bytes([n % 250, 0, n % 250, 0, n % 250, 1, n % 250, 2]) for n in range(400)]
    log.write_text("".join(f"({1e9 + n * 0.02:.6f}) can0 1A0#{b.hex()}\n" for n, b in enumerate(numbers)))
    mapping = {corner: f"SPD.Sig_{n}" for n, corner in enumerate(CORNERS, 1)}
    options = ReadOptions(databases=(str(dbc),), mapping=mapping, unit="km/h")
    confirmed = read_log([log], options)
    one = RememberedMapping(confirmed.signal_names, mapping, "km/h", "2026-03-10")
    other = RememberedMapping(("x",), dict.fromkeys(CORNERS, "SPD.Sig_2"))
    again = read_log([log], ReadOptions(databases=(str(dbc),), remembered=(one, other)))
    assert {c: t.source for c, t in again.wheels.items()} == {
        c: t.source for c, t in confirmed.wheels.items()
    }
    assert "mapping-remembered" in {notice.code for notice in again.notices}


def test_names_only_others_brought_in_do_not_hide_a_mapping() -> None:
    one = RememberedMapping(signal_names(["a", "b"]), {"FL": "a"})
    other = RememberedMapping(("c",), {"FL": "c@1"})
    assert find_remembered((one, other), ("a", "b", "c")) is one
    assert find_remembered((one,), ("a", "b", "c")) is None
    assert find_remembered((one,), ("a",)) is None
