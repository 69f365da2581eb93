"""What the instruments that are tables share: rows that are chosen, copied and drawn."""

from __future__ import annotations

from PySide6.QtCore import QAbstractTableModel
from PySide6.QtWidgets import QWidget

from ui.presenters.plot_table import TextTable
from ui.widgets.copying_table import CopyingTable
from ui.widgets.table_picture import TablePicture


class RowsModel(QAbstractTableModel):
    """A model whose rows go to other programs."""

    def values_of(self, rows: list[int]) -> TextTable | None:
        """Return rows of the table; None without any."""
        raise NotImplementedError


class TableInstrument(QWidget):
    """Owns the table and its model.

    Attributes
    ----------
    table : CopyingTable
    model : RowsModel
        What stands in the table.
    copy_wanted, menu_wanted : Signal
        Those of the table.
    """

    model: RowsModel

    def __init__(self, model: RowsModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.model = model
        model.setParent(self)
        self.table = CopyingTable()
        self.table.setModel(model)
        self.table.verticalHeader().setVisible(False)
        self.copy_wanted, self.menu_wanted = self.table.copy_wanted, self.table.menu_wanted

    def drawing(self) -> QWidget | None:
        """Return the chosen rows, or all, as a drawing; None without any."""
        table = self.values()
        return None if table is None else TablePicture(table, self)

    def values(self) -> TextTable | None:
        """Return the chosen rows, or all; None without any."""
        return self.model.values_of(self.table.chosen_rows())
