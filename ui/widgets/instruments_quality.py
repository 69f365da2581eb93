"""How good the recording is: a table of the four wheels, and what was repaired."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHeaderView, QVBoxLayout, QWidget

from triage.corners import CORNERS
from ui.presenters.quality import QualityRow, build_quality_rows, build_repair_entries
from ui.state.opening import Opened
from ui.theme import Theme
from ui.widgets.article import Article
from ui.widgets.copying_table import CopyingTable

Index = QModelIndex | QPersistentModelIndex
EDGE_PX: Final = 6
ROW_PX: Final = 24


class QualityModel(QAbstractTableModel):
    """One row for each quantity, one column for each wheel."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[QualityRow, ...] = ()

    def set_rows(self, rows: tuple[QualityRow, ...]) -> None:
        """Show these rows."""
        self.beginResetModel()
        self._rows = rows
        self.endResetModel()

    def text_of(self, rows: list[int]) -> str:
        """Return rows as text with tabs, the wheels on top."""
        lines = ["\t".join(("", *CORNERS))]
        lines += ["\t".join((self._rows[row].title, *self._rows[row].cells)) for row in rows]
        return "\n".join(lines) + "\n"

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
        """Return the wheels."""
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return ("", *CORNERS)[section]
        return None


class QualityInstrument(QWidget):
    """Table above, words below."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.model = QualityModel(self)
        self.table = CopyingTable()
        self.table.setModel(self.model)
        self.table.setAccessibleName(self.tr("Quality of the recording, wheel by wheel"))
        self.table.verticalHeader().setVisible(False)
        self.table.verticalHeader().setDefaultSectionSize(ROW_PX)
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.table.copy_wanted.connect(self._copy)
        self.words = Article(self.tr("What was noticed and repaired"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 6, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.table)
        column.addWidget(self.words, 1)

    def show_wheel(self, opened: Opened, _row: int) -> None:
        """Show the quality of a recording; it is told for all wheels at once."""
        log = opened.result.log
        self.model.set_rows(build_quality_rows(log))
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        rows_px = self.model.rowCount() * ROW_PX
        self.table.setFixedHeight(header.sizeHint().height() + rows_px + EDGE_PX)
        self.words.set_parts(*build_repair_entries(log))

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self.words.set_theme(theme)

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.model.text_of(self.table.chosen_rows()))
