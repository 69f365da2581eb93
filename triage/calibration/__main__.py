"""``python -m triage.calibration``: make the likelihood tables, or evaluate the ones in use."""

from __future__ import annotations

import argparse
import os
import sys
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

import numpy as np

from triage.calibration.ensemble import CALIBRATION_SERIES, EVALUATION_SERIES, draw_cases, measure_cases
from triage.calibration.score import Verdict, judge_cases, measure_reliability
from triage.calibration.tables import count_tables
from triage.errors import TriageError
from triage.evidence.likelihoods import write_likelihoods
from triage.evidence.rulebook import load_rulebook


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command; returns the exit code."""
    given = _parser().parse_args(argv)
    try:
        return _evaluate(given) if given.evaluate else _calibrate(given)
    except TriageError as error:
        sys.stderr.write(f"{error}\n")
        return error.exit_code
    except KeyboardInterrupt:
        return 130


def _parser() -> argparse.ArgumentParser:
    ask = argparse.ArgumentParser(prog="python -m triage.calibration", description=__doc__)
    ask.add_argument("--per-cause", type=int, default=150, help="simulated road tests for each cause (150)")
    ask.add_argument("--workers", type=int, default=os.cpu_count() or 1, help="processor cores to use (all)")
    ask.add_argument("--rules", type=Path, default=None, help="folder of the rule book (the one in use)")
    ask.add_argument("--out", type=Path, default=Path("rules/likelihoods.toml"), help="table to write")
    ask.add_argument(
        "--evaluate", action="store_true", help="judge the tables in use on road tests they never saw"
    )
    ask.add_argument(
        "--severity", type=float, default=None, help="one severity for all (drawn from 0.2 to 1)"
    )
    ask.add_argument(
        "--seconds", type=float, default=None, help="one length for all (drawn from 90 to 300 s)"
    )
    return ask


def _calibrate(given: argparse.Namespace) -> int:
    rulebook = load_rulebook(given.rules)
    cases = draw_cases(
        given.per_cause, series=CALIBRATION_SERIES, severity=given.severity, duration_s=given.seconds
    )
    measured = measure_cases(cases, workers=given.workers, progress=_show)
    command = f"python -m triage.calibration --per-cause {given.per_cause}"
    counted = count_tables(measured, rulebook, evidence=command)
    write_likelihoods(given.out, counted.tables, counted.variants)
    sys.stderr.write(f"\n{given.out} written from {len(cases)} road tests\n")
    return 0


def _evaluate(given: argparse.Namespace) -> int:
    rulebook = load_rulebook(given.rules)
    cases = draw_cases(
        given.per_cause, series=EVALUATION_SERIES, severity=given.severity, duration_s=given.seconds
    )
    verdicts = judge_cases(measure_cases(cases, workers=given.workers, progress=_show), rulebook)
    sys.stderr.write("\n")
    sys.stdout.write(_report(verdicts))
    return 0


def _report(verdicts: Sequence[Verdict]) -> str:
    causes = list(dict.fromkeys(verdict.truth.cause for verdict in verdicts))
    lines = [f"{'cause':<18} {'tests':>5} {'first':>7} {'corner':>7} {'blamed':>7}   most often mistaken for"]
    for cause in causes:
        own = [verdict for verdict in verdicts if verdict.truth.cause == cause]
        wrong = Counter(_short(verdict) for verdict in own if not verdict.right)
        mistaken = ", ".join(f"{name} {number}" for name, number in wrong.most_common(3))
        lines.append(f"{_shares_line(cause, own)}   {mistaken}".rstrip())
    lines.append(_shares_line("all", verdicts))
    stated = np.array([_stated(verdict) for verdict in verdicts])
    happened = np.array([float(verdict.right) for verdict in verdicts])
    result = measure_reliability(stated, happened)
    lines += ["", "stated  observed  tests"]
    lines += [
        f"{s:6.3f}  {o:8.3f}  {n:5d}"
        for s, o, n in zip(result.stated, result.observed, result.count, strict=True)
    ]
    lines.append(
        f"Brier {result.brier:.4f} = reliability {result.reliability:.4f}"
        f" - resolution {result.resolution:.4f} + uncertainty {result.uncertainty:.4f};"
        f" expected calibration error {result.expected_calibration_error:.4f}"
    )
    return "\n".join(lines) + "\n"


def _shares_line(title: str, verdicts: Sequence[Verdict]) -> str:
    """One line: number of tests, right verdict, right corner, any corner blamed."""
    shares = (
        [verdict.right for verdict in verdicts],
        [verdict.right_corner for verdict in verdicts],
        [verdict.blames_corner for verdict in verdicts],
    )
    return f"{title:<18} {len(verdicts):5d} " + " ".join(f"{_share(flags):>7}" for flags in shares)


def _stated(verdict: Verdict) -> float:
    return min(verdict.posterior.first.probability, 1.0)


def _short(verdict: Verdict) -> str:
    first = verdict.posterior.first.hypothesis
    same = first.corner in (verdict.truth.corner, "vehicle")
    return first.cause if same else f"{first.cause} elsewhere"


def _share(flags: Sequence[bool]) -> str:
    return f"{np.mean(flags):.1%}" if flags else "-"


def _show(fraction: float, stage: str) -> None:
    if sys.stderr.isatty():
        sys.stderr.write(f"\r{fraction:6.1%} {stage}")


if __name__ == "__main__":
    sys.exit(main())
