"""Find the wheel's revolution blind: the circumference at which a wheel's own ripple repeats.

The spectrum of the ripple over distance is searched from 1.6 to 2.6 m circumference. A candidate is judged
by the power at its first harmonics together, each against the usual level in its neighbourhood: a smooth
run-out shows at the first order alone, a single broken spot at many.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS
from triage.signals.false_alarm import log_false_alarm
from triage.signals.measurement import NotMeasurable
from triage.signals.ripple_spectra import (
    HARMONICS,
    LONGEST_M,
    OVERSAMPLING,
    SHORTEST_DRIVE_M,
    SHORTEST_M,
    RippleSpectra,
)
from triage.signals.wheel_path import SMOOTHING_M
from triage.speed_log import FloatArray
from triage.texts import Text

COMBS: Final = (1, 2, 4, 8)
"""Numbers of harmonics that are tried together."""

FALSE_ALARM_LIMIT: Final = 3e-5
"""A line is accepted below this probability of arising by chance."""

EXPECTED_LIMIT: Final = 3e-3
"""The same for a line just where all wheels together show one."""

SAME_CIRCUMFERENCE: Final = 0.02
"""Up to this difference two wheels are taken to show the same revolution."""

NEAR_RATIO: Final = 0.008
"""Half width of the search where another wheel has shown its revolution: tyres, pressure and curves."""

KNOWN_RATIO: Final = 0.06
"""Half width of the search around a circumference that is given."""

DRIFT_RATIO: Final = 0.0016
"""Standard uncertainty of a circumference from slip and from the delay of the control unit, which no length
of drive reduces. Most lines of simulated cars lie closer; the few on drives full of curves need it."""


_Comb = tuple[FloatArray, FloatArray]
"""Wavenumbers of the candidates, and the power at their harmonics summed up to each, float64[8, N]."""


@dataclass(frozen=True, slots=True)
class RevolutionLine:
    """The revolution of one wheel, as found in its own ripple.

    Attributes
    ----------
    circumference_m, circumference_std_m : float
        Distance per revolution in the metres of the log, and its standard uncertainty.
    amplitude_ratio : float64[8]
        Amplitude of orders 1 to 8, relative to the speed, the level expected from noise taken out.
    amplitude_std_ratio : float64[8]
        Standard uncertainty of each.
    phase_rad : float64[8]
        Phase of each order at distance 0, by the first stretch.
    false_alarm_probability : float
        Probability that noise alone gives so strong a comb anywhere in the search range.
    revolutions : float
        Revolutions in the samples used.
    """

    circumference_m: float
    circumference_std_m: float
    amplitude_ratio: FloatArray
    amplitude_std_ratio: FloatArray
    phase_rad: FloatArray
    false_alarm_probability: float
    revolutions: float


def find_revolution_lines(
    spectra: Sequence[RippleSpectra | None], *, circumference_m: float | None = None
) -> tuple[RevolutionLine | NotMeasurable, ...]:
    """Look for the revolution on every wheel; wheels that lock guide the search on the others.

    Parameters
    ----------
    spectra : four RippleSpectra or None
        From :func:`measure_ripple_spectra`.
    circumference_m : float, optional
        Known circumference; narrows the search to 6 % around it.

    Returns
    -------
    four RevolutionLine or NotMeasurable
    """
    band = search_band(circumference_m)
    combs = [None if one is None else comb_sums(one, band) for one in spectra]
    found = [
        None if one is None or comb is None else _best_comb(one, comb)
        for one, comb in zip(spectra, combs, strict=True)
    ]
    locked = [line for line in found if line is not None and line.false_alarm_probability < FALSE_ALARM_LIMIT]
    joint_m = _joint_circumference(spectra, combs, band)
    agreed_m = _agreed_circumference(locked) if locked else joint_m
    if agreed_m is not None:
        found = [_guided(one, line, agreed_m) for one, line in zip(spectra, found, strict=True)]
    confirmed = agreed_m is not None and joint_m is not None and _alike(agreed_m, joint_m)
    return tuple(
        _accept(line, spectrum, row, agreed_m=agreed_m if confirmed else None)
        for row, (line, spectrum) in enumerate(zip(found, spectra, strict=True))
    )


def line_near(spectra: RippleSpectra, circumference_m: float, *, tolerance_ratio: float) -> RevolutionLine:
    """Strongest line near a known place, whether or not it stands out of the noise.

    Parameters
    ----------
    spectra : RippleSpectra
    circumference_m : float
        Place that something else has told, such as another wheel.
    tolerance_ratio : float
        Half width of the search around it, relative.

    Returns
    -------
    RevolutionLine
        In noise alone it is the highest peak of it, as its ``false_alarm_probability`` tells.
    """
    return _best_comb(spectra, comb_sums(spectra, _around(circumference_m, tolerance_ratio)))


def _around(circumference_m: float, tolerance_ratio: float) -> tuple[float, float]:
    return circumference_m * (1.0 - tolerance_ratio), circumference_m * (1.0 + tolerance_ratio)


def search_band(circumference_m: float | None) -> tuple[float, float]:
    """Shortest and longest circumference to look for: 6 % around a known one, else those of all tyres."""
    return (SHORTEST_M, LONGEST_M) if circumference_m is None else _around(circumference_m, KNOWN_RATIO)


def comb_sums(spectra: RippleSpectra, band: tuple[float, float]) -> tuple[FloatArray, FloatArray]:
    """Sum the power at the harmonics of every candidate in a band of circumferences.

    Returns
    -------
    float64[N], float64[8, N]
        Wavenumbers of the candidates, and the power summed over stretches up to each harmonic.
    """
    step = spectra.step_per_m / HARMONICS
    first, last = int(1.0 / (band[1] * step)), int(np.ceil(1.0 / (band[0] * step)))
    candidates = np.arange(first, last + 1, dtype=np.float64) * step
    total = spectra.power.sum(axis=0)
    sums = np.empty((HARMONICS, candidates.size))
    for number in range(HARMONICS):
        place = np.rint((number + 1) * candidates / spectra.step_per_m).astype(np.intp)
        sums[number] = total[np.minimum(place, total.size - 1, out=place)]
        if number:
            sums[number] += sums[number - 1]
    return candidates, sums


def _best_comb(spectra: RippleSpectra, comb: _Comb) -> RevolutionLine:
    surprise, wavenumber, harmonics = _best_surprise(spectra, comb)
    return _line_at(spectra, wavenumber, log_false_alarm=surprise, harmonics=harmonics)


def _best_surprise(spectra: RippleSpectra, comb: _Comb) -> tuple[float, float, int]:
    """Logarithm of the false-alarm probability of the strongest comb, its wavenumber and its harmonics."""
    candidates, sums = comb
    found = []
    for harmonics in COMBS:
        resolutions = (candidates[-1] - candidates[0]) * spectra.length_m * harmonics * len(COMBS)
        index = int(np.argmax(sums[harmonics - 1]))
        surprise = log_false_alarm(
            float(sums[harmonics - 1, index]), harmonics, spectra.count, max(resolutions, len(COMBS))
        )
        found.append((surprise, float(candidates[index]), harmonics))
    return min(found, key=lambda one: one[0])


def _line_at(
    spectra: RippleSpectra, wavenumber: float, *, log_false_alarm: float, harmonics: int
) -> RevolutionLine:
    orders = np.arange(1, HARMONICS + 1)
    wavenumber = _refined(spectra, wavenumber, harmonics)
    index = np.minimum(
        np.rint(orders * wavenumber / spectra.step_per_m).astype(np.intp), spectra.level.shape[1] - 1
    )
    noise = spectra.level[:, index].mean(axis=0)
    measured = (np.abs(spectra.amplitude[:, index]) ** 2).mean(axis=0)
    gain = np.maximum(1.0 - np.sinc(orders * wavenumber * SMOOTHING_M), 0.5)
    amplitude = np.sqrt(np.maximum(measured - noise, 0.0)) / gain
    std = np.sqrt(noise / 2.0 / spectra.count) / gain
    strength = float((spectra.power[:, index[:harmonics]] * orders[:harmonics] ** 2).sum())
    # Cramer-Rao bound for the frequency of a line in noise, summed over harmonics and stretches.
    std_per_m = np.sqrt(3.0 / (2.0 * max(strength, 1.0))) / (np.pi * spectra.length_m)
    return RevolutionLine(
        circumference_m=1.0 / wavenumber,
        circumference_std_m=float(np.hypot(std_per_m / wavenumber**2, DRIFT_RATIO / wavenumber)),
        amplitude_ratio=amplitude,
        amplitude_std_ratio=std,
        phase_rad=np.angle(spectra.amplitude[0, index]),
        false_alarm_probability=float(np.exp(log_false_alarm)),
        revolutions=spectra.used_m * wavenumber,
    )


def _refined(spectra: RippleSpectra, wavenumber: float, harmonics: int) -> float:
    """Wavenumber between the grid points: centre of a parabola through the comb's summed power."""
    orders = np.arange(1, harmonics + 1)
    total = spectra.power.sum(axis=0)
    shift = spectra.step_per_m / HARMONICS * np.arange(-HARMONICS, HARMONICS + 1)
    index = orders[:, None] * (wavenumber + shift)[None, :] / spectra.step_per_m
    grid = np.arange(total.size)
    sums = np.interp(index, grid, total).sum(axis=0)
    top = int(np.argmax(sums))
    if not 0 < top < sums.size - 1:
        return wavenumber
    left, middle, right = sums[top - 1 : top + 2]
    bend = left - 2.0 * middle + right
    offset = 0.5 * (left - right) / bend if bend < 0 else 0.0
    return float(wavenumber + shift[top] + offset * (shift[1] - shift[0]))


def _joint_circumference(
    spectra: Sequence[RippleSpectra | None], combs: Sequence[_Comb | None], band: tuple[float, float]
) -> float | None:
    """Circumference at which the combs of all wheels together stand out of the noise; None when none does.

    Wheels that are each too quiet to lock may do so together, for a control unit counts the same distance
    per revolution on all of them.
    """
    present = [one for one in spectra if one is not None]
    if len(present) < 2:
        return None
    longest_m = max(one.length_m for one in present)
    candidates = np.arange(1.0 / band[1], 1.0 / band[0], 1.0 / (OVERSAMPLING * HARMONICS * longest_m))
    total = np.zeros((HARMONICS, candidates.size))
    for own, sums in (comb for comb in combs if comb is not None):
        nearest = np.clip(np.searchsorted(own, candidates), 0, own.size - 1)
        total += sums[:, nearest]
    stretches = sum(one.count for one in present)
    surprises = []
    for harmonics in COMBS:
        resolutions = (candidates[-1] - candidates[0]) * longest_m * harmonics * len(COMBS)
        place = int(np.argmax(total[harmonics - 1]))
        surprise = log_false_alarm(float(total[harmonics - 1, place]), harmonics, stretches, resolutions)
        surprises.append((surprise, 1.0 / float(candidates[place])))
    best = min(surprises)
    return best[1] if best[0] < np.log(FALSE_ALARM_LIMIT) else None


def _alike(first_m: float, second_m: float) -> bool:
    return abs(first_m / second_m - 1.0) < SAME_CIRCUMFERENCE


def _agreed_circumference(locked: list[RevolutionLine]) -> float:
    """Circumference that most of the power speaks for: the strongest line."""
    return min(locked, key=lambda line: line.false_alarm_probability).circumference_m


def _guided(
    spectra: RippleSpectra | None, line: RevolutionLine | None, agreed_m: float
) -> RevolutionLine | None:
    """Search again near what another wheel has shown, unless this wheel's own line speaks louder.

    A single strong harmonic fits several circumferences: order 6 of the true one is order 5 of one that is
    5/6 as long. What the others show is therefore preferred when it carries at least half of the evidence.
    """
    if spectra is None or line is None:
        return line
    locked = line.false_alarm_probability < FALSE_ALARM_LIMIT
    if locked and abs(line.circumference_m / agreed_m - 1.0) < SAME_CIRCUMFERENCE:
        return line
    near = line_near(spectra, agreed_m, tolerance_ratio=NEAR_RATIO)
    as_good = near.false_alarm_probability**2 <= line.false_alarm_probability
    return near if not locked or (as_good and near.false_alarm_probability < FALSE_ALARM_LIMIT) else line


def _accept(
    line: RevolutionLine | None, spectra: RippleSpectra | None, row: int, *, agreed_m: float | None
) -> RevolutionLine | NotMeasurable:
    """Take a line that noise would hardly make; where all wheels agree on its place, odds of 3 in 1000 do."""
    expected = line is not None and agreed_m is not None and _alike(line.circumference_m, agreed_m)
    limit = EXPECTED_LIMIT if expected else FALSE_ALARM_LIMIT
    if line is not None and line.false_alarm_probability < limit:
        return line
    reason = (
        Text("less than {way} m of usable driving", way=f"{SHORTEST_DRIVE_M:.0f}")
        if spectra is None
        else "no ripple that repeats with the revolution stands out of the noise"
    )
    return NotMeasurable(
        id="line-amplitude",
        corner=CORNERS[row],
        reason=reason,
        needed="at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more",
    )
