"""What a simulated road test is made of: car, encoder, sensor, control unit, recorder and drive."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

FourRatios = tuple[float, float, float, float]
FourRates = tuple[float, float, float, float]
LegKind = Literal["town", "country", "motorway", "yard", "queue", "cruise", "parking"]
JumpReaction = Literal["none", "hold", "mark", "substitute"]


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
        Cycles over which edges are counted and timed.
    hold_s, timeout_s : float
        Without an edge: how long the last speed stands unchanged, and when it becomes 0.
    filter_s : float
        Time constant of the output filter; 0 for none.
    zero_below_mps : float
        Speeds below this are put out as exactly 0.
    jump_limit_mps2 : float
        Change of the estimate beyond which it is not believed.
    jump_reaction : {"none", "hold", "mark", "substitute"}
        What is done then: nothing, last value held and the fault bit set, the value marked invalid, or the
        wheel's value replaced by that of other wheels, which also happens when it strays from them for long.
    mark_silent_after_s : float
        A wheel that reads 0 so long while the others run is marked invalid; infinite for never.
    method : {"timing", "counting"}
        Whether the edges are counted and timed, or only counted, which leaves coarse steps.
    substitute : {"others", "partner"}
        Whose speed stands in for an implausible wheel's: the mean of the three others, or the axle partner's.
    tells_fault : bool
        Whether the fault bit is set for a doubted wheel.
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
    method: Literal["timing", "counting"] = "timing"
    substitute: Literal["others", "partner"] = "others"
    tells_fault: bool = True


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
    wheel_rate_hz : four floats or None
        Frames per second of each wheel where they differ; wheels of one rate share their messages.
    pulse_modulus : int
        Where the pulse counters start again from 0 in a written table; 0 for never.
    keeps_edges : bool
        Whether the instants of the single edges are in the log too.
    """

    rate_hz: float
    jitter_s: float
    step_kmh: float
    lost_frame_ratio: float
    gaps_per_min: float
    rear_offset_s: float
    channels: tuple[str, ...]
    wheel_rate_hz: FourRates | None = None
    pulse_modulus: int = 0
    keeps_edges: bool = False


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
    spin_ratio : float
        Share of pull-aways at which one driven wheel spins.
    loose_ground : bool
        Whether both driven wheels spin at most pull-aways.
    slip_ratio : float
        Share of firm brakings in which one wheel slips for about 0.1 s, with or without brake control cycles.
    split_grip : bool
        Whether the wheels of one side slip in turn whenever the car brakes firmly.
    hard_stop_ratio : float
        Share of stops that are braked hard.
    rough_ratio, rough_factor : float
        Share of the way on cobbles or gravel, and by how much the road noise rises there.
    """

    legs: tuple[LegKind, ...]
    lead_in_s: float
    briskness: float
    hits_per_km: float
    spin_ratio: float = 0.2
    loose_ground: bool = False
    slip_ratio: float = 0.3
    split_grip: bool = False
    hard_stop_ratio: float = 0.0
    rough_ratio: float = 0.0
    rough_factor: float = 1.0


@dataclass(frozen=True, slots=True)
class Setup:
    """A complete road test but for the fault."""

    car: Car
    encoder: Encoder
    sensor: Sensor
    unit: ControlUnit
    recorder: Recorder
    drive: Drive
