"""The claims with a definite place and way to show themselves, and what each makes one expect.

See the head of :mod:`triage.evidence.posterior` for what an atom is. Which atoms there are, and
P(band | atom) of every measurement and check, depend on the rule book alone, while verdicts, forecasts and
plans ask for them by the hundred: :func:`all_atoms` keeps them with the rule book.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS, SIDE_SIGN, VEHICLE, Place
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.likelihoods import SOUND, variant_name
from triage.evidence.rule_tables import OTHER, Rulebook, Scale, places_of
from triage.speed_log import BoolArray, FloatArray

_Number = TypeVar("_Number", np.bool_, np.intp, np.float64)


@dataclass(frozen=True, slots=True)
class Atom:
    """A claim with a definite place and way to show itself.

    Attributes
    ----------
    variant : str
        Name of its row in the likelihoods; the id of the cause when that has only one way to show itself.
    index : int
        Place of its hypothesis in ``Rulebook.hypotheses``.
    prior : float
        Its part of the cause's prior.
    """

    blamed: Place
    cause: str
    variant: str
    index: int
    prior: float


@dataclass(frozen=True, slots=True)
class Expected:
    """What one measurement or check shows.

    Attributes
    ----------
    names : tuple of str
        Of its bands or outcomes.
    told : float64[atoms, bands]
        P(band | atom) at a place that the atom reaches.
    sound : float64[bands]
        The same at a place that it does not reach.
    """

    names: tuple[str, ...]
    told: FloatArray
    sound: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class AtomTables:
    """Some atoms with what each makes one expect.

    Nobody may change the arrays, for all verdicts by the rule book share them.

    Attributes
    ----------
    index : int64[atoms]
        Place of each one's hypothesis in ``Rulebook.hypotheses``.
    belongs : float64[atoms, hypotheses]
        1 where the atom is one of the hypothesis, else 0.
    """

    atoms: tuple[Atom, ...]
    rulebook: Rulebook
    index: NDArray[np.intp] = field(init=False, repr=False)
    belongs: FloatArray = field(init=False, repr=False)
    _expected: dict[str, Expected] = field(default_factory=dict, init=False, repr=False)
    _reached: dict[Place, BoolArray] = field(default_factory=dict, init=False, repr=False)
    _tables: dict[tuple[str, Place], FloatArray] = field(default_factory=dict, init=False, repr=False)
    _blaming: dict[Place, BoolArray] = field(default_factory=dict, init=False, repr=False)

    def __post_init__(self) -> None:
        index = np.array([atom.index for atom in self.atoms], dtype=np.intp)
        belongs = np.zeros((index.size, 1 + int(index.max())))
        belongs[np.arange(index.size), index] = 1.0
        object.__setattr__(self, "index", _kept(index))
        object.__setattr__(self, "belongs", _kept(belongs))

    def expected(self, source: str) -> Expected:
        """Return what a measurement or check shows; KeyError when the rule book does not know it."""
        if source not in self._expected:
            scale = self.rulebook.scale(source)
            if scale is None:
                raise KeyError(source)
            told, sound = _told(scale, self.atoms), np.array(scale.table.rows[SOUND], dtype=float)
            self._expected[source] = Expected(scale.names, _kept(told), _kept(sound))
        return self._expected[source]

    def reached(self, place: Place) -> BoolArray:
        """Flag the atoms that change what is seen at the place."""
        if place not in self._reached:
            self._reached[place] = _kept(_reached(place, self.atoms))
        return self._reached[place]

    def blaming(self, place: Place) -> BoolArray:
        """Flag the atoms that blame the very place."""
        if place not in self._blaming:
            self._blaming[place] = _kept(np.array([atom.blamed == place for atom in self.atoms], dtype=bool))
        return self._blaming[place]

    def outcome_table(self, source: str, place: Place) -> FloatArray:
        """Return P(band or outcome | atom) for something seen at a place, float64[atoms, bands]."""
        if (source, place) not in self._tables:
            expected = self.expected(source)
            table: FloatArray = np.where(self.reached(place)[:, np.newaxis], expected.told, expected.sound)
            self._tables[source, place] = _kept(table)
        return self._tables[source, place]


def all_atoms(rulebook: Rulebook) -> AtomTables:
    """Return all atoms of a rule book, worked out once for each."""
    return rulebook.once(_all_atoms)


def _all_atoms(rulebook: Rulebook) -> AtomTables:
    return AtomTables(build_atoms(rulebook), rulebook)


def build_atoms(rulebook: Rulebook) -> tuple[Atom, ...]:
    """List the atoms: a cause's prior is shared evenly by its places, and there by its variants' shares."""
    index = {hypothesis: i for i, hypothesis in enumerate(rulebook.hypotheses)}
    atoms = []
    for cause in rulebook.causes.values():
        blamed = CORNERS if cause.id == OTHER else places_of(cause.where)
        for place in blamed:
            stated: Place = place if cause.where == "corner" else VEHICLE
            hypothesis = index[Hypothesis(stated, cause.id)]
            atoms += [
                Atom(place, cause.id, variant, hypothesis, share * cause.prior / len(blamed))
                for variant, share in _variants(cause.id, rulebook)
            ]
    return tuple(atoms)


def _variants(cause: str, rulebook: Rulebook) -> list[tuple[str, float]]:
    """Names and shares of the rows of a cause."""
    shares = rulebook.variants.get(cause)
    if shares is None:
        return [(cause, 1.0)]
    return [(variant_name(cause, number + 1), share) for number, share in enumerate(shares)]


def scale_row(scale: Scale, place: Place, atom: Atom) -> tuple[float, ...] | None:
    """Return the row that applies to the atom; None when it leaves the place sound."""
    if not _reached(place, [atom])[0]:
        return None
    row: tuple[float, ...] = tuple(_told(scale, [atom])[0].tolist())
    return row


def _told(scale: Scale, atoms: Sequence[Atom]) -> FloatArray:
    """P(band | atom) at a place that the atom reaches, float64[atoms, bands]."""
    # Few variants serve all places, and so many scales are asked for that looking up each atom shows.
    number: dict[str, int] = {}
    numbers = [number.setdefault(atom.variant, len(number)) for atom in atoms]
    rows = [scale.table.row(variant) for variant in number]
    table: FloatArray = np.array(rows, dtype=float).reshape(len(rows), len(scale.names))[numbers]
    if not scale.mirror:
        return table
    mirrored = [scale.names.index(scale.mirror.get(name, name)) for name in scale.names]
    left = np.array([atom.blamed == VEHICLE or SIDE_SIGN[atom.blamed] > 0 for atom in atoms], dtype=bool)
    return np.where(left[:, np.newaxis], table, table[:, mirrored])


def _reached(place: Place, atoms: Sequence[Atom]) -> BoolArray:
    """Flag the atoms that change what is seen at the place."""
    if place == VEHICLE:
        return np.ones(len(atoms), dtype=bool)
    return np.array([atom.blamed in (place, VEHICLE) for atom in atoms], dtype=bool)


def _kept(array: NDArray[_Number]) -> NDArray[_Number]:
    """Return the array, which nobody can change any more."""
    array.setflags(write=False)
    return array
