"""Small labels, buttons and choices made one way everywhere."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractSpinBox, QComboBox, QFormLayout, QLabel, QPushButton, QWidget

from ui.widgets.styling import TARGET_PX, enlarge

FORM_GAP_PX: Final = 12
"""Between the name of a field and the field."""

NUMBER_MARGIN_PX: Final = 5
CHOICE_LETTERS: Final = 16
"""A choice beside other things may be this narrow, however long its lines are."""


def make_label(role: str, text: str = "", *, larger_by: float = 1.0) -> QLabel:
    """Return a label that wraps, never interprets its text as markup, and can be selected with the mouse."""
    label = QLabel(text)
    label.setProperty("role", role)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    if larger_by != 1.0:
        enlarge(label, larger_by)
    return label


def kept_together(text: str) -> str:
    """Return a text in which no line ends between a number and its unit.

    >>> kept_together("over 99 %, 3 min 0 s in all").replace("\N{NO-BREAK SPACE}", "_")
    'over 99_%, 3_min_0_s in all'
    """
    return re.sub(r"(?<=\d) (?=%|(?:s|min|h)\b)|(?<=\d min) (?=\d+ s\b)", "\u00a0", text)


def line_up(*forms: QFormLayout) -> None:
    """Give the labels of forms that stand under one another the same width, so that their fields do too."""
    labels = [label for form in forms for row in range(form.rowCount()) if (label := _label_of(form, row))]
    for label in labels:
        label.setMinimumWidth(0)
    widest = max((label.sizeHint().width() for label in labels), default=0)
    for label in labels:
        label.setMinimumWidth(widest)


def _label_of(form: QFormLayout, row: int) -> QWidget | None:
    item = form.itemAt(row, QFormLayout.ItemRole.LabelRole)
    return item.widget() if item is not None and form.isRowVisible(row) else None


def make_button(text: str, on_click: Callable[[], object], *, primary: bool = False) -> QPushButton:
    """Return a button; the primary one of a page stands out and takes Enter."""
    button = QPushButton(text)
    button.setProperty("primary", primary)
    button.setAutoDefault(True)
    button.setMinimumHeight(TARGET_PX)
    button.clicked.connect(lambda _checked=False: on_click())
    return button


def make_choice(title: str) -> QComboBox:
    """Return an empty choice that a screen reader calls by its title."""
    choice = QComboBox()
    choice.setMinimumHeight(TARGET_PX)
    choice.setAccessibleName(title)
    choice.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    choice.setMinimumContentsLength(CHOICE_LETTERS)
    # What is too long for so narrow a field is told in full beside the mouse.
    choice.currentTextChanged.connect(choice.setToolTip)
    return choice


def set_in(field: QAbstractSpinBox) -> None:
    """Begin the number where the texts of other fields begin: the style sheet knows no way to say so."""
    field.lineEdit().setTextMargins(NUMBER_MARGIN_PX, 0, 0, 0)


def set_primary(button: QPushButton, *, primary: bool) -> None:
    """Let a button stand out, or no longer."""
    _set_property(button, "primary", primary)


def set_role(label: QLabel, role: str) -> None:
    """Give a label another role."""
    _set_property(label, "role", role)


def _set_property(widget: QWidget, name: str, value: object) -> None:
    widget.setProperty(name, value)
    # The style sheet looks at properties only when a widget is polished.
    widget.style().unpolish(widget)
    widget.style().polish(widget)
