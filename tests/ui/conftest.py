"""Results built by hand, so that the window is tested without the engine, on a screen that need not exist."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.hypotheses import (
    CheckAdvice,
    CheckSuggestion,
    DrivingAdvice,
    ExpectedOutcome,
    Finding,
    Hypothesis,
    Posterior,
    RankedHypothesis,
    Shift,
    UndecidedPair,
)
from triage.evidence.rulebook import load_rulebook
from triage.planning.plan import Plan, PlanStep
from triage.run import TriageResult
from triage.signals.analysis import analyse
from triage.signals.conditioned_log import ConditionedLog
from triage.signals.manoeuvres import Manoeuvre
from triage.signals.measurement import NotMeasurable
from triage.speed_log import Notice, SpeedLog, SpeedTrace
from ui.state.opening import CauseText, Opened

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from ui.window import MainWindow

if sys.platform.startswith("linux"):
    # Also where there is a screen: a window manager may withhold the focus that tests need.
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

LOSS_S = ((20.0, 20.4), (31.0, 31.5), (44.0, 44.1))


def make_log(rate_hz: float = 50.0, duration_s: float = 60.0, *, file: str = "van 3.csv") -> SpeedLog:
    """A minute with a stop at either end; FL reads nothing in three short places, RR has invalid samples."""
    time_s = np.arange(0.0, duration_s, 1.0 / rate_hz)
    middle_mps = 14.0 * np.clip(np.minimum(time_s - 4.0, duration_s - 3.0 - time_s) / 9.0, 0.0, 1.0)
    noise = np.random.default_rng(7).normal(0.0, 0.02, (4, time_s.size))
    speeds = middle_mps * (1.0 + 0.01 * np.sin(time_s / 5.0) * np.array([[1], [-1], [0.8], [-0.8]])) + noise
    speeds = np.maximum(speeds, 0.0)
    invalid = np.zeros((4, time_s.size), dtype=bool)
    for begin_s, end_s in LOSS_S:
        speeds[0, (time_s >= begin_s) & (time_s <= end_s)] = 0.0
    invalid[3, (time_s >= 25.0) & (time_s < 25.5)] = True
    speeds[invalid] = np.nan
    wheels = {
        corner: SpeedTrace(time_s, speeds[row], invalid[row], 0.0028, f"v_{corner.lower()}_kmh", "km/h")
        for row, corner in enumerate(CORNERS)
    }
    return SpeedLog(
        file, "table (csv)", None, wheels, notices=(Notice("gaps-in-log", "3 gaps, 0.9 s in all.", 3),)
    )


def make_conditioned(log: SpeedLog) -> ConditionedLog:
    time_s = log.wheels["FL"].time_s
    speeds = np.stack([log.wheels[corner].speed_mps for corner in CORNERS])
    valid = np.isfinite(speeds)
    reference = np.nanmedian(speeds, axis=0)
    with np.errstate(invalid="ignore", divide="ignore"):
        divergence = np.where(reference > 1.0, speeds / reference - 1.0, np.nan)
    return ConditionedLog(
        time_s, speeds, valid, valid, reference, np.zeros_like(time_s), np.tile(reference, (4, 1)), divergence
    )


def make_findings() -> tuple[Finding, ...]:
    return (
        Finding(
            "drop-out-rate@FL",
            "drop-out-rate",
            "FL",
            "The front left wheel alone loses its signal 3.0 ± 0.9 times "
            "a minute, each time for a fraction of a second.",
            3.0,
            0.9,
            "1/min",
            {"many": 1.0},
            LOSS_S,
        ),
        Finding(
            "line-amplitude@FL",
            "line-amplitude",
            "FL",
            "Once every turn of the front left wheel its speed swings by 1.9 ± 0.1 %.",
            1.9,
            0.1,
            "%",
            {"large": 1.0},
            ((12.0, 48.0),),
        ),
        Finding(
            "side-load-contrast@FL",
            "side-load-contrast",
            "FL",
            "It does not depend on the side load in curves: 0.02 ± 0.05.",
            0.02,
            0.05,
            "",
            {"none": 1.0},
            ((15.0, 19.0), (33.0, 39.0)),
        ),
        Finding("rock-wheel@FL", "rock-wheel", "FL", "No play was felt.", 1.0, 0.0, "", {"none": 1.0}, ()),
    )


def make_result(log: SpeedLog | None = None) -> TriageResult:
    log = make_log() if log is None else log
    weights = {
        "drop-out-rate@FL": 2.6,
        "line-amplitude@FL": 4.2,
        "side-load-contrast@FL": 0.7,
        "rock-wheel@FL": -0.4,
    }
    causes = (
        ("FL", "encoder-debris", 0.74),
        ("FL", "encoder-damage", 0.13),
        ("FL", "sensor-fault", 0.06),
        ("vehicle", "no-fault-found", 0.03),
        ("vehicle", "other", 0.02),
        ("RR", "air-gap", 0.012),
        ("FL", "bearing-play", 0.0075),
        ("FR", "tyre-size", 0.0005),
    )
    ranking = tuple(
        RankedHypothesis(
            Hypothesis(corner, cause), share, weights if rank == 0 else {"line-amplitude@FL": -3.0}
        )
        for rank, (corner, cause, share) in enumerate(causes)
    )
    end_s = float(log.wheels["FL"].time_s[-1])
    kinds = (
        ("standstill", 0.0, 4.0),
        ("pull-away", 4.0, 9.0),
        ("straight", 9.0, 15.0),
        ("left", 15.0, 19.0),
        ("straight", 19.0, 33.0),
        ("right", 33.0, 39.0),
        ("straight", 39.0, 48.0),
        ("braking", 48.0, 56.0),
        ("standstill", 56.0, end_s),
    )
    return TriageResult(
        log=log,
        analysis=analyse(log),
        conditioned=make_conditioned(log),
        manoeuvres=tuple(Manoeuvre(kind, 0, 1, begin, end, 10.0, 0.0, 0.0) for kind, begin, end in kinds),
        measurements=(),
        not_measurable=(
            NotMeasurable(
                "cut-off-speed", None, "The car never rolled slowly.", "Ten seconds at walking pace."
            ),
            NotMeasurable(
                "side-load-contrast", "RL", "Too few curves.", "Two brisk curves in either direction."
            ),
        ),
        findings=make_findings(),
        posterior=Posterior(ranking),
        next_checks=(
            CheckSuggestion(
                "look-at-encoder",
                "Look at the encoder through the sensor bore",
                "FL",
                0.71,
                1.07,
                15.0,
                "the sensor out",
                (
                    ExpectedOutcome(
                        "clean",
                        "Clean, all poles whole",
                        0.2,
                        Shift("No fault", 0.1, 0.62),
                        Shift("No fault", 0.1, 0.62),
                        Shift("Dirt, front left", 0.83, 0.2),
                    ),
                    ExpectedOutcome(
                        "dirty",
                        "Dirt on it",
                        0.8,
                        Shift("Dirt, front left", 0.83, 0.97),
                        Shift("Dirt, front left", 0.83, 0.97),
                        Shift("No fault", 0.1, 0.005),
                    ),
                ),
                ("Support the car on stands before a wheel comes off.",),
            ),
        ),
        undecided=(
            UndecidedPair(
                Hypothesis("FL", "encoder-debris"),
                Hypothesis("vehicle", "no-fault-found"),
                0.83,
                0.1,
                DrivingAdvice("side-load-contrast", "FL", "Five steady right-hand curves.", 0.31),
                CheckAdvice("look-at-encoder", "Look at the encoder", "FL", 0.25, 15.0),
            ),
        ),
        plan=make_plan(),
        cautions=("The driver never operates the program.",),
        rulebook_digest="0123456789abcdef",
        program_version="0.1.0",
    )


def make_plan() -> Plan:
    look = PlanStep(
        "check", "look-at-encoder", "Look at the encoder", "FL", 15.0, 22.0, 80.0, 0.71, ("Support the car.",)
    )
    clean = PlanStep("repair", "clean-encoder", "Clean the encoder", "FL", 45.0, 70.0, 0.0, 0.0, ())
    return Plan(look, "It takes 15 min.", (look,), (clean,), 200.0, 120.0)


def make_opened(log: SpeedLog | None = None) -> Opened:
    causes = {
        "encoder-debris": CauseText(
            "Dirt on the encoder", "Dirt or metal dust covers part of the ring.", "Clean it."
        ),
        "no-fault-found": CauseText("No fault found"),
    }
    return Opened(make_result(log), causes, {"cut-off-speed": "Lowest speed it still reads"})


@pytest.fixture
def opened() -> Opened:
    return make_opened()


@pytest.fixture
def opened_from() -> Callable[[SpeedLog | None], Opened]:
    return make_opened


@pytest.fixture
def log_from() -> Callable[..., SpeedLog]:
    return make_log


@pytest.fixture(autouse=True)
def own_home(tmp_path: object, monkeypatch: pytest.MonkeyPatch) -> None:
    """No test reads or writes the settings of the person who runs it."""
    monkeypatch.setenv("XDG_CONFIG_HOME", f"{tmp_path}/config")


@pytest.fixture
def window_from(qtbot: object) -> Iterator[Callable[..., object]]:
    """Make windows, close them after the test, and prove that their workers ended."""
    from PySide6.QtCore import QCoreApplication, QEvent
    from PySide6.QtWidgets import QApplication

    from ui.window import MainWindow

    windows = []

    def make(**arguments: object) -> MainWindow:
        window = MainWindow(**arguments)
        window.resize(1280, 800)
        window.show()
        windows.append(window)
        return window

    yield make
    for window in windows:
        window.close()
        assert window.runner.idle, "the worker still runs after the window was closed"
        window.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not [widget for widget in QApplication.topLevelWidgets() if widget.isVisible()]


@pytest.fixture
def showing(window_from: Callable[..., MainWindow], opened: Opened, qtbot: QtBot) -> MainWindow:
    """A window with the verdict on the screen."""
    window = window_from(opener=lambda _order, _progress: opened)
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(["/logs/van 3.csv"])
    return window


@pytest.fixture
def with_rules(window_from: Callable[..., MainWindow], opened: Opened, qtbot: QtBot) -> MainWindow:
    """A window with the verdict on the screen and the rule book behind it."""
    ruled = replace(opened, rulebook=load_rulebook())
    window = window_from(opener=lambda _order, _progress: ruled)
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(["/logs/van 3.csv"])
    return window


@pytest.fixture(autouse=True)
def own_data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep what the window remembers away from the user's own folder."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
