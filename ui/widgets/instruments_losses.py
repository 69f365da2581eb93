"""The table of losses: every place at which a wheel's signal was missing, and the pauses of the recorder."""

from __future__ import annotations

from functools import partial
from typing import Final

import numpy as np
from PySide6.QtCore import QEvent, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QHeaderView, QVBoxLayout, QWidget

from ui.presenters.drop_outs import (
    COLUMNS,
    KIND_HELP,
    DropOuts,
    build_drop_outs,
    build_summary,
    format_cell,
)
from ui.presenters.instrument_tables import build_loss_table
from ui.presenters.plot_table import TextTable
from ui.state.opening import Opened
from ui.state.window_state import WindowState
from ui.theme import Theme
from ui.widgets.instruments_table import RowsModel, TableInstrument
from ui.widgets.instruments_work import Show
from ui.widgets.labels import make_label
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

Index = QModelIndex | QPersistentModelIndex
NUMBERS: Final = frozenset(("begin", "length", "speed", "angle"))
WIDTHS_PX: Final = {"begin": 64, "length": 58, "speed": 66, "driving": 74, "angle": 44, "what": 60}
"""Widths to begin with, at the usual size of the texts; the last column takes what is left."""

USUAL_LINE_PX: Final = 14


def _side_of(column: int) -> Qt.AlignmentFlag:
    """Set numbers to the right, so that their digits stand below each other, and words to the left."""
    side = Qt.AlignmentFlag.AlignRight if COLUMNS[column] in NUMBERS else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter


class LossesModel(RowsModel):
    """Rows over the arrays of the losses; texts are made only of what is looked at."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._losses: DropOuts | None = None
        self._order = np.zeros(0, dtype=np.intp)
        self._sorted_by, self._falling = 0, False
        self._speed_unit = "km/h"

    @property
    def losses(self) -> DropOuts | None:
        """What is shown."""
        return self._losses

    def set_losses(self, losses: DropOuts) -> None:
        """Show these losses in the order chosen before."""
        self.beginResetModel()
        self._losses = losses
        self._order = losses.order_by(self._sorted_by, falling=self._falling)
        self.endResetModel()

    def set_speed_unit(self, unit: str) -> None:
        """Show speeds in another unit."""
        self._speed_unit = unit
        column = COLUMNS.index("speed")
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, column, column)
        if self.rowCount():
            self.dataChanged.emit(self.index(0, column), self.index(self.rowCount() - 1, column))

    def source_row(self, row: int) -> int:
        """Return the loss that a row of the table shows."""
        return int(self._order[row])

    def titles(self) -> tuple[str, ...]:
        """Return the titles of the columns."""
        return (
            self.tr("Begin\ns"),
            self.tr("Lasts\ns"),
            self.tr("Before\n{}").format(self._speed_unit),
            self.tr("Driving"),
            self.tr("At\n°"),
            self.tr("What"),
        )

    def values_of(self, rows: list[int]) -> TextTable | None:
        """Return rows of the table for other programs; None without any."""
        if self._losses is None or not rows:
            return None
        sources = [self.source_row(row) for row in rows]
        titles = [title.replace("\n", ", ") for title in self.titles()]
        return say(build_loss_table(self._losses, sources, titles, speed_unit=self._speed_unit))

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: N802, B008 - Qt's name and default
        """Return the number of losses."""
        return 0 if parent.isValid() else int(self._order.size)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: N802, B008 - Qt's name and default
        """Return the number of columns."""
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = 0) -> object:
        """Return the text of a cell, how it is set, and what happened there."""
        if not index.isValid() or self._losses is None:
            return None
        row = self.source_row(index.row())
        if role == Qt.ItemDataRole.DisplayRole:
            return say(format_cell(self._losses, row, index.column(), speed_unit=self._speed_unit))
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side_of(index.column())
        return say(KIND_HELP[int(self._losses.kind[row])]) if role == Qt.ItemDataRole.ToolTipRole else None

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """Return titles and what they mean."""
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self.titles()[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side_of(section)
        return self._helps()[section] if role == Qt.ItemDataRole.ToolTipRole else None

    def _helps(self) -> tuple[str, ...]:
        return (
            self.tr("Second of the recording at which it begins."),
            self.tr("How long it lasts."),
            self.tr("Speed of the wheel at its last sample before."),
            self.tr("What the car did."),
            self.tr("Angle of the ring map at which it begins, where the turn is known."),
            self.tr("What was lost, and whose loss it is."),
        )

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Sort by a column."""
        self._sorted_by, self._falling = max(column, 0), order == Qt.SortOrder.DescendingOrder
        if self._losses is not None:
            self.layoutAboutToBeChanged.emit()
            self._order = self._losses.order_by(self._sorted_by, falling=self._falling)
            self.layoutChanged.emit()


class LossesInstrument(TableInstrument):
    """A sentence and the table; the row that is chosen is pointed at in the plots."""

    model: LossesModel

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(LossesModel(), parent)
        self._state = state
        self._line_px = 0
        self.summary = make_label("text")
        self.model.set_speed_unit(state.speed_unit)
        self.table.setAccessibleName(self.tr("Losses of the wheel"))
        self.table.setToolTip(self.tr("Enter or a double click shows the place in the plots."))
        self.table.setSortingEnabled(True)
        self.table.sortByColumn(0, Qt.SortOrder.AscendingOrder)
        self._lay_out()
        self.table.row_opened.connect(self._open_row)
        self.table.row_chosen.connect(self._point_at_row)
        state.speed_unit_changed.subscribe(self.model.set_speed_unit)

    def _lay_out(self) -> None:
        header = self.table.horizontalHeader()
        self._fit_columns()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        header.setStretchLastSection(True)
        header.setMinimumHeight(TARGET_PX)
        self.table.verticalHeader().setDefaultSectionSize(TARGET_PX)
        help_text = self.tr("Enter shows a row in the plots: a drop-out as a high mark, a dip as a low one.")
        column_of_parts = QVBoxLayout(self)
        column_of_parts.setContentsMargins(0, 6, 0, 0)
        column_of_parts.setSpacing(6)
        column_of_parts.addWidget(self.summary)
        column_of_parts.addWidget(self.table, 1)
        column_of_parts.addWidget(make_label("muted", help_text))

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Follow the size of the texts."""
        super().changeEvent(event)
        # The first events come before there is a table.
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "summary"):
            self._fit_columns()

    def _fit_columns(self) -> None:
        line_px = self.fontMetrics().height()
        if line_px == self._line_px:
            return
        self._line_px = line_px
        for column, name in enumerate(COLUMNS):
            wide_px = WIDTHS_PX[name] * max(line_px, USUAL_LINE_PX) // USUAL_LINE_PX
            self.table.setColumnWidth(column, wide_px)

    def work_out(self, opened: Opened, row: int) -> Show:
        """Gather the losses of a wheel; touches no widget until they are shown."""
        losses = build_drop_outs(opened.result, row)
        return partial(self._show, losses, build_summary(losses))

    def _show(self, losses: DropOuts, summary: str) -> None:
        self.model.set_losses(losses)
        self.summary.setText(say(summary))

    def set_theme(self, theme: Theme) -> None:
        """Nothing here has colours of its own."""

    @property
    def text(self) -> str:
        """What is said above the table."""
        return self.summary.text()

    def _point_at_row(self, row: int) -> None:
        losses = self.model.losses
        if losses is not None:
            self._state.point_at(float(losses.begin_s[self.model.source_row(row)]))

    def _open_row(self, row: int) -> None:
        losses = self.model.losses
        if losses is not None:
            self._state.show_seconds(losses.span_around(self.model.source_row(row)))
