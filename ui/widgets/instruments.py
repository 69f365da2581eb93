"""Instruments beside the plots: everything that the road test tells of one wheel."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from triage.corners import CORNER_NAMES, CORNERS, Corner
from ui.state.opening import Opened
from ui.state.window_state import Phase, ShowingPhase, WindowState
from ui.theme import theme_for
from ui.widgets.instruments_companions import CompanionsInstrument
from ui.widgets.instruments_load import LoadInstrument
from ui.widgets.instruments_losses import LossesInstrument
from ui.widgets.instruments_quality import QualityInstrument
from ui.widgets.instruments_ring import RingInstrument
from ui.widgets.instruments_spectrum import SpectrumInstrument

NARROWEST_PX: Final = 340

Instrument = (
    RingInstrument
    | SpectrumInstrument
    | LoadInstrument
    | LossesInstrument
    | QualityInstrument
    | CompanionsInstrument
)


class InstrumentsPanel(QFrame):
    """Four wheels to choose from, and one tab for each instrument; only the one in front is worked out."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "panel")
        self._state = state
        self.wheels: dict[Corner, QPushButton] = {corner: self._wheel_button(corner) for corner in CORNERS}
        self._group = QButtonGroup(self)
        self.ring = RingInstrument()
        self.spectrum = SpectrumInstrument()
        self.load = LoadInstrument()
        self.losses = LossesInstrument(state)
        self.quality = QualityInstrument()
        self.companions = CompanionsInstrument(state)
        self.tabs = QTabWidget()
        self._stale: set[Instrument] = set()
        self._lay_out()
        self.tabs.currentChanged.connect(lambda _index: self._refresh())
        state.phase_changed.subscribe(self._show_phase)
        state.corner_changed.subscribe(lambda _corner: self._show_corner())
        state.dark_changed.subscribe(self._show_dark)
        self._show_dark(state.dark)
        self._show_phase(state.phase)

    @property
    def instruments(self) -> tuple[Instrument, ...]:
        """The instruments in the order of the tabs."""
        return (self.ring, self.spectrum, self.load, self.losses, self.quality, self.companions)

    def _wheel_button(self, corner: Corner) -> QPushButton:
        button = QPushButton(corner)
        button.setProperty("hand", True)
        button.setCheckable(True)
        name = self.tr("Look at the {} wheel").format(CORNER_NAMES[corner])
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.clicked.connect(lambda: self._state.choose_corner(corner))
        return button

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(6)
        for button in self.wheels.values():
            self._group.addButton(button)
            row.addWidget(button, 1)
        for instrument in self.instruments:
            title, help_text = self._tab_words(instrument)
            index = self.tabs.addTab(instrument, title)
            self.tabs.setTabToolTip(index, help_text)
        self.tabs.setAccessibleName(self.tr("Instruments of the wheel"))
        self.tabs.tabBar().setAccessibleName(self.tabs.accessibleName())
        self.tabs.tabBar().setDrawBase(False)
        self.tabs.setUsesScrollButtons(True)
        self.tabs.setElideMode(Qt.TextElideMode.ElideNone)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 6)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.tabs, 1)
        self.setMinimumWidth(NARROWEST_PX)

    def _tab_words(self, instrument: Instrument) -> tuple[str, str]:
        return {
            self.ring: (
                self.tr("Ring"),
                self.tr("What the wheel does at each angle of its turn: speed, losses and bad sectors."),
            ),
            self.spectrum: (
                self.tr("Orders"),
                self.tr("How much of the ripple repeats how often in a turn of the wheel."),
            ),
            self.load: (
                self.tr("Side load"),
                self.tr("What changes when a curve loads or relieves the wheel."),
            ),
            self.losses: (
                self.tr("Losses"),
                self.tr("Every place at which the signal was lost; Enter shows it in the plots."),
            ),
            self.quality: (
                self.tr("Quality"),
                self.tr("How well the wheels were recorded, and what had to be repaired."),
            ),
            self.companions: (
                self.tr("Car"),
                self.tr("What the recording tells of the car beside its wheels: steering, turning, brake."),
            ),
        }[instrument]

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, ShowingPhase):
            self._show_corner()

    def _show_corner(self) -> None:
        self.wheels[self._state.corner].setChecked(True)
        self._stale = set(self.instruments)
        self._refresh()

    def _refresh(self) -> None:
        opened: Opened | None = self._state.opened
        front = self.instruments[self.tabs.currentIndex()]
        if opened is None or front not in self._stale:
            return
        self._stale.discard(front)
        front.show_wheel(opened, CORNERS.index(self._state.corner))

    def _show_dark(self, dark: bool) -> None:
        theme = theme_for(dark=dark)
        for instrument in self.instruments:
            instrument.set_theme(theme)
