"""Choosing which four signals are the wheel speeds; a question is better than a wrong guess."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNER_NAMES, CORNERS, Corner
from triage.errors import SignalMappingError
from triage.logs.recording import RawSignal
from triage.logs.roles import SignalSense, sense_signal
from triage.speed_log import CHANNEL_UNITS, FloatArray, Notice
from triage.texts import Text

_SHOWN: Final = 12
_LONGEST_SHOWN: Final = 80
_SURE: Final = 2
"""Strength from which a name or unit speaks for a speed by itself."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """A signal with what it can be."""

    signal: RawSignal
    sense: SignalSense


@dataclass(frozen=True, slots=True)
class ChosenSignals:
    """Which signal serves for what.

    Attributes
    ----------
    wheels : mapping of corner to Candidate
    companions : mapping of channel name to Candidate
    notices : tuple of Notice
    """

    wheels: Mapping[Corner, Candidate]
    companions: Mapping[str, Candidate]
    notices: tuple[Notice, ...]


def choose_signals(signals: Sequence[RawSignal], mapping: Mapping[Corner, str], file: str) -> ChosenSignals:
    """Choose the wheel speeds and the companion channels.

    Parameters
    ----------
    signals : sequence of RawSignal
    mapping : mapping of corner to str
        What the user has settled.
    file : str
        For messages.

    Raises
    ------
    SignalMappingError
        When the choice is not certain; the candidates are listed.
    """
    candidates = [
        Candidate(signal, sense_signal(signal.name, signal.unit)) for signal in _without_copies(signals)
    ]
    settled = {corner: _named(candidates, corner, name, file) for corner, name in mapping.items()}
    wheels, notices = _wheels(candidates, settled, file)
    return ChosenSignals(wheels, _companions(candidates, wheels), tuple(notices))


def _without_copies(signals: Sequence[RawSignal]) -> list[RawSignal]:
    """Leave out columns that repeat another of the same name, number by number."""
    kept: dict[str, list[RawSignal]] = defaultdict(list)
    for signal in signals:
        if not any(_is_copy(signal, other) for other in kept[signal.label]):
            kept[signal.label].append(signal)
    return [signal for group in kept.values() for signal in group]


def _is_copy(a: RawSignal, b: RawSignal) -> bool:
    return np.array_equal(a.value, b.value, equal_nan=True) and np.array_equal(
        a.time_s, b.time_s, equal_nan=True
    )


def is_wanted(name: str, unit: str, mapping: Mapping[str, str] | Mapping[Corner, str]) -> bool:
    """Tell whether a signal of a database is worth decoding."""
    return bool(sense_signal(name, unit).role) or any(_matches(name, wanted) for wanted in mapping.values())


def is_wheel(name: str, unit: str, mapping: Mapping[str, str] | Mapping[Corner, str]) -> bool:
    """Tell whether a signal of a database can be a wheel speed, or was named by the user."""
    named = any(_matches(name, wanted) for wanted in mapping.values())
    return named or sense_signal(name, unit).role == "wheel"


def _matches(name: str, wanted: str) -> bool:
    bare = wanted.rpartition("@")[0] or wanted
    return any(text in (name, name.rpartition(".")[2]) for text in (wanted, bare))


def _named(candidates: Sequence[Candidate], corner: Corner, name: str, file: str) -> Candidate:
    """Find the signal that the user named for a corner."""
    tests: tuple[Callable[[RawSignal], bool], ...] = (
        lambda signal: name in (signal.label, signal.name),
        lambda signal: name == signal.name.rpartition(".")[2],
        lambda signal: name.strip().lower() in (signal.label.lower(), signal.name.strip().lower()),
    )
    for test in tests:
        found = [candidate for candidate in candidates if test(candidate.signal)]
        if len(found) == 1 or (found and len({one.signal.name for one in found}) == 1):
            return max(found, key=lambda one: one.signal.value.size)
        if found:
            raise _unsure(
                Text("--map {corner}={name} fits several signals", corner=corner, name=name), found, file
            )
    raise _unsure(
        Text("--map {corner}={name}: there is no such signal", corner=corner, name=name), candidates, file
    )


def _wheels(
    candidates: Sequence[Candidate], settled: Mapping[Corner, Candidate], file: str
) -> tuple[dict[Corner, Candidate], list[Notice]]:
    if len(settled) == len(CORNERS):
        _refuse_double_use(settled, file)
        return dict(settled), []
    possible = [
        one for one in candidates if one.sense.role == "wheel" and one.sense.reading.corner not in settled
    ]
    possible, notices = _one_bus(possible)
    chosen, guess = _best_set(
        possible, [corner for corner in CORNERS if corner not in settled], file, candidates
    )
    wheels = {**chosen, **settled}
    _refuse_double_use(wheels, file)
    _refuse_doubtful(wheels, file)
    return {corner: wheels[corner] for corner in CORNERS}, [*notices, *guess]


def _one_bus(possible: Sequence[Candidate]) -> tuple[list[Candidate], list[Notice]]:
    """Keep one bus of every signal that came over several."""
    by_name: dict[str, list[Candidate]] = defaultdict(list)
    for one in possible:
        by_name[one.signal.name].append(one)
    doubled = {name: group for name, group in by_name.items() if len({one.signal.bus for one in group}) > 1}
    if not doubled:
        return list(possible), []
    buses = sorted({one.signal.bus for group in doubled.values() for one in group})
    count = {
        bus: sum(_valid(g) for group in doubled.values() for g in group if g.signal.bus == bus)
        for bus in buses
    }
    best = max(buses, key=lambda bus: count[bus])
    name = next(iter(doubled))
    text = Text(
        "the wheel speeds came over {count} buses or channels ({buses}); only bus {best} "
        "was used. To use another one: --map FL={name}@{other} and so on.",
        count=len(buses),
        buses=", ".join(buses),
        best=best,
        name=name,
        other=next(bus for bus in buses if bus != best),
    )
    kept = [one for one in possible if one.signal.name not in doubled or one.signal.bus == best]
    return kept, [Notice("message-on-two-buses", text, len(buses))]


def _valid(one: Candidate) -> int:
    return int(np.count_nonzero(~np.isnan(one.signal.value)))


def _best_set(
    possible: Sequence[Candidate], corners: Sequence[Corner], file: str, everything: Sequence[Candidate]
) -> tuple[dict[Corner, Candidate], list[Notice]]:
    """Choose one signal for each open corner."""
    full = [group for group in _sets(possible) if all(corner in group for corner in corners)]
    if not full:
        return _piecewise(possible, corners, file, everything), [
            _guessed(Text("their names are built differently"))
        ]
    full.sort(key=lambda group: -_strength(group))
    rivals = [group for group in full if _strength(group) == _strength(full[0])]
    if len(rivals) > 1:
        rivals = _agreeing(rivals, file)
        text = f"{len(rivals)} sets of wheel speeds agree with each other and the fullest was taken"
        return rivals[0], [_guessed(text)]
    return full[0], []


def _sets(possible: Sequence[Candidate]) -> list[dict[Corner, Candidate]]:
    """Group signals whose names differ in nothing but the corner."""
    groups: dict[tuple[str, str, str], dict[Corner, list[Candidate]]] = defaultdict(lambda: defaultdict(list))
    for one in possible:
        corner = one.sense.reading.corner
        if corner is not None:
            key = (_message(one), one.sense.reading.stem, one.sense.unit)
            groups[key][corner].append(one)
    return [
        {corner: found[0] for corner, found in group.items()}
        for group in groups.values()
        if all(len(found) == 1 for found in group.values())
    ]


def _message(one: Candidate) -> str:
    # a point in the unit, as in [0.01 km/h], parts no message from its signal
    return one.signal.name.partition("[")[0].rpartition(".")[0]


def _strength(group: Mapping[Corner, Candidate]) -> int:
    return min(one.sense.strength for one in group.values())


def _piecewise(
    possible: Sequence[Candidate], corners: Sequence[Corner], file: str, everything: Sequence[Candidate]
) -> dict[Corner, Candidate]:
    """Choose for each corner the only signal that clearly is its speed."""
    chosen: dict[Corner, Candidate] = {}
    named = {corner: [one for one in possible if one.sense.reading.corner == corner] for corner in corners}
    # A wheel without any signal is the plainest reason, so it is told before the others' doubts.
    for corner in sorted(corners, key=lambda each: bool(named[each])):
        found = [one for one in named[corner] if one.sense.strength >= _SURE]
        best = [one for one in found if one.sense.strength == max(other.sense.strength for other in found)]
        if len(best) != 1:
            shown = best or named[corner] or _worth_showing(everything)
            raise _unsure(_doubt(corner, len(best or named[corner])), shown, file)
        chosen[corner] = best[0]
    return chosen


def _doubt(corner: Corner, fitting: int) -> str:
    said = (
        Text("no signal was found for the {wheel} wheel ({corner})"),
        Text("one signal might be, but need not be, that of the {wheel} wheel ({corner})"),
        Text("several signals fit the {wheel} wheel ({corner})"),
    )
    return Text(said[min(fitting, 2)], wheel=CORNER_NAMES[corner], corner=corner)


def _agreeing(rivals: list[dict[Corner, Candidate]], file: str) -> list[dict[Corner, Candidate]]:
    """Sort rival sets by samples when they tell the same; otherwise ask."""
    rivals.sort(key=lambda group: -min(_valid(one) for one in group.values()))
    first = rivals[0]
    for other in rivals[1:]:
        if any(not _tell_the_same(first[corner], other[corner]) for corner in first):
            shown = [one for group in rivals for one in group.values()]
            raise _unsure(
                Text("several sets of signals could be the wheel speeds, and they do not agree"), shown, file
            )
    return rivals


def _tell_the_same(a: Candidate, b: Candidate) -> bool:
    if a.sense.unit != b.sense.unit:
        return False
    left, right = _clean(a.signal), _clean(b.signal)
    if left[0].size < 2 or right[0].size < 2:
        return left[0].size == right[0].size
    there = np.interp(left[0], right[0], right[1])
    return bool(np.median(np.abs(there - left[1])) <= 0.02 * max(float(np.abs(left[1]).max()), 1e-9))


def _clean(signal: RawSignal) -> tuple[FloatArray, FloatArray]:
    keep = ~np.isnan(signal.value)
    order = np.argsort(signal.time_s[keep], kind="stable")
    return signal.time_s[keep][order], signal.value[keep][order]


def _guessed(why: str) -> Notice:
    return Notice(
        "mapping-guessed",
        Text("the wheel speeds were chosen although {why}; check the sources shown.", why=why),
    )


def _refuse_double_use(wheels: Mapping[Corner, Candidate], file: str) -> None:
    labels = [one.signal.label for one in wheels.values()]
    if len(set(labels)) < len(labels):
        raise _unsure(Text("one signal would serve for two wheels"), list(wheels.values()), file)


def _refuse_doubtful(wheels: Mapping[Corner, Candidate], file: str) -> None:
    """Refuse four columns that have nothing but a corner for a name and do not move like speeds."""
    if any(one.sense.strength for one in wheels.values()):
        return
    for one in wheels.values():
        value = one.signal.value[~np.isnan(one.signal.value)]
        if value.size < 2 or np.ptp(value) > 0.02 * float(np.abs(value).max()):
            return
    problem = Text(
        "four columns name the corners, but their values hardly change and no unit says what they are"
    )
    raise _unsure(problem, list(wheels.values()), file)


def _worth_showing(everything: Sequence[Candidate]) -> list[Candidate]:
    with_corner = [one for one in everything if one.sense.reading.corner is not None]
    return with_corner or list(everything)


def _unsure(problem: str, found: Sequence[Candidate], file: str) -> SignalMappingError:
    labels = tuple(dict.fromkeys(one.signal.label for one in found))
    more = Text(" and {n} more", n=len(labels) - _SHOWN) if len(labels) > _SHOWN else ""
    shown = ", ".join(_short(label) for label in labels[:_SHOWN]) or Text("none")
    return SignalMappingError(
        Text("{problem}; signals in the log: {shown}{more}", problem=problem, shown=shown, more=more),
        candidates=labels,
        file=file,
        hint="Name the wheels with --map FL=NAME --map FR=NAME --map RL=NAME --map RR=NAME.",
    )


def _short(label: str) -> str:
    return label if len(label) <= _LONGEST_SHOWN else f"{label[:_LONGEST_SHOWN]}…"


def _companions(candidates: Sequence[Candidate], wheels: Mapping[Corner, Candidate]) -> dict[str, Candidate]:
    """Choose the clearest signal for every companion channel, if need be on the wheels' bus."""
    bus = next(iter(wheels.values())).signal.bus
    used = {one.signal.label for one in wheels.values()}
    chosen: dict[str, Candidate] = {}
    for role in CHANNEL_UNITS:
        found = [
            one
            for one in candidates
            if one.sense.role == role and one.signal.label not in used and _valid(one)
        ]
        if found:
            chosen[role] = max(
                found, key=lambda one: (one.sense.strength, one.signal.bus == bus, _valid(one))
            )
    return chosen
