"""Views of a recording of ten seconds, by hand."""

from __future__ import annotations

import pytest

from triage.signals.measurement import Span
from ui.presenters.time_view import SHORTEST_VIEW_S, kept_inside, moved, zoomed

WHOLE_S = (0.0, 10.0)


@pytest.mark.parametrize(
    ("wanted", "shown"),
    [
        ((2.0, 5.0), (2.0, 5.0)),
        ((-3.0, 1.0), (0.0, 4.0)),
        ((8.0, 12.0), (6.0, 10.0)),
        ((-5.0, 50.0), (0.0, 10.0)),
        ((4.0, 4.0), (4.0, 4.0 + SHORTEST_VIEW_S)),
    ],
)
def test_a_view_stays_inside_the_recording(wanted: Span, shown: Span) -> None:
    assert kept_inside(wanted, WHOLE_S) == pytest.approx(shown)


def test_moving_and_zooming_keep_length_and_middle() -> None:
    assert moved((2.0, 4.0), 0.5) == pytest.approx((3.0, 5.0))
    assert moved((2.0, 4.0), -1.0) == pytest.approx((0.0, 2.0))
    assert zoomed((2.0, 4.0), 0.5) == pytest.approx((2.5, 3.5))
    assert zoomed(zoomed((2.0, 4.0), 2.0), 0.5) == pytest.approx((2.0, 4.0))
