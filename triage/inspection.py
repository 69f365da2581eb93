"""What is in a log and how it was read, as JSON and as text; no verdict."""

from __future__ import annotations

from typing import Any, Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS
from triage.errors import printable
from triage.logs.quality import distinct_instants, usual_rate
from triage.speed_log import CHANNEL_UNITS, FloatArray, SpeedLog, SpeedTrace
from triage.units import to_kmh

SCHEMA: Final = "wheel-triage/inspect/1"


def build_inspection(log: SpeedLog) -> dict[str, Any]:
    """Build the JSON document of ``inspect``.

    Parameters
    ----------
    log : SpeedLog

    Returns
    -------
    dict
        Only what JSON can hold: no NaN, no infinity; numbers that do not exist are null.
    """
    instants_s = _valid_instants(log)
    return {
        "schema": SCHEMA,
        "file": log.file,
        "format": log.format,
        "start": None if log.start is None else log.start.isoformat(),
        "duration_s": round(log.duration_s, 6),
        "rows": int(instants_s.size),
        "rate_hz": round(usual_rate(instants_s), 3),
        "wheels": {corner: _wheel(log.wheels[corner]) for corner in CORNERS},
        "channels": {
            name: {"source": channel.source, "samples": int(channel.value.size)}
            for name, channel in log.channels.items()
        },
        "warnings": [
            {"code": notice.code, "message": notice.message, "count": notice.count} for notice in log.notices
        ],
    }


def format_inspection(log: SpeedLog) -> str:
    """Format the same as a text to read."""
    seen = build_inspection(log)
    lines = [
        f"File      {log.file}",
        f"Kind      {log.format}",
        f"Start     {seen['start'] or 'not told by the file'}",
        f"Length    {seen['duration_s']:.2f} s, {seen['rows']} instants, {seen['rate_hz']:.1f} a second",
        "",
        *_wheel_table(seen["wheels"]),
    ]
    if log.channels:
        lines += ["", "Also in the log"]
        lines += [_channel_line(name, log) for name in log.channels]
    if log.notices:
        lines += ["", "To be known"]
        lines += [f"  {notice.code}: {notice.message}" for notice in log.notices]
    return printable("\n".join(lines) + "\n")


def _valid_instants(log: SpeedLog) -> FloatArray:
    arrays = []
    for corner in CORNERS:
        trace = log.wheels[corner]
        arrays.append(trace.time_s[~trace.invalid] if trace.invalid.any() else trace.time_s)
    return distinct_instants(arrays)


def _wheel(trace: SpeedTrace) -> dict[str, Any]:
    valid = trace.speed_mps[~trace.invalid]
    known = valid.size > 0
    return {
        "source": trace.source,
        "unit": trace.unit,
        "samples": int(trace.time_s.size),
        "invalid": int(np.count_nonzero(trace.invalid)),
        "mean_mps": _rounded(valid.mean()) if known else None,
        "min_mps": _rounded(valid.min()) if known else None,
        "max_mps": _rounded(valid.max()) if known else None,
        "resolution_mps": _rounded(trace.resolution_mps),
    }


def _rounded(value: float) -> float:
    return round(float(value), 9)


def _wheel_table(wheels: dict[str, dict[str, Any]]) -> list[str]:
    names = {corner: f"{corner} {CORNER_NAMES[corner]}" for corner in CORNERS}
    width = max(9, *(len(wheel["source"]) for wheel in wheels.values()))
    head = f"{'Wheel':<15}{'read from':<{width + 2}}{'unit':<7}{'samples':>8}{'invalid':>9}"
    rows = [head + f"{'mean km/h':>12}{'lowest':>9}{'highest':>9}{'step':>8}"]
    for corner in CORNERS:
        wheel = wheels[corner]
        speeds = "".join(
            f"{_kmh_text(wheel[key]):>{space}}"
            for key, space in (("mean_mps", 12), ("min_mps", 9), ("max_mps", 9))
        )
        rows.append(
            f"{names[corner]:<15}{wheel['source']:<{width + 2}}{wheel['unit']:<7}{wheel['samples']:>8}"
            f"{wheel['invalid']:>9}{speeds}{to_kmh(wheel['resolution_mps']):>8.3g}"
        )
    return rows


def _kmh_text(speed_mps: float | None) -> str:
    return "-" if speed_mps is None else f"{to_kmh(speed_mps):.2f}"


def _channel_line(name: str, log: SpeedLog) -> str:
    channel = log.channels[name]
    unit = CHANNEL_UNITS[name]
    ends = ""
    if channel.value.size:
        ends = f", {channel.value.min():.4g} to {channel.value.max():.4g}{' ' + unit if unit else ''}"
    return f"  {name:<18}{channel.source}: {channel.value.size} samples{ends}"
