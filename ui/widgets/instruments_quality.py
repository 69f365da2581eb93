"""How good the recording is: a table of the four wheels, and what was repaired."""

from __future__ import annotations

from functools import partial
from typing import Final

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QHeaderView, QVBoxLayout, QWidget

from triage.corners import CORNERS
from ui.presenters.entries import Entry
from ui.presenters.instrument_tables import build_quality_table
from ui.presenters.plot_table import TextTable
from ui.presenters.quality import QualityRow, build_quality_rows, build_repair_entries
from ui.state.opening import Opened
from ui.theme import Theme
from ui.widgets.article import Article
from ui.widgets.instruments_table import RowsModel, TableInstrument
from ui.widgets.instruments_work import Show
from ui.widgets.speaking import say

Index = QModelIndex | QPersistentModelIndex
EDGE_PX: Final = 6
ROW_PX: Final = 24


class QualityModel(RowsModel):
    """One row for each quantity, one column for each wheel."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[QualityRow, ...] = ()

    def set_rows(self, rows: tuple[QualityRow, ...]) -> None:
        """Show these rows."""
        self.beginResetModel()
        self._rows = rows
        self.endResetModel()

    def values_of(self, rows: list[int]) -> TextTable | None:
        """Return rows for other programs, the wheels on top; None without any."""
        return build_quality_table([self._rows[row] for row in rows]) if rows else None

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: N802, B008 - Qt's name and default
        """Return the number of quantities."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: N802, B008 - Qt's name and default
        """Return one title and four wheels."""
        return 0 if parent.isValid() else 1 + len(CORNERS)

    def data(self, index: Index, role: int = 0) -> object:
        """Return a title or a value, and what the row means."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return (row.title, *row.cells)[index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if index.column() else Qt.AlignmentFlag.AlignLeft
            return side | Qt.AlignmentFlag.AlignVCenter
        return row.meaning if role == Qt.ItemDataRole.ToolTipRole else None

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """Return the wheels, above their numbers."""
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return ("", *CORNERS)[section] if role == Qt.ItemDataRole.DisplayRole else None


class QualityInstrument(TableInstrument):
    """Table above, words below."""

    model: QualityModel

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(QualityModel(), parent)
        self.table.setAccessibleName(self.tr("Quality of the recording, wheel by wheel"))
        self.table.verticalHeader().setDefaultSectionSize(ROW_PX)
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.words = Article(self.tr("What was noticed and repaired"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 6, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.table)
        column.addWidget(self.words, 1)

    def work_out(self, opened: Opened, _row: int) -> Show:
        """Work out the quality, of all wheels at once; touches no widget until it is shown."""
        log = opened.result.log
        return partial(self._show, build_quality_rows(log), build_repair_entries(log))

    def _show(self, rows: tuple[QualityRow, ...], entries: tuple[Entry, ...]) -> None:
        self.model.set_rows(say(rows))
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        rows_px = self.model.rowCount() * ROW_PX
        self.table.setFixedHeight(header.sizeHint().height() + rows_px + EDGE_PX)
        self.words.set_parts(*say(entries))

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self.words.set_theme(theme)

    @property
    def text(self) -> str:
        """What was noticed and repaired, in words."""
        return self.words.toPlainText()
