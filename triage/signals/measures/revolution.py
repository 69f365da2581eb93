"""The once-per-revolution line: how strong, how peaky, and whether it fits the other wheels."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured, NotMeasurable
from triage.signals.measures.building import hidden_by_steps, measured, missing, moving_spans
from triage.signals.measures.ratio import own_offset
from triage.signals.noise_growth import hides_small_swings
from triage.signals.revolution_line import DRIFT_RATIO, NEAR_RATIO, RevolutionLine, line_near
from triage.signals.running import count_of
from triage.speed_log import FloatArray

BLUR_RATIO = 0.25
"""What the log shows of a line differs by about a quarter from what averaging leaves of it: the delay of the
control unit is another angle of the wheel at another speed, which blurs the line (simulated cars)."""

LEAK_RATIO = 0.05
"""Share of another wheel's line that reaches this one through what the others demand of it (simulated)."""

LEAK_SHIFT_RATIO = 0.007
"""By so much another wheel's revolution differs in this one's distance: tyres, curves (simulated cars)."""

OWN_DRIFT_RATIO = 0.0006
"""Drift of one wheel's distance per revolution that the other wheels do not share (simulated cars). The rest
of what a line's uncertainty allows for drift is common to all wheels and cancels between them."""

FOREIGN_RATIO = 0.03
"""Further than this from both a tyre's and a count's offset, what was found is no revolution (judgement)."""

LEAST_USUAL_RATIO = 1e-4
"""Weaker lines say nothing of a ring: rounding and the finite search for them are as large (judgement)."""

SMALL_RATIO = 0.002
"""A swing below this speaks for a sound ring, unless the control unit hides more (judgement, and the lowest
bands of the rule book)."""

NEEDED = "at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more"


def measure_line_amplitude(analysis: Analysis, row: int) -> Measured:
    """Amplitude of order 1 over the wheel's angle, relative to the speed as the log has it, in per cent.

    Averaging in the control unit weakens it, so that it is a lower bound of the ring's own swing. The
    uncertainty adds to the noise what the unit's delay blurs and what leaks in from the strongest other line.
    A small amplitude is not stated where the unit counts pulses: its long averaging leaves little of a large
    one.
    """
    line = analysis.lines[row]
    if not isinstance(line, RevolutionLine):
        return line
    amplitude = float(line.amplitude_ratio[0])
    if amplitude < SMALL_RATIO and hides_small_swings(analysis.noise_growth):
        return hidden_by_steps("line-amplitude", row)
    leak = LEAK_RATIO * _strongest_other(analysis.lines, row)
    std = float(np.hypot(np.hypot(line.amplitude_std_ratio[0], BLUR_RATIO * amplitude), leak))
    return measured(
        "line-amplitude",
        CORNERS[row],
        100.0 * amplitude,
        100.0 * std,
        unit="%",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )


def measure_line_ratio(analysis: Analysis, row: int) -> Measured:
    """Amplitude of order 1 over the root mean square of that of the other wheels.

    Averaging and filtering in the control unit weaken the line of all wheels alike, which the ratio does
    not see. A wheel whose own line drowns in noise is searched near this wheel's circumference (within
    0.8 %), and what is found counts as no smaller than its noise, so that the ratio is rather too small than
    too large. Not formed without an own line. Assumes that no other wheel has a fault of its turn.

    Notes
    -----
    Of mean, middle, largest and root mean square of the others, the last parts slight run-out from healthy
    wheels best (simulated cars: 0.89 of them above what 1 % of healthy wheels exceed, against 0.85 for the
    middle). The uncertainty is that of the noise in both, and a tenth for what no measuring time reduces
    (judgement); how much healthy wheels differ is told by the likelihoods.
    """
    return _over_the_others("line-ratio", analysis, row, slice(0, 1))


def measure_harmonic_ratio(analysis: Analysis, row: int) -> Measured:
    """Amplitude of orders 2 to 8 together over the root mean square of that of the other wheels.

    Tyre and hub of a sound wheel have such orders too, about as strong on all four. A spot on the ring adds
    to all of them, run-out to hardly any; even where long averaging leaves no single pulse missing to see.
    Formed as :func:`measure_line_ratio`; the amplitude is the square root of the summed powers, to which each
    order gives what the unit's averaging leaves of it. Source: a border out of place is a pulse in the angle,
    whose series has all orders in equal measure (the Fourier series of a periodic pulse).
    """
    return _over_the_others("harmonic-ratio", analysis, row, slice(1, None))


def _over_the_others(name: str, analysis: Analysis, row: int, orders: slice) -> Measured:
    line = analysis.lines[row]
    others = _lines_beside(analysis, row) if isinstance(line, RevolutionLine) else []
    if not isinstance(line, RevolutionLine) or not others:
        return missing(name, row, "the revolution was not found on this wheel", NEEDED)
    own, own_std, _ = _size_of(line, orders)
    beside = np.array([_size_of(one, orders) for one in others])
    usual, usual_std = _root_mean_square(np.maximum(beside[:, 0], beside[:, 2]), beside[:, 1])
    relative = np.hypot(0.1, usual_std / usual)
    return measured(
        name,
        CORNERS[row],
        own / usual,
        float(np.hypot(relative * own, own_std) / usual),
        unit="",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )


def measure_line_harmonic_share(analysis: Analysis, row: int) -> Measured:
    """Share of the power of orders 1 to 8 above order 2: near 0 for a sine, large for a narrow spot."""
    line = analysis.lines[row]
    if not isinstance(line, RevolutionLine):
        return missing("line-harmonic-share", row, line.reason, line.needed)
    power = line.amplitude_ratio**2
    power_std = 2.0 * line.amplitude_ratio * line.amplitude_std_ratio + line.amplitude_std_ratio**2
    total = max(float(power.sum()), 1e-15)
    share = float(power[2:].sum()) / total
    std = np.sqrt(
        (share * power_std[:2]) @ (share * power_std[:2])
        + ((1 - share) * power_std[2:]) @ ((1 - share) * power_std[2:])
    )
    return measured(
        "line-harmonic-share",
        CORNERS[row],
        share,
        max(float(std) / total, 0.01),
        unit="",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )


def measure_revolution_offset(analysis: Analysis, row: int) -> Measured:
    """Distance per revolution, by the wheel's own counting, against the other wheels, in per cent.

    A tyre of another size does not change it, for the control unit multiplies pulses by one fixed
    circumference. An encoder with another number of poles changes it by exactly that ratio. The uncertainty
    adds that a weak line may be what leaks in from a wheel with a strong one, and how far the other wheels
    disagree: of two that differ nobody knows which is right. An offset that is neither about 0 nor about the
    ratio of the speeds is a multiple or a part of the revolution, and is not stated.
    """
    line = analysis.own_lines[row]
    others = {
        other: one
        for other, one in enumerate(analysis.own_lines)
        if other != row and isinstance(one, RevolutionLine)
    }
    if not isinstance(line, RevolutionLine) or len(others) < 2:
        return missing(
            "revolution-offset", row, "the revolution was not found on this wheel and two others", NEEDED
        )
    lengths_m = np.array([one.circumference_m for one in others.values()])
    usual = float(np.median(lengths_m))
    disagreement = 1.4826 * float(np.median(np.abs(lengths_m - usual))) / usual
    offset = line.circumference_m / usual - 1.0
    if _cannot_be(offset, own_offset(analysis.reference, row)[0]):
        reason = "the revolution found fits neither the other wheels nor this wheel's own ratio to them"
        return missing("revolution-offset", row, reason, NEEDED)
    stds = [_length_std_ratio(analysis.own_lines, other) for other in others]
    own_std = _length_std_ratio(analysis.own_lines, row)
    std = float(np.sqrt(own_std**2 + np.median(stds) ** 2 + disagreement**2))
    return measured(
        "revolution-offset",
        CORNERS[row],
        100.0 * offset,
        100.0 * std,
        unit="%",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )


def _cannot_be(offset: float, ratio: float) -> bool:
    """Whether an offset is neither a tyre's, none, nor another count's, the ratio of the speeds."""
    return bool(np.isfinite(ratio) and min(abs(offset), abs(offset - ratio)) > FOREIGN_RATIO)


def _lines_beside(analysis: Analysis, row: int) -> list[RevolutionLine]:
    """Line of every other wheel: its own, else the strongest near the circumference of this one."""
    line = analysis.lines[row]
    found: list[RevolutionLine] = []
    for other, one in enumerate(analysis.lines):
        spectra = analysis.own_spectra[other]
        if other == row:
            continue
        if isinstance(one, RevolutionLine):
            found.append(one)
        elif isinstance(line, RevolutionLine) and spectra is not None:
            found.append(line_near(spectra, line.circumference_m, tolerance_ratio=NEAR_RATIO))
    return found


def _size_of(line: RevolutionLine, orders: slice) -> tuple[float, float, float]:
    """Square root of the summed power of some orders, its standard uncertainty, and what noise makes it."""
    amplitude, std = line.amplitude_ratio[orders], line.amplitude_std_ratio[orders]
    size, noise = float(np.sqrt(np.sum(amplitude**2))), float(np.sqrt(np.sum(std**2)))
    power_std = 2.0 * float(np.sqrt(np.sum(amplitude**2 * std**2 + std**4)))
    return size, power_std / (2.0 * max(size, noise)), noise


def _root_mean_square(amplitude: FloatArray, std: FloatArray) -> tuple[float, float]:
    """Root mean square of amplitudes and its standard uncertainty; at least ``LEAST_USUAL_RATIO``.

    An amplitude a with noise s in its two parts has a power that scatters by sqrt(4 a^2 s^2 + 4 s^4).
    """
    usual = max(float(np.sqrt(np.mean(amplitude**2))), LEAST_USUAL_RATIO)
    power_std = 2.0 * np.sqrt(np.sum(amplitude**2 * std**2 + std**4)) / amplitude.size
    return usual, float(power_std / (2.0 * usual))


def _strongest_other(lines: Sequence[RevolutionLine | NotMeasurable], row: int) -> float:
    """Largest amplitude of order 1 on the other wheels, 0 when none is known."""
    known = [
        float(one.amplitude_ratio[0])
        for other, one in enumerate(lines)
        if other != row and isinstance(one, RevolutionLine)
    ]
    return max(known, default=0.0)


def _length_std_ratio(lines: Sequence[RevolutionLine | NotMeasurable], row: int) -> float:
    """Relative standard uncertainty of a wheel's distance per revolution, leaking lines included."""
    line = lines[row]
    if not isinstance(line, RevolutionLine):
        return float("inf")
    leak = LEAK_RATIO * _strongest_other(lines, row) / max(float(line.amplitude_ratio[0]), 1e-6)
    noise_square = (line.circumference_std_m / line.circumference_m) ** 2 - DRIFT_RATIO**2
    own = OWN_DRIFT_RATIO**2 + (LEAK_SHIFT_RATIO * min(leak, 1.0)) ** 2
    return float(np.sqrt(max(noise_square, 0.0) + own))
