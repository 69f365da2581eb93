"""What is known of the car: dimensions, tyres and encoders, each with how well it is known."""

from __future__ import annotations

import math
import tomllib
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any, Final

from triage.errors import SettingsError
from triage.reasons import reason_of
from triage.texts import Text


@dataclass(frozen=True, slots=True)
class Vehicle:
    """Dimensions of the car; the defaults are an ordinary passenger car.

    Attributes
    ----------
    track_m, wheelbase_m : float
        Distance between the wheels of an axle and between the axles.
    circumference_m : float or None
        Rolling circumference of the tyres; None when unknown, then it is found from the log.
    pulses_per_rev : float or None
        Pulses of one wheel revolution; None when unknown.
    driven_axle : {"front", "rear", "both", "unknown"}
        Axle that can spin up under power.
    bearing_elements, bearing_element_m, bearing_pitch_m : float or None
        Balls or rollers in a row of the wheel bearing, their diameter and that of the circle on which they
        run.
    bearing_contact_deg : float
        Contact angle of the wheel bearing.
    bearing_turning_ring : {"inner", "outer", "unknown"}
        Ring of the wheel bearing that turns with the wheel.
    """

    track_m: float = 1.55
    wheelbase_m: float = 2.7
    circumference_m: float | None = None
    pulses_per_rev: float | None = None
    driven_axle: str = "unknown"
    bearing_elements: float | None = None
    bearing_element_m: float | None = None
    bearing_pitch_m: float | None = None
    bearing_contact_deg: float = 0.0
    bearing_turning_ring: str = "unknown"


_RANGES: Final[dict[str, tuple[float, float]]] = {
    "track_m": (0.8, 2.6),
    "wheelbase_m": (1.2, 8.0),
    "circumference_m": (1.0, 4.5),
    "pulses_per_rev": (8.0, 400.0),
    "bearing_elements": (4.0, 60.0),
    "bearing_element_m": (0.002, 0.1),
    "bearing_pitch_m": (0.01, 0.4),
    "bearing_contact_deg": (0.0, 60.0),
}
_WORDS: Final[dict[str, tuple[str, ...]]] = {
    "driven_axle": ("front", "rear", "both", "unknown"),
    "bearing_turning_ring": ("inner", "outer", "unknown"),
}


def load_vehicle(path: str | Path) -> Vehicle:
    """Read a vehicle file.

    Parameters
    ----------
    path : str or Path
        TOML file with any of the fields of :class:`Vehicle`.

    Returns
    -------
    Vehicle

    Raises
    ------
    SettingsError
        When the file is missing, no TOML, or holds an unknown field or an impossible value.
    """
    file = str(path)
    try:
        if Path(path).exists() and not Path(path).is_file():  # a device could be read for ever
            raise SettingsError("this is no file", file=file, hint="Name a TOML file.")
        table = tomllib.loads(Path(path).read_text("utf-8-sig"))
    except FileNotFoundError:
        raise SettingsError("the vehicle file does not exist", file=file, hint="Check the path.") from None
    except (OSError, ValueError, RecursionError) as error:  # ValueError: no UTF-8, no TOML, too long a number
        raise SettingsError(
            Text("the vehicle file cannot be read: {reason}", reason=reason_of(error)),
            file=file,
            hint="It must be a TOML text in UTF-8.",
        ) from None
    return _vehicle_from_table(table, file)


def _vehicle_from_table(table: dict[str, Any], file: str) -> Vehicle:
    known = [field.name for field in fields(Vehicle)]
    unknown = sorted(set(table) - set(known))
    if unknown:
        raise SettingsError(
            Text("unknown field {field}", field=unknown[0]),
            file=file,
            place=unknown[0],
            hint=Text("Known fields: {known}.", known=", ".join(known)),
        )
    for name, (low, high) in _RANGES.items():
        if name in table:
            table[name] = _number_within(table[name], low, high, name=name, file=file)
    for name, words in _WORDS.items():
        if table.get(name, "unknown") not in words:
            raise SettingsError(
                Text("{field} must be one of {values}", field=name, values=", ".join(words)),
                file=file,
                place=name,
                hint="Mend the value.",
            )
    return Vehicle(**table)


def _number_within(value: object, low: float, high: float, *, name: str, file: str) -> float:
    number = isinstance(value, int | float) and not isinstance(value, bool)
    if not number or not math.isfinite(value) or not low <= value <= high:  # type: ignore[arg-type,operator]
        raise SettingsError(
            Text(
                "{field} must be a number between {low} and {high}",
                field=name,
                low=f"{low:g}",
                high=f"{high:g}",
            ),
            file=file,
            place=name,
            hint="Mend the value.",
        )
    return float(value)  # type: ignore[arg-type]
