from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget
from pytestqt.qtbot import QtBot

from ui.widgets.captioned_row import CaptionedRow


def test_words_stand_beside_the_switches_where_they_fit_and_below_where_not(qtbot: QtBot) -> None:
    qtbot.addWidget(page := QWidget())
    page.resize(900, 200)
    row = CaptionedRow(switch := QPushButton("FL"), page)
    row.tell("FL, 107.650–107.730 s – place 1 of 40")
    row.resize(800, 80)
    page.show()
    qtbot.waitUntil(lambda: row.caption.x() > switch.geometry().right())
    row.resize(200, 80)
    qtbot.waitUntil(lambda: row.caption.y() > switch.geometry().bottom())
    row.tell("")
    qtbot.waitUntil(lambda: row.caption.x() > switch.geometry().right())
