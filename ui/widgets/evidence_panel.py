"""Evidence for and against the chosen cause; a line jumps to its seconds in the plots."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import (
    QT_TRANSLATE_NOOP,
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFont, QFontMetrics, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QListView,
    QStackedLayout,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from ui.presenters.verdict import EvidenceLine, RankingRow, build_evidence, build_ranking_rows
from ui.state.window_state import Highlight, WindowState
from ui.theme import Theme, theme_for
from ui.widgets.labels import make_label
from ui.widgets.speaking import say

Index = QModelIndex | QPersistentModelIndex
LINE_ROLE: Final = Qt.ItemDataRole.UserRole
FULL_BAR_BIT: Final = 6.0
"""Weight at which the bar is full: odds of 64 to 1."""

WRAP: Final = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


class EvidenceModel(QAbstractListModel):
    """Lines of evidence, first for, then against."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._lines: tuple[EvidenceLine, ...] = ()

    def set_lines(self, lines: tuple[EvidenceLine, ...]) -> None:
        """Show these lines."""
        self.beginResetModel()
        self._lines = lines
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: N802, B008 - Qt's name and default
        """Return the number of lines."""
        return 0 if parent.isValid() else len(self._lines)

    def data(self, index: Index, role: int = 0) -> object:
        """Return a line as one sentence, or whole."""
        if not index.isValid():
            return None
        line = self._lines[index.row()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return f"{self._side(line)}, {line.weight_bit:.1f} bit: {line.statement} ({line.where})"
        if role == Qt.ItemDataRole.ToolTipRole:
            jump = self.tr("Click or press Enter to see it in the plots; again for its next place.")
            return jump if line.spans else self.tr("This does not come from the recording.")
        return line if role == LINE_ROLE else None

    def _side(self, line: EvidenceLine) -> str:
        return self.tr("For") if line.side == "for" else self.tr("Against")


class EvidenceDelegate(QStyledItemDelegate):
    """Draws a line: side and weight on the left, the sentence and its seconds on the right."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.theme: Theme = theme_for(dark=False)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:  # noqa: N802 - Qt's name
        """Return the height that the wrapped sentence needs at the width of the list."""
        view = option.widget
        width = view.viewport().width() if isinstance(view, QListView) else option.rect.width()
        line: EvidenceLine = index.data(LINE_ROLE)
        column = QRect(0, 0, width - self._side_px(option) - 22, 10_000)
        text = option.fontMetrics.boundingRect(column, int(WRAP), line.statement)
        line_px = option.fontMetrics.height()
        return QSize(width, max(text.height() + line_px + 14, 2 * line_px + 22))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw one line."""
        line: EvidenceLine = index.data(LINE_ROLE)
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        painter.fillRect(option.rect, QColor(self.theme.accent if selected else self.theme.panel))
        self._paint_side(painter, option, line, selected=selected)
        self._paint_text(painter, option, line, selected=selected)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(
                QPen(QColor(self.theme.on_accent if selected else self.theme.focus), 1, Qt.PenStyle.DotLine)
            )
            painter.drawRect(option.rect.adjusted(2, 2, -3, -3))
        painter.setPen(QColor(self.theme.track))
        painter.drawLine(option.rect.bottomLeft(), option.rect.bottomRight())
        painter.restore()

    def _side_px(self, option: QStyleOptionViewItem) -> int:
        bold = QFont(option.font)
        bold.setBold(True)
        texts = (*(f"− {side}" for side in (self.tr("For"), self.tr("Against"))), "10.0 bit")
        return max(QFontMetrics(bold).horizontalAdvance(text) for text in texts) + 12

    def _paint_side(
        self, painter: QPainter, option: QStyleOptionViewItem, line: EvidenceLine, *, selected: bool
    ) -> None:
        sign = "+ " + self.tr("For") if line.side == "for" else "− " + self.tr("Against")
        box = option.rect.adjusted(8, 6, 0, 0)
        box.setWidth(self._side_px(option))
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        painter.setPen(QColor(self.theme.on_accent if selected else self.theme.text))
        painter.drawText(box, int(WRAP), sign)
        font.setBold(False)
        painter.setFont(font)
        lower = box.translated(0, option.fontMetrics.height() + 1)
        painter.drawText(lower, int(WRAP), f"{line.weight_bit:.1f} bit")
        bar = QRect(box.left(), lower.top() + option.fontMetrics.height() + 1, box.width() - 12, 4)
        filled = round(bar.width() * min(line.weight_bit / FULL_BAR_BIT, 1.0))
        colour = self.theme.on_accent if selected else self.theme.accent
        painter.fillRect(QRect(bar.left(), bar.top(), max(filled, 2), bar.height()), QColor(colour))

    def _paint_text(
        self, painter: QPainter, option: QStyleOptionViewItem, line: EvidenceLine, *, selected: bool
    ) -> None:
        box = option.rect.adjusted(self._side_px(option) + 12, 6, -8, -4)
        painter.setPen(QColor(self.theme.on_accent if selected else self.theme.text))
        painter.drawText(box, int(WRAP), line.statement)
        painter.setPen(QColor(self.theme.on_accent if selected else self.theme.muted))
        lower = box.adjusted(
            0, option.fontMetrics.boundingRect(box, int(WRAP), line.statement).height() + 2, 0, 0
        )
        painter.drawText(lower, int(WRAP), ("→ " if line.spans else "") + line.where)


class _LineList(QListView):
    """A list that tells Enter from a double click, which ``activated`` does not."""

    enter_pressed = Signal(QModelIndex)
    key_help = (
        (
            "Return",
            QT_TRANSLATE_NOOP(
                "KeyHelp", "Show the place of this finding in the plots; again for its next place"
            ),
        ),
    )

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Report Enter on a line, leave all else to Qt."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.enter_pressed.emit(self.currentIndex())
            return
        super().keyPressEvent(event)


class EvidencePanel(QWidget):
    """The list of evidence of the chosen cause."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self.model = EvidenceModel(self)
        self.list = _LineList()
        self._delegate = EvidenceDelegate(self.list)
        self.list.setModel(self.model)
        self.list.setItemDelegate(self._delegate)
        # Heights depend on the width; only with word wrap does the list ask for them again when it changes.
        self.list.setWordWrap(True)
        self.list.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setAccessibleName(self.tr("Evidence for and against the chosen cause"))
        self._empty = make_label("muted", self.tr("No finding speaks clearly for or against this cause."))
        self._empty.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._empty.setContentsMargins(8, 8, 8, 8)
        self.heading = make_label("muted")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.heading)
        self._stack = QStackedLayout()
        column.addLayout(self._stack, 1)
        self._stack.addWidget(self.list)
        self._stack.addWidget(self._empty)
        self.list.clicked.connect(self._activate)
        self.list.enter_pressed.connect(self._activate)
        state.phase_changed.subscribe(lambda _phase: self._refresh())
        state.choice_changed.subscribe(lambda _rank: self._refresh())
        state.verdict_changed.subscribe(lambda _opened: self._refresh())
        state.highlight_changed.subscribe(self._show_highlight)
        state.dark_changed.subscribe(self._show_dark)
        self._show_dark(state.dark)

    def _activate(self, index: QModelIndex) -> None:
        line: EvidenceLine | None = index.data(LINE_ROLE)
        if line is not None:
            self._state.show_finding(line.finding_id)

    def _refresh(self) -> None:
        opened = self._state.opened
        lines = () if opened is None else build_evidence(opened.result, self._state.choice)
        self.heading.setText(
            "" if opened is None else self._heading(say(build_ranking_rows(opened)[self._state.choice]))
        )
        self.model.set_lines(say(lines))
        self._stack.setCurrentIndex(0 if lines else 1)

    def _heading(self, row: RankingRow) -> str:
        return self.tr("{}: {}. A line with → jumps to its seconds.").format(row.place, row.cause)

    def _show_highlight(self, highlight: Highlight | None) -> None:
        for row in range(self.model.rowCount()):
            index = self.model.index(row)
            if highlight is not None and index.data(LINE_ROLE).finding_id == highlight.finding_id:
                self.list.setCurrentIndex(index)

    def _show_dark(self, dark: bool) -> None:
        self._delegate.theme = theme_for(dark=dark)
        self.list.viewport().update()
