"""Sets of words, written as plain text."""

from __future__ import annotations


def word_set(text: str) -> frozenset[str]:
    """Give the words of a text.

    Examples
    --------
    >>> sorted(word_set("left links"))
    ['left', 'links']
    """
    return frozenset(text.split())
