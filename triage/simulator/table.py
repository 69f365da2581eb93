"""A log as a table of text: km/h columns with units in the header, the same bytes every time."""

from __future__ import annotations

import gzip
import io
from collections.abc import Mapping
from itertools import zip_longest
from pathlib import Path

import numpy as np

from triage.corners import CORNERS, Corner
from triage.errors import OutputError
from triage.speed_log import CHANNEL_UNITS, FloatArray, SpeedLog
from triage.units import KMH

_NOT_AVAILABLE = "NaN"


def write_log_table(log: SpeedLog, path: str | Path, *, pulse_modulus: int = 0) -> None:
    """Write the log as comma-separated text; gzip when the name ends in ``.gz``.

    Parameters
    ----------
    log : SpeedLog
        Wheels and channels are written; an empty cell means no sample at that instant.
    path : str or Path
        File to write.
    pulse_modulus : int
        Where the pulse counters start again from 0; 0 for never.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    _write(format_log_table(log, pulse_modulus=pulse_modulus), path)


def write_edge_table(edges_s: Mapping[Corner, FloatArray], path: str | Path) -> None:
    """Write the instants of the edges, one column ``FL_edge_s`` ... per wheel, the short ones padded.

    Parameters
    ----------
    edges_s : mapping of corner to float64[M]
        Edges as they reach the control unit; written to 0.1 microseconds.
    path : str or Path
        File to write; gzip when it ends in ``.gz``.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    columns = [[f"{edge:.7f}" for edge in instants] for instants in edges_s.values()]
    header = ",".join(f"{corner}_edge_s" for corner in edges_s)
    rows = (",".join(row) for row in zip_longest(*columns, fillvalue=""))
    _write("\n".join((header, *rows)) + "\n", path)


def _write(text: str, path: str | Path) -> None:
    data = text.encode("ascii")
    target = Path(path)
    if target.suffix == ".gz":
        buffer = io.BytesIO()
        # No name and no time in the header, so that the bytes depend on nothing but the log.
        with gzip.GzipFile(filename="", mode="wb", fileobj=buffer, mtime=0) as packed:
            packed.write(data)
        data = buffer.getvalue()
    try:
        target.write_bytes(data)
    except OSError as error:
        raise OutputError(
            f"the log cannot be written: {error.strerror or error}",
            file=str(path),
            hint="Choose another place.",
        ) from None


def format_log_table(log: SpeedLog, *, pulse_modulus: int = 0) -> str:
    """Format the log as comma-separated text.

    Parameters
    ----------
    log : SpeedLog
        Wheels and channels.
    pulse_modulus : int
        Where the pulse counters start again from 0; 0 for never.

    Returns
    -------
    str
        Header ``time_s,FL [km/h],...`` and one row per instant. Samples marked as not available read
        ``NaN``; instants at which a wheel has no sample leave its cell empty.
    """
    traces = [log.wheels[corner] for corner in CORNERS]
    channels = sorted(log.channels.items())
    clocks = [*(trace.time_s for trace in traces), *(channel.time_s for _, channel in channels)]
    instants = np.unique(np.concatenate(clocks))
    header = ["time_s", *(f"{corner} [km/h]" for corner in CORNERS)]
    columns = [[f"{instant:.4f}" for instant in instants]]
    for trace in traces:
        digits = _digits(trace.resolution_mps / KMH)
        columns.append(_cells(instants, trace.time_s, trace.speed_mps / KMH, digits))
    for name, channel in channels:
        header.append(f"{name} [{CHANNEL_UNITS[name]}]" if CHANNEL_UNITS[name] else name)
        value = (
            channel.value % pulse_modulus if pulse_modulus and name.startswith("pulses_") else channel.value
        )
        columns.append(_cells(instants, channel.time_s, value, 5 if CHANNEL_UNITS[name] else 0))
    lines = [",".join(header), *(",".join(row) for row in zip(*columns, strict=True))]
    return "\n".join(lines) + "\n"


def _cells(instants: FloatArray, time_s: FloatArray, values: FloatArray, digits: int) -> list[str]:
    cells = [""] * instants.size
    for place, value in zip(np.searchsorted(instants, time_s), values, strict=True):
        cells[place] = _NOT_AVAILABLE if np.isnan(value) else f"{value + 0.0:.{digits}f}"
    return cells


def _digits(step: float) -> int:
    """Decimals that write every multiple of the step exactly, at most 6."""
    return next(
        (digits for digits in range(6) if abs(step * 10**digits - round(step * 10**digits)) < 1e-6), 6
    )
