"""Fields in which the user says how a recording is to be read."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QDoubleSpinBox, QFormLayout, QLineEdit, QWidget

from triage.corners import CORNER_NAMES, CORNERS, Corner
from triage.units import SPEED_UNITS
from ui.presenters.refusal import Offer
from ui.state.opening import ReadingAnswers
from ui.widgets.labels import FORM_GAP_PX, make_button, make_label, set_in
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

NO_RADIUS_M: Final = 0.149
"""The lowest value of the field stands for "not stated"; radii of road tyres are above it."""


class ReadingForm(QWidget):
    """Signals of the wheels, unit and tyre radius; only what was asked for is shown."""

    def __init__(
        self, *, on_answer: Callable[[ReadingAnswers], object], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._offers: frozenset[Offer] = frozenset()
        self._found: Mapping[Corner, str] = {}
        self.combos: dict[Corner, QComboBox] = {corner: QComboBox() for corner in CORNERS}
        self.unit = QComboBox()
        self.radius = QDoubleSpinBox()
        set_in(self.radius)
        self.button = make_button(self.tr("Read it this way"), lambda: on_answer(self.answers), primary=True)
        self._set_up_fields()
        self.rows = QFormLayout(self)
        self.rows.setContentsMargins(0, 6, 0, 0)
        self.rows.setHorizontalSpacing(FORM_GAP_PX)
        for corner, combo in self.combos.items():
            self._add_row(f"{corner} {say(CORNER_NAMES[corner])}", combo)
        self._add_row(self.tr("Unit of the speeds"), self.unit)
        self._add_row(self.tr("Tyre radius"), self.radius)
        self.rows.addRow("", self.button)
        self.rows.setAlignment(self.button, Qt.AlignmentFlag.AlignLeft)

    def _add_row(self, name: str, field: QWidget) -> None:
        label = make_label("", name)
        label.setMinimumHeight(TARGET_PX)
        field.setMinimumHeight(TARGET_PX)
        self.rows.addRow(label, field)

    def _set_up_fields(self) -> None:
        for corner, combo in self.combos.items():
            combo.setAccessibleName(self.tr("Signal of the wheel {}").format(say(CORNER_NAMES[corner])))
            line = QLineEdit()
            line.setPlaceholderText(self.tr("– choose, or type a name –"))
            combo.setLineEdit(line)
            combo.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
            combo.currentTextChanged.connect(lambda _text: self._refresh())
        self.unit.setAccessibleName(self.tr("Unit of the speeds"))
        self.unit.addItem(self.tr("– choose –"), None)
        for unit in SPEED_UNITS:
            self.unit.addItem(unit, unit)
        self.unit.currentIndexChanged.connect(lambda _index: self._refresh())
        self.radius.setAccessibleName(self.tr("Tyre radius in metres"))
        self.radius.setDecimals(3)
        self.radius.setSingleStep(0.001)
        self.radius.setRange(NO_RADIUS_M, 0.8)
        self.radius.setSpecialValueText(self.tr("– state –"))
        self.radius.setSuffix(" m")
        self.radius.valueChanged.connect(lambda _value: self._refresh())

    def offer(
        self, offers: frozenset[Offer], candidates: tuple[str, ...], found: Mapping[Corner, str]
    ) -> None:
        """Show the fields that may help, with the signals that were found before."""
        self._offers, self._found = offers - {"database"}, dict(found)
        for corner, combo in self.combos.items():
            combo.clear()
            combo.addItems(["", *candidates])
            combo.setCurrentText(found.get(corner, ""))
            self.rows.setRowVisible(combo, "mapping" in offers)
        self.unit.setCurrentIndex(0)
        self.radius.setValue(NO_RADIUS_M)
        self.rows.setRowVisible(self.unit, "unit" in offers)
        self.rows.setRowVisible(self.radius, "radius" in offers)
        self.setVisible(bool(self._offers))
        self._refresh()

    @property
    def answers(self) -> ReadingAnswers:
        """What was said so far; signals that stand as they were found are not said anew."""
        mapping = self._mapping
        radius_m = self.radius.value() if self.radius.value() > NO_RADIUS_M + 1e-6 else None
        return ReadingAnswers({} if mapping == self._found else mapping, self.unit.currentData(), radius_m)

    @property
    def _mapping(self) -> dict[Corner, str]:
        texts = {corner: combo.currentText().strip() for corner, combo in self.combos.items()}
        return {corner: text for corner, text in texts.items() if text}

    def focus_first(self) -> None:
        """Give the keyboard to the first field that is shown."""
        fields = (*self.combos.values(), self.unit, self.radius)
        next(field for field in fields if self.rows.isRowVisible(field)).setFocus()

    def _refresh(self) -> None:
        answers = self.answers
        chosen = answers.mapping.values()
        whole = not chosen or len(chosen) == len(set(chosen)) == len(CORNERS)
        said = bool(chosen) or answers.unit is not None or answers.tyre_radius_m is not None
        self.button.setEnabled(whole and said)
