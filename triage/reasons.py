"""What the system or a library says was wrong: its own English, and plain words in every other language.

A library words its errors for programmers and in English alone. On the command line those words stay, for
they can be looked up. Another language is given what they mean for the user: the kind of damage, and the line
where one is named.
"""

from __future__ import annotations

import errno
import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from triage.texts import Text, instead_of

LONGEST: Final = 200
"""Letters of a library's words that are shown; some of them quote the whole file."""

_OF_SYSTEM: Final[Mapping[int, Text]] = MappingProxyType(
    {
        errno.EACCES: Text("this user has no right to it"),
        errno.EPERM: Text("this user has no right to it"),
        errno.ENOENT: Text("there is no such file or folder"),
        errno.ENOTDIR: Text("a part of the path is no folder"),
        errno.EISDIR: Text("it is a folder"),
        errno.EEXIST: Text("there is one of that name already"),
        errno.ENOSPC: Text("there is no room left"),
        errno.EDQUOT: Text("there is no room left"),
        errno.EROFS: Text("nothing can be written there"),
        errno.ENAMETOOLONG: Text("the name is too long"),
        errno.EBUSY: Text("another program uses it"),
        errno.EIO: Text("the drive does not read or write it"),
        errno.ELOOP: Text("its links lead in a circle"),
        errno.EMFILE: Text("too many files are open"),
    }
)

_OF_LIBRARIES: Final[tuple[tuple[str, Text], ...]] = (
    (r"password|encrypted", Text("it is protected by a password")),
    (
        r"truncated|cut off|end.of.(stream|file|data)|ended before|unexpected end",
        Text("it is cut off"),
    ),
    (r"\bcrc(32c?)?\b|checksum", Text("a checksum does not agree with its content")),
    (r"null (byte|character)|surrogates? not allowed", Text("a name has signs that are not allowed")),
    (r"not supported|unsupported", Text("it uses a form that is not known here")),
)
"""What to look for in the words of a library, and what it means; the first that fits is told."""

_QUOTED: Final = re.compile(r"""(?<!\w)b?(['"]).*?(?:\1(?!\w)|$)""")
"""A name or a piece of the file that a library quotes; what it says is not the library's word."""

_LINE: Final = re.compile(r"\b(?:line|row) (\d+)(?:,? column (\d+))?")


def reason_of(error: Exception) -> Text:
    """Return why something failed, as the system or a library says it.

    Parameters
    ----------
    error : Exception
        Of the system or a library.

    Returns
    -------
    Text
        Without a full stop.

    Examples
    --------
    >>> reason_of(FileNotFoundError(2, "No such file or directory"))
    'No such file or directory'
    """
    if isinstance(error, OSError) and error.errno is not None and error.strerror:
        unknown = Text("the system reports error {number}", number=error.errno)
        return instead_of(error.strerror, _OF_SYSTEM.get(error.errno, unknown))
    if isinstance(error, RecursionError):
        return Text("it is nested too deeply")
    if isinstance(error, UnicodeDecodeError):
        return instead_of(str(error), _not_of_text(error))
    return library_words(str(error), type(error).__name__)


def _not_of_text(error: UnicodeDecodeError) -> Text:
    encoding = error.encoding.upper()
    return Text("byte {byte} is not of a text in {encoding}", byte=error.start, encoding=encoding)


def library_words(words: str, kind: str) -> Text:
    """Return what a library said, shortened to its first line that is not empty.

    Parameters
    ----------
    words : str
        Of the library; may be empty, the kind is told then.
    kind : str
        Class of its error.
    """
    lines = (line.strip() for line in words.splitlines())
    english = next(filter(None, lines), kind)[:LONGEST]
    own_words = _QUOTED.sub("…", english)
    small = own_words.lower()
    unknown = Text("its content is not of the right form ({kind})", kind=kind)
    means = next((text for pattern, text in _OF_LIBRARIES if re.search(pattern, small)), unknown)
    place = _LINE.search(own_words)
    if place is None:
        return instead_of(english, means)
    line, column = place.groups()
    if column is None:
        return instead_of(english, Text("{reason}, in line {line}", reason=means, line=line))
    there = Text("{reason}, in line {line}, column {column}", reason=means, line=line, column=column)
    return instead_of(english, there)
