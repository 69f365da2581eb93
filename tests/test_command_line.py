from __future__ import annotations

import json
import os
import subprocess
import sys
import types
from pathlib import Path

import numpy as np
import pytest

from triage import command_line
from triage.command_arguments import build_parser, circumference_of_radius, read_options
from triage.command_line import main
from triage.corners import CORNERS
from triage.errors import OutputError
from triage.output_file import whole_file
from triage.progress import Cancelled

ROOT = Path(__file__).resolve().parents[1]
HEADING = "time_s,FL_kmh,FR_kmh,RL_kmh,RR_kmh"


def drive_table(heading: str = HEADING, seconds: float = 20.0) -> str:
    time_s = np.arange(0, seconds, 0.02)
    speed = 40 * np.clip(np.minimum(time_s / 5, (seconds - time_s) / 5), 0, 1)
    rows = [
        heading,
        *(
            f"{t:.2f},{v:.2f},{v + 0.02:.2f},{v:.2f},{v + 0.01:.2f}"
            for t, v in zip(time_s, speed, strict=True)
        ),
    ]
    return "\n".join(rows)


@pytest.fixture
def log(tmp_path: Path) -> str:
    path = tmp_path / "Prüffahrt #1 [€].csv"
    path.write_text(drive_table(), "utf-8")
    return str(path)


def as_process(*arguments: str, stdout=subprocess.PIPE) -> subprocess.CompletedProcess[bytes]:
    kept = {
        name: value for name, value in os.environ.items() if not name.startswith(("LC_", "LANG", "PYTHON"))
    }
    bare = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-m", "triage", *arguments]
    return subprocess.run(
        command, stdout=stdout, stderr=subprocess.PIPE, env=kept | bare, timeout=120, check=False
    )


def test_inspect_json_is_one_document_and_nothing_else(log, capsys) -> None:
    assert main(["inspect", log, "--json"]) == 0
    out, err = capsys.readouterr()
    seen = json.loads(out)
    assert seen["schema"] == "wheel-triage/inspect/1"
    assert seen["file"] == log
    assert err == ""


def test_inspect_text_shows_where_each_wheel_was_read_from(log, capsys) -> None:
    assert main(["inspect", log]) == 0
    out = capsys.readouterr().out
    assert all(f"{corner}_kmh" in out for corner in CORNERS)


def test_rank_gives_a_verdict_that_sums_to_one(log, capsys) -> None:
    assert main(["rank", log, "--json"]) == 0
    verdict = json.loads(capsys.readouterr().out)
    assert verdict["schema"] == "wheel-triage/rank/1"
    assert sum(line["probability"] for line in verdict["ranking"]) == pytest.approx(1.0, abs=1e-9)
    assert main(["rank", log]) == 0
    assert capsys.readouterr().out


def test_rank_takes_in_the_answers_of_a_walk_when_told_to(log, capsys, tmp_path) -> None:
    path = tmp_path / "kept.toml"
    path.write_text(
        'schema = "wheel-triage/answers/1"\n\n[[answer]]\nkind = "check"\nid = "rock-wheel"\n'
        'place = "FL"\nanswer = "none"\n',
        encoding="utf-8",
    )
    assert main(["rank", log, "--json", "--answers", str(path)]) == 0
    verdict = json.loads(capsys.readouterr().out)
    assert verdict["answers"] == {"file": str(path), "taken": 1}
    assert "rock-wheel@FL" in {finding["id"] for finding in verdict["findings"]}
    assert main(["rank", log, "--answers", str(path)]) == 0
    assert "In this verdict: 1 answer of" in capsys.readouterr().out
    assert main(["rank", log, "--answers", str(tmp_path / "none.toml")]) == 3


def test_unknown_check_is_an_unusable_input(log, capsys) -> None:
    assert main(["rank", log, "--observe", "no-such-check=maybe"]) == 3
    assert "no-such-check" in capsys.readouterr().err


@pytest.mark.parametrize(
    "arguments",
    [
        ["nonsense"],
        ["inspect"],
        ["inspect", "x.csv", "--unit", "furlong"],
        ["inspect", "x.csv", "--tyre-radius", "abc"],
        ["inspect", "x.csv", "--tyre-radius", "31.2"],
        ["inspect", "x.csv", "--tyre-radius", "nan"],
        ["inspect", "x.csv", "--map", "XX=y"],
        ["inspect", "x.csv", "--map", "FL="],
        ["rank", "x.csv", "--observe", "nothing"],
        ["simulate", "--cause", "encoder-debris"],
        ["simulate", "--cause", "encoder-debris", "--corner", "XX", "--out", "x.csv"],
    ],
)
def test_wrong_use_is_2(arguments, capsys) -> None:
    assert main(arguments) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert "usage" in err


@pytest.mark.parametrize("arguments", [["--help"], ["--version"], ["inspect", "--help"]])
def test_help_is_0(arguments, capsys) -> None:
    assert main(arguments) == 0
    assert capsys.readouterr().out


@pytest.mark.parametrize(
    ("content", "word"),
    [
        (b"", "empty"),
        (b"\x00\x01\x02" * 999, "binary"),
        (b"hello", "recording"),
        (HEADING.encode() + b"\n0,1,2,3,4\n", "single row"),
        (HEADING.encode() + b"".join(b"\n%d,NaN,NaN,NaN,NaN" % i for i in range(50)), "no valid number"),
        (b"time_s,rpm\n" + b"".join(b"%d,900\n" % i for i in range(50)), "wheel"),
    ],
)
@pytest.mark.parametrize("verb", ["inspect", "rank"])
def test_unusable_input_is_3_with_file_and_reason(tmp_path, capsys, verb, content, word) -> None:
    path = tmp_path / "bad.csv"
    path.write_bytes(content)
    assert main([verb, str(path), "--json"]) == 3
    out, err = capsys.readouterr()
    assert out == ""
    assert str(path) in err
    assert word in err
    assert len(err.splitlines()) <= 6


def test_missing_file_folder_and_missing_database_are_3(tmp_path, log, capsys) -> None:
    assert main(["inspect", str(tmp_path / "none.csv")]) == 3
    (tmp_path / "empty").mkdir()
    assert main(["inspect", str(tmp_path / "empty")]) == 3
    assert main(["inspect", str(tmp_path)]) == 0  # the one recording in it
    assert main(["inspect", log, "--dbc", str(tmp_path / "none.dbc")]) == 3
    assert main(["inspect", log, "--vehicle", str(tmp_path / "none.toml")]) == 3
    assert "none.toml" in capsys.readouterr().err


@pytest.mark.parametrize("typed", ["0.312", "0,312", " 0.312 "])
def test_tyre_radius_with_point_or_comma(typed) -> None:
    assert circumference_of_radius(typed) == pytest.approx(2 * np.pi * 0.312)


def test_rotation_with_the_radius_as_typed(tmp_path, capsys) -> None:
    path = tmp_path / "omega.csv"
    path.write_text(drive_table("t_s,w_FL_rad_s,w_FR_rad_s,w_RL_rad_s,w_RR_rad_s"))
    assert main(["inspect", str(path), "--json"]) == 3
    assert "--tyre-radius" in capsys.readouterr().err
    assert main(["inspect", str(path), "--json", "--tyre-radius", "0,312"]) == 0
    wheel = json.loads(capsys.readouterr().out)["wheels"]["FL"]
    assert wheel["max_mps"] == pytest.approx(40 * 0.312, abs=0.01)


def test_options_reach_the_reader(tmp_path) -> None:
    vehicle = tmp_path / "car.toml"
    vehicle.write_text("circumference_m = 1.9\npulses_per_rev = 43\n")
    given = build_parser("0").parse_args(
        [
            "inspect",
            "a",
            "b",
            "--dbc",
            "x",
            "--dbc",
            "y",
            "--map",
            "fl=M.S",
            "--unit",
            "mph",
            "--vehicle",
            str(vehicle),
        ]
    )
    options = read_options(given, command_line._vehicle(given))
    assert options.databases == ("x", "y")
    assert options.mapping == {"FL": "M.S"}
    assert (options.unit, options.circumference_m, options.pulses_per_rev) == ("mph", 1.9, 43)
    given.tyre_radius = 2.0
    assert read_options(given, command_line._vehicle(given)).circumference_m == 2.0


@pytest.mark.parametrize("stop", [KeyboardInterrupt, Cancelled])
def test_stopping_is_130(log, capsys, monkeypatch, stop) -> None:
    def stopped(*_: object) -> None:
        raise stop

    monkeypatch.setattr(command_line, "read_log", stopped)
    assert main(["inspect", log]) == 130
    assert "stopped" in capsys.readouterr().err


def test_no_verb_opens_the_window(monkeypatch) -> None:
    opened: list[object] = []
    monkeypatch.setitem(command_line._VERBS, "window", lambda given: opened.append(given.log) or 0)
    assert main([]) == 0
    assert main(["window", "a.csv"]) == 0
    assert opened == [[], ["a.csv"]]


def test_the_window_hears_of_the_car(monkeypatch, tmp_path) -> None:
    car = tmp_path / "car.toml"
    car.write_text("track_m = 1.62\ncircumference_m = 2.05\n", "utf-8")
    opened: list[tuple[object, ...]] = []
    window = types.ModuleType("ui.window")
    monkeypatch.setattr(window, "main", lambda *given: opened.append(given) or 0, raising=False)
    monkeypatch.setitem(sys.modules, "ui.window", window)
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    assert main(["window", "a.csv", "--vehicle", str(car)]) == 0
    files, options, vehicle = opened[0]
    assert files == ["a.csv"]
    assert options.circumference_m == 2.05
    assert vehicle.track_m == 1.62


def test_simulate_is_reproducible_and_reads_back(tmp_path, capsys) -> None:
    request = [
        "simulate",
        "--cause",
        "encoder-debris",
        "--corner",
        "FL",
        "--severity",
        "0.5",
        "--seconds",
        "20",
        "--seed",
        "7",
    ]
    for name in ("a.csv", "b.csv", "c.csv.gz"):
        assert main([*request, "--out", str(tmp_path / name)]) == 0
    assert (tmp_path / "a.csv").read_bytes() == (tmp_path / "b.csv").read_bytes()
    assert capsys.readouterr().out == ""
    assert main(["inspect", str(tmp_path / "c.csv.gz"), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["duration_s"] == pytest.approx(20, abs=0.2)


def test_simulate_writes_nothing_when_it_cannot(tmp_path, capsys) -> None:
    request = ["simulate", "--cause", "encoder-debris", "--corner", "FL", "--seconds", "20"]
    assert main([*request, "--out", str(tmp_path / "none" / "x.csv")]) == 4
    assert main([*request, "--out", str(tmp_path)]) == 4
    assert (
        main(["simulate", "--cause", "no-such-cause", "--corner", "FL", "--out", str(tmp_path / "x.csv")])
        == 2
    )
    assert list(tmp_path.iterdir()) == []


def write_half(target: Path, trouble: Exception) -> None:
    with whole_file(target) as unfinished:
        unfinished.write_text("half")
        raise trouble


def test_a_file_is_whole_or_not_at_all(tmp_path) -> None:
    target = tmp_path / "x.csv"
    target.write_text("old")
    with pytest.raises(OutputError):
        write_half(target, OSError(28, "No space left on device"))
    assert target.read_text() == "old"
    with pytest.raises(RuntimeError):
        write_half(target, RuntimeError())
    assert [path.name for path in tmp_path.iterdir()] == ["x.csv"]
    with whole_file(target) as unfinished:
        unfinished.write_text("new")
    assert target.read_text() == "new"


def test_output_is_utf8_under_a_bare_locale(log) -> None:
    done = as_process("inspect", log, "--json")
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout.decode("utf-8"))["file"] == log


def test_a_reader_that_goes_away_is_no_error(log) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    done = as_process("inspect", log, stdout=writing)
    os.close(writing)
    assert done.returncode == 0
    assert done.stderr == b""


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no /dev/full on this system")
def test_a_full_disk_is_4(log) -> None:
    with Path("/dev/full").open("w") as full:
        done = as_process("inspect", log, "--json", stdout=full)
    assert done.returncode == 4
    assert b"could not be written" in done.stderr
    assert b"Traceback" not in done.stderr


def test_the_terminal_verbs_load_no_qt(log) -> None:
    code = (
        "import sys; sys.modules['PySide6'] = None; from triage.command_line import main; "
        f"codes = [main([verb, {log!r}, '--json']) for verb in ('inspect', 'rank')]; "
        "assert not any(name.startswith(('PySide6.', 'ui')) for name in sys.modules); sys.exit(max(codes))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, timeout=120, check=False,
        env=dict(os.environ, PYTHONPATH=str(ROOT)),
    )  # fmt: skip
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize("stream", ["stdout", "stderr"])
def test_a_closed_stream_gives_no_traceback(log, monkeypatch, stream) -> None:
    monkeypatch.setattr(sys, stream, None)
    assert main(["inspect", log]) == (4 if stream == "stdout" else 0)
    assert main(["inspect", "none.csv"]) == 3


@pytest.mark.parametrize(
    "content", [b"\xff\xfe", b"a=" + b"[" * 5000, b"track_m = " + b"9" * 6000, b"track_m = nan"]
)
def test_an_unusable_vehicle_file_is_3(tmp_path, log, capsys, content) -> None:
    path = tmp_path / "car.toml"
    path.write_bytes(content)
    assert main(["inspect", log, "--vehicle", str(path)]) == 3
    assert str(path) in capsys.readouterr().err


@pytest.mark.parametrize("option", ["--vehicle", "--dbc"])
@pytest.mark.skipif(sys.platform == "win32", reason="needs a device file")
def test_a_device_is_not_read_for_ever(log, capsys, option) -> None:
    assert main(["inspect", log, option, "/dev/zero"]) == 3
    assert "/dev/zero" in capsys.readouterr().err


def test_an_output_name_that_is_too_long_is_4(tmp_path, capsys) -> None:
    out = str(tmp_path / f"{'n' * 300}.csv")
    request = ["simulate", "--cause", "no-fault-found", "--seconds", "10", "--out", out]
    assert main(request) == 4
    assert "could not be written" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="elsewhere there is always a screen")
def test_the_window_without_a_screen_is_refused(monkeypatch, capsys) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    assert main(["window"]) == 3
    assert "screen" in capsys.readouterr().err


@pytest.mark.parametrize(
    "wrong",
    [
        ["--cause", "rust"],
        ["--severity", "5"],
        ["--seconds", "-3"],
        ["--seed", "-1"],
        ["--corner", "vehicle"],
    ],
    ids=" ".join,
)
def test_a_road_test_that_cannot_be_is_wrong_use(wrong: list[str], tmp_path: Path) -> None:
    out = tmp_path / "never.csv"
    request = ["simulate", "--cause", "encoder-debris", "--corner", "FL", "--seconds", "20", *wrong]
    assert main([*request, "--out", str(out)]) == 2
    assert not out.exists()
