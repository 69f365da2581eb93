"""Lines of one width on a stretched ground, written so that every program draws them alike."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF
from PySide6.QtGui import QPainter, QPen
from PySide6.QtSvg import QSvgGenerator

from ui.widgets.svg_lines import KEPT_WIDTH, SVG_NAMES, keep_line_widths

HEAD = f'<svg xmlns="{SVG_NAMES}" version="1.1">'


def moved(shape: str, matrix: str = "2,0,0,-3,10,20") -> ET.Element:
    drawn = f'{HEAD}<g transform="matrix({matrix})">{shape}</g></svg>'
    group = ET.fromstring(keep_line_widths(drawn.encode()))[0]  # noqa: S314 - made here
    assert group.get("transform") == "matrix(1,0,0,1,0,0)"
    return group[0]


def test_points_are_moved_as_the_ground_was() -> None:
    """x' = 2 x + 10, y' = -3 y + 20, by SVG 1.1, 7.6."""
    line = moved('<polyline vector-effect="non-scaling-stroke" points="0,0 1.5,-2 1e1,4 "/>')
    assert (line.get("points") or "").split() == ["10,20", "13,26", "30,8"]
    curve = moved('<path vector-effect="non-scaling-stroke" d="M0,0 C1,1 2,2 3,3 Z"/>', "0,1,-1,0,5,0")
    assert curve.get("d") == "M5,0 C4,1 3,2 2,3 Z"
    assert "vector-effect" not in {*line.attrib, *curve.attrib}


def test_boxes_and_circles_keep_positive_lengths() -> None:
    box = moved('<rect vector-effect="non-scaling-stroke" x="1" y="2" width="4" height="5"/>')
    assert [float(box.attrib[name]) for name in ("x", "y", "width", "height")] == [12.0, -1.0, 8.0, 15.0]
    ring = moved('<ellipse vector-effect="non-scaling-stroke" cx="1" cy="2" rx="4" ry="5"/>')
    assert [float(ring.attrib[name]) for name in ("cx", "cy", "rx", "ry")] == [12.0, 14.0, 8.0, 15.0]


@pytest.mark.parametrize(
    "shape", ['<text x="1">a</text>', '<polyline vector-effect="none" points="0,0"/>', ""]
)
def test_all_else_stays_where_it_is(shape: str) -> None:
    drawn = f'{HEAD}<g transform="matrix(2,0,0,2,1,1)">{shape}</g></svg>'
    group = ET.fromstring(keep_line_widths(drawn.encode()))[0]  # noqa: S314 - made here
    assert group.get("transform") == "matrix(2,0,0,2,1,1)"


def test_a_line_of_one_width_as_qt_writes_it() -> None:
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    generator = QSvgGenerator()
    generator.setOutputDevice(buffer)
    painter = QPainter(generator)
    pen = QPen()
    pen.setCosmetic(True)
    painter.setPen(pen)
    painter.translate(5.0, 0.0)
    painter.scale(100.0, 0.5)
    painter.drawRect(QRectF(1.0, 2.0, 3.0, 4.0))
    painter.end()
    written = bytes(held.data())
    assert KEPT_WIDTH.encode() in written
    drawn = ET.fromstring(keep_line_widths(written))  # noqa: S314 - made here
    shapes = [one for one in drawn.iter() if one.get("x") or one.get("d")]
    assert KEPT_WIDTH not in ET.tostring(drawn, encoding="unicode")
    assert [shapes[-1].get(name) for name in ("x", "y", "width", "height")] == ["105", "1", "300", "2"] or (
        (shapes[-1].get("d") or "").startswith("M105,1 L405,1 L405,3")
    )
