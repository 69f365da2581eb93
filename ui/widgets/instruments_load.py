"""What side load does to a wheel: bars for the loaded, the straight and the relieved wheel."""

from __future__ import annotations

from functools import partial
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.presenters.instrument_tables import build_load_table
from ui.presenters.load_split import LoadBar, LoadGroup, build_load_groups, build_load_sentences
from ui.presenters.plot_table import Table
from ui.state.opening import Opened
from ui.theme import LIGHT, Theme
from ui.widgets.instruments_page import ScrollingColumn
from ui.widgets.instruments_work import Show
from ui.widgets.labels import make_label
from ui.widgets.speaking import say

ROW_PX: Final = 24
GAP_PX: Final = 8
LEAST_BAR_PX: Final = 30


class LoadBars(QWidget):
    """One quantity under three loads: label, bar with its uncertainty, value.

    Attributes
    ----------
    beside : tuple of LoadBars
        Those whose bars begin and end in line with these; usually these are among them.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.beside: tuple[LoadBars, ...] = ()
        self._group: LoadGroup | None = None
        self._theme = LIGHT
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Return room for a title and three bars."""
        return QSize(320, 4 * self._row_px())

    def set_group(self, group: LoadGroup) -> None:
        """Show this quantity."""
        self._group = group
        words = "; ".join(f"{bar.label}: {bar.text}" for bar in group.bars)
        self.setAccessibleName(f"{group.title}, {group.unit}. {words}")
        self.setToolTip(group.help)
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self.update()

    def wanted_room(self) -> tuple[int, int]:
        """Return the widths in pixels that the labels before the bars and the values behind them need."""
        if self._group is None:
            return 0, 0
        metrics = self.fontMetrics()
        label_px = max(metrics.horizontalAdvance(bar.label) for bar in self._group.bars)
        text_px = max(metrics.horizontalAdvance(bar.text) for bar in self._group.bars)
        return label_px + GAP_PX, text_px + GAP_PX

    def _row_px(self) -> int:
        return max(ROW_PX, self.fontMetrics().height() + 6)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw title and bars."""
        if self._group is None:
            return
        painter = QPainter(self)
        painter.setPen(QColor(self._theme.text))
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        row_px = self._row_px()
        title = f"{self._group.title}, {self._group.unit}"
        painter.drawText(QRectF(0, 0, self.width(), row_px), Qt.AlignmentFlag.AlignVCenter, title)
        font.setBold(False)
        painter.setFont(font)
        rooms = [bars.wanted_room() for bars in self.beside] or [self.wanted_room()]
        room = (max(label_px for label_px, _ in rooms), max(text_px for _, text_px in rooms))
        for number, bar in enumerate(self._group.bars, start=1):
            box = QRectF(0, number * row_px, self.width(), row_px)
            self._paint_bar(painter, bar, box, room=room)
        painter.end()

    def _paint_bar(self, painter: QPainter, bar: LoadBar, box: QRectF, *, room: tuple[int, int]) -> None:
        label_px, text_px = room
        painter.setPen(QColor(self._theme.text))
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter, bar.label)
        side = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
        painter.drawText(box, side, bar.text)
        track = box.adjusted(label_px, 5, -text_px, -5)
        if bar.value is None or self._group is None or track.width() < LEAST_BAR_PX:
            return
        painter.fillRect(track, QColor(self._theme.track))
        per_unit = track.width() / self._group.full_scale
        filled = QRectF(track)
        filled.setWidth(max(bar.value, 0.0) * per_unit)
        painter.fillRect(filled, QColor(self._theme.accent))
        self._paint_whisker(painter, bar, track, per_unit)

    def _paint_whisker(self, painter: QPainter, bar: LoadBar, track: QRectF, per_unit: float) -> None:
        """Draw the standard uncertainty, light-edged so that it shows on the bar and beside it."""
        value = bar.value or 0.0
        low = track.left() + max(value - bar.std_uncertainty, 0.0) * per_unit
        high = min(track.left() + (value + bar.std_uncertainty) * per_unit, track.right())
        middle = track.center().y()
        for colour, width in ((self._theme.panel, 4.0), (self._theme.text, 1.6)):
            painter.setPen(QPen(QColor(colour), width))
            painter.drawLine(QPointF(low, middle), QPointF(high, middle))
            for edge in (low, high):
                painter.drawLine(QPointF(edge, middle - 4), QPointF(edge, middle + 4))


class LoadInstrument(ScrollingColumn):
    """Three quantities with what follows from each, and the measurements that rest on side load."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.setAccessibleName(self.tr("Side load"))
        self._groups: tuple[LoadGroup, ...] = ()
        self.bars = tuple(LoadBars() for _ in range(3))
        self.verdicts = tuple(make_label("muted") for _ in range(3))
        for bars, verdict in zip(self.bars, self.verdicts, strict=True):
            bars.beside = self.bars
            self.drawings_column.addWidget(bars)
            self.drawings_column.addWidget(verdict)
            self.drawings_column.addSpacing(6)

    def work_out(self, opened: Opened, row: int) -> Show:
        """Work out what side load does to a wheel; touches no widget until it is shown."""
        from triage.signals.load_split import split_by_load  # noqa: PLC0415 - takes scipy with it

        shares = split_by_load(opened.result.analysis, row)
        sentences = build_load_sentences(opened, row, shares)
        return partial(self._show, build_load_groups(shares), sentences)

    def _show(self, groups: tuple[LoadGroup, ...], worded: tuple[str, ...]) -> None:
        self._groups = say(groups)
        for bars, verdict, group in zip(self.bars, self.verdicts, self._groups, strict=True):
            bars.set_group(group)
            verdict.setText(group.verdict)
        sentences = say(worded)
        self.show_sentences(sentences[:1], sentences[1:])

    def values(self) -> Table | None:
        """Return what is drawn as a table; None where nothing is."""
        return build_load_table(self._groups) if self._groups else None

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        for bars in self.bars:
            bars.set_theme(theme)
