"""Companion channels on the common clock."""

from __future__ import annotations

from dataclasses import dataclass

from triage.signals.conditioning import CommonClock, channel_on_clock
from triage.speed_log import FloatArray, SpeedLog


@dataclass(frozen=True, slots=True)
class Companions:
    """What the log holds beside the wheels, float64[N] each; None where it was not recorded.

    Attributes
    ----------
    yaw_rate_radps, steering_rad, lateral_mps2 : float64[N] or None
        Positive to the left; NaN in gaps of the channel.
    brake : float64[N] or None
        1 while the brake is applied.
    turned : frozenset of str
        Channels whose sign was turned round by the reader to fit the wheels.
    """

    yaw_rate_radps: FloatArray | None
    steering_rad: FloatArray | None
    lateral_mps2: FloatArray | None
    brake: FloatArray | None
    turned: frozenset[str]


def gather_companions(log: SpeedLog, clock: CommonClock) -> Companions:
    """Bring the companion channels to the common clock."""

    def on_clock(name: str) -> FloatArray | None:
        return channel_on_clock(log.channels.get(name), clock.time_s)

    return Companions(
        yaw_rate_radps=on_clock("yaw_rate_radps"),
        steering_rad=on_clock("steering_rad"),
        lateral_mps2=on_clock("lateral_mps2"),
        brake=on_clock("brake"),
        turned=frozenset(name for name, channel in log.channels.items() if channel.turned),
    )
