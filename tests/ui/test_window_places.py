"""Size, splitters and page of the window are there again; what is kept lies in the user's folder alone."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QApplication

from ui.keeping import Keeping
from ui.user_folder import UserFolder
from ui.window import MainWindow
from ui.window_places import keep_places, restore_places

WindowFrom = Callable[..., MainWindow]


def test_the_window_comes_back_as_it_was_left(window_from: WindowFrom, tmp_path: Path) -> None:
    folder = UserFolder(tmp_path / "kept")
    window = window_from(keeping=Keeping(folder))
    window.resize(711, 577)  # smaller than the screen of the tests
    window.state.show_page("road-test")
    window.result_page.splitters["body"].setSizes([300, 400])
    sizes = window.result_page.splitters["body"].sizes()
    window.close()
    assert folder.places.is_file()
    again = window_from(keeping=Keeping(folder))
    assert restore_places(again, folder.places)
    QApplication.processEvents()
    assert (again.width(), again.height()) == (711, 577)
    assert again.state.page == "road-test"
    assert again.result_page.splitters["body"].sizes() == sizes


def test_nothing_is_kept_without_a_folder(window_from: WindowFrom, tmp_path: Path) -> None:
    window = window_from()
    window.close()
    assert list(tmp_path.rglob("window.ini")) == []


def test_a_broken_or_missing_file_leaves_the_window_as_it_is(window_from: WindowFrom, tmp_path: Path) -> None:
    window = window_from()
    size = window.size()
    broken = tmp_path / "window.ini"
    assert not restore_places(window, broken)
    broken.write_bytes(b"\x00\xff[[[\ngeometry=@ByteArray(rubbish)\npage=7\nsplitter\\body=@Invalid()\n")
    assert not restore_places(window, broken)
    assert (window.size(), window.state.page) == (size, "verdict")


def test_a_folder_that_cannot_be_made_does_not_keep_the_window_open(
    window_from: WindowFrom, tmp_path: Path
) -> None:
    (tmp_path / "file").write_text("", "utf-8")
    keep_places(window_from(), tmp_path / "file" / "window.ini")
    assert (tmp_path / "file").read_text("utf-8") == ""
