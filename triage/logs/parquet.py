"""Parquet tables of speeds, of edges or of frames."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any, Final

from triage.errors import DamagedLog, TriageError
from triage.logs.databases import SignalDatabase
from triage.logs.recording import Recording
from triage.logs.source import Source, text_source
from triage.logs.text_tables import read_text_table
from triage.progress import Cancelled, Progress, part_of
from triage.reasons import reason_of
from triage.texts import Text

MAX_CELLS: Final = 50_000_000
MAX_BYTES: Final = 4 << 30
_MAX_COLUMNS: Final = 5000
_MAGIC: Final = b"PAR1"
_ROWS: Final = 1 << 16


def probe_parquet(source: Source) -> float:
    """Tell by the first bytes."""
    return 1.0 if source.head.startswith(_MAGIC) else 0.0


def read_parquet(source: Source, database: SignalDatabase, progress: Progress) -> Recording:
    """Read the columns of numbers, times, texts and bytes.

    Raises
    ------
    DamagedLog
        When it cannot be read, or states more rows than any recording has.
    """
    progress(0.0, "reading the table")
    try:
        text = _as_text(source, part_of(progress, 0.0, 0.7))
    except (TriageError, Cancelled):
        raise
    except (ValueError, OSError, LookupError, TypeError, NotImplementedError, MemoryError) as error:
        raise DamagedLog(
            Text("the Parquet table cannot be read: {reason}", reason=reason_of(error)),
            file=source.name,
            place=Text("footer or row group"),
            hint="Export the recording again.",
        ) from None
    table = text_source(source, text)
    return read_text_table(table, database, part_of(progress, 0.7, 1.0), kind=Text("Parquet table"), place="")


def _as_text(source: Source, progress: Progress) -> bytes:
    """Write the table as tab-separated text; numbers in the shortest form that reads back the same."""
    import pyarrow as pa  # noqa: PLC0415 - slow to load, and only these tables need it
    from pyarrow import csv, parquet  # noqa: PLC0415

    out = io.BytesIO()
    with parquet.ParquetFile(pa.BufferReader(source.data), page_checksum_verification=False) as file:
        _refuse_oversize(source.name, file.metadata)
        total = max(file.metadata.num_rows, 1)
        form = csv.WriteOptions(delimiter="\t", quoting_style="needed", include_header=False)
        names = _usable(file.schema_arrow)
        done = 0
        for batch in file.iter_batches(batch_size=_ROWS, columns=names):
            if not done:
                out.write(("\t".join(_plain_name(name) for name in batch.schema.names) + "\n").encode())
            done += batch.num_rows
            csv.write_csv(pa.table(dict(_columns(batch))), out, form)
            progress(min(done / total, 1.0), "reading the table")
    return out.getvalue()


def _refuse_oversize(file: str, about: Any) -> None:
    size = sum(about.row_group(index).total_byte_size for index in range(about.num_row_groups))
    cells = about.num_rows * about.num_columns
    if cells > MAX_CELLS or size > MAX_BYTES or about.num_columns > _MAX_COLUMNS:
        raise DamagedLog(
            Text(
                "the table states {rows} rows of {columns} columns, more than can be read",
                rows=about.num_rows,
                columns=about.num_columns,
            ),
            file=file,
            place=Text("footer"),
            hint="Cut the recording in parts, and leave out columns that are no speeds.",
        )


def _usable(schema: Any) -> list[str]:
    """Names of the columns that a table of text can hold; nested ones but lists of bytes are passed over."""
    from pyarrow import types  # noqa: PLC0415

    def fits(kind: Any) -> bool:
        if types.is_list(kind) or types.is_large_list(kind) or types.is_fixed_size_list(kind):
            return bool(types.is_integer(kind.value_type))
        return not types.is_nested(kind)

    return list(dict.fromkeys(field.name for field in schema if fits(field.type)))


def _plain_name(name: str) -> str:
    return " ".join(name.replace('"', "'").split()) or "column"


def _columns(batch: Any) -> Iterator[tuple[str, Any]]:
    for index, field in enumerate(batch.schema):
        yield str(index), _writable(batch.column(index), field.type)


def _writable(column: Any, kind: Any) -> Any:
    """Turn what a table of text has no form for into something it has: durations, bytes, categories."""
    import pyarrow as pa  # noqa: PLC0415
    from pyarrow import types  # noqa: PLC0415

    if types.is_dictionary(kind):
        return _writable(column.dictionary_decode(), kind.value_type)
    if types.is_duration(kind):
        scale_s = {"s": 1.0, "ms": 1e-3, "us": 1e-6, "ns": 1e-9}[kind.unit]
        return pa.array(column.cast(pa.int64()).to_numpy(zero_copy_only=False) * scale_s)
    if _holds_bytes(kind):
        return pa.array([_hex_of(cell) for cell in column.to_pylist()], pa.string())
    if types.is_timestamp(kind) and kind.tz is not None:
        return column.cast(pa.timestamp(kind.unit))  # the clock stays in UTC
    return column.cast(pa.float64()) if types.is_floating(kind) or types.is_decimal(kind) else column


def _holds_bytes(kind: Any) -> bool:
    from pyarrow import types  # noqa: PLC0415

    tests = (
        types.is_binary, types.is_large_binary, types.is_fixed_size_binary,
        types.is_list, types.is_large_list, types.is_fixed_size_list,
    )  # fmt: skip
    return any(test(kind) for test in tests)


def _hex_of(cell: bytes | list[int] | None) -> str | None:
    if cell is None or not all(value is not None and 0 <= value < 256 for value in cell):
        return None
    return bytes(cell).hex()
