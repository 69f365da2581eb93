from __future__ import annotations

from ui.presenters.keys import KeyLine, group_keys


def test_keys_are_put_together_by_place_and_by_what_they_do() -> None:
    lines = [
        KeyLine("File", "Ctrl+O", "Open"),
        KeyLine("Car", "1", "Answer"),
        KeyLine("File", "F5", "Read again"),
        *(KeyLine("Car", str(number), "Answer") for number in range(2, 10)),
        KeyLine("Car", "A", "Few"),
        KeyLine("Car", "B", "Few"),
    ]
    files, car = group_keys(lines)
    assert [line.key for line in files.lines] == ["Ctrl+O", "F5"]
    assert [(line.key, line.does) for line in car.lines] == [("1 … 9", "Answer"), ("A, B", "Few")]
