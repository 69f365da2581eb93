from pathlib import Path

import pytest

from ui.presenters.samples import find_samples


def write_index(folder: Path, text: str) -> None:
    (folder / "INDEX.toml").write_text(text, "utf-8")


def test_samples_of_an_index(tmp_path: Path) -> None:
    (tmp_path / "van_3.csv").write_text("t,fl\n")
    write_index(
        tmp_path, '[[log]]\nfile = "van_3.csv"\ncause = "air-gap"\ncomplaint = "Light on after the wash."\n'
    )
    (sample,) = find_samples(tmp_path)
    assert (sample.title, sample.complaint) == ("van_3", "Light on after the wash.")
    assert sample.path == str(tmp_path / "van_3.csv")


@pytest.mark.parametrize(
    "text",
    [
        "not toml [",
        "",
        '[[log]]\nfile = "../outside.csv"\n',
        '[[log]]\nfile = "gone.csv"\n',
        "[[log]]\nfile = 3\n",
    ],
)
def test_a_bad_index_offers_nothing(tmp_path: Path, text: str) -> None:
    (tmp_path.parent / "outside.csv").write_text("x")
    write_index(tmp_path, text)
    assert find_samples(tmp_path) == ()


def test_no_index_offers_nothing(tmp_path: Path) -> None:
    assert find_samples(tmp_path) == ()


def test_drives_of_one_van_are_told_apart(tmp_path: Path) -> None:
    rows = [("a.csv", "Pretzel"), ("b.csv", "Waffle"), ("c.csv", "Pretzel")]
    for name, _ in rows:
        (tmp_path / name).write_text("t\n")
    write_index(tmp_path, "".join(f'[[log]]\nfile = "{name}"\nvan = "{van}"\n' for name, van in rows))
    assert [sample.title for sample in find_samples(tmp_path)] == [
        "Pretzel, drive 1",
        "Waffle",
        "Pretzel, drive 2",
    ]
