"""The German texts: none missing, none of its places lost, and what Qt loads is what the list says."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QTranslator
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from ui.appearance import load_translation
from ui.main_window import MainWindow
from ui.state.settings import Settings
from ui.translations.build import GERMAN, read_translations, texts_of

PLACES = re.compile(r"\{[^}]*\}")


@pytest.fixture
def german(qapp: QApplication) -> Iterator[None]:
    before = set(qapp.findChildren(QTranslator))
    assert load_translation(qapp, Settings(language="de")) == "de"
    yield
    for translator in set(qapp.findChildren(QTranslator)) - before:
        qapp.removeTranslator(translator)
        translator.deleteLater()


def test_the_code_marks_texts_of_menus_pages_and_tables() -> None:
    texts = texts_of()
    assert {("Menus", "&File"), ("RingSketch", "gap")} <= set(texts)
    assert any(context == "KeyHelp" and text == "Move along the time" for context, text in texts)


def test_every_text_of_the_code_has_a_translation() -> None:
    missing = set(texts_of()) - set(read_translations())
    assert not missing, "run: python -m ui.translations.build, then translate what is unfinished"


def test_a_translation_has_the_places_of_its_text() -> None:
    known = read_translations()
    assert [text for text in known if PLACES.findall(text[1]) != PLACES.findall(known[text])] == []


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
