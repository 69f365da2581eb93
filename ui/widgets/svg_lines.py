"""Pictures of lines that every program draws alike."""

from __future__ import annotations

import re
from typing import Final
from xml.etree import ElementTree as ET

SVG_NAMES: Final = "http://www.w3.org/2000/svg"
Matrix = tuple[float, float, float, float, float, float]
"""a, b, c, d, e, f of SVG 1.1, 7.6: x' = a x + c y + e, y' = b x + d y + f."""

KEPT_WIDTH: Final = "non-scaling-stroke"
_NUMBER: Final = re.compile(r"[-+0-9.eE]+")
_PAIR: Final = re.compile(r"([-+0-9.eE]+)[ ,]+([-+0-9.eE]+)")


def keep_line_widths(svg: bytes) -> bytes:
    """Return a picture in which lines keep their width without an effect that few programs know.

    Qt writes lines of one width on a stretched ground as lines with ``vector-effect`` (SVG Tiny 1.2, 11.4);
    who does not know that draws them as bands over half of the plot. Here the ground is worked into the
    places of the points instead, and nothing is left to be stretched.
    """
    ET.register_namespace("", SVG_NAMES)
    ET.register_namespace("xlink", "http://www.w3.org/1999/xlink")
    root = ET.fromstring(svg)  # noqa: S314 - written by this program a moment ago
    for group in root.iter(f"{{{SVG_NAMES}}}g"):
        matrix = _matrix_of(group.get("transform", ""))
        if matrix is not None and len(group) and all(_can_be_moved(one, matrix) for one in group):
            for one in group:
                _move(one, matrix)
            group.set("transform", "matrix(1,0,0,1,0,0)")
        if "font-family" in group.attrib:
            # Where a font of the system is not known, one without serifs and not just any.
            group.set("font-family", f"{group.attrib['font-family']}, sans-serif")
    written: bytes = ET.tostring(root, encoding="utf-8", xml_declaration=True)
    return written


def _matrix_of(transform: str) -> Matrix | None:
    if not transform.startswith("matrix("):
        return None
    a, b, c, d, e, f = (float(number) for number in _NUMBER.findall(transform.removeprefix("matrix(")))
    return (a, b, c, d, e, f)


def _can_be_moved(element: ET.Element, matrix: Matrix) -> bool:
    kind = element.tag.rpartition("}")[2]
    upright = matrix[1] == matrix[2] == 0.0
    known = kind in ("polyline", "polygon", "path") or (kind in ("rect", "ellipse", "circle") and upright)
    return known and element.get("vector-effect") == KEPT_WIDTH


def _move(element: ET.Element, matrix: Matrix) -> None:
    a, b, c, d, e, f = matrix

    def moved(found: re.Match[str]) -> str:
        x, y = float(found[1]), float(found[2])
        return f"{a * x + c * y + e:.7g},{b * x + d * y + f:.7g}"

    del element.attrib["vector-effect"]
    for name in ("points", "d"):
        if name in element.attrib:
            element.set(name, _PAIR.sub(moved, element.attrib[name]))
    for along, scale, shift in (("x", a, e), ("y", d, f)):
        _stretch(element, along, scale=scale, shift=shift)


def _stretch(element: ET.Element, along: str, *, scale: float, shift: float) -> None:
    """Move what is given by a corner or a middle and two lengths; a length is never negative."""
    length = {"x": "width", "y": "height"}[along]
    size = abs(scale) * float(element.get(length, "0"))
    for place in (along, f"c{along}"):
        if place in element.attrib:
            at = scale * float(element.attrib[place]) + shift
            corner = at - size if scale < 0.0 and place == along else at
            element.set(place, f"{corner:.7g}")
    if length in element.attrib:
        element.set(length, f"{size:.7g}")
    radius = f"r{along}"
    if radius in element.attrib:
        element.set(radius, f"{abs(scale) * float(element.attrib[radius]):.7g}")
