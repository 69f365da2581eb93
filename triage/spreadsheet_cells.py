"""Texts as cells of a table that other people will open in a spreadsheet program."""

from __future__ import annotations

from typing import Final

_FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r", "\n")


def plain_cell(text: str) -> str:
    """Give a text that no spreadsheet program takes for a formula; plain numbers stay what they are.

    Names of signals and files come from strangers, and a cell that begins with ``=`` is run when the table is
    opened. An apostrophe before it makes it text (OWASP, "CSV injection").

    Examples
    --------
    >>> plain_cell("=1+1")
    "'=1+1"
    >>> plain_cell("-0.5")
    '-0.5'
    """
    if not text.lstrip(" ").startswith(_FORMULA_STARTS) or _is_number(text):
        return text
    return f"'{text}"


def _is_number(text: str) -> bool:
    try:
        float(text)
    except ValueError:
        return False
    return text.isascii()
