"""The once-per-revolution line: how strong, how peaky, and whether it fits the other wheels."""

from __future__ import annotations

import numpy as np

from triage.corners import CORNERS
from triage.signals.analysis import Analysis
from triage.signals.measurement import Measured
from triage.signals.measures.building import measured, missing, moving_spans
from triage.signals.revolution_line import RevolutionLine
from triage.signals.running import count_of

NEEDED = "at least one minute of steady straight driving at 30 to 80 km/h, recorded at 20 Hz or more"


def measure_line_amplitude(analysis: Analysis, row: int) -> Measured:
    """Amplitude of order 1 relative to the speed, in per cent."""
    line = analysis.lines[row]
    if not isinstance(line, RevolutionLine):
        return line
    return measured(
        "line-amplitude",
        CORNERS[row],
        100.0 * line.amplitude_ratio[0],
        100.0 * line.amplitude_std_ratio[0],
        unit="%",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )


def measure_line_ratio(analysis: Analysis, row: int) -> Measured:
    """Amplitude of order 1 over that of the other wheels.

    Averaging and filtering in the control unit weaken the line of all wheels alike, which the ratio does
    not see.
    """
    line = analysis.lines[row]
    others = [
        one for other, one in enumerate(analysis.lines) if other != row and isinstance(one, RevolutionLine)
    ]
    if not isinstance(line, RevolutionLine) or not others:
        return missing("line-ratio", row, "the revolution was not found on this wheel and another", NEEDED)
    usual = max(float(np.median([one.amplitude_ratio[0] for one in others])), 1e-4)
    ratio = line.amplitude_ratio[0] / usual
    # A tenth for what no measuring time reduces (judgement). That healthy wheels differ by a factor of up to
    # about two is told by the likelihoods.
    std = np.hypot(0.1 * ratio, line.amplitude_std_ratio[0] / usual)
    return measured(
        "line-ratio",
        CORNERS[row],
        ratio,
        std,
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
    circumference. An encoder with another number of poles changes it by exactly that ratio.
    """
    line = analysis.own_lines[row]
    others = [
        one
        for other, one in enumerate(analysis.own_lines)
        if other != row and isinstance(one, RevolutionLine)
    ]
    if not isinstance(line, RevolutionLine) or len(others) < 2:
        return missing(
            "revolution-offset", row, "the revolution was not found on this wheel and two others", NEEDED
        )
    usual = float(np.median([one.circumference_m for one in others]))
    std = np.hypot(line.circumference_std_m, np.median([one.circumference_std_m for one in others])) / usual
    return measured(
        "revolution-offset",
        CORNERS[row],
        100.0 * (line.circumference_m / usual - 1.0),
        100.0 * std,
        unit="%",
        count=count_of(analysis.paths[row].weight > 0),
        spans=moving_spans(analysis, row),
    )
