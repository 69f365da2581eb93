"""The checks that a trainee can order, with their prices and answers."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QScrollArea,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from triage.corners import CORNERS, Corner
from ui.presenters.exercise import CheckRow, rows_by_heading
from ui.presenters.wording import place_name
from ui.widgets.labels import kept_together, make_button, make_label, set_role
from ui.widgets.speaking import say
from ui.widgets.styling import HAND_PX

ID: Final = Qt.ItemDataRole.UserRole
CAUTIONS: Final = Qt.ItemDataRole.UserRole + 1
ANSWER_PX: Final = 190
CELL_MARGIN_PX: Final = 6
CAUTIONS_PX: Final = 84
SPENT_PX: Final = 40


class CheckShelf(QFrame):
    """Wheel, list of checks, cautions of the chosen one, and the button that does it."""

    def __init__(
        self,
        *,
        on_corner: Callable[[Corner], object],
        on_check: Callable[[str], object],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setProperty("role", "panel")
        self._on_check = on_check
        self.wheels = _WheelRow(on_corner)
        self.list = self._make_list()
        self.cautions = make_label("caution")
        self.spent = make_label("section", larger_by=1.1)
        self.spent.setMinimumHeight(SPENT_PX)
        self.do_button = make_button(self.tr("Do this check  (Enter)"), self._do, primary=True)
        self.do_button.setProperty("hand", True)
        self._items: dict[str, QTreeWidgetItem] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 10, 10, 10)
        column.addWidget(self.wheels)
        column.addWidget(self.list, 1)
        column.addWidget(self._caution_area())
        column.addWidget(self.spent)
        column.addWidget(self.do_button)

    def _caution_area(self) -> QScrollArea:
        """Give the cautions a place of fixed height, so that the list does not jump from check to check."""
        area = QScrollArea()
        area.setProperty("role", "sheet")
        area.setAccessibleName(self.tr("Cautions"))
        area.setWidgetResizable(True)
        area.setFixedHeight(CAUTIONS_PX)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.cautions.setAlignment(Qt.AlignmentFlag.AlignTop)
        area.setWidget(self.cautions)
        for part in (area.viewport(), self.cautions):
            part.setAutoFillBackground(False)  # the card shows through
        return area

    def show_rows(self, rows: tuple[CheckRow, ...], corner: Corner, spent: str) -> None:
        """Show every check with its price or its answer."""
        rows = say(rows)
        if set(self._items) != {row.check for row in rows}:
            self._build(rows)
        for row in rows:
            self._fill(self._items[row.check], row)
        self.wheels.show_corner(corner)
        self.spent.setText(spent)
        self._show_chosen()

    @property
    def chosen(self) -> str | None:
        """Id of the check that is chosen, None for none."""
        item = self.list.currentItem()
        return None if item is None else item.data(0, ID)

    def choose(self, check_id: str) -> None:
        """Choose a check."""
        self.list.setCurrentItem(self._items[check_id])

    def _make_list(self) -> QTreeWidget:
        tree = QTreeWidget()
        tree.setColumnCount(2)
        tree.setHeaderLabels([self.tr("Check"), self.tr("Cost or answer")])
        tree.setRootIsDecorated(False)
        tree.setIndentation(0)
        tree.setWordWrap(True)
        tree.setUniformRowHeights(False)
        tree.setAccessibleName(self.tr("Checks"))
        header = tree.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.Fixed)
        header.resizeSection(1, ANSWER_PX)
        tree.itemActivated.connect(lambda _item, _column: self._do())
        tree.currentItemChanged.connect(lambda _now, _before: self._show_chosen())
        return tree

    def _build(self, rows: tuple[CheckRow, ...]) -> None:
        self.list.clear()
        self._items = {}
        line_px = self.list.fontMetrics().height()
        for heading, group in rows_by_heading(rows):
            title = QTreeWidgetItem([heading])
            title.setFlags(Qt.ItemFlag.NoItemFlags)
            font = title.font(0)
            font.setBold(True)
            title.setFont(0, font)
            title.setSizeHint(0, QSize(0, line_px + 16))
            self.list.addTopLevelItem(title)
            title.setFirstColumnSpanned(True)
            for row in group:
                item = QTreeWidgetItem()
                item.setData(0, ID, row.check)
                self.list.addTopLevelItem(item)
                self._items[row.check] = item
        if rows:
            self.choose(rows[0].check)

    def _fill(self, item: QTreeWidgetItem, row: CheckRow) -> None:
        item.setText(0, row.title)
        item.setText(1, kept_together(f"✓ {row.answer}" if row.answer else row.price))
        item.setToolTip(1, row.answer)
        item.setData(0, Qt.ItemDataRole.AccessibleTextRole, f"{row.title}, {say(place_name(row.place))}")
        item.setData(0, CAUTIONS, row.cautions)
        font = self.list.font()
        font.setBold(bool(row.answer))
        item.setFont(1, font)
        item.setSizeHint(0, QSize(0, self._row_px(item)))

    def _row_px(self, item: QTreeWidgetItem) -> int:
        """Height in which a check of two lines and its whole answer have room."""
        room = QRect(0, 0, ANSWER_PX - 2 * CELL_MARGIN_PX, 10 * HAND_PX)
        answer = QFontMetrics(item.font(1)).boundingRect(room, Qt.TextFlag.TextWordWrap, item.text(1))
        return max(HAND_PX, 2 * self.list.fontMetrics().height() + 8, answer.height() + 8)

    def _show_chosen(self) -> None:
        item = self.list.currentItem()
        cautions = () if item is None else item.data(0, CAUTIONS) or ()
        words = "\n".join(f"⚠ {caution}" for caution in cautions)
        self.cautions.setText(words or self.tr("No caution belongs to this check."))
        set_role(self.cautions, "caution" if words else "muted")
        self.do_button.setEnabled(item is not None and not item.text(1).startswith("✓"))

    def _do(self) -> None:
        if self.chosen is not None:
            self._on_check(self.chosen)


class _WheelRow(QWidget):
    """At which wheel checks are done."""

    def __init__(self, on_corner: Callable[[Corner], object]) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        self._label: QLabel = make_label("muted", self.tr("Checks at"))
        row.addWidget(self._label)
        self._group = QButtonGroup(self)
        self.buttons: dict[Corner, QPushButton] = {}
        for number, corner in enumerate(CORNERS, 1):
            button = QPushButton(f"{number}  {corner}")
            button.setCheckable(True)
            button.setProperty("hand", True)
            button.setAccessibleName(say(place_name(corner)))
            button.setToolTip(say(place_name(corner)))
            button.clicked.connect(lambda _checked=False, at=corner: on_corner(at))
            self._group.addButton(button)
            self.buttons[corner] = button
            row.addWidget(button, 1)

    def show_corner(self, corner: Corner) -> None:
        """Press the button of a wheel."""
        self.buttons[corner].setChecked(True)
