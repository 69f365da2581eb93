from __future__ import annotations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.errors import LogReadError, SignalMappingError
from triage.logs import ReadOptions, read_log


def table(drive, columns: dict[str, np.ndarray]) -> str:
    rows = [",".join(["time_s", *columns])]
    values = np.stack(list(columns.values()), axis=1)
    rows += [
        f"{t:.3f}," + ",".join(f"{v:.4f}" for v in row) for t, row in zip(drive.time_s, values, strict=True)
    ]
    return "\n".join(rows)


def codes(log) -> set[str]:
    return {notice.code for notice in log.notices}


def test_speeds_are_preferred_to_everything_else_with_a_corner(drive, write) -> None:
    n = drive.time_s.size
    columns = {f"press_{c.lower()}": np.full(n, 2.3) for c in CORNERS}
    columns |= {f"act_{c.lower()}": np.ones(n) for c in CORNERS}
    columns |= {f"wheel_speed_{c.lower()}_valid": np.ones(n) for c in CORNERS}
    columns |= {f"wheel_speed_{c.lower()}_kmh": drive.kmh[c] for c in CORNERS}
    columns |= {f"brake_temp_{c.lower()}": np.full(n, 80.0) for c in CORNERS}
    log = read_log([write(table(drive, columns))])
    assert {c: log.wheels[c].source for c in CORNERS} == {c: f"wheel_speed_{c.lower()}_kmh" for c in CORNERS}
    assert "mapping-guessed" not in codes(log)


def test_two_sets_that_disagree_are_a_question(drive, write) -> None:
    columns = {f"WhlSpd_{c} [km/h]": drive.kmh[c] for c in CORNERS}
    columns |= {f"OtherWhlSpd_{c} [km/h]": drive.kmh[c] * 1.3 for c in CORNERS}
    file = write(table(drive, columns))
    with pytest.raises(SignalMappingError, match="do not agree") as refused:
        read_log([file])
    assert len(refused.value.candidates) == 8
    assert "--map" in refused.value.hint
    mapping = {c: f"OtherWhlSpd_{c} [km/h]" for c in CORNERS}
    log = read_log([file], ReadOptions(mapping=mapping))
    np.testing.assert_allclose(log.wheels["RL"].speed_mps, drive.kmh["RL"] * 1.3 / 3.6, atol=1e-4)


def test_two_sets_that_agree_are_taken_and_said(drive, write) -> None:
    columns = {f"WhlSpd_{c} [km/h]": drive.kmh[c] for c in CORNERS}
    columns |= {f"WhlSpdCopy_{c} [km/h]": drive.kmh[c] for c in CORNERS}
    assert "mapping-guessed" in codes(read_log([write(table(drive, columns))]))


def test_four_names_built_differently_are_taken_and_said(drive, write) -> None:
    names = {
        "FL": "speed front left km/h",
        "FR": "v_fr_kmh",
        "RL": "HL [km/h]",
        "RR": "WheelSpeedRearRight [km/h]",
    }
    log = read_log([write(table(drive, {names[c]: drive.kmh[c] for c in CORNERS}))])
    assert {c: log.wheels[c].source for c in CORNERS} == names
    assert "mapping-guessed" in codes(log)


@pytest.mark.parametrize("missing", CORNERS)
def test_a_missing_wheel_is_a_question(drive, write, missing) -> None:
    columns = {f"WhlSpd_{c} [km/h]": drive.kmh[c] for c in CORNERS if c != missing}
    with pytest.raises(SignalMappingError, match=missing) as refused:
        read_log([write(table(drive, columns))])
    assert len(refused.value.candidates) == 3


def test_four_columns_that_hardly_change_are_not_taken_for_speeds(drive, write) -> None:
    columns = {c: np.full(drive.time_s.size, 2.3) + 0.001 * drive.time_s / 30 for c in CORNERS}
    with pytest.raises(SignalMappingError, match="hardly change"):
        read_log([write(table(drive, columns))])


def test_map_takes_the_place_of_names_that_say_nothing(drive, write) -> None:
    columns = {f"ch{i}": drive.kmh[c] for i, c in enumerate(CORNERS)}
    file = write(table(drive, columns))
    with pytest.raises(SignalMappingError):
        read_log([file])
    log = read_log([file], ReadOptions(mapping={c: f"CH{i}" for i, c in enumerate(CORNERS)}, unit="km/h"))
    np.testing.assert_allclose(log.wheels["RR"].speed_mps, drive.mps["RR"], atol=1e-4)


def test_map_of_one_wheel_leaves_the_others_to_us(drive, write) -> None:
    columns = {f"v_{c.lower()}_kmh": drive.kmh[c] for c in CORNERS} | {"spare_kmh": drive.kmh["FL"] + 1}
    log = read_log([write(table(drive, columns))], ReadOptions(mapping={"FL": "spare_kmh"}))
    assert log.wheels["FL"].source == "spare_kmh"
    assert log.wheels["FR"].source == "v_fr_kmh"


@pytest.mark.parametrize("name", ["nothing_like_it", "v_fr_kmh"])
def test_map_to_nothing_or_twice_is_refused(drive, write, name) -> None:
    columns = {f"v_{c.lower()}_kmh": drive.kmh[c] for c in CORNERS}
    with pytest.raises(SignalMappingError) as refused:
        read_log([write(table(drive, columns))], ReadOptions(mapping={"FL": name}))
    assert refused.value.candidates


def test_different_units_on_one_axle_are_refused(drive, write) -> None:
    names = {"FL": "v_fl_kmh", "FR": "v_fr_kmh", "RL": "v_rl_mph", "RR": "v_rr_mph"}
    with pytest.raises(SignalMappingError, match="different units"):
        read_log([write(table(drive, {names[c]: drive.kmh[c] for c in CORNERS}))])


def test_signals_of_two_messages_make_one_set(drive, write) -> None:
    text = 'VERSION ""\nNS_ :\nBS_:\nBU_: E\n'
    for identifier, axle in ((256, "F"), (257, "R")):
        text += f"BO_ {identifier} WHL_{axle}: 4 E\n"
        for place, side in enumerate("LR"):
            text += f' SG_ Spd{axle}{side} : {16 * place}|16@1+ (0.01,0) [0|0] "km/h" E\n'
    rows = ["time,id,data"]
    for t, d in zip(drive.time_s, drive.payloads(), strict=True):
        rows += [f"{t:.3f},100,{d[:4].hex()}", f"{t + 0.001:.3f},101,{d[4:].hex()}"]
    log = read_log([write("\n".join(rows))], ReadOptions(databases=(write(text, "two.dbc"),)))
    assert log.wheels["RR"].source == "WHL_R.SpdRR"
    np.testing.assert_allclose(log.wheels["RR"].speed_mps, drive.mps["RR"], atol=1e-9)


def test_any_signal_of_the_database_can_be_mapped(drive, write) -> None:
    text = 'VERSION ""\nNS_ :\nBS_:\nBU_: E\nBO_ 416 X: 8 E\n'
    for place in range(4):
        text += f' SG_ S{place} : {16 * place}|16@1+ (0.01,0) [0|0] "" E\n'
    rows = [
        "time,id,data",
        *(f"{t:.3f},1A0,{d.hex()}" for t, d in zip(drive.time_s, drive.payloads(), strict=True)),
    ]
    mapping = {c: f"X.S{i}" for i, c in enumerate(CORNERS)}
    options = ReadOptions(databases=(write(text, "x.dbc"),), mapping=mapping, unit="km/h")
    log = read_log([write("\n".join(rows))], options)
    np.testing.assert_allclose(log.wheels["FR"].speed_mps, drive.mps["FR"], atol=1e-9)


@pytest.mark.parametrize(
    ("heading", "said"),
    [
        ("FL,FR,RL", "no signal was found for the rear right wheel"),
        ("FL,FL,FR,RL,RR", "several signals fit the front left wheel"),
        (",".join("v_" + corner + "x" * 5000 for corner in CORNERS), "no signal was found"),
    ],
)
def test_the_question_names_the_wheel_that_is_in_doubt_and_stays_short(write, heading, said) -> None:
    width = heading.count(",") + 1
    level = 40 + 5 * np.sin(np.arange(300) / 50)
    rows = [f"{0.02 * i:.2f}," + ",".join(f"{level[i] + k:.2f}" for k in range(width)) for i in range(300)]
    with pytest.raises(SignalMappingError, match=said) as refused:
        read_log([write("\n".join(["time_s," + heading, *rows]))])
    assert len(str(refused.value)) < 1000


def test_a_column_that_stands_there_twice_is_no_doubt(drive, write, as_table) -> None:
    lines = [f"{line},{line.split(',')[1]}" for line in as_table(drive).splitlines()]
    assert read_log([write("\n".join(lines))]).wheels["FL"].valid_count == drive.time_s.size


def test_the_same_part_twice_is_refused(drive, write) -> None:
    file = write(table(drive, {f"v_{c.lower()}_kmh": drive.kmh[c] for c in CORNERS}))
    with pytest.raises(LogReadError, match="given twice"):
        read_log([file, file])
