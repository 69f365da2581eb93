"""The table of losses: every place at which a wheel's signal was missing, and the pauses of the recorder."""

from __future__ import annotations

from typing import Final

import numpy as np
from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHBoxLayout, QHeaderView, QVBoxLayout, QWidget

from ui.presenters.drop_outs import (
    COLUMNS,
    KIND_HELP,
    DropOuts,
    build_drop_outs,
    build_summary,
    build_table_text,
    format_cell,
)
from ui.state.opening import Opened
from ui.state.window_state import WindowState
from ui.theme import Theme
from ui.widgets.copying_table import CopyingTable
from ui.widgets.labels import make_button, make_label
from ui.widgets.styling import TARGET_PX

Index = QModelIndex | QPersistentModelIndex
NUMBERS: Final = frozenset(("begin", "length", "speed", "angle"))
WIDTHS_PX: Final = {"begin": 64, "length": 58, "speed": 66, "driving": 74, "angle": 44, "what": 60}
"""Widths to begin with; the last column takes what is left."""


def _side_of(column: int) -> Qt.AlignmentFlag:
    """Set numbers to the right, so that their digits stand below each other, and words to the left."""
    side = Qt.AlignmentFlag.AlignRight if COLUMNS[column] in NUMBERS else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter


class LossesModel(QAbstractTableModel):
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

    def text_of(self, rows: list[int]) -> str:
        """Return rows of the table as text with tabs."""
        if self._losses is None:
            return ""
        sources = [self.source_row(row) for row in rows]
        titles = [title.replace("\n", ", ") for title in self.titles()]
        return build_table_text(self._losses, sources, titles, speed_unit=self._speed_unit)

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
            return format_cell(self._losses, row, index.column(), speed_unit=self._speed_unit)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side_of(index.column())
        return KIND_HELP[int(self._losses.kind[row])] if role == Qt.ItemDataRole.ToolTipRole else None

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


class LossesInstrument(QWidget):
    """A sentence, the table, and a button to copy it."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self.summary = make_label("text")
        self.model = LossesModel(self)
        self.model.set_speed_unit(state.speed_unit)
        self.table = CopyingTable()
        self.table.setModel(self.model)
        self.table.setAccessibleName(self.tr("Losses of the wheel"))
        self.table.setToolTip(self.tr("Enter or a double click shows the place in the plots."))
        self.table.setSortingEnabled(True)
        self.table.sortByColumn(0, Qt.SortOrder.AscendingOrder)
        self.copy_button = make_button(self.tr("Copy the table"), self.copy_rows)
        self.copy_button.setToolTip(self.tr("Chosen rows, or all, to paste into a spreadsheet (Ctrl+C)"))
        self._lay_out()
        self.table.row_opened.connect(self._open_row)
        self.table.copy_wanted.connect(self.copy_rows)
        state.speed_unit_changed.subscribe(self.model.set_speed_unit)

    def _lay_out(self) -> None:
        header = self.table.horizontalHeader()
        for column, name in enumerate(COLUMNS):
            self.table.setColumnWidth(column, WIDTHS_PX[name])
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        header.setStretchLastSection(True)
        header.setMinimumHeight(TARGET_PX)
        self.table.verticalHeader().setVisible(False)
        self.table.verticalHeader().setDefaultSectionSize(TARGET_PX)
        row = QHBoxLayout()
        row.addWidget(make_label("muted", self.tr("Enter shows a row in the plots.")), 1)
        row.addWidget(self.copy_button)
        column_of_parts = QVBoxLayout(self)
        column_of_parts.setContentsMargins(0, 6, 0, 0)
        column_of_parts.setSpacing(6)
        column_of_parts.addWidget(self.summary)
        column_of_parts.addWidget(self.table, 1)
        column_of_parts.addLayout(row)

    def show_wheel(self, opened: Opened, row: int) -> None:
        """List the losses of a wheel."""
        losses = build_drop_outs(opened.result, row)
        self.model.set_losses(losses)
        self.summary.setText(build_summary(losses))
        self.copy_button.setEnabled(losses.count > 0)

    def set_theme(self, theme: Theme) -> None:
        """Nothing here has colours of its own."""

    def copy_rows(self) -> None:
        """Put the chosen rows, or all, on the clipboard."""
        if self.model.rowCount():
            QGuiApplication.clipboard().setText(self.model.text_of(self.table.chosen_rows()))

    def _open_row(self, row: int) -> None:
        losses = self.model.losses
        if losses is not None:
            self._state.show_seconds(losses.span_around(self.model.source_row(row)))
