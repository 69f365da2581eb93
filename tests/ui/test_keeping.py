"""Settings and recent recordings between two runs, as files a person can read and break."""

from __future__ import annotations

from pathlib import Path

import pytest

from triage.errors import SettingsError
from triage.logs.options import ReadOptions
from ui.keeping import Keeping
from ui.recent_files import KEPT_MAX, RecentRecording, load_recent, save_recent, with_newest
from ui.settings_file import load_settings, save_settings
from ui.state.opening import OpenOrder
from ui.state.settings import Settings
from ui.user_folder import UserFolder, user_folder


@pytest.fixture
def folder(tmp_path: Path) -> UserFolder:
    return UserFolder(tmp_path / "nested" / "wheel-triage")


def test_the_folder_is_that_of_the_remembered_mappings(tmp_path: Path) -> None:
    environment = {"XDG_CONFIG_HOME": str(tmp_path), "APPDATA": str(tmp_path), "HOME": str(tmp_path)}
    assert user_folder(environment).path.name == "wheel-triage"
    assert tmp_path in user_folder(environment).path.parents


def test_settings_are_there_again(folder: UserFolder) -> None:
    Keeping(folder).preferences.change(speed_unit="mph", text_percent=125, colours="dark", language="de")
    again = Keeping(folder)
    assert again.preferences.settings == Settings("mph", 125, "dark", "de")
    assert again.note == ""
    text = folder.settings.read_text("utf-8")
    assert 'speed_unit = "mph"' in text
    assert "text_percent = 125" in text


@pytest.mark.parametrize("content", [b"hello", b"\xff\xfe\x00", b"text_percent = 5\n", b'nonsense = "x"\n'])
def test_a_bad_file_is_told_left_aside_and_kept_when_written_anew(folder: UserFolder, content: bytes) -> None:
    folder.path.mkdir(parents=True)
    folder.settings.write_bytes(content)
    keeping = Keeping(folder)
    assert keeping.preferences.settings == Settings()
    assert "settings" in keeping.note
    assert folder.settings.read_bytes() == content, "looking at it changes nothing"
    keeping.preferences.change(speed_unit="mph")
    assert folder.settings.with_suffix(".left-aside.toml").read_bytes() == content
    assert keeping.note == ""
    assert load_settings(folder.settings).settings.speed_unit == "mph"


def test_one_bad_line_leaves_the_others(folder: UserFolder) -> None:
    folder.path.mkdir(parents=True)
    folder.settings.write_text('speed_unit = "mph"\ntext_percent = 7\n', "utf-8")
    read = load_settings(folder.settings)
    assert read.settings == Settings(speed_unit="mph")
    assert "text_percent" in read.note
    assert read.damaged


def test_a_folder_that_cannot_be_made_is_told_and_stops_nothing(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")
    keeping = Keeping(UserFolder(tmp_path / "file" / "inside"))
    told: list[str] = []
    keeping.told.subscribe(told.append)
    keeping.preferences.change(speed_unit="mph")
    keeping.add(OpenOrder(("a.csv",)))
    assert keeping.preferences.settings.speed_unit == "mph"
    assert keeping.recent == (RecentRecording(("a.csv",)),)
    assert "could not be kept" in told[0]
    assert "could not be kept" in told[1]


def test_without_a_folder_nothing_is_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    keeping = Keeping()
    keeping.preferences.change(speed_unit="mph")
    keeping.add(OpenOrder(("a.csv",)))
    assert list(tmp_path.iterdir()) == []


def test_recent_recordings_are_there_again_newest_first_each_once(folder: UserFolder) -> None:
    keeping = Keeping(folder)
    keeping.add(OpenOrder(('Prüffahrt "3".csv', "b.csv")))
    keeping.add(OpenOrder(("c.asc",), ReadOptions(databases=("car.dbc",))))
    keeping.add(OpenOrder(('Prüffahrt "3".csv', "b.csv")))
    assert Keeping(folder).recent == (
        RecentRecording(('Prüffahrt "3".csv', "b.csv")),
        RecentRecording(("c.asc",), ("car.dbc",)),
    )
    keeping.forget_recent()
    assert Keeping(folder).recent == ()


def test_the_list_of_recordings_does_not_grow(folder: UserFolder) -> None:
    recent: tuple[RecentRecording, ...] = ()
    for number in range(3 * KEPT_MAX):
        recent = with_newest(recent, RecentRecording((f"{number}.csv",)))
    assert len(recent) == KEPT_MAX
    assert recent[0].title == f"{3 * KEPT_MAX - 1}.csv"


@pytest.mark.parametrize(
    "text",
    [
        "recording = 3",
        "[[recording]]\nfiles = []",
        "[[recording]]\nfiles = [3]",
        "[[recording]]\n",
        '[[recording]]\nfiles = "a.csv"',
        "recording = [1]",
        "not toml",
    ],
)
def test_a_bad_list_is_told_with_file_and_what_to_do(folder: UserFolder, text: str) -> None:
    folder.path.mkdir(parents=True)
    folder.recent.write_text(text, "utf-8")
    with pytest.raises(SettingsError) as refusal:
        load_recent(folder.recent)
    assert str(folder.recent) in str(refusal.value)
    keeping = Keeping(folder)
    assert keeping.recent == ()
    assert "left aside" in keeping.note


def test_writing_settings_and_lists_leaves_nothing_unfinished(folder: UserFolder) -> None:
    save_settings(folder.settings, Settings())
    save_recent(folder.recent, [RecentRecording(("a.csv",))])
    assert sorted(one.name for one in folder.path.iterdir()) == ["recent.toml", "settings.toml"]
