"""On which line of a rule file a problem stands; the standard library's TOML reader keeps no lines."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

_HEADER: Final = re.compile(r"\s*\[\s*([\w.\"-]+)\s*\]\s*(?:#.*)?")
_KEY: Final = re.compile(r"\s*([\w.\"-]+)\s*=")
_PROBLEM: Final = re.compile(r"(?P<file>[^:]+): (?:\[(?P<table>[^\]]*)\](?P<fields>[^:]*)|(?P<lone>[\w-]+)):")


def number_lines(text: str) -> dict[str, int]:
    r"""Return the line of every table and field of a TOML text, counted from 1.

    Parameters
    ----------
    text : str
        Need not be valid.

    Returns
    -------
    dict of str to int
        Keys are dotted paths.

    Examples
    --------
    >>> number_lines("[check.rock-wheel]\nminutes = 3")
    {'check.rock-wheel': 1, 'check.rock-wheel.minutes': 2}
    """
    lines: dict[str, int] = {}
    table = ""
    for number, line in enumerate(text.split("\n"), start=1):
        header, key = _HEADER.fullmatch(line), _KEY.match(line)
        if header:
            table = header[1].replace('"', "")
            lines.setdefault(table, number)
        elif key:
            name = key[1].replace('"', "")
            lines.setdefault(f"{table}.{name}" if table else name, number)
    return lines


def with_line(problem: str, lines: Mapping[str, Mapping[str, int]]) -> str:
    """Put the line into a problem worded ``file: [table], field: what``.

    Parameters
    ----------
    problem : str
    lines : mapping of file to its lines
        See :func:`number_lines`.

    Returns
    -------
    str
        ``file: line 12, [table], field: what``; unchanged where no line is known. For a field that is not
        there the line of its table.
    """
    found = _PROBLEM.match(problem)
    if found is None or found["file"] not in lines:
        return problem
    known = lines[found["file"]]
    path = _path(found)
    while path and ".".join(path) not in known:
        path.pop()
    if not path:
        return problem
    start = len(found["file"]) + 2
    return f"{found['file']}: line {known['.'.join(path)]}, {problem[start:]}"


def _path(found: re.Match[str]) -> list[str]:
    if found["lone"]:
        return [found["lone"]]
    return [
        *found["table"].split("."),
        *(part.strip() for part in found["fields"].split(",") if part.strip()),
    ]
