"""Pictures and tables of what is shown, to a file or the clipboard."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMimeData, QPoint, QRectF, Qt
from PySide6.QtGui import QGuiApplication, QPainter, QPixmap, QRegion
from PySide6.QtWidgets import QGraphicsView, QLabel, QWidget

from triage.errors import OutputError
from triage.output_file import whole_file
from triage.texts import Text
from ui.presenters.plot_table import Table, format_table, write_table
from ui.widgets.svg_lines import keep_line_widths

PNG, SVG = ".png", ".svg"


def draw_pixels(widget: QWidget) -> QPixmap:
    """Return what a widget shows, as pixels of the screen."""
    if isinstance(widget, QGraphicsView):
        return widget.grab()
    ratio = widget.devicePixelRatioF()
    pixels = QPixmap(widget.size() * ratio)
    pixels.setDevicePixelRatio(ratio)
    painter = QPainter(pixels)
    _draw(widget, painter)
    painter.end()
    return pixels


def draw_png(widget: QWidget) -> bytes:
    """Return what a widget shows, as a file of pixels."""
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    draw_pixels(widget).save(buffer, "PNG")
    return bytes(held.data())


def draw_svg(widget: QWidget, title: str) -> bytes:
    """Return what a widget shows, as lines that stay sharp at any size."""
    from PySide6.QtSvg import QSvgGenerator  # noqa: PLC0415 - not needed to start

    held = QByteArray()
    buffer = QBuffer(held)
    # The older standard that is the default knows no clipping, and lines would run out of their plots.
    generator = QSvgGenerator(QSvgGenerator.SvgVersion.Svg11)
    generator.setOutputDevice(buffer)
    size = widget.viewport().size() if isinstance(widget, QGraphicsView) else widget.size()
    generator.setSize(size)
    generator.setViewBox(QRectF(0.0, 0.0, size.width(), size.height()))
    # At another resolution the axes, which the plot library keeps as pictures, are drawn at another scale.
    generator.setResolution(widget.logicalDpiX())
    generator.setTitle(title)
    painter = QPainter(generator)
    _draw(widget, painter)
    painter.end()
    return keep_line_widths(bytes(held.data()))


def _draw(widget: QWidget, painter: QPainter) -> None:
    if isinstance(widget, QGraphicsView):
        whole = QRectF(widget.viewport().rect())
        painter.fillRect(whole, widget.backgroundBrush())
        widget.render(painter, whole, widget.viewport().rect())
        return
    if isinstance(widget, QLabel):
        _draw_label(widget, painter)
        return
    children = [child for child in widget.children() if isinstance(child, QWidget) and not child.isHidden()]
    if not children:
        widget.render(painter, QPoint(), QRegion(), QWidget.RenderFlag(0))
        return
    # What lies in a panel has no ground of its own.
    painter.fillRect(widget.rect(), widget.palette().base())
    for child in children:
        # One by one: drawn by Qt all at once, plots would run out of their frames in an SVG.
        painter.save()
        painter.translate(child.pos())
        _draw(child, painter)
        painter.restore()


def _draw_label(label: QLabel, painter: QPainter) -> None:
    """Draw a label: Qt itself clips its text, and in an SVG at the wrong place, so that it vanishes."""
    if not label.pixmap().isNull():
        painter.drawPixmap(QPoint(), label.pixmap())
        return
    painter.setFont(label.font())
    painter.setPen(label.palette().color(label.foregroundRole()))
    wrapping = Qt.TextFlag.TextWordWrap if label.wordWrap() else Qt.TextFlag.TextSingleLine
    painter.drawText(label.rect(), label.alignment() | wrapping, label.text())


def copy_picture(widget: QWidget, title: str, words: str = "") -> None:
    """Put the picture on the clipboard, as pixels, as lines and with its words: who pastes chooses."""
    offer = QMimeData()
    offer.setImageData(draw_pixels(widget).toImage())
    offer.setData("image/svg+xml", QByteArray(draw_svg(widget, title)))
    if words:
        offer.setText(words)
    QGuiApplication.clipboard().setMimeData(offer)


def save_picture(widget: QWidget, path: str | Path, title: str) -> None:
    """Write the picture to a file; its suffix chooses pixels (.png) or lines (.svg).

    Raises
    ------
    OutputError
        For another suffix, or when the file cannot be written.
    """
    suffix = Path(path).suffix.lower()
    if suffix not in (PNG, SVG):
        raise OutputError(
            "this is no kind of picture that can be made",
            file=str(path),
            hint=Text("Use {pixels} or {lines}.", pixels=PNG, lines=SVG),
        )
    picture = draw_png(widget) if suffix == PNG else draw_svg(widget, title)
    with whole_file(path) as unfinished:
        unfinished.write_bytes(picture)


def copy_table(table: Table) -> None:
    """Put a table on the clipboard, as spreadsheet programs take it."""
    QGuiApplication.clipboard().setText(format_table(table, delimiter="\t"))


def save_table(table: Table, path: str | Path) -> None:
    """Write a table to a file, as comma-separated values.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    with whole_file(path) as unfinished, unfinished.open("w", encoding="utf-8", newline="") as file:
        write_table(table, file)
