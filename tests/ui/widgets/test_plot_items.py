from __future__ import annotations

from unittest.mock import Mock

import numpy as np
import pytest
from PySide6.QtCore import QRectF

from ui.presenters.marks import Band
from ui.theme import LIGHT
from ui.widgets.plot_items import BandStrip, _bars, spread_labels


def test_labels_that_fit_stay_where_they_are() -> None:
    assert spread_labels([20.0, 60.0, 100.0], height_px=15.0, top_px=0.0, bottom_px=200.0) == [
        20.0,
        60.0,
        100.0,
    ]


@pytest.mark.parametrize(
    "wanted", [[50.0] * 4, [0.0, -5.0, 3.0, 1.0], [99.0, 100.0, 120.0, 98.0], [10.0, 95.0, 12.0, 90.0]]
)
def test_labels_never_cover_each_other_and_stay_inside(wanted: list[float]) -> None:
    placed = spread_labels(wanted, height_px=15.0, top_px=0.0, bottom_px=100.0)
    gaps = np.diff(sorted(placed))
    assert (gaps >= 15.0 - 1e-9).all()
    assert min(placed) >= 7.5
    assert max(placed) <= 92.5
    assert np.argsort(placed, kind="stable").tolist() == np.argsort(wanted, kind="stable").tolist()


def test_no_labels() -> None:
    assert spread_labels([], height_px=15.0, top_px=0.0, bottom_px=100.0) == []


def test_a_mark_is_never_too_thin_to_see_and_only_marks_in_view_are_drawn() -> None:
    begin_s, end_s = np.array([1.0, 20.0, 50.0]), np.array([1.001, 30.0, 60.0])
    view = QRectF(0.0, 0.0, 40.0, 5.0)
    bars = _bars(begin_s, end_s, view, edges=(3.0, 9.0), scale=(10.0, 5.0))
    assert [(bar.left(), bar.width(), bar.height()) for bar in bars] == [
        (pytest.approx(15.0), pytest.approx(2.0), 6.0),
        (pytest.approx(205.0), pytest.approx(100.0), 6.0),
    ]


def test_only_bands_wide_enough_get_an_edge() -> None:
    strip, painter = BandStrip(LIGHT), Mock()
    painter.fontMetrics.return_value.horizontalAdvance.return_value = 9
    band = Band("straight", "↑", "straight", 0.0, 1.0)
    strip._paint_band(painter, band, QRectF(0.0, 0.0, 3.0, 20.0))
    assert painter.fillRect.called
    assert not painter.drawLine.called, "edges of an hour of bands would hide their colours"
    strip._paint_band(painter, band, QRectF(0.0, 0.0, 60.0, 20.0))
    assert painter.drawLine.called
