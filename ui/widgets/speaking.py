"""Where the program's English becomes the user's language: the last step before a text is shown."""

from __future__ import annotations

from typing import TypeVar

from PySide6.QtCore import QCoreApplication

from triage.texts import all_said

_Thing = TypeVar("_Thing")


def say(thing: _Thing) -> _Thing:
    """Return what a presenter worded with every text in it in the language of the window.

    Parameters
    ----------
    thing
        A text, or a tuple, mapping or frozen dataclass with texts in it, see :func:`triage.texts.all_said`.
    """
    return all_said(thing, QCoreApplication.translate)
