"""The one way from files to a speed log."""

from __future__ import annotations

import struct
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from triage.errors import DamagedLog, SettingsError
from triage.logs.building import build_log
from triage.logs.databases import SignalDatabase, load_databases
from triage.logs.edge_speeds import form_edge_speeds
from triage.logs.gathering import gather_sources
from triage.logs.options import ReadOptions
from triage.logs.parts import join_recordings, refuse_separate_drives
from triage.logs.recording import Recording
from triage.logs.registry import recognise
from triage.logs.source import Source
from triage.logs.workbooks import probe_workbook
from triage.memory import keep_freed_memory
from triage.progress import Progress, no_progress, part_of
from triage.reasons import reason_of
from triage.speed_log import SpeedLog
from triage.texts import Text
from triage.units import SPEED_UNITS

_DEFAULT: Final = ReadOptions()
_BROKEN_CONTENT: Final = (ValueError, LookupError, TypeError, ArithmeticError, struct.error, RecursionError)
"""What parsers raise on content that no reader foresaw; the last net under hostile files."""


def read_log(
    files: Sequence[str | Path], options: ReadOptions = _DEFAULT, progress: Progress = no_progress
) -> SpeedLog:
    """Read a recording.

    Parameters
    ----------
    files : sequence of str or Path
        One file, or the parts of one recording in any order; a zip archive or a folder of such parts.
    options : ReadOptions
        What the user settled; the rest is judged from the content.
    progress : Progress
        Called often; may raise :class:`triage.progress.Cancelled`.

    Returns
    -------
    SpeedLog

    Raises
    ------
    LogReadError
        When the recording cannot be used; the message names file, place, reason and what to do.
    DatabaseError
        When a signal database cannot be used.
    SettingsError
        When the unit of the options is none, or they name a sheet and no file is a workbook.
    """
    keep_freed_memory()
    gathered = gather_sources(files)
    _check_options(options)
    _check_sheet(options, gathered.sources)
    database = load_databases(options.databases, options.names_to_decode)
    share = 0.9 / len(gathered.sources)
    parts = [
        _read_part(
            replace(source, sheet=options.sheet),
            database,
            part_of(progress, index * share, (index + 1) * share),
        )
        for index, source in enumerate(gathered.sources)
    ]
    progress(0.9, "choosing the wheels")
    if gathered.from_folder:
        refuse_separate_drives(parts)
    recording = join_recordings(parts)
    recording = replace(recording, notices=(*recording.notices, *database.notices))
    log = _built(recording, options, ", ".join(str(file) for file in files))
    progress(1.0, "log read")
    return log


def _built(recording: Recording, options: ReadOptions, name: str) -> SpeedLog:
    speeds = form_edge_speeds(recording, options, name)
    if speeds is None:
        return build_log(recording, options, name)
    log = build_log(speeds.recording, speeds.options, name)
    return replace(log, edges=speeds.edges, history=(*log.history, *speeds.history))


def _check_options(options: ReadOptions) -> None:
    if options.unit is not None and options.unit not in SPEED_UNITS:
        raise SettingsError(
            Text("unknown unit {unit}", unit=options.unit),
            hint=Text("Known units: {known}.", known=", ".join(SPEED_UNITS)),
        )


def _check_sheet(options: ReadOptions, sources: Sequence[Source]) -> None:
    if options.sheet and not any(probe_workbook(source) for source in sources):
        raise SettingsError(
            Text("a sheet is named ({sheet}), but no file is a workbook", sheet=options.sheet),
            hint="Leave out --sheet.",
        )


def _read_part(source: Source, database: SignalDatabase, progress: Progress) -> tuple[str, Recording]:
    kind = recognise(source)
    progress(0.0, Text("reading {kind}", kind=kind.title))
    try:
        recording = kind.read(source, database, progress)
    except _BROKEN_CONTENT as error:
        raise DamagedLog(
            Text(
                "it looks like {name}, but its content is damaged: {reason}",
                name=kind.title,
                reason=reason_of(error),
            ),
            file=source.name,
            hint="Copy or export the recording again.",
        ) from error
    finally:
        source.release()
    if not any(signal.time_s.size for signal in recording.signals):
        raise DamagedLog("no samples were found", file=source.name, hint="Check that the recording is whole.")
    return source.name, replace(recording, notices=(*source.notices, *recording.notices))
