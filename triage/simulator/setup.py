"""What a simulated road test is made of: car, encoder, sensor, control unit, recorder and drive."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from triage.corners import CORNERS
from triage.units import KMH

FourRatios = tuple[float, float, float, float]
LegKind = Literal["town", "country", "motorway", "yard"]
JumpReaction = Literal["none", "hold", "mark"]


@dataclass(frozen=True, slots=True)
class Car:
    """Dimensions and road manners of the car.

    Attributes
    ----------
    circumference_m : float
        Mean true rolling circumference of the four wheels.
    wheel_ratio : four floats
        True circumference of each wheel over the mean, in the order of ``CORNERS``.
    driven_axle : {"front", "rear", "both"}
        Axle that pulls.
    slip_per_mps2 : float
        Longitudinal slip of a driven wheel per m/s2 of acceleration when one axle drives.
    steering_ratio : float
        Steering-wheel angle over mean road-wheel angle.
    wheel_noise_ratio : float
        Standard deviation of each wheel's own broadband speed noise over speed.
    road_noise_ratio : float
        The same for the part that the road gives to the front and, a wheelbase later, to the rear wheel.
    """

    track_m: float
    wheelbase_m: float
    circumference_m: float
    wheel_ratio: FourRatios
    driven_axle: Literal["front", "rear", "both"]
    slip_per_mps2: float
    steering_ratio: float
    wheel_noise_ratio: float
    road_noise_ratio: float


@dataclass(frozen=True, slots=True)
class Encoder:
    """Magnetic or toothed encoder as fitted to all four wheels.

    Attributes
    ----------
    pole_pairs : int
        Pole pairs (or teeth) of one revolution.
    both_edges : bool
        Whether the control unit counts both edges of a pair.
    runout_ratio : four floats
        Amplitude of the healthy once-per-revolution speed ripple over speed.
    runout_phase_rev : four floats
        Where in the revolution it is greatest.
    pitch_error_ratio : float
        Standard deviation of the pole borders' places over a pole pair's pitch.
    pair_length_mm : float
        Length of a pole pair along the ring, the wavelength of the spacing law.
    """

    pole_pairs: int
    both_edges: bool
    runout_ratio: FourRatios
    runout_phase_rev: FourRatios
    pitch_error_ratio: float
    pair_length_mm: float

    @property
    def edges_per_rev(self) -> int:
        """Edges the control unit counts in one revolution of a healthy wheel."""
        return self.pole_pairs * (2 if self.both_edges else 1)


@dataclass(frozen=True, slots=True)
class Sensor:
    """Wheel speed sensor; amplitudes are relative to a healthy pole at the right gap.

    Attributes
    ----------
    threshold_ratio : float
        Amplitude below which a pole is not seen.
    amplitude_noise_ratio : float
        Standard deviation of the amplitude from one passage to the next.
    vibration_gap_mm : float
        Standard deviation of the gap as the wheel end shakes.
    jitter_pole_ratio : float
        Standard deviation of an edge's place over the length of one pole, at full amplitude.
    cut_in_mps : float
        Passive sensors: speed at which a healthy pole just reaches the fixed threshold; 0 for active ones.
    """

    kind: Literal["active", "passive"]
    threshold_ratio: float
    amplitude_noise_ratio: float
    vibration_gap_mm: float
    jitter_pole_ratio: float
    cut_in_mps: float


@dataclass(frozen=True, slots=True)
class ControlUnit:
    """How the brake control unit turns edges into the speed it puts on the bus.

    Attributes
    ----------
    circumference_m : float
        Rolling circumference it assumes for every wheel.
    cycle_s : float
        Time between two estimates.
    averaging_cycles : int
        Cycles over which edges are counted and timed; 1 is pure edge timing.
    hold_s, timeout_s : float
        Without an edge: how long the last speed stands unchanged, and when it becomes 0.
    filter_s : float
        Time constant of the output filter; 0 for none.
    zero_below_mps : float
        Speeds below this are put out as exactly 0.
    jump_limit_mps2 : float
        Change of the estimate beyond which it is not believed.
    jump_reaction : {"none", "hold", "mark"}
        What is done then: nothing, last value held and the fault bit set, or the value marked invalid.
    mark_silent_after_s : float
        A wheel that reads 0 so long while the others run is marked invalid; infinite for never.
    """

    circumference_m: float
    cycle_s: float
    averaging_cycles: int
    hold_s: float
    timeout_s: float
    filter_s: float
    zero_below_mps: float
    jump_limit_mps2: float
    jump_reaction: JumpReaction
    mark_silent_after_s: float


@dataclass(frozen=True, slots=True)
class Recorder:
    """How the log was taken.

    Attributes
    ----------
    rate_hz : float
        Frames per second.
    jitter_s : float
        Standard deviation of a frame's time stamp.
    step_kmh : float
        Smallest step of the recorded speeds.
    lost_frame_ratio : float
        Share of frames lost singly.
    gaps_per_min : float
        Pauses of the whole recorder, each 0.05 to 0.7 s.
    rear_offset_s : float
        Time by which the rear axle's message follows the front's; 0 for one message.
    channels : tuple of str
        Companion channels recorded, names of ``CHANNEL_UNITS``.
    """

    rate_hz: float
    jitter_s: float
    step_kmh: float
    lost_frame_ratio: float
    gaps_per_min: float
    rear_offset_s: float
    channels: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Drive:
    """Where and how the car is driven.

    Attributes
    ----------
    legs : tuple of str
        Kinds of driving, one after the other and again from the start.
    lead_in_s : float
        Driving before the recording was started; 0 begins at a standstill.
    briskness : float
        Factor on accelerations and curve speeds; 1 is an ordinary driver.
    hits_per_km : float
        Potholes and rough patches that make wheels hop.
    """

    legs: tuple[LegKind, ...]
    lead_in_s: float
    briskness: float
    hits_per_km: float


@dataclass(frozen=True, slots=True)
class Setup:
    """A complete road test but for the fault."""

    car: Car
    encoder: Encoder
    sensor: Sensor
    unit: ControlUnit
    recorder: Recorder
    drive: Drive


_REACTIONS: Final[tuple[JumpReaction, ...]] = ("none", "hold", "mark")
_RATES_HZ: Final = (10.0, 20.0, 40.0, 50.0, 83.0, 100.0)
_STEPS_KMH: Final = (0.01, 0.0173, 0.03125, 0.0625)
_ROUTES: Final[tuple[tuple[LegKind, ...], ...]] = (
    ("town", "country", "town", "yard"),
    ("town", "town", "country"),
    ("country", "town", "yard", "country"),
    ("town", "motorway", "town"),
    ("yard", "town", "country"),
)
_FAULT_BITS: Final = tuple(f"fault_{corner}" for corner in CORNERS)
_CHANNEL_SETS: Final[tuple[tuple[str, ...], ...]] = (
    (),
    ("steering_rad", "brake"),
    ("steering_rad", "yaw_rate_radps", "lateral_mps2"),
    ("steering_rad", "yaw_rate_radps", "lateral_mps2", "longitudinal_mps2", "brake"),
    ("yaw_rate_radps", "lateral_mps2"),
)


def draw_setup(rng: np.random.Generator) -> Setup:
    """Draw a plausible car with its encoders, sensors, control unit, recorder and drive.

    Parameters
    ----------
    rng : numpy.random.Generator
        Source of every choice.

    Returns
    -------
    Setup
    """
    car = _draw_car(rng)
    encoder = _draw_encoder(rng)
    unit = _draw_unit(rng, car, encoder)
    return Setup(
        car=car,
        encoder=encoder,
        sensor=_draw_sensor(rng),
        unit=unit,
        recorder=_draw_recorder(rng, unit),
        drive=_draw_drive(rng),
    )


def _draw_car(rng: np.random.Generator) -> Car:
    spread = np.clip(rng.normal(0.0, 0.0012, 4), -0.003, 0.003)
    inflation = np.repeat(rng.normal(0.0, 0.0008, 2), 2)
    return Car(
        track_m=float(rng.uniform(1.42, 1.68)),
        wheelbase_m=float(rng.uniform(2.35, 3.3)),
        circumference_m=float(rng.uniform(1.8, 2.35)),
        wheel_ratio=_four(1.0 + spread + inflation),
        driven_axle=("front", "front", "rear", "both")[int(rng.integers(4))],
        slip_per_mps2=float(rng.uniform(0.002, 0.006)),
        steering_ratio=float(rng.uniform(13.0, 18.0)),
        wheel_noise_ratio=float(0.001 * 3.0 ** rng.uniform(0.0, 1.0)),
        road_noise_ratio=float(0.001 * 3.0 ** rng.uniform(0.0, 1.0)),
    )


def _draw_encoder(rng: np.random.Generator) -> Encoder:
    style = rng.uniform()
    if style < 0.75:
        pairs = int(rng.choice([43, 44, 46, 48, 48, 48, 52, 60]))
    elif style < 0.9:
        pairs = int(rng.integers(29, 45))
    else:
        pairs = int(rng.integers(96, 101))
    ring_length_mm = float(rng.uniform(190.0, 300.0))
    return Encoder(
        pole_pairs=pairs,
        both_edges=bool(pairs < 70 and rng.uniform() < 0.5),
        runout_ratio=_four(0.0004 * 3.75 ** rng.uniform(0.0, 1.0, 4)),
        runout_phase_rev=_four(rng.uniform(0.0, 1.0, 4)),
        pitch_error_ratio=float(rng.uniform(0.001, 0.005)),
        pair_length_mm=ring_length_mm / pairs,
    )


def _draw_sensor(rng: np.random.Generator) -> Sensor:
    passive = rng.uniform() < 0.25
    return Sensor(
        kind="passive" if passive else "active",
        threshold_ratio=float(rng.uniform(0.22, 0.38)),
        amplitude_noise_ratio=float(rng.uniform(0.02, 0.04)),
        vibration_gap_mm=float(rng.uniform(0.01, 0.03)),
        jitter_pole_ratio=float(rng.uniform(0.0005, 0.002)),
        cut_in_mps=float(rng.uniform(1.5, 4.0)) * KMH if passive else 0.0,
    )


def _draw_unit(rng: np.random.Generator, car: Car, encoder: Encoder) -> ControlUnit:
    cycle_s = float(rng.choice([0.005, 0.007, 0.01, 0.01, 0.02]))
    reaction = _REACTIONS[int(rng.choice(3, p=(0.75, 0.15, 0.1)))]
    # Few edges in a cycle make a rough estimate, and a unit with few edges smooths it.
    filters_s = (0.0, 0.0, 0.01, 0.02, 0.04) if encoder.edges_per_rev > 70 else (0.01, 0.02, 0.02, 0.04)
    return ControlUnit(
        circumference_m=car.circumference_m * float(rng.uniform(0.99, 1.01)),
        cycle_s=cycle_s,
        averaging_cycles=min(int(rng.choice([1, 1, 1, 2, 4])), round(0.04 / cycle_s)),
        hold_s=max(float(rng.choice([0.01, 0.02, 0.02, 0.05])), 1.5 * cycle_s),
        timeout_s=float(rng.uniform(0.1, 0.6)),
        filter_s=float(rng.choice(filters_s)),
        zero_below_mps=float(rng.choice([0.3, 0.7, 1.0, 1.8, 2.8])) * KMH,
        # Published monitors take 500 and 980 m/s2 (open workshop manual).
        jump_limit_mps2=float(rng.uniform(500.0, 980.0)),
        jump_reaction=reaction,
        mark_silent_after_s=float(rng.uniform(0.5, 3.0)) if rng.uniform() < 0.25 else float("inf"),
    )


def _draw_recorder(rng: np.random.Generator, unit: ControlUnit) -> Recorder:
    rate_hz = float(rng.choice(_RATES_HZ, p=(0.05, 0.07, 0.08, 0.3, 0.15, 0.35)))
    channels = _CHANNEL_SETS[int(rng.integers(len(_CHANNEL_SETS)))]
    if unit.jump_reaction != "none" and rng.uniform() < 0.5:
        channels += _FAULT_BITS
    return Recorder(
        rate_hz=rate_hz,
        jitter_s=float(rng.uniform(0.01, 0.05)) / rate_hz,
        step_kmh=float(rng.choice(_STEPS_KMH)),
        lost_frame_ratio=float(rng.choice([0.0, 0.0, 0.0005, 0.003])),
        gaps_per_min=float(rng.choice([0.0, 0.0, 0.0, 3.0])),
        rear_offset_s=0.4 / rate_hz if rng.uniform() < 0.2 else 0.0,
        channels=channels,
    )


def _draw_drive(rng: np.random.Generator) -> Drive:
    return Drive(
        legs=_ROUTES[int(rng.integers(len(_ROUTES)))],
        lead_in_s=float(rng.uniform(4.0, 15.0)) if rng.uniform() < 0.4 else 0.0,
        briskness=float(rng.uniform(0.85, 1.15)),
        hits_per_km=float(1.0 * 60.0 ** rng.uniform()),
    )


def _four(values: np.ndarray[tuple[int], np.dtype[np.float64]]) -> FourRatios:
    first, second, third, fourth = (float(value) for value in values)
    return first, second, third, fourth
