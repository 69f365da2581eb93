"""The class sheet: one line for every answer that was handed in, for a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from triage.corners import VEHICLE
from triage.errors import ExerciseFileError, SettingsError
from triage.exercises.attempt import Attempt
from triage.exercises.score import Score
from triage.output_file import whole_file
from triage.reasons import reason_of
from triage.spreadsheet_cells import plain_cell
from triage.texts import Text

COLUMNS: Final = (
    "trainee",
    "exercise",
    "wheel",
    "cause",
    "confidence_percent",
    "right",
    "brier_score",
    "log_score_bit",
    "points",
    "minutes",
    "money",
    "minutes_wasted",
    "money_wasted",
    "parts_wasted",
)
LARGEST_SHEET_BYTES: Final = 4_000_000
LONGEST_NAME: Final = 80
_HINT: Final = Text("Choose another file, or a name that is not taken for a new sheet.")


@dataclass(frozen=True, slots=True)
class SheetLine:
    """One line, cells as texts in the order of ``COLUMNS``."""

    cells: tuple[str, ...]


def sheet_line(trainee: str, attempt: Attempt, score: Score) -> SheetLine:
    """Write down what a trainee handed in and what it was worth.

    Raises
    ------
    SettingsError
        When the trainee has no name or one of more than 80 letters, or nothing was handed in.
    """
    name = " ".join(trainee.split())
    if not name or len(name) > LONGEST_NAME:
        raise SettingsError(
            "a line of the class sheet needs a name", hint=Text("1 to {most} letters.", most=LONGEST_NAME)
        )
    if attempt.answer is None:
        raise SettingsError("nothing was handed in yet", hint="Hand in an answer first.")
    answer = attempt.answer
    return SheetLine(
        (
            name,
            attempt.exercise.id,
            "car" if answer.corner == VEHICLE else answer.corner,
            answer.cause,
            f"{100.0 * answer.confidence:.0f}",
            "yes" if score.right else "no",
            f"{score.brier:.4f}",
            f"{score.log_score_bit:.3f}",
            f"{score.points:.1f}",
            f"{score.own.minutes_min:.1f}",
            f"{score.own.money:.2f}",
            f"{score.wasted_min:.1f}",
            f"{score.wasted_money:.2f}",
            " ".join(score.wasted_parts),
        )
    )


def add_to_class_sheet(line: SheetLine, path: str | Path) -> int:
    """Add a line to a class sheet, a new one when there is none at that place.

    Returns
    -------
    int
        Lines that the sheet has now, the headings not counted.

    Raises
    ------
    ExerciseFileError
        When the file there is no class sheet; it is left as it is.
    OutputError
        When it cannot be written.
    """
    target = Path(path)
    lines = (*(read_class_sheet(target) if target.is_file() else ()), line)
    with whole_file(target) as unfinished:
        # The mark at the start tells spreadsheet programs that the names are in UTF-8.
        unfinished.write_bytes(format_class_sheet(lines).encode("utf-8-sig"))
    return len(lines)


def read_class_sheet(path: str | Path) -> tuple[SheetLine, ...]:
    """Read a class sheet again.

    Raises
    ------
    ExerciseFileError
        When it is too large, no text, or has other columns.
    """
    file = str(path)
    try:
        with Path(path).open("rb") as source:
            data = source.read(LARGEST_SHEET_BYTES + 1)
        text = data.decode("utf-8-sig")
    except OSError as error:
        raise ExerciseFileError(
            Text("cannot be read: {reason}", reason=reason_of(error)), file=file, hint=_HINT
        ) from None
    except UnicodeDecodeError:
        raise ExerciseFileError("this is no text: no class sheet", file=file, hint=_HINT) from None
    if len(data) > LARGEST_SHEET_BYTES:
        raise ExerciseFileError("too large for a class sheet", file=file, hint=_HINT)
    return _lines(text, file)


def format_class_sheet(lines: Sequence[SheetLine]) -> str:
    """Format lines as comma-separated text with headings; no cell is taken for a formula."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    writer.writerows([plain_cell(cell) for cell in line.cells] for line in lines)
    return out.getvalue()


def _lines(text: str, file: str) -> tuple[SheetLine, ...]:
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    except csv.Error as error:
        raise ExerciseFileError(
            Text("this is no table: {reason}", reason=reason_of(error)), file=file, hint=_HINT
        ) from None
    if not rows or tuple(rows[0]) != COLUMNS:
        raise ExerciseFileError("this is no class sheet: it has other columns", file=file, hint=_HINT)
    for number, row in enumerate(rows[1:], 2):
        if len(row) != len(COLUMNS):
            raise ExerciseFileError(
                Text("{count} cells instead of {count2}", count=len(row), count2=len(COLUMNS)),
                file=file,
                place=Text("line {number}", number=number),
                hint=_HINT,
            )
    return tuple(SheetLine(tuple(row)) for row in rows[1:])
