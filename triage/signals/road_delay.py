"""Which channel meets the road first: the rear wheel repeats what the front wheel met a wheelbase before.

A joint, a patch or the plain texture of the road changes the speed of the front wheel of one side, and of the
rear wheel of the same side once the car has gone on by its wheelbase. Over DISTANCE that delay is the same at
any speed. What the car does as a whole (engine, brakes) is as strong a wheelbase before as behind, so that
the difference of the two tells the order of the wheels alone.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.conditioning import CommonClock
from triage.signals.one_core import product_on_one_core
from triage.signals.running import zero_for_missing
from triage.signals.vehicle_reference import VehicleReference
from triage.speed_log import BoolArray, FloatArray

STEP_M: Final = 0.125
SEGMENT_M: Final = 32.0
SMOOTHING_M: Final = 4.0
FROM_PER_M: Final = 0.2
TO_PER_M: Final = 2.0
"""Wavenumbers used: below them the car as a whole moves, above them the tyre evens out the road."""

SHORTEST_M: Final = 2.0
LONGEST_M: Final = 3.6
"""Wheelbases tried, with what a delay between the messages of the axles adds at speed."""

LONGEST_SPACING_M: Final = 0.7
"""Samples further apart do not show a delay of one wheelbase."""

LEAST_FRESH: Final = 0.6
SLOWEST_MPS: Final = 4.0
FEWEST_SEGMENTS: Final = 12
JACKKNIFE_PARTS: Final = 12
MOST_SEGMENTS: Final = 300
"""From a longer log these are taken, evenly over the drive."""


ROWS_AT_ONCE: Final = 128


@dataclass(frozen=True, slots=True)
class RoadDelay:
    """How coherently each channel repeats another one some distance later.

    Attributes
    ----------
    distance_m : float64[D]
        Distances tried.
    echo : complex128[4, 4, D, S]
        ``echo[i, j]`` is the coherence, -1 to 1 and complex, of channel j with channel i the distance before,
        for each of S segments of the drive.
    """

    distance_m: FloatArray
    echo: NDArray[np.complex128]


@dataclass(frozen=True, slots=True)
class Lead:
    """How far two channels run ahead of two others.

    Attributes
    ----------
    coherence, coherence_std : float
        Mean coherence with what the leaders met before, less that with what they meet afterwards: 0 without
        order, 1 when all of the road's texture is repeated.
    distance_m : float
        Distance at which it is greatest: the wheelbase.
    """

    coherence: float
    coherence_std: float
    distance_m: float


def measure_road_delay(clock: CommonClock, reference: VehicleReference) -> RoadDelay | None:
    """Correlate every pair of wheels over distance.

    Returns
    -------
    RoadDelay or None
        None when fewer than a dozen segments of 32 m were recorded without gaps, above walking pace and with
        samples close enough together.

    Notes
    -----
    Generalised cross-correlation with phase transform: every wavenumber of every segment counts alike, which
    takes the weight from the lines of the wheels' own turns and from single hits. One-sided in wavenumber, so
    that its modulus does not swing with the wavelength of a wheel hopping on its tyre.

    References
    ----------
    C. H. Knapp, G. C. Carter, The generalized correlation method for estimation of time delay, IEEE Trans.
    Acoust. Speech Signal Process. 24, 1976 (cited from memory).
    """
    segments = _segments(clock, reference)
    if segments.shape[1] < FEWEST_SEGMENTS:
        return None
    length = segments.shape[2]
    wavenumber = np.fft.rfftfreq(2 * length, STEP_M)
    inside = (wavenumber >= FROM_PER_M) & (wavenumber <= TO_PER_M)
    spectra = np.fft.rfft(segments * np.hanning(length), 2 * length, axis=2)[:, :, inside]
    spectra *= 1.0 / np.maximum(np.abs(spectra), 1e-12)
    # A band with soft ends has no far ripples about its peak.
    weight = np.sin(np.pi * np.linspace(0.0, 1.0, np.count_nonzero(inside) + 2)[1:-1]) ** 2
    distance_m = np.arange(SHORTEST_M, LONGEST_M + STEP_M / 2.0, STEP_M)
    turn = np.exp(2j * np.pi * wavenumber[inside][:, None] * distance_m) * (weight / weight.sum())[:, None]
    return RoadDelay(distance_m, _echoes(spectra, turn))


def _echoes(spectra: NDArray[np.complex128], turn: NDArray[np.complex128]) -> NDArray[np.complex128]:
    """Coherence of every channel with every other one each distance before, complex128[4, 4, D, S].

    Notes
    -----
    What comes the distance d later is turned by exp(-2 pi i k d). The product of a pair serves both
    directions, as itself and conjugated, and all pairs go through four real products of matrices: a dozen
    small complex ones took ten times as long.
    """
    first, second = np.triu_indices(4, 1)
    product = spectra[second] * np.conj(spectra[first])
    real, imaginary = (part.reshape(-1, turn.shape[0]) for part in (product.real, product.imag))
    cosine, sine = np.ascontiguousarray(turn.real), np.ascontiguousarray(turn.imag)
    shape = (first.size, spectra.shape[1], turn.shape[1])
    even, odd = _product(real, cosine).reshape(shape), _product(imaginary, sine).reshape(shape)
    along, across = _product(real, sine).reshape(shape), _product(imaginary, cosine).reshape(shape)
    echo = np.zeros((4, 4, turn.shape[1], spectra.shape[1]), dtype=complex)
    echo[first, second] = (even - odd + 1j * (along + across)).transpose(0, 2, 1)
    echo[second, first] = (even + odd + 1j * (along - across)).transpose(0, 2, 1)
    return echo


def _product(left: FloatArray, right: FloatArray) -> FloatArray:
    return product_on_one_core(left, right, rows=ROWS_AT_ONCE)


def lead_of(delay: RoadDelay, order: tuple[int, int, int, int]) -> Lead:
    """Give the lead of the front wheels over the rear wheels of their side under an arrangement.

    Parameters
    ----------
    delay : RoadDelay
    order : four ints
        Channel of the true front left, front right, rear left and rear right.

    Notes
    -----
    The uncertainty is a jackknife over a dozen parts of the drive.
    """
    parts = np.array_split(np.arange(delay.echo.shape[3]), JACKKNIFE_PARTS)
    sums = np.stack([delay.echo[..., part].sum(axis=3) for part in parts], axis=3)
    counts = np.array([part.size for part in parts], dtype=float)
    course = _lead_course(sums.sum(axis=3) / counts.sum(), order)
    best = int(np.argmax(course))
    without = (sums.sum(axis=3)[..., None] - sums) / (counts.sum() - counts)
    spread = np.array([_lead_course(without[..., part], order)[best] for part in range(counts.size)])
    std = np.sqrt((counts.size - 1.0) * spread.var())
    return Lead(float(course[best]), float(std), float(delay.distance_m[best]))


def _lead_course(echo: NDArray[np.complex128], order: tuple[int, int, int, int]) -> FloatArray:
    front_left, front_right, rear_left, rear_right = order
    size = np.abs(echo)
    left = size[front_left, rear_left] - size[rear_left, front_left]
    right = size[front_right, rear_right] - size[rear_right, front_right]
    both: FloatArray = (left + right) / 2.0
    return both


def _segments(clock: CommonClock, reference: VehicleReference) -> FloatArray:
    """Quick speed deviation of every channel over distance, float64[4, S, L], cut into sound segments."""
    count = round(SEGMENT_M / STEP_M)
    if not clock.time_s.size or (clock.fresh.mean(axis=1) < LEAST_FRESH).any():
        # A wheel on a much slower clock comes late by part of its own period, as if it were further behind.
        return np.zeros((4, 0, count))
    speed = zero_for_missing(reference.reference_mps)
    steps_m = np.diff(clock.time_s) * (speed[1:] + speed[:-1]) / 2.0
    travelled_m = np.concatenate(([0.0], np.cumsum(steps_m)))
    usable = (speed > SLOWEST_MPS) & clock.valid.all(axis=0)
    usable[1:] &= (steps_m < LONGEST_SPACING_M) & (np.diff(clock.time_s) < 4.0 * clock.period_s)
    starts_m = _sound_starts(travelled_m, usable)
    if not starts_m.size:
        return np.zeros((4, 0, count))
    place_m = starts_m[:, None] + STEP_M * np.arange(count)
    rows = [np.interp(place_m, travelled_m, row) for row in clock.speed_mps]
    return np.stack([_quick_part(row) for row in rows])


def _sound_starts(travelled_m: FloatArray, usable: BoolArray) -> FloatArray:
    """Where the segments begin in which no sample is unusable, in metres from the start."""
    bad_before = np.concatenate(([0], np.cumsum(~usable)))
    starts_m = (
        np.arange(0.0, float(travelled_m[-1]) - SEGMENT_M, SEGMENT_M) if travelled_m.size else np.zeros(0)
    )
    first = np.searchsorted(travelled_m, starts_m, side="left")
    stop = np.minimum(np.searchsorted(travelled_m, starts_m + SEGMENT_M, side="right") + 1, usable.size)
    sound: FloatArray = starts_m[(bad_before[stop] == bad_before[first]) & (stop > first)]
    if sound.size > MOST_SEGMENTS:
        sound = sound[np.linspace(0, sound.size - 1, MOST_SEGMENTS).astype(np.intp)]
    return sound


def _quick_part(rows: FloatArray) -> FloatArray:
    """Relative deviation from the running mean, float64[S, L]."""
    width = round(SMOOTHING_M / STEP_M)
    padded = np.pad(rows, ((0, 0), (width // 2, width - width // 2)), mode="edge")
    total = np.cumsum(padded, axis=1)
    mean = (total[:, width:] - total[:, :-width]) / width
    quick: NDArray[np.float64] = rows / np.maximum(mean, 1.0) - 1.0
    return quick
