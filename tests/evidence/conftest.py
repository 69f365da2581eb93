"""Measurements, a small rule book of one's own choice, and the one that comes with the program."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pytest

from triage.corners import CORNERS, Place
from triage.evidence.findings import build_findings
from triage.evidence.hypotheses import Hypothesis
from triage.evidence.posterior import rank_hypotheses
from triage.evidence.rulebook import Rulebook, load_rulebook
from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement
from triage.signals.measures.table import measure_all
from triage.simulator.road_test import simulate_road_test

HEALTHY = {
    "dead-share": 0.0,
    "stuck-share": 0.0,
    "drop-out-rate": 0.0,
    "dip-share": 0.01,
    "spike-share": 0.0,
    "line-amplitude": 0.1,
    "ratio-offset": 0.1,
    "noise-ratio": 1.0,
    "cut-off-speed": 0.1,
}


WORKSHOP = """[workshop]
money_per_hour = 60.0
corrosion = 0.0
proof_min = 10.0
last_resort = 500.0
least_saving = 0.0
doubt = 0.0
[part]
[repair]
"""


@pytest.fixture(scope="session")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="session")
def measure(rulebook: Rulebook) -> Callable[..., Measurement]:
    def build(name: str, corner: Place, value: float, std_uncertainty: float | None = None) -> Measurement:
        spread = 0.1 * abs(value) + 1e-3 if std_uncertainty is None else std_uncertainty
        unit = rulebook.measurements[name].unit
        return Measurement(name, corner, value, spread, unit, sample_count=100, spans=((1.0, 2.0),))

    return build


@pytest.fixture(scope="session")
def drive(measure: Callable[..., Measurement]) -> Callable[..., list[Measurement]]:
    """Measurements of a healthy car, with those of one corner replaced."""

    def build(corner: Place = "vehicle", changed: Mapping[str, float] | None = None) -> list[Measurement]:
        changed = changed or {}
        healthy = [
            measure(name, place, value)
            for name, value in HEALTHY.items()
            for place in CORNERS
            if not (place == corner and name in changed)
        ]
        joint = measure("joint-drop-out-rate", "vehicle", 0.0)
        return [*healthy, joint, *(measure(name, corner, value) for name, value in changed.items())]

    return build


@pytest.fixture(scope="session")
def dirty_logs() -> tuple[tuple[Measurement, ...], ...]:
    """What is measured on simulated road tests with a lightly soiled encoder at the front left."""
    tests = [
        simulate_road_test(cause="encoder-debris", corner="FL", severity=0.3, duration_s=90.0, seed=seed)
        for seed in range(8)
    ]
    return tuple(measure_all(analyse(test.log))[0] for test in tests)


@pytest.fixture(scope="session")
def clearest_debris(
    dirty_logs: tuple[tuple[Measurement, ...], ...],
    rulebook: Rulebook,
    drive: Callable[..., list[Measurement]],
) -> dict[str, float]:
    seen = [
        {one.id: one.value for one in log if one.corner == "FL" and one.id in rulebook.measurements}
        for log in dirty_logs
    ]
    return max(seen, key=lambda values: _debris_probability(drive("FL", values), rulebook))


@pytest.fixture
def debris(clearest_debris: dict[str, float]) -> dict[str, float]:
    """Values of one wheel in the simulated road test that shows its dirt most clearly."""
    return dict(clearest_debris)


def _debris_probability(log: list[Measurement], rulebook: Rulebook) -> float:
    ranking = rank_hypotheses(build_findings(log, rulebook), rulebook).ranking
    claim = Hypothesis("FL", "encoder-debris")
    return next(line.probability for line in ranking if line.hypothesis == claim)


Rows = Mapping[str, Sequence[float]]


@pytest.fixture
def make_book(tmp_path: Path) -> Callable[..., Rulebook]:
    """A rule book of given priors, measurements (group, rows), variants and checks (where, rows)."""

    def build(
        priors: Mapping[str, tuple[str, float]],
        *,
        measurements: Mapping[str, tuple[str, Rows]] | None = None,
        variants: Mapping[str, Sequence[float]] | None = None,
        groups: Mapping[str, float | None] | None = None,
        checks: Mapping[str, tuple[str, Rows]] | None = None,
        floor: float = 1e-12,
        temperature: float = 1.0,
    ) -> Rulebook:
        folder = tmp_path / "book"
        folder.mkdir(exist_ok=True)
        texts = {
            "causes": "".join(_cause(name, *row) for name, row in priors.items()),
            "measurements": f"[scoring]\ntemperature = {temperature!r}\nfloor = {floor!r}\n[group]\n"
            + "".join(_group(name, weight) for name, weight in (groups or {}).items())
            + "[measurement]\n"
            + "".join(_measurement(name, *row) for name, row in (measurements or {}).items()),
            "likelihoods": (f"[variants]\n{_rows(variants)}" if variants else "")
            + "[likelihood]\n"
            + "".join(
                f'[likelihood.{name}]\nbasis = "judgement"\nevidence = "test"\n[likelihood.{name}.rows]\n'
                + _rows(rows)
                for name, (_, rows) in (measurements or {}).items()
            ),
            "checks": '[access.cabin]\ntitle = "parked"\n[check]\n'
            + "".join(_check(name, *row) for name, row in (checks or {}).items()),
            "cautions": "[caution]\n",
            "sources": '[source.test]\ntitle = "test"\nkind = "practice"\n',
            "workshop": WORKSHOP,
        }
        for name, text in texts.items():
            (folder / f"{name}.toml").write_text(text, encoding="utf-8")
        return load_rulebook(folder)

    return build


def _cause(name: str, where: str, prior: float) -> str:
    words = "".join(f'{field} = "{name}"\n' for field in ("title", "claim", "repair", "what_to_do"))
    return f'[cause.{name}]\n{words}where = "{where}"\nprior = {prior!r}\nbasis = "judgement"\n'


def _group(name: str, weight: float | None) -> str:
    return f'[group.{name}]\ntitle = "{name}"\n' + ("" if weight is None else f"weight = {weight!r}\n")


def _measurement(name: str, group: str, rows: Rows) -> str:
    width = len(rows["sound"])
    words = "".join(f'{field} = "{name}"\n' for field in ("title", "meaning", "statement", "needed"))
    bands = [f"band{i}" for i in range(width)]
    return (
        f'[measurement.{name}]\n{words}unit = ""\nscope = "corner"\ngroup = "{group}"\nbasis = "judgement"\n'
        f'source = "test"\ndistribution = "normal"\nbands = {bands}\n'
        f"edges = {[i + 0.5 for i in range(width - 1)]}\nsound_at_least = {[0.0] * width}\n"
    )


def _check(name: str, where: str, rows: Rows) -> str:
    outcomes = "".join(f'outcome{i} = "seen {i}"\n' for i in range(len(rows["sound"])))
    return (
        f'[check.{name}]\ntitle = "{name}"\nquestion = "{name}?"\nwhere = "{where}"\nminutes = 5\n'
        f'access = "cabin"\nbasis = "judgement"\nevidence = "test"\n[check.{name}.outcomes]\n{outcomes}'
        f"[check.{name}.rows]\n{_rows(rows)}"
    )


def _rows(rows: Rows) -> str:
    return "".join(
        f"{name} = [{', '.join(repr(float(share)) for share in row)}]\n" for name, row in rows.items()
    )
