"""The panel of the workshop's experience, worked as a person would."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QScrollArea, QTableWidget
from pytestqt.qtbot import QtBot

from triage.evidence.answers import Observation, build_answers
from triage.evidence.rulebook import load_rulebook
from ui.state.experience import ExperienceState
from ui.widgets.experience_panel import ExperiencePanel
from ui.widgets.styling import TARGET_PX


@pytest.fixture
def state(tmp_path: Path) -> ExperienceState:
    return ExperienceState(tmp_path / "experience.toml", load_rulebook(), today=lambda: "2026-11-25")


@pytest.fixture
def sheet(qtbot: QtBot) -> QScrollArea:
    """Holds the panel, as at the side of a page: a window of its own would ask for its least size."""
    made = QScrollArea()
    made.setWidgetResizable(True)
    qtbot.addWidget(made)
    return made


@pytest.fixture
def panel(sheet: QScrollArea, state: ExperienceState) -> ExperiencePanel:
    seen = build_answers([Observation("read-fault-memory", "RR", "signal")], state.plain, first_corner="RR")
    made = ExperiencePanel(state, findings=lambda: seen)
    sheet.setWidget(made)
    sheet.show()
    return made


def _count_one(panel: ExperiencePanel) -> None:
    panel.group.setCurrentText("vans")
    panel.cause.setCurrentIndex(panel.cause.findData("air-gap"))
    panel.keep_button.click()


def test_a_car_is_counted_shown_and_taken_back(
    qtbot: QtBot, panel: ExperiencePanel, state: ExperienceState
) -> None:
    _count_one(panel)
    assert [car.group for car in state.ledger.outcomes] == ["vans"]
    assert panel.cars.count() == 1
    assert panel.verdict.rowCount() == 5
    assert not panel.back_button.isEnabled()
    panel.cars.setCurrentRow(0)
    panel.back_button.click()
    assert state.ledger.outcomes == ()
    assert not panel.verdict.isVisible()


def test_the_switch_turns_it_on_by_the_keyboard(
    qtbot: QtBot, panel: ExperiencePanel, state: ExperienceState
) -> None:
    _count_one(panel)
    panel.switch.setFocus()
    qtbot.keyClick(panel.switch, Qt.Key.Key_Space)
    assert state.ledger.on
    assert panel.standing.text().startswith("On")
    qtbot.keyClick(panel.switch, Qt.Key.Key_Space)
    assert not state.counts


def test_a_car_without_a_group_is_refused_in_words(panel: ExperiencePanel) -> None:
    panel.keep_button.click()
    assert "no name" in panel.note.text()
    assert panel.note.isVisible()


def test_every_control_has_a_name_and_is_large_enough(panel: ExperiencePanel) -> None:
    _count_one(panel)
    for kind in (QComboBox, QAbstractButton, QTableWidget):
        for control in panel.findChildren(kind):
            if control.objectName().startswith("qt_") or not control.isVisible():
                continue
            if isinstance(control.parent(), (QTableWidget,)):
                continue
            name = control.text() if isinstance(control, QAbstractButton) else control.accessibleName()
            assert name
            assert control.height() >= TARGET_PX
    assert panel.remark.accessibleName()
    assert isinstance(panel.remark, QLineEdit)
