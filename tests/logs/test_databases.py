"""Signal databases of all kinds, several at once, and hostile ones."""

from __future__ import annotations

import io
import time

import cantools
import numpy as np
import pytest

from triage.errors import DatabaseError, SignalMappingError
from triage.logs import ReadOptions, databases, read_log
from triage.logs.databases import load_databases
from triage.logs.frames import EXTENDED_FLAG

KCD = """<?xml version="1.0" encoding="UTF-8"?>
<NetworkDefinition xmlns="http://kayak.2codeornot2code.org/1.0"><Document/><Bus name="Main">
<Message id="0x1A0" length="8" name="WHL_SPD">{signals}</Message></Bus></NetworkDefinition>"""


def kcd() -> str:
    signals = "".join(
        f'<Signal name="WhlSpd_{corner}" offset="{16 * place}" length="16">'
        f'<Value type="unsigned" slope="0.01" unit="km/h" max="327.67"/></Signal>'
        for place, corner in enumerate(("FL", "FR", "RL", "RR"))
    )
    return KCD.format(signals=signals)


def sym(wheels_dbc_text: str) -> str:
    return cantools.database.load_string(wheels_dbc_text, "dbc").as_sym_string()


def arxml(wheels_dbc_text: str) -> str:
    formats = pytest.importorskip("canmatrix.formats")
    plain = wheels_dbc_text.replace('" ECU', '" Vector__XXX')
    out = io.BytesIO()
    formats.dump(formats.loads(plain, "dbc", flat_import=True), out, "arxml", arVersion="3.2.3")
    return out.getvalue().decode()


def candump(drive, identifier: str = "1A0", bus: str = "can0") -> str:
    rows = zip(drive.time_s, drive.payloads(), strict=True)
    return "".join(f"({1.77e9 + t:.6f}) {bus} {identifier}#{d.hex()}\n" for t, d in rows)


def codes(log) -> set[str]:
    return {notice.code for notice in log.notices}


@pytest.mark.parametrize("name", ["x.kcd", "x.sym", "x.dbc", "x"])
@pytest.mark.parametrize("kind", ["kcd", "sym"])
def test_other_kinds_of_database_by_content(drive, write, wheels_dbc_text, kind, name) -> None:
    text = {"kcd": lambda _: kcd(), "sym": sym}[kind](wheels_dbc_text)
    log = read_log([write(candump(drive), "x.log")], ReadOptions(databases=(write(text, name),)))
    for corner, speed in drive.mps.items():
        np.testing.assert_allclose(log.wheels[corner].speed_mps, speed, atol=1e-9)


@pytest.mark.parametrize("name", ["x.arxml", "x.dbc"])
def test_arxml_of_another_library(write, wheels_dbc_text, name) -> None:
    """Canmatrix writes no scale and no unit in this form, so only the bits can be held against it."""
    message = load_databases([write(arxml(wheels_dbc_text), name)], {}).messages[0x1A0][0]
    found = [(signal.name, signal.start, signal.length) for signal in message.signals]
    corners = ("FL", "FR", "RL", "RR")
    assert found == [(f"WhlSpd_{corner}", 16 * place, 16) for place, corner in enumerate(corners)]
    assert message.has_wheel


def test_several_databases_at_once(drive, write, dbc, wheels_dbc_text) -> None:
    other = wheels_dbc_text.replace("BO_ 416 WHL_SPD", "BO_ 512 OTHER").replace("WhlSpd_", "Pressure_")
    other = other.replace("km/h", "bar")
    options = ReadOptions(databases=(write(other, "other.dbc"), dbc, dbc))
    log = read_log([write(candump(drive), "x.log")], options)
    assert log.wheels["FL"].valid_count == drive.time_s.size
    assert log.notices == ()


def test_one_description_in_two_databases_counts_once(drive, write, dbc, wheels_dbc_text) -> None:
    again = write(wheels_dbc_text.replace("WhlSpd_", "Wheel_Speed_"), "again.dbc")
    log = read_log([write(candump(drive), "x.log")], ReadOptions(databases=(dbc, again)))
    assert log.wheels["FL"].source == "WHL_SPD.WhlSpd_FL"
    assert log.notices == ()


def test_databases_that_disagree_are_said_and_the_first_counts(drive, write, dbc, wheels_dbc_text) -> None:
    other = write(wheels_dbc_text.replace("(0.01,0)", "(0.02,0)"), "other.dbc")
    log = read_log([write(candump(drive), "x.log")], ReadOptions(databases=(dbc, other)))
    np.testing.assert_allclose(log.wheels["RR"].speed_mps, drive.mps["RR"], atol=1e-9)
    notice = next(n for n in log.notices if n.code == "database-conflict")
    assert all(text in notice.message for text in (dbc, other, "1A0", f"{dbc}, which was given first"))


def test_the_database_that_names_speeds_goes_before_one_that_does_not(
    drive, write, dbc, wheels_dbc_text
) -> None:
    radio = wheels_dbc_text.replace("WhlSpd_", "Volume_").replace("km/h", "dB").replace("0|16@1", "1|15@1")
    log = read_log([write(candump(drive), "x.log")], ReadOptions(databases=(write(radio, "radio.dbc"), dbc)))
    assert log.wheels["FL"].source == "WHL_SPD.WhlSpd_FL"
    assert "which names speeds" in next(n.message for n in log.notices if n.code == "database-conflict")


def test_eleven_and_twenty_nine_bits_are_not_the_same(drive, write, dbc, wheels_dbc_text) -> None:
    file = write(candump(drive, "000001A0"), "x.log")
    with pytest.raises(SignalMappingError, match="11 bits where the database says 29"):
        read_log([file], ReadOptions(databases=(dbc,)))
    extended = wheels_dbc_text.replace("BO_ 416 ", f"BO_ {416 | EXTENDED_FLAG} ")
    both = write(extended, "extended.dbc")
    assert read_log([file], ReadOptions(databases=(both,))).wheels["FL"].valid_count == drive.time_s.size


def test_one_message_on_two_buses(drive, write, dbc) -> None:
    first, second = candump(drive).splitlines(), candump(drive, bus="can1").splitlines()[:700]
    text = "\n".join(sorted(first + second, key=lambda line: line[:22])) + "\n"
    options = ReadOptions(databases=(dbc,))
    log = read_log([write(text, "x.log")], options)
    assert log.wheels["FL"].source.endswith("@can0")
    assert "message-on-two-buses" in codes(log)
    names = {corner: f"WHL_SPD.WhlSpd_{corner}@can1" for corner in ("FL", "FR", "RL", "RR")}
    other = read_log([write(text, "x.log")], ReadOptions(databases=(dbc,), mapping=names))
    assert other.wheels["FL"].valid_count == 700


LAUGHS = (
    '<?xml version="1.0"?><!DOCTYPE lolz [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>'
    "<{root}>&b;</{root}>"
)


@pytest.mark.parametrize("root", ["NetworkDefinition", "AUTOSAR"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_entities_are_refused(write, root, encoding) -> None:
    file = write(LAUGHS.replace("{root}", root), "x.arxml", encoding)
    with pytest.raises(DatabaseError, match="document type or entities") as refused:
        load_databases([file], {})
    assert refused.value.hint


@pytest.mark.parametrize("kind", ["dbc", "kcd", "sym"])
def test_very_many_signals_are_refused_at_once(write, wheels_dbc_text, kind) -> None:
    line = {
        "dbc": ' SG_ S{} : 0|8@1+ (1,0) [0|0] "" ECU\n',
        "kcd": '<Signal name="S{}" offset="0" length="8"/>\n',
        "sym": "Var=S{} unsigned 0,8\n",
    }[kind]
    start = {"dbc": wheels_dbc_text, "kcd": KCD[:-40], "sym": "FormatVersion=6.0\n"}[kind]
    text = start + "".join(line.format(i) for i in range(databases.MAX_SIGNALS + 1))
    began = time.process_time()
    with pytest.raises(DatabaseError, match="more than 60000 signals"):
        load_databases([write(text, "x." + kind)], {})
    assert time.process_time() - began < 10.0


@pytest.mark.parametrize("text", ["\n" * 300_000, " " * 300_000, 'BA_ "' * 60_000, 'BA_ "\n' * 60_000,
                                  "BO_ " + "9" * 100_000 + " X: 8 Y\n", "<" * 100_000])  # fmt: skip
def test_no_text_keeps_the_patterns_busy(write, text) -> None:
    began = time.process_time()
    with pytest.raises(DatabaseError):
        load_databases([write(text + "x", "x.dbc")], {})
    assert time.process_time() - began < 10.0


def test_names_as_long_as_a_book_are_passed_over(write) -> None:
    text = kcd().replace("WhlSpd_FL", "W" * 5000 + "(" * 5000 + "_FL")
    found = load_databases([write(text, "x.kcd")], {}).messages[0x1A0][0].signals
    assert [signal.name for signal in found] == ["WhlSpd_FR", "WhlSpd_RL", "WhlSpd_RR"]


def test_a_database_of_diagnostics_describes_no_frames(write, monkeypatch) -> None:
    monkeypatch.setattr(
        cantools.database, "load_string", lambda *_, **__: cantools.database.diagnostics.Database()
    )
    with pytest.raises(DatabaseError, match="no frames"):
        load_databases([write("<CANDELA/>", "x.cdd")], {})
