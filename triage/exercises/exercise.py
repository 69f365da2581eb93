"""An exercise: a road test with a hidden fault, and what the driver tells when the car comes in."""

from __future__ import annotations

import hashlib
import json
import math
from collections.abc import Sequence
from dataclasses import asdict, dataclass, field
from typing import Final

from triage.corners import VEHICLE, Corner, Place
from triage.errors import SettingsError
from triage.evidence.answers import Observation
from triage.evidence.rule_tables import Rulebook, places_of
from triage.texts import Text

SHORTEST_S: Final = 20.0
LONGEST_S: Final = 1800.0
LARGEST_SEED: Final = 2**31 - 1
ID_DIGITS: Final = 12


@dataclass(frozen=True, slots=True)
class Wish:
    """What a trainer asks for; None leaves it to chance.

    Attributes
    ----------
    seed : int
        Decides what is left to chance.
    """

    seed: int
    cause: str | None = None
    corner: Corner | None = None
    severity: float | None = None
    duration_s: float = 180.0
    car_seed: int | None = None
    drive_seed: int | None = None


@dataclass(frozen=True, slots=True)
class Hidden:
    """What the trainee is to find out: everything from which the road test is made.

    Attributes
    ----------
    cause : str
        Id of the rule book's table of causes; the simulator must know it too.
    corner : str
        The wheel struck, or ``vehicle``.
    severity : float
        0 invisible, 0.25 slight, 0.5 clear, 1 blatant.
    duration_s : float
        Length of the road test.
    drive_seed : int
        Source of the drive and of all scatter.
    car_seed : int or None
        Source of car, encoder, sensor, control unit and recorder; None draws them from ``drive_seed``, as
        the sample logs do.
    """

    cause: str
    corner: Place
    severity: float
    duration_s: float
    drive_seed: int
    car_seed: int | None = None


@dataclass(frozen=True, slots=True)
class Exercise:
    """One exercise; the trainee may see all but ``hidden``.

    Attributes
    ----------
    id : str
        Twelve hexadecimal digits; the same request gives the same id, and with it the same answers.
    words : str
        What the driver said of his own accord; empty for none.
    complaint : tuple of Observation
        What the driver answered at the desk, and the kind of sensor by the maker's data.
    sensor : str
        That kind: ``active`` or ``passive``.
    """

    id: str
    hidden: Hidden = field(repr=False)
    words: str = ""
    complaint: tuple[Observation, ...] = ()
    sensor: str = "active"

    @property
    def title(self) -> str:
        """A name that tells nothing: ``Exercise 3f2a 91c0 7d11``."""
        blocks = " ".join(self.id[at : at + 4] for at in range(0, len(self.id), 4))
        return Text("Exercise {number}", number=blocks)


def id_of(hidden: Hidden, words: str) -> str:
    """Return the id of an exercise: the first digits of the SHA-256 of what it is made from."""
    text = json.dumps([asdict(hidden), words], sort_keys=True, ensure_ascii=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()[:ID_DIGITS]


def check_hidden(hidden: Hidden, rulebook: Rulebook, simulated: Sequence[str]) -> None:
    """Refuse what cannot become an exercise.

    Parameters
    ----------
    simulated : sequence of str
        Causes that the simulator can build in.

    Raises
    ------
    SettingsError
        For a cause that is unknown to rule book or simulator, a place where it cannot be, and a severity,
        length or seed outside the bounds.
    """
    known = [cause for cause in simulated if cause in rulebook.causes]
    if hidden.cause not in known:
        raise SettingsError(
            Text("no exercise can have the cause {cause}", cause=f"{hidden.cause!r}"),
            hint=Text("Known: {known}.", known=_list(known)),
        )
    places = places_of(rulebook.causes[hidden.cause].where)
    if hidden.corner not in places:
        raise SettingsError(
            Text("{cause} cannot sit at {corner}", cause=hidden.cause, corner=f"{hidden.corner!r}"),
            hint=Text("Take {known}.", known=_list(places)),
        )
    _check_number(Text("severity"), hidden.severity, 0.0, 1.0)
    _check_number(Text("length in seconds"), hidden.duration_s, SHORTEST_S, LONGEST_S)
    _check_number(Text("seed of the drive"), hidden.drive_seed, 0, LARGEST_SEED)
    if hidden.car_seed is not None:
        _check_number(Text("seed of the car"), hidden.car_seed, 0, LARGEST_SEED)


def place_for(cause: str, corner: Place, rulebook: Rulebook) -> Place:
    """Return the corner for a cause of one wheel, the whole vehicle for all others."""
    return corner if rulebook.causes[cause].where == "corner" else VEHICLE


def _check_number(name: str, value: float, low: float, high: float) -> None:
    if not (math.isfinite(value) and low <= value <= high):
        raise SettingsError(
            Text("the {name} {value} cannot be used", name=name, value=f"{value:g}"),
            hint=Text("Take {low} to {high}.", low=f"{low:g}", high=f"{high:g}"),
        )


def _list(names: Sequence[str]) -> str:
    return ", ".join(names)
