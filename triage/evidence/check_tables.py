"""What a person can do at the car, as Python values: levels of access, checks, and values read there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from triage.corners import Corner
from triage.evidence.likelihoods import LikelihoodTable

Where = Literal["corner", "vehicle"]
WHERES: Final[tuple[Where, ...]] = ("corner", "vehicle")

SKIPPED: Final = ("not-done", "cannot-say")
"""Answers to any check that are no evidence."""


@dataclass(frozen=True, slots=True)
class Access:
    """A level of access: what must be done to the car first, and whether someone can get hurt at it.

    Attributes
    ----------
    parent : str
        The level from inside which it is opened; empty for one that is always open.
    opening_min, closing_min : float
        Paid once, however much is done inside.
    seized_min : float
        What opening takes longer where everything is seized; less in proportion to corrosion.
    breaks : str
        Id of the part that opening may break, or empty.
    break_probability : float
        Where everything is seized; less in proportion to corrosion.
    """

    id: str
    title: str
    hazardous: bool
    parent: str = ""
    opening_min: float = 0.0
    closing_min: float = 0.0
    seized_min: float = 0.0
    breaks: str = ""
    break_probability: float = 0.0


@dataclass(frozen=True, slots=True)
class ValueRule:
    """How a value read from an instrument is sorted into the outcomes of a check.

    Attributes
    ----------
    unit : str
        Of every number here; see :mod:`triage.evidence.readings` for the units a reading may have.
    low, high : float
        What can be read at all; a value outside is a slip of the pen or of the instrument.
    std_uncertainty : float
        Of one reading, unless the reading tells its own.
    bands : tuple of str
        Outcomes, that of the lowest values first.
    edges : tuple of float
        Limits between the bands; in multiples of the maker's limit when ``asks_limit``.
    asks_limit : bool
        Whether the maker's limit for this car must come with the reading: there is no universal one.
    shunt_low_ohm, shunt_high_ohm : float
        Plausible resistors across which a current may be read as a voltage; both 0 where it may not.
    """

    unit: str
    low: float
    high: float
    std_uncertainty: float
    bands: tuple[str, ...]
    edges: tuple[float, ...]
    asks_limit: bool = False
    shunt_low_ohm: float = 0.0
    shunt_high_ohm: float = 0.0


@dataclass(frozen=True, slots=True)
class Check:
    """Something a person can look at, feel or try.

    Attributes
    ----------
    outcomes : mapping of outcome id to str
        What was seen, in words.
    also, aliases
        Further names of the check, and of its outcomes (alias to outcome id).
    mirror : mapping of outcome to outcome
        For a check on the whole vehicle whose rows are written for a cause on the left: how the outcomes
        change places when the cause is on the right. Empty when the side does not matter.
    names_corner : bool
        Whether it is asked once for the whole vehicle, and its answer may name the corner it is about.
    takes_codes : bool
        Whether a trouble code can be the answer.
    value : ValueRule or None
        How a measured value becomes an outcome, where one can be measured.
    skill, write_down : str
        Who can do it, and what belongs on the job sheet.
    file : str
        Where it stands.
    group : str
        Id of the group of answers with one physical origin; empty when it stands alone.
    brings : mapping of outcome to outcomes
        Outcomes that another one brings with it: given together at one place, that other one counts alone.
    sensors : tuple of str
        Kinds of sensor at which it can be done, as the check that ``tells_sensor`` names them; empty for all.
    tells_sensor : bool
        Whether its outcomes are the kinds of sensor; it is no evidence of a fault.
    asks_driver : bool
        Whether the driver answers it in a sentence, so that it is asked before anything is opened.
    """

    id: str
    title: str
    question: str
    where: Where
    outcomes: Mapping[str, str]
    also: tuple[str, ...]
    aliases: Mapping[str, str]
    mirror: Mapping[str, str]
    minutes_min: float
    access: str
    tools: tuple[str, ...]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]
    table: LikelihoodTable
    names_corner: bool = False
    takes_codes: bool = False
    value: ValueRule | None = None
    skill: str = ""
    write_down: str = ""
    file: str = "checks.toml"
    group: str = ""
    brings: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    sensors: tuple[str, ...] = ()
    tells_sensor: bool = False
    asks_driver: bool = False


@dataclass(frozen=True, slots=True)
class CodeFamily:
    """A list of trouble codes as some makers use it; which one a car follows only its maker tells.

    Attributes
    ----------
    codes : mapping of code to (corner, outcome)
        Outcome of the check that takes codes.
    """

    id: str
    title: str
    source: str
    codes: Mapping[str, tuple[Corner, str]]
