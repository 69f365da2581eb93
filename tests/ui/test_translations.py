"""The German texts: none missing, none of its places lost, and what Qt loads is what the list says."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Final

import pytest
from PySide6.QtCore import QTranslator
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from triage.corners import CORNERS, VEHICLE, Place
from triage.errors import TriageError
from triage.evidence.findings import build_findings
from triage.evidence.readings import read_value
from triage.evidence.rulebook import load_rulebook
from triage.evidence.trouble_codes import read_code
from triage.evidence.value_words import curve_words
from triage.logs.options import ReadOptions
from triage.logs.reading import read_log
from triage.signals.measurement import Measurement
from triage.texts import Text, error_lines
from triage.walk.answer_file import save_answers
from triage.walk.assessment import Recording
from triage.walk.walk_state import WalkState
from ui.appearance import load_translation
from ui.main_window import MainWindow
from ui.presenters.bench import build_bench_text
from ui.presenters.entries import build_undecided_entries
from ui.presenters.refusal import describe_refusal
from ui.presenters.verdict import build_headline, build_ranking_rows
from ui.settings_file import load_settings
from ui.state.bench import Bench, BenchSetup
from ui.state.opening import Opened, OpenOrder
from ui.state.settings import Settings
from ui.translations.build import GERMAN, Key, read_translations, texts_of
from ui.widgets.key_panel import key_words, page_key_lines
from ui.widgets.speaking import say

PLACES = re.compile(r"\{[^}]*\}")
ENGLISH = re.compile(
    r"(?<![-\w])(the|of|is|and|wheel|with|takes|costs|ask|measure|front|rear|left|right|than|more)(?![-\w])",
    re.IGNORECASE,
)
"""Words that no German sentence holds; ids, with their hyphens, stay as they are typed."""


@pytest.fixture
def german(qapp: QApplication) -> Iterator[None]:
    before = set(qapp.findChildren(QTranslator))
    assert load_translation(qapp, Settings(language="de")) == "de"
    yield
    for translator in set(qapp.findChildren(QTranslator)) - before:
        qapp.removeTranslator(translator)
        translator.deleteLater()


@pytest.fixture(scope="module")
def texts() -> list[Key]:
    return texts_of()


def test_menus_pages_sentences_and_rule_book_are_marked(texts: list[Key]) -> None:
    assert {("Menus", "&File"), ("RingSketch", "gap"), ("texts", "front left")} <= set(texts)
    assert ("check.rock-wheel", "Rock the wheel") in texts
    assert ("measurement.dead-share", "for seconds") in texts
    assert any(context == "KeyHelp" and text == "Move along the time" for context, text in texts)


def test_every_text_has_a_translation(texts: list[Key]) -> None:
    missing = set(texts) - set(read_translations())
    assert not missing, "run: python -m ui.translations.build, then translate what is unfinished"


def test_a_translation_has_the_places_of_its_text() -> None:
    known = read_translations()
    lost = [text for text in known if sorted(PLACES.findall(text[1])) != sorted(PLACES.findall(known[text]))]
    assert lost == []


def test_what_qt_loads_is_what_the_list_says(qapp: QApplication) -> None:
    translator = QTranslator()
    assert translator.load(str(GERMAN.with_suffix(".qm")))
    known = read_translations()
    old = [text for text in known if translator.translate(*text) != known[text]]
    assert not old, "run: python -m ui.translations.build"


def test_the_window_opens_with_german_menus(german: None, qtbot: QtBot) -> None:
    window = MainWindow()
    qtbot.addWidget(window)
    titles = [action.text().replace("&", "") for action in window.menuBar().actions()]
    assert titles == ["Datei", "Schritte", "Zeit", "Ansicht", "Hilfe"]
    window.close()


def test_every_finding_is_german(german: None) -> None:
    rules = load_rulebook()
    places: dict[str, tuple[Place, ...]] = {"corner": CORNERS, "vehicle": (VEHICLE,)}
    measured = [
        Measurement(rule.id, place, value, 0.01, rule.unit, 9, ())
        for rule in rules.measurements.values()
        for place in places[rule.scope]
        for value in (rule.edges[0] - 0.1, rule.edges[-1] + 0.1)
    ]
    findings = build_findings(measured, rules)
    assert len(findings) == len(measured) > 200
    assert english_in(say(tuple(finding.statement for finding in findings))) == []
    advice = tuple(
        Text(rule.driving, corner="X", **curve_words("FL")) for rule in rules.measurements.values()
    )
    assert english_in(say(advice)) == []


def test_the_page_at_the_car_is_german_and_the_answers_are_not(german: None, tmp_path: Path) -> None:
    rules = load_rulebook()
    file = tmp_path / "answers.toml"
    bench = Bench(
        BenchSetup("van", Recording(), rules, lambda new: save_answers(file, new, "van"), WalkState(), "")
    )
    shown: list[str] = []
    for _ in range(6):
        bench.confirm()
        text = say(build_bench_text(bench.view, rules))
        shown += [text.title, text.effort, text.question, text.why, text.progress, text.value_hint]
        shown += [*text.cautions, *text.standing, *(words for _, words in text.choices)]
        shown += [bar.name for bar in text.ranking]
        assert bench.view.question is not None
        bench.say(text.choices[0][0], "FL" if bench.view.question.names_corner else None)
    assert len(shown) > 60
    assert english_in(shown) == []
    saved = file.read_text("utf-8")
    assert "answer = " in saved
    assert not re.search("[äöüß]|vorne|Rad ", saved)


def test_the_verdict_is_german(german: None, opened: Opened) -> None:
    headline = say(build_headline(opened))
    assert headline.title == "Verdächtig: vorne links (94 %)"
    assert english_in([row.place for row in say(build_ranking_rows(opened))]) == []
    undecided = say(build_undecided_entries(opened))
    assert undecided
    assert all(" oder " in entry.title for entry in undecided)


def english_in(texts: tuple[str, ...] | list[str]) -> list[str]:
    return [text for text in texts if ENGLISH.search(text)]


BROKEN: Final = {
    "empty.csv": b"",
    "words.txt": b"hello there\n" * 50,
    "noise.bin": bytes(range(256)) * 20,
    "cut.zip": b"PK\x03\x04" + bytes(99),
    "cut.csv.gz": b"\x1f\x8b\x08" + b"\xff" * 99,
    "locked.xls": b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(2000),
    "cut.blf": b"LOGG" + bytes(20),
    "cut.mf4": b"MDF     4.10    " + bytes(200),
    "cut.parquet": b"PAR1" + bytes(200) + b"PAR1",
    "no-time.csv": b"a,b,c\n" + b"1,2,3\n" * 200,
    "frames.log": b"".join(b"(%d.000000) can0 123#0011223344556677\n" % (10**9 + i) for i in range(99)),
}


@pytest.mark.parametrize("name", BROKEN)
def test_a_file_that_cannot_be_used_is_refused_in_german(german: None, tmp_path: Path, name: str) -> None:
    file = tmp_path / name
    file.write_bytes(BROKEN[name])
    with pytest.raises(TriageError) as refused:
        read_log([str(file)], ReadOptions())
    shown = say(describe_refusal(refused.value, OpenOrder((str(file),))))
    assert english_in([shown.title, shown.place, shown.reason, shown.hint]) == []
    assert english_in([say(error_lines(refused.value)).replace(str(file), "")]) == []


@pytest.mark.parametrize(
    "text", ["language = ", 'language = "fr"\nmood = 1\n', "text_percent = 7\n", "a = [[["]
)
def test_broken_settings_are_told_in_german(german: None, tmp_path: Path, text: str) -> None:
    file = tmp_path / "s.toml"
    file.write_text(text, "utf-8")
    told = say(load_settings(file).note)
    assert told
    assert english_in([told.replace(str(file), "")]) == []


def test_mistyped_codes_and_values_are_told_in_german(german: None) -> None:
    rules = load_rulebook()
    codes = next(check for check in rules.checks.values() if check.takes_codes)
    family = next(iter(rules.code_families))
    told = [refusal_of(read_code, code, codes, rules) for code in ("c0035", "c0999", f"c0999-in-{family}")]
    measured = [check for check in rules.checks.values() if check.value is not None]
    for check in measured:
        told += [refusal_of(read_value, text, check) for text in ("abc", "1", "5 kg", "1 V across 1 ohm")]
    assert len(told) > 10
    assert english_in([text for text in told if text.find("Schreiben wie") < 0]) == []
    assert english_in([text.partition("Schreiben wie")[0] for text in told]) == []


def test_the_map_of_keys_names_them_as_a_german_keyboard_does(german: None, qtbot: QtBot) -> None:
    assert key_words(QKeySequence("Ctrl+O")) == "Strg+O"
    page = QWidget()
    qtbot.addWidget(page)
    canvas = QWidget(page)
    canvas.key_help = (("Left, PgUp", "Move along the time"), ("Comma, full stop", ""))  # type: ignore[attr-defined]
    told = [line.key for line in page_key_lines(page, "x")]
    assert told == ["Links, Bild aufwärts", "Komma, Punkt"]


def refusal_of(read: Callable[..., object], *given: object) -> str:
    with pytest.raises(TriageError) as refused:
        read(*given)
    return say(error_lines(refused.value))
