"""The ripple of one wheel over orders: amplitude, usual level, and what stands out by chance."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from triage.corners import CORNERS
from triage.evidence.value_words import format_value
from triage.signals.measurement import NotMeasurable
from triage.speed_log import FloatArray
from triage.texts import Text, as_text

if TYPE_CHECKING:
    from triage.signals.analysis import Analysis
    from triage.signals.ripple_spectra import RippleSpectra

LOWEST_ORDER: Final = 0.3
HIGHEST_ORDER: Final = 8.5
TURN_M: Final = 2.0
"""Turn of a middling car wheel, which bounds the picture where the true one is not known."""

CHANCE: Final = 0.01
"""Probability with which noise alone reaches the line of chance anywhere in the spectrum."""

MOST_POINTS: Final = 1500
LEAST_GAIN: Final = 0.2
"""Slower than a turn the ripple is damped by the window whose mean is taken out; more than five times it is
not scaled up."""

MULTIPLES: Final = 8
NEAR_RATIO: Final = 0.01
"""A line this near to a multiple counts as its own: slip and the delay of the unit spread it."""

CAGE: Final = (0.35, 0.48)
"""Orders of the bearing cage where the inner ring turns with the wheel."""


@dataclass(frozen=True, slots=True)
class OrderMark:
    """A multiple of the revolution on the axis.

    Attributes
    ----------
    place : float
    label : str
    peak : (float, float) or None
        Place and amplitude in per cent of the line there; None where none stands out of chance.
    """

    place: float
    label: str
    peak: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class SpectrumPicture:
    """Amplitudes ready to be drawn.

    Attributes
    ----------
    place : float64[K]
        Orders (events per turn), or cycles per metre where no wheel shows its turn.
    amplitude_percent, usual_percent, chance_percent : float64[K]
        Amplitude relative to the speed, its usual level around each place, and the level that noise alone
        reaches anywhere with a probability of 1 %.
    per_turn : bool
        Whether ``place`` counts per turn.
    marks : tuple of OrderMark
        Revolution and multiples; none where the turn is not known.
    cage : (float, float) or None
        Where the line of a bearing cage may lie.
    sentences : tuple of str
    """

    place: FloatArray
    amplitude_percent: FloatArray
    usual_percent: FloatArray
    chance_percent: FloatArray
    per_turn: bool
    marks: tuple[OrderMark, ...]
    cage: tuple[float, float] | None
    sentences: tuple[str, ...]


def build_spectrum_picture(analysis: Analysis, row: int) -> SpectrumPicture | NotMeasurable:
    """Return the spectrum of a wheel's ripple, or why there is none and which driving would help."""
    from triage.signals.curve_lines import circumference_of  # noqa: PLC0415 - takes scipy with it

    spectra = _spectra(analysis, row)
    if spectra is None:
        return _none(analysis, row)
    turn_m = circumference_of(analysis, row)
    return draw_spectra(spectra, turn_m, sentences=_sentences(analysis, row, turn_m))


def draw_spectra(
    spectra: RippleSpectra, turn_m: float | None, *, sentences: tuple[str, ...] = ()
) -> SpectrumPicture:
    """Bring spectra to amplitudes over orders.

    Parameters
    ----------
    spectra : RippleSpectra
    turn_m : float or None
        Length of a turn; None where it is not known.

    Notes
    -----
    The powers of the stretches, each over its usual level, are averaged and multiplied by the middle level:
    then the line of chance follows from the distribution of a sum of powers alone.
    """
    places: FloatArray = spectra.step_per_m * np.arange(spectra.power.shape[1], dtype=np.float64)
    low, high = LOWEST_ORDER / (turn_m or TURN_M), HIGHEST_ORDER / (turn_m or TURN_M)
    kept = slice(int(np.searchsorted(places, low)), int(np.searchsorted(places, high, side="right")))
    gain = _gain(places[kept])
    usual = np.sqrt(spectra.level[:, kept].mean(axis=0)) / gain
    strength = np.sqrt(spectra.power[:, kept].mean(axis=0))
    chance = np.sqrt(chance_power(spectra.count, (high - low) * spectra.length_m, CHANCE))
    seen = _tallest(strength * usual, MOST_POINTS)
    per_turn = turn_m is not None
    place, amplitude = places[kept][seen] * (turn_m or 1.0), 100.0 * (strength * usual)[seen]
    standing_out = strength[seen] > chance
    return SpectrumPicture(
        place=place,
        amplitude_percent=amplitude,
        usual_percent=100.0 * usual[seen],
        chance_percent=100.0 * chance * usual[seen],
        per_turn=per_turn,
        marks=_marks(place, np.where(standing_out, amplitude, 0.0)) if per_turn else (),
        cage=CAGE if per_turn else None,
        sentences=sentences,
    )


def chance_power(stretches: int, places: float, probability: float) -> float:
    """Return the mean power, in usual levels, that noise alone reaches anywhere with this probability.

    Parameters
    ----------
    stretches : int
        Spectra averaged.
    places : float
        Independent places in the range that is looked at.
    probability : float
        Below 0.1, say: the highest point of few places has no such tail.

    Notes
    -----
    The inverse of :func:`triage.signals.false_alarm.log_false_alarm`.
    """
    from scipy.optimize import brentq  # noqa: PLC0415 - heavy, and not needed before

    from triage.signals.false_alarm import log_false_alarm  # noqa: PLC0415 - takes scipy with it

    def too_likely(power: float) -> float:
        return log_false_alarm(power, 1, stretches, max(places, 1.0)) - float(np.log(probability))

    beyond_all = stretches + 40.0 * np.sqrt(stretches) + 60.0
    return float(brentq(too_likely, stretches, beyond_all)) / stretches


def _marks(place: FloatArray, amplitude: FloatArray) -> tuple[OrderMark, ...]:
    """Mark the turn and its multiples, and the lines that stand out there."""
    marks = []
    for order in range(1, MULTIPLES + 1):
        near = np.flatnonzero((np.abs(place / order - 1.0) < NEAR_RATIO) & (amplitude > 0.0))
        best = int(near[np.argmax(amplitude[near])]) if near.size else -1
        peak = (float(place[best]), float(amplitude[best])) if near.size else None
        marks.append(OrderMark(float(order), str(order), peak))
    return tuple(marks)


def _spectra(analysis: Analysis, row: int) -> RippleSpectra | None:
    if analysis.lines[row] is analysis.own_lines[row]:
        return analysis.own_spectra[row]
    from triage.signals.ripple_spectra import measure_ripple_spectra  # noqa: PLC0415 - takes scipy with it

    return measure_ripple_spectra((analysis.paths[row],))[0]


def _gain(wavenumber_per_m: FloatArray) -> FloatArray:
    from triage.signals.wheel_path import SMOOTHING_M  # noqa: PLC0415 - takes scipy with it

    gain: FloatArray = np.maximum(1.0 - np.sinc(wavenumber_per_m * SMOOTHING_M), LEAST_GAIN)
    return gain


def _tallest(value: FloatArray, most: int) -> np.ndarray:
    """Return the places of the largest value of each of at most so many blocks: no peak gets lost."""
    starts = np.unique(np.linspace(0, value.size, most, endpoint=False).astype(np.intp))
    stops = np.append(starts[1:], value.size)
    pairs = zip(starts.tolist(), stops.tolist(), strict=True)
    return np.array([first + int(np.argmax(value[first:stop])) for first, stop in pairs if stop > first], int)


def _none(analysis: Analysis, row: int) -> NotMeasurable:
    line = analysis.own_lines[row]
    if isinstance(line, NotMeasurable):
        return line
    return NotMeasurable(
        "line-amplitude",
        CORNERS[row],
        Text("there is too little usable driving for a spectrum"),
        Text("at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more"),
    )


def _sentences(analysis: Analysis, row: int, turn_m: float | None) -> tuple[str, ...]:
    line = analysis.lines[row]
    if isinstance(line, NotMeasurable):
        turn = Text("The length of a turn is not known, so the axis counts cycles per metre.")
        if turn_m is not None:
            turn = Text("The turn of {length} m is that of the other wheels.", length=f"{turn_m:.3f}")
        return (Text("This wheel does not show its turn: {reason}.", reason=as_text(line.reason)), turn)
    amplitude = format_value(100.0 * line.amplitude_ratio[0], 100.0 * line.amplitude_std_ratio[0], "%")
    swing = Text(
        "Once a turn the speed swings by {amplitude}; a turn is {length} m, {n} turns used.",
        amplitude=amplitude,
        length=f"{line.circumference_m:.3f} ± {line.circumference_std_m:.3f}",
        n=f"{line.revolutions:.0f}",
    )
    if line is analysis.own_lines[row]:
        return (swing,)
    return (
        swing,
        Text(
            "Counted over the distance of the other wheels, for this one loses pulses and with them its "
            "angle."
        ),
    )
