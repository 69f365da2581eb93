"""Losses of one wheel as events in time, and whether they prefer some moments."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.stats import beta

from triage.signals.analysis import Analysis
from triage.signals.running import quantiles_of, run_bounds, stride_of
from triage.speed_log import BoolArray, FloatArray

SEPARATE_S: Final = 1.0
"""Losses that follow within this time are one event: what tears at a lead opens it several times in a row."""

SPEED_STRATA: Final = 5
ONE_SIGMA: Final = (0.1587, 0.8413)


@dataclass(frozen=True, slots=True)
class LossEvents:
    """Events of one wheel.

    Attributes
    ----------
    first, stop : int[E]
        Samples of the first loss of each event, and after its last.
    lost_s : float64[E]
        Time in which the signal was disturbed.
    flag : bool[N]
        Disturbed samples.
    """

    first: NDArray[np.intp]
    stop: NDArray[np.intp]
    lost_s: FloatArray
    flag: BoolArray


def find_loss_events(analysis: Analysis, row: int, *, brief: bool = True) -> LossEvents:
    """Gather what a wheel alone loses into separate events; silence below a cut-off speed is none.

    Parameters
    ----------
    brief : bool
        Count samples that are only low, a part of the control unit's averaging time lost, as well.
    """
    flag = analysis.losses.alone[row] & ~analysis.cut_offs[row].silent
    if brief:
        flag = flag | analysis.losses.low[row]
    flag = flag & analysis.losses.moving[row]
    begin, end = run_bounds(flag)
    if not begin.size:
        return LossEvents(begin, end, np.zeros(0), flag)
    time_s = analysis.clock.time_s
    fresh = np.concatenate(([True], time_s[begin[1:]] - time_s[end[:-1] - 1] > SEPARATE_S))
    head = np.flatnonzero(fresh)
    lengths = (end - begin) * analysis.clock.period_s
    return LossEvents(
        begin[head], end[np.append(head[1:] - 1, end.size - 1)], np.add.reduceat(lengths, head), flag
    )


@dataclass(frozen=True, slots=True)
class RateRatio:
    """Rate of events in some moments over that in the others.

    Attributes
    ----------
    ratio, log_std : float
        Estimate, and the standard uncertainty of its natural logarithm.
    inside, total : int
        Events in these moments, and in all.
    """

    ratio: float
    log_std: float
    inside: int
    total: int


def speed_strata(speed_mps: FloatArray, judged: BoolArray) -> NDArray[np.int8]:
    """Give the range of speed of every sample, of five that hold about as many judged samples each.

    Parameters
    ----------
    speed_mps : float64[N]
    judged : bool[N]
        One at least is set.
    """
    judged_mps = speed_mps[judged]
    stratum = np.zeros(speed_mps.size, dtype=np.int8)
    bounds = np.arange(1, SPEED_STRATA) / SPEED_STRATA
    for bound_mps in quantiles_of(judged_mps[:: stride_of(judged_mps.size)], bounds):
        stratum += speed_mps > bound_mps
    return stratum


def compare_rates(
    event: NDArray[np.intp], exposed: BoolArray, judged: BoolArray, speed_mps: FloatArray
) -> RateRatio | None:
    """Compare the rate of events in the exposed moments with that in the others at the same speed.

    Parameters
    ----------
    event : int[E]
        Samples at which the events begin.
    exposed, judged : bool[N]
        Moments asked for, and moments in which events could be seen at all.
    speed_mps : float64[N]
        Drives are slower in some moments; the shares of time are taken in five ranges of speed.

    Returns
    -------
    RateRatio or None
        None when the moments make up less than 1 % or more than 80 % of the comparable time.

    Notes
    -----
    Given the total, the number of events inside is binomial; its share p and the share of time q give the
    ratio p (1 - q) / (q (1 - p)). The share is estimated with Jeffreys' prior, whose 68 % interval gives the
    uncertainty: exact for few events, and defined for none.

    References
    ----------
    J. Przyborowski, H. Wilenski, Homogeneity of results in testing samples from Poisson series, Biometrika
    31, 1940 (cited from memory).
    """
    stratum = speed_strata(speed_mps, judged)
    time = np.bincount(stratum[judged], minlength=SPEED_STRATA).astype(float)
    time_inside = np.bincount(stratum[judged & exposed], minlength=SPEED_STRATA).astype(float)
    share = time_inside / np.maximum(time, 1.0)
    event = event[judged[event]]
    # Where there is none of the one kind of moments, nothing can be compared.
    event = event[(share[stratum[event]] > 0.005) & (share[stratum[event]] < 0.995)]
    if not event.size:
        return None
    expected = float(share[stratum[event]].mean())
    if not 0.01 <= expected <= 0.8:
        return None
    inside = int(np.count_nonzero(exposed[event]))
    bounds = np.array((ONE_SIGMA[0], 0.5, ONE_SIGMA[1]))
    share_inside = np.asarray(beta.ppf(bounds, inside + 0.5, event.size - inside + 0.5))
    odds = np.log(share_inside / (1.0 - share_inside))
    offset = np.log(expected / (1.0 - expected))
    return RateRatio(
        ratio=float(np.exp(odds[1] - offset)),
        log_std=float(odds[2] - odds[0]) / 2.0,
        inside=inside,
        total=int(event.size),
    )
