"""Instruments beside the plots: everything that the road test tells of one wheel."""

from __future__ import annotations

from functools import partial
from pathlib import PurePath
from typing import Final

from PySide6.QtCore import QEvent, QPoint, Qt
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
from triage.errors import OutputError
from ui.presenters.plot_table import Table
from ui.runner import Reply
from ui.state.opening import Opened
from ui.state.window_state import Phase, ShowingPhase, WindowState
from ui.theme import theme_for
from ui.widgets.instruments_companions import CompanionsInstrument
from ui.widgets.instruments_load import LoadInstrument
from ui.widgets.instruments_losses import LossesInstrument
from ui.widgets.instruments_quality import QualityInstrument
from ui.widgets.instruments_ring import RingInstrument
from ui.widgets.instruments_spectrum import SpectrumInstrument
from ui.widgets.instruments_tab import InstrumentTab
from ui.widgets.instruments_table import TableInstrument
from ui.widgets.instruments_work import InstrumentWork, Show, is_quick, work_out_now
from ui.widgets.labels import make_button, make_label
from ui.widgets.plot_commands import Exported, PlotCommands
from ui.widgets.speaking import say

NARROWEST_PX: Final = 340
LEAST_LINES: Final = 24
"""Least height in lines of text: below the plots of a narrow window a table must still show some rows."""

Instrument = (
    RingInstrument
    | SpectrumInstrument
    | LoadInstrument
    | LossesInstrument
    | QualityInstrument
    | CompanionsInstrument
)


class InstrumentsPanel(QFrame):
    """Four wheels to choose from, and one tab for each instrument; only the one in front is worked out.

    Attributes
    ----------
    places : dict of instrument to InstrumentTab
        What stands in its tab: the instrument, that it is still being worked out, or why it could not be.
    work : InstrumentWork
        Must be stopped before the window goes.
    """

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
        self.commands = PlotCommands(
            self, Exported(self._picture, self._table, self._title, self._words), self._tell
        )
        self.told = make_label("muted")
        self.offer_button = make_button(self.tr("Copy or save…"), self.offer)
        self._stale: set[Instrument] = set()
        self.places = {instrument: InstrumentTab(instrument) for instrument in self.instruments}
        self.work = InstrumentWork(self)
        self._lay_out()
        for instrument in self.instruments:
            instrument.menu_wanted.connect(self.commands.show_menu)
            # Of a table the key copies the rows, of a drawing the picture.
            rows = isinstance(instrument, TableInstrument)
            copy = self.commands.copy_data if rows else self.commands.copy_picture
            instrument.copy_wanted.connect(copy)
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
        name = self.tr("Look at the {} wheel").format(say(CORNER_NAMES[corner]))
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
            index = self.tabs.addTab(self.places[instrument], title)
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
        feet = QHBoxLayout()
        feet.addWidget(self.told, 1)
        feet.addWidget(self.offer_button)
        column.addLayout(feet)
        self.setMinimumWidth(NARROWEST_PX)
        self._fit_height()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Follow the size of the texts."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._fit_height()

    def _fit_height(self) -> None:
        self.setMinimumHeight(LEAST_LINES * self.fontMetrics().height())

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

    @property
    def front(self) -> Instrument:
        """The instrument whose tab is chosen."""
        return self.instruments[self.tabs.currentIndex()]

    def offer(self) -> None:
        """Offer all ways to copy and save the instrument in front."""
        self.commands.show_menu(self.offer_button.mapToGlobal(QPoint(0, 0)))

    def _picture(self) -> QWidget:
        self._refuse_what_is_hidden()
        drawn = self.front.drawing()
        if drawn is None:
            raise OutputError("there is nothing drawn", hint="Choose another wheel or instrument.")
        return drawn

    def _table(self) -> Table:
        self._refuse_what_is_hidden()
        values = self.front.values()
        if values is None:
            raise OutputError("there are no values", hint="Choose another wheel or instrument.")
        return values

    def _refuse_what_is_hidden(self) -> None:
        place = self.places[self.front]
        if place.refused:
            raise OutputError("this could not be worked out", hint="Choose another wheel or instrument.")
        if place.waiting:
            raise OutputError("this is still being worked out", hint="Try again in a moment.")

    def _title(self) -> str:
        opened = self._state.opened
        name = "" if opened is None else PurePath(opened.result.log.file).name
        return f"{name} – {self._state.corner} – {self.tabs.tabText(self.tabs.currentIndex())}"

    def _words(self) -> str:
        return self.front.text

    def _tell(self, text: str) -> None:
        self.told.setText(text)

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, ShowingPhase):
            self._show_corner()
        else:
            self.work.give_up()

    def _show_corner(self) -> None:
        self.wheels[self._state.corner].setChecked(True)
        self._stale = set(self.instruments)
        self._refresh()

    def _refresh(self) -> None:
        self._tell("")
        self.work.give_up()
        opened: Opened | None = self._state.opened
        front = self.front
        if opened is None or front not in self._stale:
            return
        row = CORNERS.index(self._state.corner)
        work = partial(front.work_out, opened, row)
        if is_quick(opened):
            self._take(front, work_out_now(work))
            return
        self.places[front].wait()
        self.work.submit(work, partial(self._take, front))

    def _take(self, instrument: Instrument, reply: Reply[Show]) -> None:
        if reply.result is not None:
            self._put_on(instrument, reply.result)
        elif reply.error is not None:
            self.places[instrument].refuse(reply.error)

    def _put_on(self, instrument: Instrument, show: Show) -> None:
        try:
            show()
        except Exception as error:  # noqa: BLE001 - half of it may show the wheel before
            self.places[instrument].refuse(error)
            return
        self._stale.discard(instrument)
        self.places[instrument].show_instrument()

    def _show_dark(self, dark: bool) -> None:
        theme = theme_for(dark=dark)
        for instrument in self.instruments:
            instrument.set_theme(theme)
