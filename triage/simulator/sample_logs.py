"""The sample logs: a small invented delivery fleet, every log rebuilt from one line of its index.

``python -m triage.simulator.sample_logs`` writes the whole folder anew from ``sample_logs/INDEX.toml``.
"""

from __future__ import annotations

import hashlib
import json
import sys
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any, Final

from triage.corners import Place
from triage.errors import OutputError, SettingsError
from triage.progress import Progress, no_progress, part_of
from triage.simulator.road_test import RoadTest, simulate_road_test, write_road_test
from triage.simulator.table import format_log_table

INDEX_NAME: Final = "INDEX.toml"
_HEAD: Final = """\
# Simulated road tests of an invented fleet; every number in the logs is made by the program itself.
# Written by: python -m triage.simulator.sample_logs (digests and logs anew from the other fields).
# sha256 is that of the log's text, before any compression."""


@dataclass(frozen=True, slots=True)
class SampleLog:
    """One log of the folder.

    Attributes
    ----------
    file : str
        Name in the folder.
    van : str
        Nickname of the vehicle.
    cause, corner, severity, seed, seconds
        The simulated road test, as ``wheel-triage simulate`` takes it.
    complaint : str
        What the driver said.
    verdict : str
        What the triage should put first.
    sha256 : str
        Digest of the log's text, before any compression.
    """

    file: str
    van: str
    cause: str
    corner: Place
    severity: float
    seed: int
    seconds: float
    complaint: str
    verdict: str
    sha256: str = ""


@dataclass(frozen=True, slots=True)
class SampleIndex:
    """The fleet and its logs."""

    fleet: str
    story: str
    logs: tuple[SampleLog, ...]


def load_sample_index(folder: str | Path) -> SampleIndex:
    """Load the index of a folder of sample logs.

    Parameters
    ----------
    folder : str or Path
        Folder with an ``INDEX.toml``.

    Returns
    -------
    SampleIndex

    Raises
    ------
    SettingsError
        When the index is missing or broken, or a log in it lacks a field.
    """
    path = Path(folder) / INDEX_NAME
    hint = "Take the index from the program's own sample_logs folder."
    try:
        table = tomllib.loads(path.read_text("utf-8"))
        logs = tuple(_sample(row) for row in table["log"])
        return SampleIndex(table["fleet"], table["story"], logs)
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise SettingsError(f"the index cannot be read: {error}", file=str(path), hint=hint) from None
    except (KeyError, TypeError, ValueError) as error:
        raise SettingsError(f"the index is incomplete: {error}", file=str(path), hint=hint) from None


def simulate_sample(sample: SampleLog) -> RoadTest:
    """Simulate the road test behind a sample log."""
    return simulate_road_test(
        cause=sample.cause,
        corner=sample.corner,
        severity=sample.severity,
        duration_s=sample.seconds,
        seed=sample.seed,
    )


def digest_of(test: RoadTest) -> str:
    """Digest the text of a road test's log: SHA-256 in hexadecimal, the same for packed and plain files."""
    modulus = test.truth.setup.recorder.pulse_modulus
    return hashlib.sha256(format_log_table(test.log, pulse_modulus=modulus).encode("ascii")).hexdigest()


def rebuild_sample_logs(folder: str | Path, progress: Progress = no_progress) -> SampleIndex:
    """Write every log of the folder anew, and the index with their digests.

    Parameters
    ----------
    folder : str or Path
        Folder with an ``INDEX.toml``.
    progress : Progress
        Told how far the work is.

    Returns
    -------
    SampleIndex
        The index as written.

    Raises
    ------
    SettingsError
        When the index cannot be used.
    OutputError
        When a file cannot be written.
    """
    index = load_sample_index(folder)
    written = []
    for number, sample in enumerate(index.logs):
        part_of(progress, number / len(index.logs), 1.0)(0.0, sample.file)
        test = simulate_sample(sample)
        write_road_test(test, Path(folder) / sample.file)
        written.append(SampleLog(**(_as_row(sample) | {"sha256": digest_of(test)})))
    fresh = SampleIndex(index.fleet, index.story, tuple(written))
    _write_index(fresh, Path(folder) / INDEX_NAME)
    progress(1.0, "done")
    return fresh


def _sample(row: dict[str, Any]) -> SampleLog:
    return SampleLog(**(row | {"severity": float(row["severity"]), "seconds": float(row["seconds"])}))


def _as_row(sample: SampleLog) -> dict[str, Any]:
    return {field.name: getattr(sample, field.name) for field in fields(SampleLog)}


def _write_index(index: SampleIndex, path: Path) -> None:
    blocks = [
        _HEAD,
        _toml_lines({"fleet": index.fleet, "story": index.story}),
        *("[[log]]\n" + _toml_lines(_as_row(sample)) for sample in index.logs),
    ]
    try:
        path.write_text("\n\n".join(blocks) + "\n", encoding="utf-8", newline="\n")
    except OSError as error:
        raise OutputError(f"the index cannot be written: {error.strerror}", file=str(path)) from None


def _toml_lines(row: dict[str, Any]) -> str:
    # A JSON string without \\u escapes of its own is also a TOML basic string; numbers are alike in both.
    return "\n".join(f"{name} = {json.dumps(value, ensure_ascii=False)}" for name, value in row.items())


def main(arguments: Sequence[str] | None = None) -> int:
    """Rebuild the folder named on the command line, or ``sample_logs`` beside the program."""
    given = sys.argv[1:] if arguments is None else list(arguments)
    folder = Path(given[0]) if given else Path(__file__).parents[2] / "sample_logs"
    try:
        index = rebuild_sample_logs(folder)
    except (SettingsError, OutputError) as error:
        sys.stderr.write(f"{error}\n")
        return error.exit_code
    sys.stdout.write(f"{len(index.logs)} logs written to {folder}\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
