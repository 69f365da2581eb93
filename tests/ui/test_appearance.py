"""Numbers and language; size of texts and colours are tried on a whole window in test_shell."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QLocale
from PySide6.QtWidgets import QApplication, QDoubleSpinBox, QWidget
from pytestqt.qtbot import QtBot

from ui.appearance import load_translation, scale_texts, write_numbers_alike_everywhere
from ui.state.settings import Settings
from ui.theme import LIGHT
from ui.widgets.styling import apply_theme


@pytest.fixture
def locale() -> Iterator[None]:
    before = QLocale()
    yield
    QLocale.setDefault(before)


def test_numbers_have_a_point_also_on_a_german_system(qtbot: QtBot, locale: None) -> None:
    QLocale.setDefault(QLocale(QLocale.Language.German))
    write_numbers_alike_everywhere()
    field = QDoubleSpinBox()
    qtbot.addWidget(field)
    field.setRange(0.0, 1e6)
    field.setDecimals(3)
    field.setValue(12345.5)
    assert field.text() == "12345.500"


@pytest.mark.parametrize("language", ["de", "en"])
def test_without_a_translation_the_program_speaks_its_own_language(
    qapp: QApplication, tmp_path: Path, language: str
) -> None:
    assert load_translation(qapp, Settings(language=language), tmp_path) == "en"


def test_a_file_that_is_no_translation_is_left_aside(qapp: QApplication, tmp_path: Path) -> None:
    (tmp_path / "wheel-triage_de.qm").write_bytes(b"nothing")
    assert load_translation(qapp, Settings(language="de"), tmp_path) == "en"


class _Watching(QWidget):
    """Notes whether garbage may be collected while it is styled anew."""

    def __init__(self) -> None:
        super().__init__()
        self.might_collect: set[bool] = set()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802
        self.might_collect.add(gc.isenabled())
        super().changeEvent(event)


def test_no_widget_is_collected_while_all_are_styled(qapp: QApplication, qtbot: QtBot) -> None:
    widget = _Watching()
    qtbot.addWidget(widget)
    apply_theme(qapp, LIGHT)
    for factor in (2.0, 0.5):
        scale_texts(qapp, factor)
    assert widget.might_collect == {False}
    assert gc.isenabled()
