"""Wheel speeds of heavy vehicles, found by their parameter group, without any database.

Two groups of SAE J1939-71 carry them, both in 1/256 km/h:

- high resolution wheel speed, 65134 (0xFE6E): four speeds in 16 bits, front left first (SPN 1592 to 1595);
- electronic brake controller 2, 65215 (0xFEBF): speed of the front axle in 16 bits (SPN 904), and six speeds
  relative to it in 8 bits, 1/16 km/h, offset -7.8125 km/h (SPN 905 to 910).

Numbers above 0xFAFF (16 bits) and 0xFA (8 bits) are no speeds but say error, reserved or not available.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.corners import CORNERS
from triage.logs.frames import EXTENDED_FLAG
from triage.logs.recording import RawSignal
from triage.speed_log import FloatArray

HIGH_RESOLUTION: Final = 65134
BRAKE_CONTROLLER: Final = 65215
_SPEED_KMH: Final = 1 / 256
_RELATIVE_KMH: Final = 1 / 16
_RELATIVE_OFFSET_KMH: Final = -7.8125
_TOP_WORD: Final = 0xFAFF
_TOP_BYTE: Final = 0xFA
_WORDS: Final = 8
_LOWEST_PDU2: Final = 240


def group_of(key: int) -> int:
    """Give the parameter group of a frame key; 0 for an 11-bit identifier.

    Examples
    --------
    >>> group_of(0x18FEBF0B | EXTENDED_FLAG)
    65215
    """
    if not key & EXTENDED_FLAG:
        return 0
    group = (key >> 8) & 0x3FFFF
    # below 240 the lower byte is the address of the receiver
    return group if (group >> 8) & 0xFF >= _LOWEST_PDU2 else group & 0x3FF00


def wheel_speed_keys(seen: Mapping[int, int]) -> frozenset[int]:
    """Choose the identifiers whose group carries wheel speeds, whatever their priority and sender.

    The finer group goes before the coarser where a log holds both.
    """
    for group in (HIGH_RESOLUTION, BRAKE_CONTROLLER):
        found = frozenset(key for key in seen if group_of(key) == group)
        if found:
            return found
    return frozenset()


def wheel_speed_signals(
    key: int, time_s: FloatArray, payload: NDArray[np.uint8], length: NDArray[np.uint8], *, bus: str
) -> tuple[RawSignal, ...]:
    """Decode the wheel speeds of one sender.

    Parameters
    ----------
    key : int
        Frame key, see :func:`triage.logs.frames.frame_key`.
    time_s : float64[N]
    payload : uint8[N, W]
    length : uint8[N]
        Bytes that were there; frames that are too short are no samples.
    bus : str

    Returns
    -------
    tuple of RawSignal
        In km/h; NaN where the number says not available.
    """
    name, needed, decode = _GROUPS[group_of(key)]
    whole = length >= needed
    step = _SPEED_KMH if group_of(key) == HIGH_RESOLUTION else _RELATIVE_KMH
    speeds = decode(payload[whole]) if whole.any() else iter([np.zeros(0)] * len(CORNERS))
    return tuple(
        RawSignal(f"{name}.WheelSpeed_{corner}", "km/h", time_s[whole], value, step, bus)
        for corner, value in zip(CORNERS, speeds, strict=True)
    )


def _high_resolution(payload: NDArray[np.uint8]) -> Iterator[FloatArray]:
    for place in range(0, _WORDS, 2):
        yield _word(payload, place)


def _brake_controller(payload: NDArray[np.uint8]) -> Iterator[FloatArray]:
    axle_kmh = _word(payload, 0)
    for place in range(2, 2 + len(CORNERS)):
        raw = payload[:, place]
        yield axle_kmh + np.where(raw > _TOP_BYTE, np.nan, raw * _RELATIVE_KMH + _RELATIVE_OFFSET_KMH)


def _word(payload: NDArray[np.uint8], place: int) -> FloatArray:
    raw = payload[:, place].astype(np.uint16) | (payload[:, place + 1].astype(np.uint16) << 8)
    return np.where(raw > _TOP_WORD, np.nan, raw * _SPEED_KMH)


_GROUPS: Final = {
    HIGH_RESOLUTION: ("J1939_HRW", _WORDS, _high_resolution),
    BRAKE_CONTROLLER: ("J1939_EBC2", 2 + len(CORNERS), _brake_controller),
}
