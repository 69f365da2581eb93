"""Every measurement the program makes: one row each, keyed by its id in ``rules/measurements.toml``."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Final

import numpy as np

from triage.progress import Progress, no_progress
from triage.side_by_side import map_side_by_side
from triage.signals.analysis import FEWEST_SAMPLES, Analysis
from triage.signals.measurement import Measured, Measurement, NotMeasurable
from triage.signals.measures.angle_lock import (
    measure_angle_share,
    measure_bad_sector_width,
    measure_dip_angle_lock,
    measure_quiet_share,
)
from triage.signals.measures.brief_deviation import (
    measure_dip_share,
    measure_spike_share,
    measure_swing_share,
)
from triage.signals.measures.cage_order import measure_curve_lines
from triage.signals.measures.deepest_drop import measure_deepest_drop
from triage.signals.measures.frozen_value import measure_stuck_share
from triage.signals.measures.joint_loss import measure_joint_drop_out_rate
from triage.signals.measures.line_place import measure_line_place
from triage.signals.measures.load_windows import measure_load_rest_ratios
from triage.signals.measures.lone_deviation import (
    measure_lone_dip_depth,
    measure_lone_dip_rate,
    measure_lone_dip_scatter,
    measure_lone_peak_rate,
)
from triage.signals.measures.loss_coupling import (
    measure_brake_coupling,
    measure_bump_coupling,
    measure_side_coupling,
    measure_steering_coupling,
)
from triage.signals.measures.loss_load import measure_loss_load
from triage.signals.measures.loss_pattern import measure_whole_turns
from triage.signals.measures.low_speed import (
    measure_cut_off_speed,
    measure_first_bad_speed,
    measure_last_good_speed,
    measure_speed_loss_slope,
)
from triage.signals.measures.noise import measure_noise_ratio
from triage.signals.measures.pole_pitch import (
    measure_bad_pole_run,
    measure_missing_steadiness,
    measure_pole_order_one,
    measure_pole_spread,
    measure_poles_missing,
)
from triage.signals.measures.pulse_counts import (
    measure_pulse_offset,
    measure_substituted_share,
    measure_turn_pulses_offset,
)
from triage.signals.measures.ratio import measure_ratio_count_fit, measure_ratio_offset
from triage.signals.measures.revolution import (
    measure_harmonic_ratio,
    measure_line_amplitude,
    measure_line_harmonic_share,
    measure_line_ratio,
    measure_revolution_offset,
)
from triage.signals.measures.ring_harm import (
    measure_bad_sector_count,
    measure_harmed_share,
)
from triage.signals.measures.side_load import measure_side_load_contrast
from triage.signals.measures.signal_loss import (
    measure_dead_share,
    measure_drop_out_clustering,
    measure_drop_out_length,
    measure_drop_out_rate,
)
from triage.signals.measures.single_spot import measure_single_spot_rest
from triage.signals.measures.turn_grain import measure_turn_grain
from triage.signals.measures.warming import measure_loss_trend
from triage.signals.measures.wiring_checks import measure_wiring
from triage.signals.plausible_speed import find_implausible_speed
from triage.signals.running import count_of
from triage.texts import Text

CORNER_MEASURES: Final[dict[str, Callable[[Analysis, int], Measured]]] = {
    "dead-share": measure_dead_share,
    "stuck-share": measure_stuck_share,
    "drop-out-rate": measure_drop_out_rate,
    "deepest-drop": measure_deepest_drop,
    "drop-out-length": measure_drop_out_length,
    "drop-out-clustering": measure_drop_out_clustering,
    "dip-share": measure_dip_share,
    "spike-share": measure_spike_share,
    "swing-share": measure_swing_share,
    "dip-angle-lock": measure_dip_angle_lock,
    "bad-sector-width": measure_bad_sector_width,
    "quiet-share": measure_quiet_share,
    "angle-share": measure_angle_share,
    "line-amplitude": measure_line_amplitude,
    "line-ratio": measure_line_ratio,
    "harmonic-ratio": measure_harmonic_ratio,
    "line-harmonic-share": measure_line_harmonic_share,
    "revolution-offset": measure_revolution_offset,
    "side-load-contrast": measure_side_load_contrast,
    "cut-off-speed": measure_cut_off_speed,
    "speed-loss-slope": measure_speed_loss_slope,
    "ratio-offset": measure_ratio_offset,
    "ratio-count-fit": measure_ratio_count_fit,
    "noise-ratio": measure_noise_ratio,
    "lone-dip-rate": measure_lone_dip_rate,
    "lone-peak-rate": measure_lone_peak_rate,
    "lone-dip-depth": measure_lone_dip_depth,
    "lone-dip-scatter": measure_lone_dip_scatter,
    "line-place": measure_line_place,
    "whole-turns": measure_whole_turns,
    "loss-trend": measure_loss_trend,
    "bump-coupling": measure_bump_coupling,
    "steering-coupling": measure_steering_coupling,
    "brake-coupling": measure_brake_coupling,
    "side-coupling": measure_side_coupling,
    "loss-load": measure_loss_load,
    "last-good-speed": measure_last_good_speed,
    "first-bad-speed": measure_first_bad_speed,
    "pulse-offset": measure_pulse_offset,
    "substituted-share": measure_substituted_share,
    "turn-pulses-offset": measure_turn_pulses_offset,
    "pole-spread": measure_pole_spread,
    "poles-missing": measure_poles_missing,
    "missing-steadiness": measure_missing_steadiness,
    "bad-pole-run": measure_bad_pole_run,
    "pole-order-one": measure_pole_order_one,
    "harmed-share": measure_harmed_share,
    "bad-sector-count": measure_bad_sector_count,
    "single-spot-rest": measure_single_spot_rest,
    "turn-grain": measure_turn_grain,
}

VEHICLE_MEASURES: Final[dict[str, Callable[[Analysis], Measured]]] = {
    "joint-drop-out-rate": measure_joint_drop_out_rate,
}

JOINT_MEASURES: Final[dict[tuple[str, ...], Callable[[Analysis], tuple[Measured, ...]]]] = {
    ("cage-line", "loaded-line"): measure_curve_lines,
    ("load-rest-ratio",): measure_load_rest_ratios,
    ("swap-gain", "road-order", "turn-sign", "swap-pair"): measure_wiring,
}
"""Measurements of the four wheels, or of the whole car, that share their work."""

_Task = Callable[[], tuple[Measured, ...]]

_MEASURING: Final = "Measuring every wheel"


def measure_all(
    analysis: Analysis, progress: Progress = no_progress
) -> tuple[tuple[Measurement, ...], tuple[NotMeasurable, ...]]:
    """Take every measurement on every wheel.

    Returns
    -------
    measurements, not_measurable
        What could be measured, and what not and why. What is missing on all four wheels for the same reason
        is said once, with no corner.
    """
    usable = count_of(np.any(analysis.clock.valid, axis=0))
    if usable < FEWEST_SAMPLES:
        return (), (_too_short(usable),)
    if (implausible := find_implausible_speed(analysis.clock)) is not None:
        return (), (implausible,)
    progress(0.0, _MEASURING)
    joint: list[_Task] = [partial(measure, analysis) for measure in JOINT_MEASURES.values()]
    # The long ones first, so that at the end nobody waits for the last of them.
    tasks = [*joint, *_single_tasks(analysis)]
    parts = map_side_by_side(
        lambda take: take(), tasks, done=lambda number: progress(number / len(tasks), _MEASURING)
    )
    results = [one for part in (*parts[len(joint) :], *parts[: len(joint)]) for one in part]
    measurements = tuple(one for one in results if isinstance(one, Measurement))
    return measurements, _joined([one for one in results if isinstance(one, NotMeasurable)])


def _single_tasks(analysis: Analysis) -> list[_Task]:
    """List the measurements of a corner, each with its four wheels, and those of the vehicle."""
    corners = [partial(_on_every_wheel, measure, analysis) for measure in CORNER_MEASURES.values()]
    vehicle = [partial(_on_the_vehicle, measure, analysis) for measure in VEHICLE_MEASURES.values()]
    return [*corners, *vehicle]


def _on_every_wheel(measure: Callable[[Analysis, int], Measured], analysis: Analysis) -> tuple[Measured, ...]:
    return tuple(measure(analysis, row) for row in range(4))


def _on_the_vehicle(measure: Callable[[Analysis], Measured], analysis: Analysis) -> tuple[Measured, ...]:
    return (measure(analysis),)


def _too_short(samples: int) -> NotMeasurable:
    return NotMeasurable(
        id="all",
        corner=None,
        reason=Text("the log is too short: {n} samples, not enough for any measurement", n=samples),
        needed="one minute or more of driving, with stops, curves to both sides and a steady straight part",
    )


def _joined(missing: list[NotMeasurable]) -> tuple[NotMeasurable, ...]:
    same: dict[tuple[str, str, str], list[NotMeasurable]] = {}
    for one in missing:
        same.setdefault((one.id, one.reason, one.needed), []).append(one)
    return tuple(
        kept
        for group in same.values()
        for kept in (group if len(group) < 4 else [replace(group[0], corner=None)])
    )
