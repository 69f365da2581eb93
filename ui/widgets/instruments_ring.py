"""The ring map: a dial around which a wheel's speed and losses are drawn, and its bad sectors in words."""

from __future__ import annotations

from functools import partial

from PySide6.QtWidgets import QWidget

from triage.signals.measurement import NotMeasurable
from ui.presenters.instrument_tables import build_ring_table
from ui.presenters.plot_table import Table
from ui.presenters.ring import RingPicture, build_ring_picture
from ui.state.opening import Opened
from ui.theme import Theme, theme_for
from ui.widgets.instruments_key import Sample, SampleKey
from ui.widgets.instruments_page import ScrollingColumn
from ui.widgets.instruments_work import Show
from ui.widgets.ring_dial import RingDial
from ui.widgets.speaking import say


class RingInstrument(ScrollingColumn):
    """Dial, its key, and sentences."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.setAccessibleName(self.tr("Ring map"))
        self._theme = theme_for(dark=False)
        self.picture: RingPicture | None = None
        self.dial = RingDial()
        self.key = SampleKey()
        self.drawings_column.addWidget(self.dial)
        self.drawings_column.addWidget(self.key)

    def work_out(self, opened: Opened, row: int) -> Show:
        """Work out the ring of a wheel; touches no widget until it is shown."""
        return partial(self._show, build_ring_picture(opened.result.analysis, row))

    def _show(self, worded: RingPicture | NotMeasurable) -> None:
        found = say(worded)
        if isinstance(found, NotMeasurable):
            self.picture = None
            self.show_missing(found)
            return
        self.picture = found
        self.dial.set_picture(found)
        self._show_key()
        self.show_sentences([mark.text for mark in found.sectors], found.sentences)

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.dial.set_theme(theme)
        self._show_key()

    def values(self) -> Table | None:
        """Return what is drawn as a table; None where nothing is."""
        return None if self.picture is None else build_ring_table(self.picture)

    def _show_key(self) -> None:
        if self.picture is None:
            return
        theme, picture = self._theme, self.picture
        rim = self.tr("rim: bad sectors by number, bars where drops begin")
        self.key.set_samples(
            *((Sample(theme.suspect, "hatched", rim),) if picture.sectors else ()),
            Sample(
                theme.accent,
                "banded",
                self.tr("outer track: speed off its mean, ±{:g} % at its edges").format(
                    picture.ripple.full_scale
                ),
            ),
            Sample(
                theme.highlight,
                "banded",
                self.tr("inner track: samples lost or off, {:g} % at its edge").format(
                    picture.lost.full_scale
                ),
            ),
            theme=theme,
        )
