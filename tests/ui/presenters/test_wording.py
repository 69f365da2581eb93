import pytest

from ui.presenters.wording import (
    format_duration,
    format_span,
    format_spans,
    place_name,
)


@pytest.mark.parametrize(
    ("span", "text"),
    [
        ((0.0, 60.0), "0.0–60.0 s"),
        ((3.1, 3.45), "3.10–3.45 s"),
        ((3.0012, 3.0412), "3.001–3.041 s"),
        ((5.0, 5.0), "5.000–5.000 s"),
    ],
)
def test_short_spans_get_more_digits(span: tuple[float, float], text: str) -> None:
    assert format_span(span) == text


def test_several_spans_are_counted() -> None:
    assert format_spans(()) == ""
    assert format_spans(((1.0, 2.0),)) == "1.0–2.0 s"
    assert format_spans(((1.0, 2.0), (3.0, 4.0), (5.0, 6.0))) == "1.0–2.0 s and 2 more"


@pytest.mark.parametrize(
    ("duration_s", "text"),
    [(0.0, "0.0 s"), (119.9, "119.9 s"), (120.4, "2 min 0 s"), (7325.0, "2 h 2 min 5 s")],
)
def test_durations(duration_s: float, text: str) -> None:
    assert format_duration(duration_s) == text


def test_places() -> None:
    assert place_name("RL") == "Rear left"
    assert place_name("vehicle") == "Whole vehicle"
    assert place_name(None) == "All wheels"
