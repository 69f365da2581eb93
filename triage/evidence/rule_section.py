"""One table of a rule file, read field by field; problems are noted with their place and reading goes on."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final, TypeVar, cast

from triage.texts import prose

LONGEST_TEXT: Final = 2000
LONGEST_LIST: Final = 16
MOST_ENTRIES: Final = 400

_ID: Final = re.compile(r"[a-z0-9][a-z0-9-]{0,47}")
_Word = TypeVar("_Word", bound=str)


@dataclass(frozen=True, slots=True)
class Section:
    """A TOML table with the file and place it stands at.

    Attributes
    ----------
    problems : list of str
        Shared by all sections of one rule book; what is wrong is added here.
    """

    table: Mapping[str, object]
    file: str
    place: str
    problems: list[str]

    def report(self, what: str, key: str = "") -> None:
        """Note a problem at this place."""
        where = ", ".join(part for part in (f"[{self.place}]" if self.place else "", key) if part)
        self.problems.append(f"{self.file}: {where}: {what}" if where else f"{self.file}: {what}")

    def only(self, *keys: str) -> None:
        """Report every field that is not one of ``keys``."""
        for key in self.table:
            if key not in keys:
                self.report(f"unknown field; known are {', '.join(keys)}", key)

    def text(self, key: str, *, default: str | None = None) -> str:
        """Return a text that is not empty; with ``default`` it may be missing or empty."""
        value = self.table.get(key, default)
        if not isinstance(value, str):
            self.report("a text is missing" if value is None else "must be a text", key)
            return ""
        if default is None and not value.strip():
            self.report("must not be empty", key)
        if len(value) > LONGEST_TEXT:
            self.report(f"is longer than {LONGEST_TEXT} characters", key)
        return value

    def prose(self, key: str, *, default: str | None = None) -> str:
        """Return a text for the user, which can be said in another language, see :mod:`triage.texts`."""
        return prose(self.text(key, default=default), self.row)

    def proses(self, key: str) -> tuple[str, ...]:
        """Return a list of texts for the user, empty when missing."""
        return tuple(prose(text, self.row) for text in self.texts(key))

    @property
    def row(self) -> str:
        """Kind and id of the row that this table belongs to, such as ``check.rock-wheel``."""
        return ".".join(self.place.split(".")[:2])

    def flag(self, key: str, *, default: bool = False) -> bool:
        """Return a yes or no, ``default`` when missing."""
        value = self.table.get(key, default)
        if not isinstance(value, bool):
            self.report("must be true or false", key)
        return value is True

    def word(self, key: str, allowed: tuple[_Word, ...]) -> _Word:
        """Return one of the allowed words."""
        value = self.text(key)
        if value not in allowed:
            if value:
                self.report(f"must be one of {', '.join(allowed)}, not {value!r}", key)
            return allowed[0]
        return next(word for word in allowed if word == value)

    def number(self, key: str, low: float, high: float, *, default: float | None = None) -> float:
        """Return a finite number between ``low`` and ``high``, both included."""
        value = self.table.get(key, default)
        if not _is_number(value):
            self.report("a number is missing" if value is None else "must be a finite number", key)
            return low
        number = float(cast("float", value))
        if not low <= number <= high:
            self.report(f"must lie between {low:g} and {high:g}, not {number:g}", key)
        return number

    def texts(self, key: str) -> tuple[str, ...]:
        """Return a list of texts, empty when missing."""
        value = self.table.get(key, [])
        if not isinstance(value, list) or not all(isinstance(entry, str) for entry in value):
            self.report("must be a list of texts", key)
            return ()
        if len(value) > LONGEST_LIST:
            self.report(f"has more than {LONGEST_LIST} entries", key)
        return tuple(value)

    def numbers(self, key: str) -> tuple[float, ...]:
        """Return a list of finite numbers."""
        value = self.table.get(key)
        if not isinstance(value, list) or not all(_is_number(entry) for entry in value):
            self.report(
                "a list of numbers is missing" if value is None else "must be a list of finite numbers", key
            )
            return ()
        if len(value) > LONGEST_LIST:
            self.report(f"has more than {LONGEST_LIST} entries", key)
        return tuple(float(entry) for entry in value)

    def words(self, key: str) -> dict[str, str]:
        """Return a table of texts, empty when missing."""
        inner = self.inner(key) if key in self.table else None
        return {} if inner is None else {name: inner.text(name) for name in inner.table}

    def proses_by_name(self, key: str) -> dict[str, str]:
        """Return a table of texts for the user, empty when missing."""
        inner = self.inner(key) if key in self.table else None
        return {} if inner is None else {name: inner.prose(name) for name in inner.table}

    def inner(self, key: str) -> Section:
        """Return the table under ``key``, an empty one (and a problem) when it is missing."""
        value = self.table.get(key)
        place = f"{self.place}.{key}" if self.place else key
        if not isinstance(value, dict):
            self.report("the table is missing" if value is None else "must be a table", key)
            value = {}
        return Section(value, self.file, place, self.problems)

    def entries(self, key: str) -> Iterator[tuple[str, Section]]:
        """Yield id and section of every table under ``key``."""
        inner = self.inner(key)
        if len(inner.table) > MOST_ENTRIES:
            inner.report(f"has more than {MOST_ENTRIES} entries")
            return
        for name in inner.table:
            if not _ID.fullmatch(name):
                inner.report("ids are small letters, digits and hyphens, at most 48", name)
            yield name, inner.inner(name)


def _is_number(value: object) -> bool:
    # Not math.isfinite: a TOML integer may be too large for a float. NaN and infinities fail the comparison.
    return isinstance(value, int | float) and not isinstance(value, bool) and abs(value) <= sys.float_info.max
