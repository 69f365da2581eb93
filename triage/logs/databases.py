"""Signal databases (DBC and relatives), read in spite of what people's editors do to them."""

from __future__ import annotations

import re
import stat
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
from triage.speed_log import Notice

_MAX_BYTES: Final = 64 << 20
_STANDARD_MAX: Final = 0x7FF
_EXTENDED_MAX: Final = 0x1FFFFFFF
_FRAME_ID: Final = re.compile(
    r"^(?P<before>\s*(?:BO_|SG_MUL_VAL_|SIG_VALTYPE_|VAL_|CM_\s+(?:BO_|SG_)|BA_\s+\"[^\"]*\"\s+(?:BO_|SG_)|BO_TX_BU_)\s+)"
    r"(?P<id>\d+)",
    re.MULTILINE,
)
_DBC_MESSAGE: Final = re.compile(r"^\s*BO_\s+(\d+)\s+(\w+)", re.MULTILINE)


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


def load_databases(files: Sequence[str], mapping: Mapping[Corner, str]) -> SignalDatabase:
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
    known: set[int] = set()
    notices: list[Notice] = []
    for file in files:
        database, heard = _load_one(file)
        notices += heard
        for message in database.messages:
            key = frame_key(message.frame_id, extended=message.is_extended_frame)
            known.add(key)
            wanted = _wanted(message, key, mapping)
            if wanted is not None:
                messages[key] = (*messages.get(key, ()), wanted)
    wheel_keys = frozenset(key for key, found in messages.items() if any(one.has_wheel for one in found))
    return SignalDatabase(tuple(files), messages, frozenset(known), wheel_keys, tuple(notices))


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
        reason = getattr(error, "strerror", None) or str(error)
        raise DatabaseError(
            f"the database cannot be read: {reason}", file=file, hint="Check the path."
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
    notices: list[Notice] = []
    if is_dbc:
        text, notices = _with_extended_flags(text, file)
    return _parsed(text, file, is_dbc=is_dbc, notices=notices)


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
    note = (
        f"{file}: message {name} ({format_key(first | EXTENDED_FLAG)}) has a 29-bit identifier without "
        f"the extended flag; it was read as extended ({len(lacking)} messages)."
    )
    return _FRAME_ID.sub(flagged, text), [Notice("database-repaired", note, len(lacking))]


def _parsed(text: str, file: str, *, is_dbc: bool, notices: list[Notice]) -> tuple[Any, list[Notice]]:
    import cantools.database  # noqa: PLC0415 - slow to load, and only frames need it

    form = "dbc" if is_dbc else None
    try:
        with quiet("cantools"):
            return cantools.database.load_string(text, database_format=form), notices
    except Exception as error:  # noqa: BLE001 - the library raises whatever its parsers raise
        strict_reason = _first_line(error)
    try:
        with quiet("cantools"):
            database = cantools.database.load_string(text, database_format=form, strict=False)
    except Exception as error:  # noqa: BLE001 - the library raises whatever its parsers raise
        raise DatabaseError(
            f"this is no readable signal database: {_first_line(error)}",
            file=file,
            hint="Choose a DBC, ARXML, KCD or SYM file, or have it exported again.",
        ) from None
    text = f"{file}: the database has a fault that was passed over: {strict_reason.rstrip('.')}."
    return database, [*notices, Notice("database-repaired", text)]


def _first_line(error: Exception) -> str:
    text = (str(error) or type(error).__name__).splitlines()[0]
    return text if len(text) <= 200 else text[:197] + "..."


def _wanted(message: Any, key: int, mapping: Mapping[Corner, str]) -> WantedMessage | None:
    signals = tuple(
        signal
        for signal in message.signals
        if is_wanted(f"{message.name}.{signal.name}", signal.unit or "", mapping)
    )
    if not signals:
        return None
    multiplexers = {signal.name: signal for signal in message.signals if signal.is_multiplexer}
    has_wheel = any(
        is_wheel(f"{message.name}.{signal.name}", signal.unit or "", mapping) for signal in signals
    )
    return WantedMessage(key, message.name, signals, multiplexers, has_wheel)
