"""Scrolling text made of entries; used beside the plots."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from typing import Final

from PySide6.QtWidgets import QTextBrowser, QWidget

from ui.presenters.entries import Entry, WheelRow
from ui.theme import Theme, theme_for

LIST_INDENT_PX: Final = 18.0


class Article(QTextBrowser):
    """Text to read, with the keyboard too; every text is escaped before it becomes markup."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setOpenLinks(False)
        self.document().setIndentWidth(LIST_INDENT_PX)
        self.setTabChangesFocus(True)
        self._theme = theme_for(dark=False)
        self._parts: tuple[str | Entry | tuple[WheelRow, ...], ...] = ()

    def set_parts(self, *parts: str | Entry | tuple[WheelRow, ...]) -> None:
        """Show headings (plain strings), entries and the table of wheels, in this order."""
        self._parts = parts
        self._render()

    def set_theme(self, theme: Theme) -> None:
        """Change colours."""
        self._theme = theme
        self._render()

    def _render(self) -> None:
        position = self.verticalScrollBar().value()
        self.setHtml("".join(self._part_html(part) for part in self._parts))
        self.verticalScrollBar().setValue(position)

    def _part_html(self, part: str | Entry | tuple[WheelRow, ...]) -> str:
        if isinstance(part, str):
            return f"<p style='margin:4px; color:{self._theme.muted}'>{escape(part)}</p>"
        return self._entry_html(part) if isinstance(part, Entry) else self._wheels_html(part)

    def _entry_html(self, entry: Entry) -> str:
        lines = [f"<b>{escape(entry.title)}</b>"] if entry.title else []
        if entry.subtitle:
            lines.append(f"<span style='color:{self._theme.muted}'>{escape(entry.subtitle)}</span>")
        if entry.text:
            lines.append(_unbroken(entry.text))
        lines += [f"<i>{escape(name)}:</i> {escape(value)}" for name, value in entry.facts]
        text = f"<p style='margin:6px 4px 14px 4px; line-height:125%'>{'<br>'.join(lines)}</p>"
        return (text if lines else "") + self._cautions_html(entry.cautions)

    def _cautions_html(self, cautions: tuple[str, ...]) -> str:
        """Head a list once: a sign on every line of many would make all of them pass unread."""
        if not cautions:
            return ""
        title = self.tr("Caution") if len(cautions) == 1 else self.tr("Cautions")
        lines = "".join(
            f"<li style='margin-bottom:4px; line-height:125%'>{_unbroken(text)}</li>" for text in cautions
        )
        colour = f"color:{self._theme.caution}"
        return (
            f"<p style='margin:0 4px 2px 4px; {colour}'><b>⚠ {escape(title)}</b></p>"
            f"<ul style='margin:0 4px 14px 0; -qt-list-indent:1; {colour}; line-height:125%'>{lines}</ul>"
        )

    def _wheels_html(self, rows: tuple[WheelRow, ...]) -> str:
        titles = (
            self.tr("Wheel"),
            self.tr("Read from"),
            self.tr("Unit"),
            self.tr("Samples"),
            self.tr("Left out"),
        )
        head = "".join(f"<th align='left'>{escape(title)}</th>" for title in (*titles, self.tr("Step, km/h")))
        cells = (
            "".join(
                f"<td>{escape(cell)}</td>"
                for cell in (r.wheel, r.source, r.unit, r.samples, r.invalid, r.step)
            )
            for r in rows
        )
        body = "".join(f"<tr>{row}</tr>" for row in cells)
        # Markup counts in pixels: taken from the letters, the columns stay apart when those grow.
        gap_px = round(self.fontMetrics().height() / 5)
        return f"<table cellspacing='0' cellpadding='{gap_px}'><tr>{head}</tr>{body}</table>"


def _unbroken(text: str) -> str:
    """Return a text as markup in which no line ends after the stroke of km/h."""
    # Qt breaks lines there; the joiner has no width.
    return escape(text).replace("km/h", "km/\u2060h")


def join_parts(*groups: Iterable[str | Entry]) -> tuple[str | Entry, ...]:
    """Chain several groups of parts."""
    return tuple(part for group in groups for part in group)
