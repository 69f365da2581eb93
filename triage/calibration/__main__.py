"""``python -m triage.calibration``: make the likelihood tables, or evaluate the ones in use."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from functools import partial
from pathlib import Path

from triage.calibration.coverage import format_coverage, measure_coverage
from triage.calibration.ensemble import (
    CALIBRATION_SERIES,
    EVALUATION_SERIES,
    Case,
    MeasuredCase,
    draw_cases,
    measure_cases,
    spread_over_cores,
)
from triage.calibration.progress_lines import show_progress_on
from triage.calibration.real_drives import rebuild_drive
from triage.calibration.report import format_evaluation, format_hidden, format_reliability, seeded_drives
from triage.calibration.ring_limits import format_ring_limits, run_ring_limits
from triage.calibration.score import Verdict, judge_cases
from triage.calibration.seeded_faults import draw_seeded_cases, measure_seeded_case
from triage.calibration.tables import count_tables
from triage.calibration.trace import NO_TRACE
from triage.calibration.weighing import learn_weights
from triage.errors import TriageError
from triage.evidence.likelihoods import write_likelihoods
from triage.evidence.rule_tables import Rulebook
from triage.evidence.rulebook import load_rulebook
from triage.logs.reading import read_log
from triage.simulator.faults import FAULT_MODELS

SEEDED_SEVERITY = 0.5
"""Severity of faults in real drives when none is asked for."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command; returns the exit code."""
    ask = _parser()
    given = ask.parse_args(argv)
    judging = given.evaluate or given.coverage or given.real_drive or given.ring_limits
    if (given.severity or given.familiar or given.cause) and not judging:
        ask.error("--severity, --familiar and --cause go with --evaluate or --coverage")
    try:
        return _run(given)
    except TriageError as error:
        sys.stderr.write(f"{error}\n")
        return error.exit_code
    except KeyboardInterrupt:
        return 130


def _run(given: argparse.Namespace) -> int:
    if given.ring_limits:
        return _find_ring_limits(given)
    if given.coverage:
        return _cover(given)
    if given.real_drive:
        return _evaluate_real_drives(given)
    return _evaluate(given) if given.evaluate else _calibrate(given)


def _find_ring_limits(given: argparse.Namespace) -> int:
    severity = given.severity[0] if given.severity else 0.5
    cases, scores = run_ring_limits(
        given.ring_limits, severity=severity, workers=given.workers, progress=show_progress_on(sys.stderr)
    )
    sys.stdout.write(format_ring_limits(cases, scores))
    return 0


def _parser() -> argparse.ArgumentParser:
    ask = argparse.ArgumentParser(prog="python -m triage.calibration", description=__doc__)
    ask.add_argument("--per-cause", type=int, default=150, help="simulated road tests for each cause (150)")
    ask.add_argument(
        "--ring-limits",
        type=int,
        default=0,
        metavar="CARS",
        help="find how far the ring map reaches, with so many cars at each rate, speed and length",
    )
    ask.add_argument("--workers", type=int, default=os.cpu_count() or 1, help="processor cores to use (all)")
    ask.add_argument("--rules", type=Path, default=None, help="folder of the rule book (the one in use)")
    ask.add_argument("--out", type=Path, default=Path("rules/likelihoods.toml"), help="table to write")
    ask.add_argument("--date", default=None, help="day written into the table (today)")
    ask.add_argument(
        "--evaluate", action="store_true", help="judge the tables in use on road tests they never saw"
    )
    ask.add_argument(
        "--familiar", action="store_true", help="evaluate on cars of the kinds that the tables were made with"
    )
    ask.add_argument(
        "--real-drive",
        type=Path,
        nargs="+",
        default=[],
        metavar="FILE",
        help="evaluate on faults built into these recordings of healthy cars",
    )
    ask.add_argument(
        "--coverage", action="store_true", help="count how often stated uncertainties cover the truth"
    )
    ask.add_argument(
        "--cause",
        nargs="+",
        default=[],
        choices=[model.cause for model in FAULT_MODELS],
        metavar="ID",
        help="evaluate these causes alone",
    )
    ask.add_argument(
        "--severity", type=float, nargs="+", default=[], help="severities for all (drawn from 0.2 to 1)"
    )
    ask.add_argument(
        "--seconds", type=float, default=None, help="one length for all (drawn from 90 to 300 s)"
    )
    return ask


def _calibrate(given: argparse.Namespace) -> int:
    rulebook = load_rulebook(given.rules)
    cases = draw_cases(given.per_cause, series=CALIBRATION_SERIES, duration_s=given.seconds)
    measured = measure_cases(cases, workers=given.workers, progress=show_progress_on(sys.stderr))
    command = f"python -m triage.calibration --per-cause {given.per_cause}"
    command += "" if given.seconds is None else f" --seconds {given.seconds:g}"
    day = given.date if given.date is not None else datetime.now().astimezone().date().isoformat()
    counted = count_tables(
        measured,
        rulebook,
        evidence=command,
        date=day,
        workers=given.workers,
        progress=show_progress_on(sys.stderr),
    )
    weights = learn_weights(measured, rulebook, workers=given.workers, progress=show_progress_on(sys.stderr))
    weighed = {name: replace(table, weight=weights[name]) for name, table in counted.tables.items()}
    write_likelihoods(given.out, weighed, counted.variants)
    sys.stderr.write(f"{given.out} written from {len(cases)} road tests\n")
    return 0


def _evaluate(given: argparse.Namespace) -> int:
    rulebook = load_rulebook(given.rules)
    severities: list[float | None] = [*given.severity] or [None]
    cases = [
        case
        for severity in severities
        for case in draw_cases(
            given.per_cause,
            series=EVALUATION_SERIES,
            severity=severity,
            duration_s=given.seconds,
            unseen=not given.familiar,
        )
        if _asked_for(given, case)
    ]
    measured = measure_cases(cases, workers=given.workers, judged=True, progress=show_progress_on(sys.stderr))
    _print_evaluation(given, measured, rulebook)
    return 0


def _evaluate_real_drives(given: argparse.Namespace) -> int:
    rulebook = load_rulebook(given.rules)
    drives = [rebuild_drive(read_log([file])) for file in given.real_drive]
    tasks = [
        task
        for severity in given.severity or [SEEDED_SEVERITY]
        for task in draw_seeded_cases(drives, given.per_cause, severity=severity, series=EVALUATION_SERIES)
        if _asked_for(given, task[1])
    ]
    measured = spread_over_cores(
        partial(measure_seeded_case, drives),
        tasks,
        workers=given.workers,
        progress=show_progress_on(sys.stderr),
    )
    _print_evaluation(given, measured, rulebook)
    return 0


def _cover(given: argparse.Namespace) -> int:
    drawn = draw_cases(
        given.per_cause, series=EVALUATION_SERIES, duration_s=given.seconds, unseen=not given.familiar
    )
    found = spread_over_cores(
        measure_coverage,
        [case for case in drawn if _asked_for(given, case)],
        workers=given.workers,
        progress=show_progress_on(sys.stderr),
    )
    sys.stdout.write(format_coverage([one for case in found for one in case]))
    return 0


def _asked_for(given: argparse.Namespace, case: Case) -> bool:
    return not given.cause or case.cause in given.cause


def _print_evaluation(
    given: argparse.Namespace, measured: Sequence[MeasuredCase], rulebook: Rulebook
) -> None:
    """Print one report for each severity asked for, and the reliability of all where there are several."""
    together: list[Verdict] = []
    for severity in given.severity or [None]:
        chosen = [one for one in measured if severity in (None, one.case.severity)]
        verdicts = judge_cases(chosen, rulebook)
        shown = [one for one in verdicts if NO_TRACE not in one.traits]
        title = "" if severity is None else f"severity {severity:g}\n\n"
        sys.stdout.write(title + (format_evaluation(shown) + "\n" if shown else ""))
        sys.stdout.write(format_hidden(verdicts))
        if given.real_drive:
            sys.stdout.write("\n".join(seeded_drives(verdicts)) + "\n\n")
        together += shown
    if len(given.severity) > 1 and together:
        sys.stdout.write(format_reliability(together))


if __name__ == "__main__":
    sys.exit(main())
