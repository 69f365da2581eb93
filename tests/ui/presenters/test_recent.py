from __future__ import annotations

from pathlib import Path

from ui.presenters.recent import build_recent_rows, is_there
from ui.recent_files import RecentRecording


def test_missing_parts_are_told_and_cannot_be_opened() -> None:
    whole = RecentRecording(("/logs/a.csv",))
    parts = RecentRecording(("/logs/b.asc", "/logs/c.asc"), ("/logs/d.dbc",))
    rows = build_recent_rows([whole, parts], lambda file: file in ("/logs/a.csv", "/logs/b.asc"))
    assert [(row.title, row.can_open) for row in rows] == [("a.csv", True), ("b.asc + 1", False)]
    assert rows[1].told == "Not there any more: /logs/c.asc and 1 more"
    assert "logs" in rows[0].told


def test_looking_at_the_disk(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_text("", "utf-8")
    assert is_there(str(tmp_path / "a.csv"))
    assert not is_there(str(tmp_path / "b.csv"))
    assert not is_there("a\0b")
    assert is_there("//server/share/a.csv"), "a server that is switched off must not stop the window"
