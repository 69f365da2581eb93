"""The German texts: none missing, none of its places lost, and what Qt loads is what the list says."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QTranslator
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from triage.corners import CORNERS, VEHICLE, Place
from triage.evidence.findings import build_findings
from triage.evidence.rulebook import load_rulebook
from triage.evidence.value_words import curve_words
from triage.signals.measurement import Measurement
from triage.texts import Text
from triage.walk.answer_file import save_answers
from triage.walk.assessment import Recording
from triage.walk.walk_state import WalkState
from ui.appearance import load_translation
from ui.main_window import MainWindow
from ui.presenters.bench import build_bench_text
from ui.presenters.entries import build_undecided_entries
from ui.presenters.verdict import build_headline, build_ranking_rows
from ui.state.bench import Bench, BenchSetup
from ui.state.opening import Opened
from ui.state.settings import Settings
from ui.translations.build import GERMAN, Key, read_translations, texts_of
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
