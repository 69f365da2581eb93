"""Everything the measurements share, worked out once per log."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.memory import keep_freed_memory
from triage.progress import Progress, no_progress
from triage.side_by_side import both
from triage.signals.companions import Companions, gather_companions
from triage.signals.conditioning import CommonClock, channel_on_clock, put_on_common_clock
from triage.signals.cut_off import CutOff, find_cut_offs
from triage.signals.cut_off_crossings import Crossings, find_all_crossings
from triage.signals.lone_deviations import LoneDeviations, find_lone_deviations
from triage.signals.losses import Losses, find_losses, spans_of
from triage.signals.manoeuvres import Manoeuvre, find_manoeuvres, longitudinal_acceleration
from triage.signals.measurement import NotMeasurable, Span
from triage.signals.noise_growth import measure_noise_growth
from triage.signals.pole_rings import PoleRings, examine_rings
from triage.signals.pulse_counters import PulseCounters, TurnPulses, find_turn_pulses, gather_counters
from triage.signals.residuals import Residuals, measure_residuals
from triage.signals.revolution_line import RevolutionLine, find_revolution_lines
from triage.signals.ring_map import FEWEST_ONSETS, RingMap, brief_disturbances, map_rings
from triage.signals.ripple_spectra import RippleSpectra, measure_ripple_spectra
from triage.signals.running import run_bounds, zero_for_missing
from triage.signals.vehicle_reference import VehicleReference, estimate_reference
from triage.signals.wheel_path import WheelPath, along_neighbours, follow_wheels
from triage.speed_log import FloatArray, SpeedLog
from triage.vehicle import Vehicle

FEWEST_SAMPLES: Final = 20
"""Below this nothing is measured: no filter, noise level or line makes sense."""


@dataclass(frozen=True, slots=True)
class Analysis:
    """The shared ground of all measurements. Rows and tuples follow ``CORNERS``.

    Attributes
    ----------
    own_spectra : four RippleSpectra or None
        Spectra of the ripple over the distance of each wheel's own counting.
    own_lines : four RevolutionLine or NotMeasurable
        Revolutions over that distance.
    paths, lines : four each
        The same, but for a wheel that loses pulses over the distance the others tell, where that shows more.
    crossings : four Crossings or None
        Passages of each wheel through its cut-off; None for a wheel that has none.
    lateral_mps2 : float64[N]
        Lateral acceleration by speed and curvature, positive to the left.
    moving_spans : four tuples of (float, float)
        The ten longest stretches in which each wheel moves fast enough to be judged.
    moving_s : float
        Time in which the car moves fast enough to be judged.
    companions : Companions
        Yaw rate, steering, lateral acceleration and brake on the common clock, as far as recorded.
    noise_growth : float or None
        Power of the speed with which the quick ripple of the wheels grows
        (:func:`triage.signals.noise_growth.measure_noise_growth`).
    counters : PulseCounters or None
        Pulse counts of the wheels; None when the log has none.
    pole_rings : PoleRings or None
        Encoder rings pole by pole; None when the log holds no single edges.
    turn_pulses : TurnPulses or None
        Pulses of one turn, found where the log has counters and a wheel shows its revolution.
    """

    clock: CommonClock
    vehicle: Vehicle
    reference: VehicleReference
    acceleration_mps2: FloatArray
    lateral_mps2: FloatArray
    manoeuvres: tuple[Manoeuvre, ...]
    residuals: Residuals
    losses: Losses
    paths: tuple[WheelPath, ...]
    own_spectra: tuple[RippleSpectra | None, ...]
    own_lines: tuple[RevolutionLine | NotMeasurable, ...]
    lines: tuple[RevolutionLine | NotMeasurable, ...]
    rings: tuple[RingMap | NotMeasurable, ...]
    cut_offs: tuple[CutOff, ...]
    crossings: tuple[Crossings | None, ...]
    lone: LoneDeviations
    moving_spans: tuple[tuple[Span, ...], ...]
    moving_s: float
    companions: Companions
    noise_growth: float | None
    counters: PulseCounters | None = None
    pole_rings: PoleRings | None = None
    turn_pulses: TurnPulses | None = None


def analyse(log: SpeedLog, vehicle: Vehicle | None = None, progress: Progress = no_progress) -> Analysis:
    """Work out reference, residuals, losses and wheel angles of a log.

    Parameters
    ----------
    log : SpeedLog
    vehicle : Vehicle, optional
        What is known of the car; an ordinary passenger car when None.
    progress : Progress
    """
    keep_freed_memory()
    vehicle = vehicle or Vehicle()
    progress(0.0, "Bringing the wheels to one clock")
    clock = put_on_common_clock(log)
    yaw = channel_on_clock(log.channels.get("yaw_rate_radps"), clock.time_s)
    progress(0.1, "Working out speed and path of the car")
    reference = estimate_reference(clock, vehicle, yaw)
    acceleration = longitudinal_acceleration(clock.time_s, reference.reference_mps, clock.period_s)
    progress(0.3, "Looking for losses")
    residuals = measure_residuals(clock, reference)
    losses = find_losses(clock, reference, residuals, acceleration)
    progress(0.5, "Following the angle of every wheel")
    counters = gather_counters(log, clock)
    disturbed = _disturbed_wheels(residuals, losses)
    throughout = [counters is not None or one for one in _to_be_followed(clock, losses, disturbed)]
    own_paths = follow_wheels(clock, reference, residuals, losses, counters, throughout=throughout)
    other_paths = {row: along_neighbours(own_paths, row) for row in range(4) if disturbed[row]}
    # The transforms need the interpreter least, so that it is free for other work meanwhile.
    spectra, beside = both(
        lambda: measure_ripple_spectra((*own_paths, *other_paths.values())),
        lambda: _beside_angles(clock, reference, residuals, losses, acceleration),
    )
    own_spectra, other_spectra = spectra[:4], dict(zip(other_paths, spectra[4:], strict=True))
    own_lines = find_revolution_lines(own_spectra, circumference_m=vehicle.circumference_m)
    mixed = [other_spectra.get(row, own_spectra[row]) for row in range(4)]
    other_lines = (
        find_revolution_lines(mixed, circumference_m=vehicle.circumference_m) if other_paths else own_lines
    )
    paths, lines = _better_paths(own_paths, own_lines, other_paths, other_lines)
    progress(0.8, "Mapping the ring of every wheel")
    rings = map_rings(clock, residuals, losses, paths, lines)
    return Analysis(
        clock=clock,
        vehicle=vehicle,
        reference=reference,
        acceleration_mps2=acceleration,
        lateral_mps2=zero_for_missing(reference.reference_mps) ** 2 * reference.curvature_radpm,
        manoeuvres=beside.manoeuvres,
        residuals=residuals,
        losses=losses,
        paths=paths,
        own_spectra=own_spectra,
        own_lines=own_lines,
        lines=lines,
        rings=rings,
        cut_offs=beside.cut_offs,
        crossings=beside.crossings,
        lone=beside.lone,
        moving_spans=tuple(spans_of(row, clock.time_s, most=10) for row in losses.moving),
        moving_s=float(np.count_nonzero(losses.moving.any(axis=0)) * clock.period_s),
        companions=gather_companions(log, clock),
        noise_growth=beside.noise_growth,
        counters=counters,
        pole_rings=examine_rings(log.edges, vehicle),
        turn_pulses=_turn_pulses(counters, own_lines),
    )


@dataclass(frozen=True, slots=True)
class _BesideAngles:
    """What needs no angle of a wheel; see :class:`Analysis`."""

    manoeuvres: tuple[Manoeuvre, ...]
    cut_offs: tuple[CutOff, ...]
    crossings: tuple[Crossings | None, ...]
    lone: LoneDeviations
    noise_growth: float | None


def _beside_angles(
    clock: CommonClock,
    reference: VehicleReference,
    residuals: Residuals,
    losses: Losses,
    acceleration_mps2: FloatArray,
) -> _BesideAngles:
    cut_offs = find_cut_offs(clock, reference, losses)
    return _BesideAngles(
        manoeuvres=find_manoeuvres(
            clock.time_s,
            reference.reference_mps,
            reference.curvature_radpm,
            period_s=clock.period_s,
            acceleration_mps2=acceleration_mps2,
        ),
        cut_offs=cut_offs,
        crossings=find_all_crossings(
            clock, reference.expected_mps, acceleration_mps2, near_mps=[one.speed_mps for one in cut_offs]
        ),
        lone=find_lone_deviations(
            clock,
            residuals,
            losses,
            reference_mps=reference.reference_mps,
            silent=tuple(one.silent for one in cut_offs),
            acceleration_mps2=acceleration_mps2,
        ),
        noise_growth=measure_noise_growth(residuals, losses, reference),
    )


DISTURBED_SHARE: Final = 0.005
DISTURBED_NOISE: Final = 1.8
"""From this share of disturbed samples, or this noise against the other wheels, a wheel's own angle is
doubted."""


def _disturbed_wheels(residuals: Residuals, losses: Losses) -> list[bool]:
    off = losses.low | losses.high | losses.alone
    share = off.sum(axis=1) / np.maximum(losses.moving.sum(axis=1), 1)
    known = residuals.sigma_ratio[np.isfinite(residuals.sigma_ratio)]
    noise = residuals.sigma_ratio / max(float(np.median(known)), 1e-9) if known.size else share
    return [bool(share[row] > DISTURBED_SHARE or noise[row] > DISTURBED_NOISE) for row in range(4)]


def _to_be_followed(clock: CommonClock, losses: Losses, disturbed: list[bool]) -> list[bool]:
    """Tell the wheels wanted all over a long drive: those disturbed, or with losses to place on the ring."""
    onsets = [run_bounds(row)[0].size for row in brief_disturbances(clock, losses)]
    return [disturbed[row] or onsets[row] >= FEWEST_ONSETS for row in range(4)]


def _better_paths(
    own_paths: tuple[WheelPath, ...],
    own_lines: tuple[RevolutionLine | NotMeasurable, ...],
    other_paths: dict[int, WheelPath],
    other_lines: tuple[RevolutionLine | NotMeasurable, ...],
) -> tuple[tuple[WheelPath, ...], tuple[RevolutionLine | NotMeasurable, ...]]:
    """Take for each disturbed wheel the path, own or the others', on which its revolution stands out more."""
    better = {row for row in other_paths if _comb_power(other_lines[row]) > _comb_power(own_lines[row])}
    return (
        tuple(other_paths[row] if row in better else own_paths[row] for row in range(4)),
        tuple(other_lines[row] if row in better else own_lines[row] for row in range(4)),
    )


def _turn_pulses(
    counters: PulseCounters | None, lines: tuple[RevolutionLine | NotMeasurable, ...]
) -> TurnPulses | None:
    found = [
        line
        for row, line in enumerate(lines)
        if counters is not None and counters.covers[row] and isinstance(line, RevolutionLine)
    ]
    if counters is None or not found:
        return None
    turn_m = np.array([line.circumference_m for line in found])
    return find_turn_pulses(turn_m, np.array([line.circumference_std_m for line in found]), counters.pitch_m)


def _comb_power(line: RevolutionLine | NotMeasurable) -> float:
    return float((line.amplitude_ratio**2).sum()) if isinstance(line, RevolutionLine) else 0.0
