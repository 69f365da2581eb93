"""A made-up drive, and ways to write it down."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import can
import numpy as np
import pytest

CORNERS = ("FL", "FR", "RL", "RR")
WHEELS_DBC = Path(__file__).parents[1].joinpath("wheels.dbc").read_text("ascii")


@dataclass(frozen=True)
class Drive:
    """Half a minute at 50 Hz: pull away, a left and a right curve, brake to a stop.

    ``raw`` are hundredths of km/h, as the database above codes them.
    """

    time_s: np.ndarray
    raw: dict[str, np.ndarray]
    yaw_radps: np.ndarray

    @property
    def kmh(self) -> dict[str, np.ndarray]:
        return {corner: raw * 0.01 for corner, raw in self.raw.items()}

    @property
    def mps(self) -> dict[str, np.ndarray]:
        return {corner: raw * 0.01 / 3.6 for corner, raw in self.raw.items()}

    def payloads(self) -> list[bytes]:
        table = np.stack([self.raw[corner] for corner in CORNERS], axis=1).astype("<u2")
        return [row.tobytes() for row in table]

    def messages(self, *, epoch_s: float = 1773151516.0, channel: object = 0) -> list[can.Message]:
        return [
            can.Message(
                timestamp=float(epoch_s + time_s),
                arbitration_id=0x1A0,
                is_extended_id=False,
                data=data,
                channel=channel,
            )
            for time_s, data in zip(self.time_s, self.payloads(), strict=True)
        ]


def make_drive(*, seconds: float = 30.0, rate_hz: float = 50.0) -> Drive:
    time_s = np.round(np.arange(0, seconds, 1 / rate_hz), 6)
    shape = np.clip(np.minimum(time_s / (0.3 * seconds), (seconds - time_s) / (0.2 * seconds)), 0, 1)
    speed_mps = 14.0 * shape * (1 + 0.05 * np.sin(2 * np.pi * time_s / 7.0))
    curvature = 0.03 * np.sin(2 * np.pi * time_s / (seconds / 2))
    yaw = speed_mps * curvature
    side = {"FL": -1, "FR": 1, "RL": -1, "RR": 1}
    rng = np.random.default_rng(5)
    raw = {
        corner: np.round(
            np.maximum(speed_mps + side[corner] * yaw * 0.775 + 0.01 * rng.standard_normal(time_s.size), 0)
            * 360
        )
        for corner in CORNERS
    }
    return Drive(time_s, raw, yaw)


def table_text(
    drive: Drive,
    *,
    names: tuple[str, ...] = ("time_s", "FL_kmh", "FR_kmh", "RL_kmh", "RR_kmh"),
    delimiter: str = ",",
    decimal: str = ".",
    units: tuple[str, ...] = (),
    scale: float = 1.0,
    digits: int = 2,
) -> str:
    rows = [delimiter.join(names)]
    if units:
        rows.append(delimiter.join(units))
    kmh = drive.kmh
    for index, time_s in enumerate(drive.time_s):
        cells = [f"{time_s:.3f}", *(f"{kmh[corner][index] * scale:.{digits}f}" for corner in CORNERS)]
        rows.append(delimiter.join(cell.replace(".", decimal) for cell in cells))
    return "\n".join(rows) + "\n"


@pytest.fixture(scope="session")
def drive() -> Drive:
    return make_drive()


@pytest.fixture
def write(tmp_path: Path) -> Callable[..., str]:
    """Write text or bytes to a file and give its path."""

    def put(content: str | bytes, name: str = "log.csv", encoding: str = "utf-8") -> str:
        path = tmp_path / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode(encoding))
        return str(path)

    return put


@pytest.fixture
def dbc(write: Callable[..., str]) -> str:
    return write(WHEELS_DBC, "wheels.dbc")


@pytest.fixture(scope="session")
def shared() -> Path:
    folder = Path(__file__).resolve().parents[3] / "shared"
    if not folder.is_dir():
        pytest.skip("the folder ../shared with real logs and cases is absent")
    return folder


@pytest.fixture
def as_table() -> Callable[..., str]:
    return table_text


@pytest.fixture
def drive_of() -> Callable[..., Drive]:
    return make_drive


@pytest.fixture
def wheels_dbc_text() -> str:
    return WHEELS_DBC
