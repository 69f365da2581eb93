"""The values at the cursor, and what lies between the cursor and the mark, one column for each wheel."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from triage.corners import CORNERS, Corner
from ui.presenters.cursor_reading import (
    NO_VALUE,
    Stretch,
    format_instant,
    format_reading,
    measure_between,
    read_at,
    signed,
)
from ui.presenters.plot_data import PlotData
from ui.state.time_cursor import TimeCursor
from ui.state.window_state import WindowState
from ui.widgets.labels import make_label
from ui.widgets.speaking import say


class CursorReadout(QWidget):
    """Two rows; the second only while something is measured."""

    def __init__(self, state: WindowState, cursor: TimeCursor, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self._cursor = cursor
        self._data: PlotData | None = None
        self.hint = make_label("muted", self.tr("Click, or press comma or full stop, to read the values."))
        self.instant, self.stretch = make_label("section"), make_label("section")
        self.values: dict[Corner, QLabel] = {corner: make_label("value") for corner in CORNERS}
        self.differences: dict[Corner, QLabel] = {corner: make_label("value") for corner in CORNERS}
        self._lay_out()
        cursor.changed.subscribe(lambda _: self.refresh())
        state.speed_unit_changed.subscribe(lambda _: self.refresh())
        self.refresh()

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(2, 0, 2, 0)
        grid.setHorizontalSpacing(6)
        grid.setVerticalSpacing(2)
        grid.addWidget(self.hint, 0, 0, 1, 5)
        for row, (head, cells) in enumerate(((self.instant, self.values), (self.stretch, self.differences))):
            for column, label in enumerate((head, *cells.values())):
                # Wrapped lines would be cut off: a grid in a splitter does not ask for their height.
                label.setWordWrap(False)
                grid.addWidget(label, row, column)
                grid.setColumnStretch(column, 1)
        for cell in self.differences.values():
            cell.setToolTip(
                self.tr("Difference from what the wheel should read by the others and the curve.")
            )

    def set_data(self, data: PlotData) -> None:
        """Read values out of this recording."""
        self._data = data
        self.refresh()

    def refresh(self) -> None:
        """Word what is at the cursor now."""
        data, time_s, mark_s = self._data, self._cursor.time_s, self._cursor.mark_s
        reading = None if data is None or time_s is None else read_at(data, time_s, self._state.speed_unit)
        self.hint.setVisible(reading is None)
        for label in (self.instant, *self.values.values()):
            label.setVisible(reading is not None)
        measuring = reading is not None and mark_s is not None
        for label in (self.stretch, *self.differences.values()):
            label.setVisible(measuring)
        if reading is not None:
            self.instant.setText(say(format_instant(reading)))
            for corner, label in self.values.items():
                label.setText(format_reading(reading, corner))
        if data is not None and time_s is not None and mark_s is not None:
            self._show_stretch(measure_between(data, time_s, mark_s, self._state.speed_unit))

    def _show_stretch(self, stretch: Stretch) -> None:
        long = self.tr("{:.3f} s, {:.1f} m").format(stretch.end_s - stretch.begin_s, stretch.way_m)
        below = self.tr("differences, {}").format(stretch.unit)
        if stretch.hole_s > 0.0:
            below = self.tr("{:.1f} s not recorded").format(stretch.hole_s)
        self.stretch.setText(f"{long}\n{below}")
        self.stretch.setToolTip(
            self.tr("From the mark to the cursor; differences in {}.").format(stretch.unit)
        )
        for corner, label in self.differences.items():
            if corner in stretch.mean:
                mean, most = signed(stretch.mean[corner], 2), signed(stretch.extreme[corner], 2)
                label.setText(self.tr("{} mean {}\nmost {}").format(corner, mean, most))
            else:
                label.setText(f"{corner} {NO_VALUE}\n{NO_VALUE}")
