"""Recordings that come with the program, to try it on."""

from __future__ import annotations

import tomllib
from collections import Counter
from dataclasses import dataclass, replace
from pathlib import Path

from triage.texts import Text, prose

MAX_INDEX_BYTES = 1_000_000
COMPLAINTS = "complaints"
"""Under which translators find what the drivers said."""


@dataclass(frozen=True, slots=True)
class Sample:
    """A recording that comes with the program."""

    path: str
    title: str
    complaint: str


def default_samples_folder() -> Path:
    """Return the folder beside the packages in which the sample recordings lie."""
    return Path(__file__).resolve().parents[2] / "sample_logs"


def find_samples(folder: Path) -> tuple[Sample, ...]:
    """Return the sample recordings of a folder; none when its index is missing or cannot be read.

    The verdict they should give is in the index too, and is not shown: the user is to find it.
    """
    index = folder / "INDEX.toml"
    try:
        if index.stat().st_size > MAX_INDEX_BYTES:
            return ()
        table = tomllib.loads(index.read_text("utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError):
        return ()
    found = [sample for row in _rows(table) if (sample := _sample(folder, row)) is not None]
    return _told_apart(found)


def _rows(table: dict[str, object]) -> list[dict[str, object]]:
    lists = [value for value in table.values() if isinstance(value, list)]
    return [row for rows in lists for row in rows if isinstance(row, dict)]


def _sample(folder: Path, row: dict[str, object]) -> Sample | None:
    name = row.get("file")
    # A file elsewhere on the disk is nothing an index may point at.
    if not isinstance(name, str) or Path(name).name != name or not (folder / name).is_file():
        return None
    title = str(row.get("van") or name.split(".", maxsplit=1)[0])
    return Sample(str(folder / name), title, prose(str(row.get("complaint", "")), COMPLAINTS))


def _told_apart(samples: list[Sample]) -> tuple[Sample, ...]:
    """Give a number to each recording of one van when there are several."""
    drives = Counter(sample.title for sample in samples)
    told: Counter[str] = Counter()
    numbered = []
    for sample in samples:
        told[sample.title] += 1
        several = drives[sample.title] > 1
        numbered.append(
            replace(sample, title=Text("{car}, drive {n}", car=sample.title, n=told[sample.title]))
            if several
            else sample
        )
    return tuple(numbered)
