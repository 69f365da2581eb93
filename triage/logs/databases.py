"""Signal databases (DBC and relatives), read in spite of what people's editors do to them."""

from __future__ import annotations

import itertools
import re
import stat
import sys
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from triage.corners import Corner
from triage.errors import DatabaseError
from triage.logs.frames import EXTENDED_FLAG, format_key, frame_key
from triage.logs.library_noise import quiet
from triage.logs.mapping import is_wanted, is_wheel
from triage.logs.source import guess_encoding
from triage.reasons import reason_of
from triage.speed_log import Notice
from triage.texts import Text, instead_of, shaped, without_stop

_MAX_BYTES: Final = 64 << 20
_STANDARD_MAX: Final = 0x7FF
_EXTENDED_MAX: Final = 0x1FFFFFFF
_FRAME_ID: Final = re.compile(
    r"^(?P<before>[ \t]*(?:BO_|SG_MUL_VAL_|SIG_VALTYPE_|VAL_|CM_[ \t]+(?:BO_|SG_)"
    r"|BA_[ \t]+\"[^\"\n]{0,200}\"[ \t]+(?:BO_|SG_)|BO_TX_BU_)[ \t]+)"
    r"(?P<id>\d{1,20})",
    re.MULTILINE,
)
_DBC_MESSAGE: Final = re.compile(r"^[ \t]*BO_[ \t]+(\d{1,20})[ \t]+(\w+)", re.MULTILINE)
_SIGNAL: Final = re.compile(
    r"^[ \t]*SG_ |<(?:\w+:)?(?:I-SIGNAL|Signal)[ >]|^[ \t]*(?:Var|Sig)=", re.MULTILINE
)
_DBC_SIZE: Final = re.compile(
    r"^[ \t]*BO_[ \t]+\d{1,20}[ \t]+(\w{1,128})[ \t]*:[ \t]*(\d{1,20})", re.MULTILINE
)
_DBC_BITS: Final = re.compile(
    r"^[ \t]*SG_[ \t]+(\w{1,128})[^:\n]{0,40}:[ \t]*(\d{1,20})[ \t]*\|[ \t]*(\d{1,20})", re.MULTILINE
)
_MOST_MESSAGE_BYTES: Final = 1785
"""What several frames can carry as one message (SAE J1939-21)."""

_DOCUMENT_TYPE: Final = re.compile(r"<!(?:DOCTYPE|ENTITY)", re.IGNORECASE)
_LONGEST_NAME: Final = 500
_BEYOND_ALL: Final = 1e30
_OF_THE_PARSER: Final = (
    (
        r"The signals (?P<first>.+) and (?P<second>.+) are overlapping in message (?P<message>.+)\.",
        Text("the signals {first} and {second} of message {message} overlap"),
    ),
    (
        r"The signal (?P<signal>.+) does not fit in message (?P<message>.+)\.",
        Text("the signal {signal} does not fit in message {message}"),
    ),
    (
        r"The signal (?P<signal>.+) length .+ is not greater than 0 in message (?P<message>.+)\.",
        Text("the signal {signal} of message {message} has no bits"),
    ),
    (
        r"(?:Standard|Extended) frame id (?P<id>\w+) is more than \w+ bits in message (?P<message>.+)\.",
        Text("the identifier {id} of message {message} is too large"),
    ),
)
"""What the parser finds at fault in a database that can be read all the same, and what that means."""

MAX_SIGNALS: Final = 60_000
"""A whole car has some 20 000; far above, reading would take minutes."""


@dataclass(frozen=True, slots=True)
class WantedMessage:
    """A message with the signals worth decoding.

    Attributes
    ----------
    key : int
        See :func:`triage.logs.frames.frame_key`.
    name : str
    signals : tuple
        Signal descriptions of cantools; multiplexers they depend on stand in ``multiplexers``.
    multiplexers : mapping of str to signal
    has_wheel : bool
        One of the signals can be a wheel speed, or was named by the user.
    """

    key: int
    name: str
    signals: tuple[Any, ...]
    multiplexers: Mapping[str, Any]
    has_wheel: bool


@dataclass(frozen=True, slots=True)
class SignalDatabase:
    """All databases of the user, boiled down to what is wanted of them.

    Attributes
    ----------
    files : tuple of str
    messages : mapping of int to tuple of WantedMessage
        By frame key; several where databases describe one identifier differently.
    known_keys : frozenset of int
        Every identifier any of the databases describes.
    wheel_keys : frozenset of int
        Identifiers whose messages can carry a wheel speed, or a signal that the user named.
    notices : tuple of Notice
    """

    files: tuple[str, ...] = ()
    messages: Mapping[int, tuple[WantedMessage, ...]] = field(default_factory=dict)
    known_keys: frozenset[int] = frozenset()
    wheel_keys: frozenset[int] = frozenset()
    notices: tuple[Notice, ...] = ()

    @property
    def wanted_keys(self) -> frozenset[int]:
        """Identifiers worth reading."""
        return frozenset(self.messages)


def load_databases(files: Sequence[str], mapping: Mapping[str, str] | Mapping[Corner, str]) -> SignalDatabase:
    """Load the databases and keep what can be a wheel speed or a companion channel.

    Parameters
    ----------
    files : sequence of str
    mapping : mapping of corner to str
        Signals that the user named; these are kept whatever they are called.

    Raises
    ------
    DatabaseError
        When a file is missing, is no database, or is broken beyond repair.
    """
    messages: dict[int, tuple[WantedMessage, ...]] = {}
    known: dict[int, _Description] = {}
    notices: list[Notice] = []
    for file in dict.fromkeys(files):
        database, heard = _load_one(file)
        notices += heard
        fresh: dict[int, list[WantedMessage]] = defaultdict(list)
        for message in database.messages:
            key = frame_key(message.frame_id, extended=message.is_extended_frame)
            wanted = _wanted(message, key, mapping)
            before = known.setdefault(key, _Description(file, message))
            if before.file == file or (wanted is not None and key not in messages):
                fresh[key] += [wanted] if wanted is not None else []
            if before.layout != _layout(message) and before.file != file and (wanted or key in messages):
                used = file if key in fresh else before.file
                notices.append(_conflict(before, file, message, key, used=used))
        messages.update({key: tuple(found) for key, found in fresh.items() if found})
    wheel_keys = frozenset(key for key, found in messages.items() if any(one.has_wheel for one in found))
    return SignalDatabase(tuple(files), messages, frozenset(known), wheel_keys, tuple(notices))


class _Description:
    """What the first database says about an identifier."""

    __slots__ = ("file", "layout", "name")

    def __init__(self, file: str, message: Any) -> None:
        self.file = file
        self.name = str(message.name)
        self.layout = _layout(message)


def _layout(message: Any) -> frozenset[tuple[Any, ...]]:
    """Where the bits stand and what they count, without names and texts."""
    return frozenset(
        (
            signal.start,
            signal.length,
            signal.byte_order,
            signal.is_signed,
            signal.is_float,
            float(signal.scale),
            float(signal.offset),
            tuple(signal.multiplexer_ids or ()),
        )
        for signal in message.signals
    )


def _conflict(before: _Description, file: str, message: Any, key: int, *, used: str) -> Notice:
    why = Text("which was given first") if used == before.file else Text("which names speeds in it")
    text = Text(
        "{file} and {file2} describe {identifier} differently ({name} and {name2}); {used}, {why}, was used.",
        file=before.file,
        file2=file,
        identifier=format_key(key),
        name=before.name,
        name2=message.name,
        used=used,
        why=why,
    )
    return Notice("database-conflict", text)


def read_database_text(file: str) -> str:
    """Read a database as text: UTF-8 with or without mark, UTF-16, or Windows-1252."""
    path = Path(file)
    try:
        about = path.stat()
        if not stat.S_ISREG(about.st_mode):  # a device could be read for ever
            raise DatabaseError("this is no file", file=file, hint="Name a DBC, ARXML, KCD or SYM file.")
        if about.st_size > _MAX_BYTES:
            raise DatabaseError(
                "the database is too large", file=file, hint="Cut out the messages that are needed."
            )
        data = path.read_bytes()
    except (OSError, ValueError) as error:
        raise DatabaseError(
            Text("the database cannot be read: {reason}", reason=reason_of(error)),
            file=file,
            hint="Check the path.",
        ) from None
    try:
        return data.decode("utf-8-sig" if not data.startswith((b"\xff\xfe", b"\xfe\xff")) else "utf-16")
    except UnicodeDecodeError:
        return data.decode(guess_encoding(data[:64]) if b"\x00" in data[:64] else "cp1252", errors="replace")


def _load_one(file: str) -> tuple[Any, list[Notice]]:
    text = read_database_text(file)
    if not text.strip():
        raise DatabaseError("the database is empty", file=file, hint="Choose another file.")
    is_dbc = _DBC_MESSAGE.search(text) is not None
    _refuse_hostile_text(text, file)
    if is_dbc:
        _refuse_bits_out_of_reach(text, file)
    notices: list[Notice] = []
    if is_dbc:
        text, notices = _with_extended_flags(text, file)
    database, notices = _parsed(text, file, is_dbc=is_dbc, notices=notices)
    if not hasattr(database, "messages"):
        raise DatabaseError(
            "this database describes diagnostics and no frames",
            file=file,
            hint="Choose a DBC, ARXML, KCD or SYM file.",
        )
    _refuse_absurd_numbers(database, file)
    return database, notices


def _refuse_absurd_numbers(database: Any, file: str) -> None:
    """Refuse factors that make every sample infinite, and limits that no float can hold."""
    for message in database.messages:
        for signal in message.signals:
            limits = [limit for limit in (signal.minimum, signal.maximum) if limit is not None]
            if (
                abs(signal.scale) < _BEYOND_ALL
                and abs(signal.offset) < _BEYOND_ALL
                and all(abs(limit) <= sys.float_info.max for limit in limits)
            ):
                continue
            raise DatabaseError(
                "its factor, offset or limits are no usable numbers",
                file=file,
                place=Text("signal {name}", name=f"{message.name}.{signal.name}"[:_LONGEST_NAME]),
                hint="Have the database exported again, or mend the line of that signal.",
            )


def _refuse_hostile_text(text: str, file: str) -> None:
    """Refuse what would keep the parsers busy for ever, or make them expand entities."""
    if text.lstrip().startswith("<") and _DOCUMENT_TYPE.search(text):
        raise DatabaseError(
            "the database defines a document type or entities, as no exported database does",
            file=file,
            hint="Export it again from the program it was made with.",
        )
    count = sum(1 for _ in itertools.islice(_SIGNAL.finditer(text), MAX_SIGNALS + 1))
    if count > MAX_SIGNALS:
        raise DatabaseError(
            Text("the database describes more than {most} signals", most=MAX_SIGNALS),
            file=file,
            hint="Cut out the messages that are needed.",
        )


def _refuse_bits_out_of_reach(text: str, file: str) -> None:
    """Refuse signals behind the end of any message: the library makes a list of all their bits."""
    for found in _DBC_BITS.finditer(text):
        if max(int(found[2]), int(found[3])) > 8 * _MOST_MESSAGE_BYTES:
            raise DatabaseError(
                "it begins or ends behind the end of any message",
                file=file,
                place=Text("signal {name}", name=found[1]),
                hint="Have the database exported again, or take that signal out.",
            )


def _with_extended_flags(text: str, file: str) -> tuple[str, list[Notice]]:
    """Set the flag of 29-bit identifiers that lack it: above 11 bits there is nothing else they could be."""
    lacking = {
        int(found.group(1)): found.group(2)
        for found in _DBC_MESSAGE.finditer(text)
        if _STANDARD_MAX < int(found.group(1)) <= _EXTENDED_MAX
    }
    if not lacking:
        return text, []

    def flagged(found: re.Match[str]) -> str:
        number = int(found["id"])
        return found["before"] + str(number | EXTENDED_FLAG if number in lacking else number)

    first, name = next(iter(lacking.items()))
    note = Text(
        "{file}: message {name} ({identifier}) has a 29-bit identifier without the "
        "extended flag; it was read as extended ({count} messages).",
        file=file,
        name=name,
        identifier=format_key(first | EXTENDED_FLAG),
        count=len(lacking),
    )
    return _FRAME_ID.sub(flagged, text), [Notice("database-repaired", note, len(lacking))]


def _parsed(text: str, file: str, *, is_dbc: bool, notices: list[Notice]) -> tuple[Any, list[Notice]]:
    import cantools.database  # noqa: PLC0415 - slow to load, and only frames need it

    form = "dbc" if is_dbc else None
    strict_reason: str = _longest_message(text) if is_dbc else ""
    try:
        if not strict_reason:
            with quiet("cantools"):
                return cantools.database.load_string(text, database_format=form), notices
    except Exception as error:  # noqa: BLE001 - the library raises whatever its parsers raise
        strict_reason = _what_the_parser_says(error)
    try:
        with quiet("cantools"):
            database = cantools.database.load_string(text, database_format=form, strict=False)
    except Exception as error:  # noqa: BLE001 - the library raises whatever its parsers raise
        raise DatabaseError(
            Text("this is no readable signal database: {reason}", reason=_what_the_parser_says(error)),
            file=file,
            hint="Choose a DBC, ARXML, KCD or SYM file, or have it exported again.",
        ) from None
    text = Text(
        "{file}: the database has a fault that was passed over: {reason}.",
        file=file,
        reason=strict_reason,
    )
    return database, [*notices, Notice("database-repaired", text)]


def _longest_message(text: str) -> str:
    """Tell of a message longer than any; to check its bits would take minutes."""
    for found in _DBC_SIZE.finditer(text):
        if int(found[2]) > _MOST_MESSAGE_BYTES:
            return Text("message {name} is said to be {count} bytes long", name=found[1], count=found[2])
    return ""


def _what_the_parser_says(error: Exception) -> Text:
    reason = reason_of(error)
    for pattern, meant in _OF_THE_PARSER:
        if found := re.fullmatch(pattern, reason):
            return instead_of(reason.rstrip("."), Text(meant, **found.groupdict()))
    return shaped(reason, without_stop)


def _wanted(
    message: Any, key: int, mapping: Mapping[str, str] | Mapping[Corner, str]
) -> WantedMessage | None:
    signals = tuple(
        signal
        for signal in message.signals
        if len(signal.name) <= _LONGEST_NAME
        and is_wanted(f"{message.name}.{signal.name}", signal.unit or "", mapping)
    )
    if not signals:
        return None
    multiplexers = {signal.name: signal for signal in message.signals if signal.is_multiplexer}
    has_wheel = any(
        is_wheel(f"{message.name}.{signal.name}", signal.unit or "", mapping) for signal in signals
    )
    return WantedMessage(key, message.name, signals, multiplexers, has_wheel)
