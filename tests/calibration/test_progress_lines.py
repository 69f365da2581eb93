"""Progress on a terminal and in a file."""

from __future__ import annotations

import io

from triage.calibration.progress_lines import show_progress_on


class Terminal(io.StringIO):
    """A text stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


def test_a_file_gets_a_line_for_every_tenth() -> None:
    stream = io.StringIO()
    show = show_progress_on(stream)
    for number in range(1, 401):
        show(number / 400, "Working")
    lines = stream.getvalue().splitlines()
    assert len(lines) == 10
    assert lines[0] == " 10.0% Working"
    assert lines[-1] == "100.0% Working"


def test_few_large_steps_are_all_told() -> None:
    stream = io.StringIO()
    show = show_progress_on(stream)
    for fraction in (1 / 3, 2 / 3, 1.0):
        show(fraction, "Working")
    assert stream.getvalue().splitlines() == [" 33.3% Working", " 66.7% Working", "100.0% Working"]


def test_a_terminal_is_written_over_and_left_on_a_new_line() -> None:
    stream = Terminal()
    show = show_progress_on(stream)
    show(0.5, "Working")
    show(1.0, "Working")
    assert stream.getvalue() == "\r 50.0% Working\r100.0% Working\n"
