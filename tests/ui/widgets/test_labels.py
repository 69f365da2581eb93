"""Helpers for labels."""

from __future__ import annotations

from PySide6.QtWidgets import QFormLayout, QLabel, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from ui.widgets.labels import line_up


def test_fields_of_forms_under_one_another_begin_at_one_place(qtbot: QtBot) -> None:
    page, column = QWidget(), QVBoxLayout()
    qtbot.addWidget(page)
    page.setLayout(column)
    page.resize(600, 300)
    fields, forms = [QLineEdit() for _ in range(3)], [QFormLayout(), QFormLayout()]
    forms[0].addRow(QLabel("File"), fields[0])
    forms[1].addRow(QLabel("FR front right"), fields[1])
    forms[1].addRow(QLabel("A far longer label that is not shown now"), fields[2])
    for form in forms:
        column.addLayout(form)
    forms[1].setRowVisible(fields[2], False)
    line_up(*forms)
    column.activate()
    assert fields[0].x() == fields[1].x() > 0
    narrow = fields[0].x()
    forms[1].setRowVisible(fields[2], True)
    line_up(*forms)
    column.activate()
    assert fields[0].x() == fields[2].x() > narrow
