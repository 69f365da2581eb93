"""The user's settings, beside whatever is on the screen; every change holds at once."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from PySide6.QtWidgets import QComboBox, QFormLayout, QVBoxLayout, QWidget

from ui.state.settings import COLOURS, LANGUAGES, TEXT_PERCENTS, Preferences, Settings
from ui.state.window_state import SPEED_UNITS
from ui.widgets.labels import make_button, make_label
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

FIELD_PX: Final = 170


class SettingsPanel(QWidget):
    """One field for each setting."""

    def __init__(self, preferences: Preferences, *, place: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._preferences = preferences
        self.fields: dict[str, QComboBox] = {}
        self._form = QFormLayout()
        self._form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        self._form.setVerticalSpacing(8)
        self.note = make_label("caution")
        self.note.hide()
        self._add_fields()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addWidget(self.note)
        column.addLayout(self._form)
        column.addWidget(make_label("muted", self._about_numbers()))
        column.addWidget(make_label("muted", self._about_place(place)))
        column.addWidget(make_button(self.tr("Set all as they came with the program"), self._reset))
        column.addStretch(1)
        preferences.changed.subscribe(self._show)
        self._show(preferences.settings)

    def _add_fields(self) -> None:
        colours = {"system": self.tr("as the system"), "light": self.tr("light"), "dark": self.tr("dark")}
        # Languages are named in themselves, so that they are found by those who read no other.
        languages = {"en": "English", "de": "Deutsch"}
        self._add("speed_unit", self.tr("Speeds in"), {unit: unit for unit in SPEED_UNITS})
        sizes = {percent: f"{percent} %" for percent in TEXT_PERCENTS}
        self._add("text_percent", self.tr("Size of texts"), sizes)
        self._add("colours", self.tr("Colours"), {name: colours[name] for name in COLOURS})
        self._add("language", self.tr("Language"), {name: languages[name] for name in LANGUAGES})
        self._form.addRow(
            make_label(
                "muted",
                self.tr(
                    "Another language is taken up when the program starts again. "
                    "Files and the command line stay English."
                ),
            )
        )

    def _add(self, name: str, title: str, choices: Mapping[Any, str]) -> None:
        field = QComboBox()
        field.setMinimumHeight(TARGET_PX)
        field.setMinimumWidth(FIELD_PX)
        field.setAccessibleName(title)
        for value, text in choices.items():
            field.addItem(text, value)
        field.activated.connect(lambda _at, one=name: self._change(one))
        label = make_label("", title)
        label.setMinimumHeight(TARGET_PX)
        self._form.addRow(label, field)
        self.fields[name] = field

    def _change(self, name: str) -> None:
        self._preferences.change(**{name: self.fields[name].currentData()})

    def _reset(self) -> None:
        self._preferences.change(speed_unit=SPEED_UNITS[0], text_percent=100, colours="system", language="en")

    def tell(self, text: str) -> None:
        """Say what could not be read or written."""
        self.note.setText(say(text))
        self.note.setVisible(bool(text))

    def focus_first(self) -> None:
        """Give the keyboard to the first field."""
        next(iter(self.fields.values())).setFocus()

    def _show(self, settings: Settings) -> None:
        for name, field in self.fields.items():
            value = getattr(settings, name)
            if field.findData(value) < 0:  # a size typed into the file by hand
                field.addItem(f"{value} %", value)
            field.setCurrentIndex(field.findData(value))

    def _about_numbers(self) -> str:
        return self.tr(
            "Numbers are written the same in every language: a point before the decimals, no sign between "
            "thousands."
        )

    def _about_place(self, place: str) -> str:
        if not place:
            return self.tr("Nothing is kept after this window is closed.")
        return self.tr("Kept in {}, a file that can be read and mended by hand.").format(place)
