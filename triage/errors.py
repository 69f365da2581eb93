"""Everything the program can refuse, as one tree.

::

    TriageError
    ├── LogReadError            a log cannot be used
    │   ├── UnknownLogFormat    no reader recognises the content
    │   ├── SignalMappingError  which signal belongs to which wheel is not certain
    │   └── DamagedLog          recognised, but broken beyond use
    ├── DatabaseError           a DBC or similar file cannot be used
    ├── RulebookError           the rule book has problems (all are listed at once)
    ├── SettingsError           a vehicle file or an option's value cannot be used
    ├── ExerciseFileError       a saved exercise or a class sheet cannot be used
    └── OutputError             a result could not be written

Cancelling is not an error of this tree (see :class:`triage.progress.Cancelled`), and too little data
is a value (:class:`triage.signals.measurement.NotMeasurable`), never an exception.
"""

from __future__ import annotations


def printable(text: str) -> str:
    r"""Show as dots what is no sign to be read: names and texts out of a strange file could steer a terminal.

    Examples
    --------
    >>> printable("WHL\x1b[2J")
    'WHL·[2J'
    """
    if text.replace("\n", "").isprintable():
        return text
    return "".join(sign if sign.isprintable() or sign == "\n" else "·" for sign in text)


class TriageError(Exception):
    """Base of all refusals: what is wrong, where, and what to do.

    Parameters
    ----------
    message : str
        What is wrong, in the user's words.
    file : str
        The file concerned, as the user gave it; empty when none is.
    place : str
        Where in the file: ``line 12``, ``byte 4096``, ``signal WHL_FL``; empty when unknown.
    hint : str
        What the user can do about it.
    """

    exit_code = 3

    def __init__(self, message: str, *, file: str = "", place: str = "", hint: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.file = file
        self.place = place
        self.hint = hint

    def __str__(self) -> str:
        where = ", ".join(part for part in (self.file, self.place) if part)
        text = f"{where}: {self.message}" if where else self.message
        return printable(f"{text}\n{self.hint}" if self.hint else text)


class LogReadError(TriageError):
    """A log cannot be used."""


class UnknownLogFormat(LogReadError):
    """No reader recognises the content of the file."""


class DamagedLog(LogReadError):
    """The kind of file is known, but nothing usable can be read from it."""


class SignalMappingError(LogReadError):
    """Which signal belongs to which wheel is not certain; the candidates are listed.

    Parameters
    ----------
    candidates : tuple of str
        Names that ``--map`` would accept.
    """

    def __init__(
        self,
        message: str,
        *,
        candidates: tuple[str, ...] = (),
        file: str = "",
        place: str = "",
        hint: str = "",
    ) -> None:
        super().__init__(message, file=file, place=place, hint=hint)
        self.candidates = candidates


class DatabaseError(TriageError):
    """A signal database (DBC and relatives) cannot be used."""


class RulebookError(TriageError):
    """The rule book has problems; ``problems`` lists every one with file and place."""

    def __init__(self, problems: tuple[str, ...]) -> None:
        super().__init__(
            "the rule book cannot be used:\n" + "\n".join(f"  {problem}" for problem in problems),
            hint="Mend the places listed, or leave out --rules to use the rule book of the program itself.",
        )
        self.problems = problems


class SettingsError(TriageError):
    """A vehicle file or the value of an option cannot be used."""


class ExerciseFileError(TriageError):
    """A saved exercise or a class sheet cannot be used."""


class OutputError(TriageError):
    """A result could not be written; nothing half-written is left behind."""

    exit_code = 4
