"""What the user asked to open, and what came of it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import PurePath
from typing import TYPE_CHECKING

from triage.corners import Corner
from triage.logs.options import ReadOptions
from triage.vehicle import Vehicle
from triage.walk.walk_state import WalkState

if TYPE_CHECKING:
    from triage.evidence.rule_tables import Rulebook
    from triage.run import TriageResult
    from ui.presenters.entries import WheelRow
    from ui.presenters.plot_data import PlotData


@dataclass(frozen=True, slots=True)
class ReadingAnswers:
    """What the user said when the program could not know how to read a recording.

    Attributes
    ----------
    mapping : mapping of corner to str
        Signal of each wheel; empty when not answered.
    unit : str or None
        One of :data:`triage.units.SPEED_UNITS`.
    tyre_radius_m : float or None
        Rolling radius.
    """

    mapping: Mapping[Corner, str] = field(default_factory=dict)
    unit: str | None = None
    tyre_radius_m: float | None = None


@dataclass(frozen=True, slots=True)
class OpenOrder:
    """The parts of one recording, how to read them, and what is known of the car.

    Attributes
    ----------
    vehicle : Vehicle or None
        None is an ordinary passenger car.
    confirmed : bool
        The user said in the window which signal is which wheel; it is remembered when it could be read.
    answers : WalkState
        What was answered about this car already; the verdict takes it in.
    """

    files: tuple[str, ...]
    options: ReadOptions = field(default_factory=ReadOptions)
    vehicle: Vehicle | None = None
    confirmed: bool = False
    answers: WalkState = field(default_factory=WalkState)

    @property
    def title(self) -> str:
        """Short name for the title bar: the first file, and how many more there are."""
        first = PurePath(self.files[0]).name
        return first if len(self.files) == 1 else f"{first} + {len(self.files) - 1}"

    def with_databases(self, databases: tuple[str, ...]) -> OpenOrder:
        """Return the same order, read with these signal databases."""
        return replace(self, options=replace(self.options, databases=databases))

    def with_answers(self, answers: ReadingAnswers) -> OpenOrder:
        """Return the same order, read as the user said; what was not answered stays."""
        options, vehicle = self.options, self.vehicle
        if answers.mapping:
            options = replace(options, mapping=dict(answers.mapping))
        if answers.unit is not None:
            options = replace(options, unit=answers.unit)
        if answers.tyre_radius_m is not None:
            around_m = 2.0 * math.pi * answers.tyre_radius_m
            options = replace(options, circumference_m=around_m)
            vehicle = replace(vehicle or Vehicle(), circumference_m=around_m)
        confirmed = self.confirmed or bool(answers.mapping)
        return replace(self, options=options, vehicle=vehicle, confirmed=confirmed)


@dataclass(frozen=True, slots=True)
class CauseText:
    """How the rule book words one cause."""

    title: str
    claim: str = ""
    what_to_do: str = ""


@dataclass(frozen=True, slots=True)
class Opened:
    """A log that was read and judged.

    Attributes
    ----------
    causes : mapping of cause id to CauseText
    measurement_titles : mapping of measurement id to str
        The rule book's words; ids that are missing are shown as they are.
    answers : WalkState
        What was answered at the car and went into the result.
    rulebook : Rulebook or None
        What it was judged by.
    plot_data : PlotData or None
        What the plots show, where it was prepared ahead.
    log_summary : str
        The recording in one line, where it was worded ahead: to count the rows of a day takes long.
    wheel_rows : tuple of WheelRow
        How the wheels were read, where it was worded ahead.
    """

    result: TriageResult
    causes: Mapping[str, CauseText] = field(default_factory=dict)
    measurement_titles: Mapping[str, str] = field(default_factory=dict)
    answers: WalkState = field(default_factory=WalkState)
    rulebook: Rulebook | None = field(default=None, compare=False, repr=False)
    plot_data: PlotData | None = field(default=None, compare=False, repr=False)
    log_summary: str = ""
    wheel_rows: tuple[WheelRow, ...] = ()
