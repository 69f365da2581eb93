"""Calendar stamps and times of day brought to few spellings before they are read."""

from __future__ import annotations

import re
from typing import Final

import pandas as pd

_ZONE: Final = r"\s{1,3}(?:UTC|GMT|MEZ|MESZ|[A-Z]{2,3}T)$"
_COMPACT: Final = r"(\d{4})(\d{2})(\d{2})[T _]?(\d{2})(\d{2})(\d{2})"
_REWRITTEN: Final = (
    (_ZONE, ""),
    (r"(:\d{2}),(\d+)", r"\1.\2"),
    (r"^(.*\d{1,2}:\d{2}:\d{2}):(\d{1,9})$", r"\1.\2"),
    (r"^(\d{1,3}:\d{2}\.\d+)$", r"00:\1"),
    (rf"^{_COMPACT}", r"\1-\2-\3 \4:\5:\6"),
    (r"(?i)(\d)\s{0,3}([ap])\.?m\.?$", r"\1 \2M"),
)
"""Zone name, decimal comma, third colon before the fraction, minutes and seconds alone, no dashes, a.m."""

_MORE: Final = re.compile(
    rf"{_COMPACT}(?:[.,]\d{{1,9}})?"
    r"|\d{1,2}[- ][A-Za-z]{3}[- ]\d{2,4}[ T]\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d{1,9})?)?"
    r"|\d{1,2}:\d{2}:\d{2}:\d{1,9}"
    r"|\d{1,3}:\d{2}[.,]\d{1,9}"
    r"|\d{4}-\d{2}-\d{2}[ T]\d{1,2}:\d{2}:\d{2}:\d{1,9}"
)
_ZONE_AT_END: Final = re.compile(_ZONE)


def without_zone_name(cell: str) -> str:
    """Give a stamp without the name of a zone at its end; a recording does not change its zone."""
    return _ZONE_AT_END.sub("", cell)


def is_rare_stamp(cell: str) -> bool:
    """Tell whether a cell is a stamp in one of the rarer spellings."""
    return _MORE.fullmatch(cell) is not None


def plain_stamps(text: pd.Series) -> pd.Series:
    """Bring stamps to the spellings that are read.

    Examples
    --------
    >>> list(plain_stamps(pd.Series(["12:00:01:250", "59:03,5", "1:02:03pm"], dtype="string")))
    ['12:00:01.250', '00:59:03.5', '1:02:03 pM']
    """
    clean = text.astype("string").str.strip()
    first = clean[clean.notna() & (clean != "")].head(5)
    for pattern, instead in _REWRITTEN:
        if first.str.contains(_uncaptured(pattern), regex=True).any():
            clean = clean.str.replace(pattern, instead, regex=True)
            first = first.str.replace(pattern, instead, regex=True)
    return clean


def _uncaptured(pattern: str) -> str:
    """Make groups silent: the search warns of groups that it does not use."""
    return re.sub(r"\((?!\?)", "(?:", pattern)
