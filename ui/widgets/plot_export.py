"""Pictures and tables of what the plots show, to a file or the clipboard."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMimeData, QRectF
from PySide6.QtGui import QGuiApplication, QPainter
from PySide6.QtWidgets import QGraphicsView

from triage.errors import OutputError
from triage.output_file import whole_file
from ui.presenters.plot_table import PlotTable, format_plot_table, write_plot_table

PNG, SVG = ".png", ".svg"


def draw_png(canvas: QGraphicsView) -> bytes:
    """Return what the canvas shows, as pixels."""
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    canvas.grab().save(buffer, "PNG")
    return bytes(held.data())


def draw_svg(canvas: QGraphicsView, title: str) -> bytes:
    """Return what the canvas shows, as lines that stay sharp at any size."""
    from PySide6.QtSvg import QSvgGenerator  # noqa: PLC0415 - not needed to start

    held = QByteArray()
    buffer = QBuffer(held)
    # The older standard that is the default knows no clipping, and lines would run out of their plots.
    generator = QSvgGenerator(QSvgGenerator.SvgVersion.Svg11)
    generator.setOutputDevice(buffer)
    size = canvas.viewport().size()
    generator.setSize(size)
    generator.setViewBox(QRectF(0.0, 0.0, size.width(), size.height()))
    # At another resolution the axes, which the plot library keeps as pictures, are drawn at another scale.
    generator.setResolution(canvas.logicalDpiX())
    generator.setTitle(title)
    painter = QPainter(generator)
    painter.fillRect(QRectF(0.0, 0.0, size.width(), size.height()), canvas.backgroundBrush())
    canvas.render(painter, QRectF(0.0, 0.0, size.width(), size.height()), canvas.viewport().rect())
    painter.end()
    return bytes(held.data())


def copy_picture(canvas: QGraphicsView, title: str) -> None:
    """Put the picture on the clipboard, as pixels and as lines; the program pasted into takes its choice."""
    offer = QMimeData()
    offer.setImageData(canvas.grab().toImage())
    offer.setData("image/svg+xml", QByteArray(draw_svg(canvas, title)))
    QGuiApplication.clipboard().setMimeData(offer)


def save_picture(canvas: QGraphicsView, path: str | Path, title: str) -> None:
    """Write the picture to a file; its suffix chooses pixels (.png) or lines (.svg).

    Raises
    ------
    OutputError
        For another suffix, or when the file cannot be written.
    """
    suffix = Path(path).suffix.lower()
    if suffix not in (PNG, SVG):
        raise OutputError(
            "this is no kind of picture that can be made", file=str(path), hint=f"Use {PNG} or {SVG}."
        )
    picture = draw_png(canvas) if suffix == PNG else draw_svg(canvas, title)
    with whole_file(path) as unfinished:
        unfinished.write_bytes(picture)


def copy_table(table: PlotTable) -> None:
    """Put a table on the clipboard, as spreadsheet programs take it."""
    QGuiApplication.clipboard().setText(format_plot_table(table, delimiter="\t"))


def save_table(table: PlotTable, path: str | Path) -> None:
    """Write a table to a file, as comma-separated values.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    with whole_file(path) as unfinished, unfinished.open("w", encoding="utf-8", newline="") as file:
        write_plot_table(table, file)
