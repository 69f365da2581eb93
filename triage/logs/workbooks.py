"""Excel workbooks (.xlsx): the sheet with the wheels, its cells as shown, never its formulas.

Cells are taken as the program that saved the file worked them out; nothing is calculated here.
"""

from __future__ import annotations

import csv
import io
import re
import zipfile
import zlib
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Any, Final

from triage.errors import DamagedLog, LogReadError
from triage.logs.databases import SignalDatabase
from triage.logs.library_noise import quiet
from triage.logs.recording import Recording
from triage.logs.roles import sense_signal
from triage.logs.source import Source, text_source
from triage.logs.table_layout import sniff_table
from triage.logs.text_tables import read_text_table, text_table_score
from triage.progress import Cancelled, Progress, part_of
from triage.reasons import reason_of
from triage.speed_log import Notice
from triage.texts import Text, first_names

MAX_CELLS: Final = 20_000_000
MAX_PARTS_BYTES: Final = 1 << 30
_MAX_STRINGS_BYTES: Final = 128 << 20
_MAX_EXPANSION: Final = 250
_FREE_BYTES: Final = 1 << 20
_MAX_SHEETS: Final = 100
_SHOWN_SHEETS: Final = 12
_MAX_ROWS: Final = 1 << 20
_MAX_EMPTY_ROWS: Final = 10_000
_JUDGED_ROWS: Final = 200
_REPORT_EVERY: Final = 2000
_ROOT: Final = re.compile(rb"<[A-Za-z]")
_ENOUGH: Final = 0.3


@dataclass(frozen=True, slots=True)
class _Sheet:
    """A sheet that may be the recording: its first rows as a table, and how much speaks for it."""

    name: str
    wheels: int
    rows: int


def probe_workbook(source: Source) -> float:
    """Tell by the parts that a workbook is packed from."""
    return 0.9 if source.head.startswith(b"PK\x03\x04") and b"xl/" in source.head else 0.0


def read_workbook(source: Source, database: SignalDatabase, progress: Progress) -> Recording:
    """Read the sheet with the wheel speeds.

    Raises
    ------
    DamagedLog
        When the workbook cannot be read, or is larger than any recording.
    LogReadError
        When no sheet is a table, or its cells are formulas that were never calculated.
    """
    progress(0.0, "reading the workbook")
    data = source.data
    _refuse_hostile_parts(source.name, data)
    try:
        with quiet("openpyxl"):
            sheet, others = _chosen(source, data)
            text = _as_text(_rows(data, sheet.name), source.name, part_of(progress, 0.1, 0.8))
    except (LogReadError, Cancelled):
        raise
    except Exception as error:  # noqa: BLE001 - the library raises whatever damaged parts make it
        raise DamagedLog(
            Text("the workbook cannot be read: {reason}", reason=reason_of(error)),
            file=source.name,
            hint="Save it again as .xlsx or .csv.",
        ) from None
    table = text_source(source, text, _told(source.name, sheet, others))
    kind, place = Text("Excel table, sheet {name}", name=sheet.name), _place(sheet.name)
    return read_text_table(table, database, part_of(progress, 0.8, 1.0), kind=kind, place=place)


def _place(sheet: str) -> Text:
    return Text("sheet {name}", name=sheet)


def _told(file: str, sheet: _Sheet, others: Sequence[_Sheet]) -> tuple[Notice, ...]:
    """Say which other sheets might have been meant; nothing where the user chose one."""
    rivals = [other.name for other in others if other.wheels >= sheet.wheels]
    if not rivals:
        return ()
    text = Text(
        "{file}: several sheets hold tables ({names}); {name}, the longest, was read. To "
        "read another one, name it with --sheet, or save it as a file of its own.",
        file=file,
        names=", ".join([sheet.name, *rivals][:8]),
        name=sheet.name,
    )
    return (Notice("mapping-guessed", text),)


def _chosen(source: Source, data: bytes) -> tuple[_Sheet, list[_Sheet]]:
    """Choose the sheet that the user named, or that names most wheels; among equals the longest."""
    found = []
    for name, rows in _named_sheets(source, _sheet_names(data)):
        head = list(_first(_rows(data, name), _JUDGED_ROWS))
        if _has_uncalculated(data, name):
            raise LogReadError(
                "its cells are formulas that were never calculated, so they hold no numbers",
                file=source.name,
                place=_place(name),
                hint="Open it in a spreadsheet program and save it, or export it as CSV.",
            )
        if text_table_score(text_source(source, _as_text(head, source.name))) >= _ENOUGH:
            found.append(_Sheet(name, _wheels_named(source, head), rows))
    if not found:
        raise LogReadError(
            "no sheet holds a table of numbers with a heading",
            file=source.name,
            place=_place(source.sheet) if source.sheet else "",
            hint="Put the column names above the numbers, and nothing else beside them.",
        )
    found.sort(key=lambda sheet: (-sheet.wheels, -sheet.rows))
    return found[0], found[1:]


def _named_sheets(source: Source, sheets: list[tuple[str, int]]) -> list[tuple[str, int]]:
    """Return the sheet that the user named, all when none was."""
    if not source.sheet:
        return sheets
    wanted = source.sheet.strip().casefold()
    found = [sheet for sheet in sheets if sheet[0].strip().casefold() == wanted]
    if found:
        return found
    names = first_names([name for name, _ in sheets], _SHOWN_SHEETS)
    raise LogReadError(
        Text("there is no visible sheet {sheet}; it has {names}", sheet=source.sheet, names=names),
        file=source.name,
        hint="Name one of these with --sheet.",
    )


def _wheels_named(source: Source, head: list[Sequence[Any]]) -> int:
    layout = sniff_table(text_source(source, _as_text(head, source.name)))
    names = layout.names if layout is not None else ()
    corners = {sense_signal(name, "").reading.corner for name in names}
    return len(corners - {None})


def _sheet_names(data: bytes) -> list[tuple[str, int]]:
    import openpyxl  # noqa: PLC0415 - slow to load, and only workbooks need it

    book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=True, keep_links=False)
    try:
        sheets = [sheet for sheet in book.worksheets if sheet.sheet_state == "visible"]
        return [(str(sheet.title), int(sheet.max_row or 0)) for sheet in sheets[:_MAX_SHEETS]]
    finally:
        book.close()


def _rows(data: bytes, name: str, *, values: bool = True) -> Iterator[Sequence[Any]]:
    import openpyxl  # noqa: PLC0415 - slow to load, and only workbooks need it

    book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=values, keep_links=False)
    try:
        # the size a sheet states may be wrong in both directions
        book[name].reset_dimensions()
        yield from book[name].iter_rows(max_row=_MAX_ROWS, values_only=True)
    finally:
        book.close()


def _first(rows: Iterator[Sequence[Any]], count: int) -> Iterator[Sequence[Any]]:
    for index, row in enumerate(rows, start=1):
        yield row
        if index == count:
            return


def _has_uncalculated(data: bytes, name: str) -> bool:
    """Tell whether most formulas among the first rows have no value beside them."""
    formulas = list(_first(_rows(data, name, values=False), _JUDGED_ROWS))
    results = list(_first(_rows(data, name), _JUDGED_ROWS))
    empty = [
        result is None
        for formula_row, result_row in zip(formulas, results, strict=False)
        for formula, result in zip(formula_row, result_row, strict=False)
        if isinstance(formula, str) and formula.startswith("=")
    ]
    return sum(empty) > len(empty) / 2


def _as_text(rows: Iterable[Sequence[Any]], file: str, progress: Progress | None = None) -> bytes:
    """Write rows as tab-separated text with decimal points."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, delimiter="\t", lineterminator="\n")
    cells = empty = 0
    for number, row in enumerate(rows, start=1):
        cells += len(row) + 1
        if cells > MAX_CELLS:
            raise DamagedLog(
                Text("the sheet has more than {most} cells", most=MAX_CELLS),
                file=file,
                hint="Save it as CSV.",
            )
        texts = [_cell(value) for value in row]
        empty = 0 if any(texts) else empty + 1
        if empty > _MAX_EMPTY_ROWS:
            break
        if not empty:
            writer.writerow(texts)
        if progress is not None and number % _REPORT_EVERY == 0:
            progress(min(number / _MAX_ROWS * 4.0, 1.0), "reading the workbook")
    return out.getvalue().encode("utf-8", errors="replace")


def _cell(value: Any) -> str:
    """Text of one cell as a table of text would hold it."""
    if value is None:
        return ""
    if isinstance(value, timedelta):
        value = value.total_seconds()
    if isinstance(value, (bool, int, float)):
        return repr(int(value) if isinstance(value, bool) else value)
    if isinstance(value, datetime):
        return value.isoformat(sep=" ", timespec="microseconds")
    if isinstance(value, (date, time)):
        return value.isoformat()
    return re.sub(r"[\t\r\n]+", " ", str(value))


def _refuse_hostile_parts(file: str, data: bytes) -> None:
    """Refuse a workbook whose parts would fill the memory, or bring document types with entities."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as book:
            parts = book.infolist()
            total = sum(part.file_size for part in parts)
            strings = sum(part.file_size for part in parts if part.filename.endswith("sharedStrings.xml"))
            if (
                total > max(_FREE_BYTES, _MAX_EXPANSION * len(data))
                or total > MAX_PARTS_BYTES
                or strings > _MAX_STRINGS_BYTES
            ):
                raise DamagedLog(
                    "the workbook unpacks to more than any recording does",
                    file=file,
                    hint="Save the table as CSV.",
                )
            heads = {part.filename: _head_of(book, part) for part in parts if _is_markup(part.filename)}
    except (zipfile.BadZipFile, zlib.error, RuntimeError, ValueError, OSError, EOFError) as error:
        raise DamagedLog(
            Text("the workbook cannot be unpacked: {reason}", reason=reason_of(error)),
            file=file,
            hint="Save it again, without a password.",
        ) from None
    for name, head in heads.items():
        root = _ROOT.search(head)
        if root is None or b"<!DOCTYPE" in head[: root.start()] or b"\x00" in head[:200]:
            raise DamagedLog(
                "this part is no plain XML, as workbooks have it",
                file=file,
                place=name,
                hint="Save the table as CSV.",
            )


def _is_markup(name: str) -> bool:
    return name.lower().endswith((".xml", ".rels"))


def _head_of(book: zipfile.ZipFile, part: zipfile.ZipInfo) -> bytes:
    with book.open(part) as stream:
        return stream.read(1 << 14)
