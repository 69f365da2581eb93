"""The other recording that is laid over: its name, how it is laid, and the wheels in numbers."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QSizePolicy,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from ui.presenters.comparison import Alignment, Comparison, format_compared, shorten
from ui.widgets.cut_label import CutLabel
from ui.widgets.labels import make_button
from ui.widgets.speaking import say

ROW_PX: Final = 24
COLUMN_PX: Final = 60
NAME_LETTERS: Final = 22


class ComparisonPanel(QWidget):
    """Hidden while nothing is compared.

    Parameters
    ----------
    on_align : callable
        Called with the other way to lay the recordings over each other.
    on_end : callable
        Called to end the comparison.
    """

    def __init__(
        self,
        *,
        on_align: Callable[[Alignment], object],
        on_end: Callable[[], object],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._by: Alignment = "distance"
        self.caption = CutLabel("section")
        self.align_button = make_button(
            "", lambda: on_align("time" if self._by == "distance" else "distance")
        )
        self.end_button = make_button(self.tr("End the comparison"), on_end)
        self.table = QTableWidget(4, 5)
        self._set_up_table()
        row = QHBoxLayout()
        row.addWidget(self.caption, 1)
        row.addWidget(self.align_button)
        row.addWidget(self.end_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 2, 0, 0)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.table)
        self.setVisible(False)

    def _set_up_table(self) -> None:
        table = self.table
        table.setAccessibleName(self.tr("The wheels in both recordings"))
        table.setHorizontalHeaderLabels(
            [
                self.tr("Wheel"),
                self.tr("Divergence\nhere"),
                self.tr("Divergence\nthere"),
                self.tr("Losses per km\nhere"),
                self.tr("Losses per km\nthere"),
            ]
        )
        table.setToolTip(
            self.tr(
                "Half of the time a wheel is nearer than this to what it should read; "
                "a loss is a signal that is gone or briefly low."
            )
        )
        table.setShowGrid(False)
        table.setAlternatingRowColors(True)
        table.verticalHeader().hide()
        table.verticalHeader().setMinimumSectionSize(ROW_PX)
        table.verticalHeader().setDefaultSectionSize(ROW_PX)
        table.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        table.horizontalHeader().setStretchLastSection(True)
        table.horizontalHeader().setMinimumSectionSize(COLUMN_PX)
        table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setTabKeyNavigation(False)
        table.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        table.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def show_comparison(self, comparison: Comparison | None) -> None:
        """Show these numbers, or nothing."""
        self.setVisible(comparison is not None)
        if comparison is None:
            return
        self._by = comparison.by
        self.caption.show_text(self._caption(comparison))
        by_time = comparison.by == "time"
        self.align_button.setText(self.tr("Lay over by distance") if by_time else self.tr("Lay over by time"))
        self.align_button.setEnabled(not comparison.problem)
        for row, wheel in enumerate(comparison.wheels):
            for column, text in enumerate((wheel.corner, *format_compared(wheel))):
                self.table.setItem(row, column, QTableWidgetItem(text))
        self._fit_height()

    def _caption(self, comparison: Comparison) -> str:
        name = shorten(comparison.name, NAME_LETTERS)
        if comparison.problem:
            return f"{name}: {say(comparison.problem)}"
        by = self.tr("time") if comparison.by == "time" else self.tr("distance")
        return self.tr("Pale: {}, by {}").format(name, by)

    def _fit_height(self) -> None:
        line_px = max(self.table.fontMetrics().height() + 4, ROW_PX)
        self.table.verticalHeader().setDefaultSectionSize(line_px)
        rows = line_px * self.table.rowCount()
        self.table.setFixedHeight(self.table.horizontalHeader().sizeHint().height() + rows + 4)

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Keep all rows in view when the text grows."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._fit_height()
