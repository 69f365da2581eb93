"""The ranked causes with their probability as bar and number."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from ui.presenters.verdict import RankingRow, build_ranking_rows
from ui.state.opening import Opened
from ui.state.window_state import Phase, ShowingPhase, WindowState
from ui.theme import Theme, theme_for
from ui.widgets.labels import make_label
from ui.widgets.speaking import say
from ui.widgets.styling import TARGET_PX

Index = QModelIndex | QPersistentModelIndex
PROBABILITY_ROLE: Final = Qt.ItemDataRole.UserRole
PLACE_COLUMN, CAUSE_COLUMN, PROBABILITY_COLUMN = range(3)


class RankingModel(QAbstractTableModel):
    """Rows of the ranking: place, cause, probability."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[RankingRow, ...] = ()

    def set_rows(self, rows: tuple[RankingRow, ...]) -> None:
        """Show these rows."""
        self.beginResetModel()
        self._rows = rows
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: N802, B008 - Qt's name and default
        """Return the number of hypotheses."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: N802, B008 - Qt's name and default
        """Return three columns."""
        return 0 if parent.isValid() else 3

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = 0) -> object:  # noqa: N802
        """Return the column titles."""
        if orientation != Qt.Orientation.Horizontal or role != Qt.ItemDataRole.DisplayRole:
            return None
        return (self.tr("Where"), self.tr("Cause"), self.tr("Probability"))[section]

    def data(self, index: Index, role: int = 0) -> object:
        """Return text, tool tip or the bare probability of a cell."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return (row.place, row.cause, row.percent)[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            return row.claim or row.cause
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{row.place}, {row.cause}, {row.percent}"
        return row.probability if role == PROBABILITY_ROLE else None


class BarDelegate(QStyledItemDelegate):
    """Draws a probability as a bar with the number beside it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.theme: Theme = theme_for(dark=False)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw background, bar and number."""
        selected = bool(option.state & option.state.State_Selected)
        self.initStyleOption(option, index)
        option.text = ""
        option.widget.style().drawControl(
            option.widget.style().ControlElement.CE_ItemViewItem, option, painter, option.widget
        )
        painter.save()
        metrics = option.fontMetrics
        text_px = metrics.horizontalAdvance("under 99 %") + 6
        box = QRectF(option.rect).adjusted(6, 8, -text_px - 6, -8)
        self._paint_bar(painter, box, float(index.data(PROBABILITY_ROLE)), selected=selected)
        painter.setPen(QColor(self.theme.on_accent if selected else self.theme.text))
        beside = QRectF(option.rect).adjusted(box.width() + 8, 0, -6, 0)
        painter.drawText(
            beside,
            Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight,
            index.data(Qt.ItemDataRole.DisplayRole),
        )
        painter.restore()

    def _paint_bar(self, painter: QPainter, box: QRectF, probability: float, *, selected: bool) -> None:
        painter.fillRect(box, QColor(self.theme.accent if selected else self.theme.track))
        filled = QRectF(box)
        filled.setWidth(max(box.width() * probability, 1.0))
        painter.fillRect(filled, QColor(self.theme.on_accent if selected else self.theme.accent))
        painter.setPen(QColor(self.theme.on_accent if selected else self.theme.border))
        painter.drawRect(box)

    def sizeHint(self, option: QStyleOptionViewItem, _index: Index) -> QSize:  # noqa: N802 - Qt's name
        """Return room for a bar that can still be read."""
        return QSize(option.fontMetrics.horizontalAdvance("under 99 %") + 90, TARGET_PX)


class RankingPanel(QWidget):
    """The list of causes; the chosen line decides which evidence is shown."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self.model = RankingModel(self)
        self.table = QTableView()
        self._bars = BarDelegate(self.table)
        self._set_up_table()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(make_label("section", self.tr("What may be wrong")))
        column.addWidget(self.table)
        self.table.selectionModel().currentRowChanged.connect(lambda now, _before: state.choose(now.row()))
        state.phase_changed.subscribe(self._show_phase)
        state.verdict_changed.subscribe(self._show_verdict)
        state.choice_changed.subscribe(self._show_choice)
        state.dark_changed.subscribe(self._show_dark)
        self._show_dark(state.dark)

    def _set_up_table(self) -> None:
        table = self.table
        table.setModel(self.model)
        table.setItemDelegateForColumn(PROBABILITY_COLUMN, self._bars)
        table.setAccessibleName(self.tr("Ranked causes"))
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        table.setTabKeyNavigation(False)
        table.setShowGrid(False)
        table.verticalHeader().hide()
        table.verticalHeader().setMinimumSectionSize(TARGET_PX)
        table.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header = table.horizontalHeader()
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setSectionResizeMode(PLACE_COLUMN, QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(CAUSE_COLUMN, QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(PROBABILITY_COLUMN, QHeaderView.ResizeMode.ResizeToContents)
        table.setMinimumHeight(5 * TARGET_PX)

    def _show_phase(self, phase: Phase) -> None:
        self._show_verdict(phase.opened if isinstance(phase, ShowingPhase) else None)

    def _show_verdict(self, opened: Opened | None) -> None:
        rows = () if opened is None else say(build_ranking_rows(opened))
        self.model.set_rows(rows)
        if rows:
            self.table.selectRow(0)

    def _show_choice(self, rank: int) -> None:
        if self.table.currentIndex().row() != rank:
            self.table.selectRow(rank)

    def _show_dark(self, dark: bool) -> None:
        self._bars.theme = theme_for(dark=dark)
        self.table.viewport().update()
