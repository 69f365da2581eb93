"""Arguments of the command and what their texts mean."""

from __future__ import annotations

import argparse
import math
from typing import Final

from triage.corners import CORNERS, VEHICLE, Corner
from triage.logs import ReadOptions
from triage.mapping_commands import add_mappings, add_memory
from triage.units import SPEED_UNITS
from triage.vehicle import Vehicle

_RADIUS_RANGE_M: Final = (0.1, 0.8)


def build_parser(version: str) -> argparse.ArgumentParser:
    """Build the parser of all verbs."""
    parser = argparse.ArgumentParser(
        prog="wheel-triage",
        description="Says from a road-test recording which wheel end is at fault, and why.",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"wheel-triage {version}")
    parser.set_defaults(log=[], dbc=[], map=[], sheet=None, unit=None, tyre_radius=None, vehicle=None)
    verbs = parser.add_subparsers(dest="verb", metavar="VERB")
    window = verbs.add_parser("window", help="open the window (also without a verb)", allow_abbrev=False)
    window.add_argument(
        "log", nargs="*", metavar="FILE", help="a recording, its parts in any order, or a folder of them"
    )
    _add_reading(window)
    inspect = verbs.add_parser("inspect", help="say what is in a log and how it was read", allow_abbrev=False)
    _add_log(inspect)
    _add_rank(verbs.add_parser("rank", help="say which wheel end is at fault, and why", allow_abbrev=False))
    check_rules = verbs.add_parser(
        "check-rules", help="list every problem of a rule book", allow_abbrev=False
    )
    check_rules.add_argument("rules", nargs="?", metavar="DIR", help="the program's own when not given")
    add_mappings(
        verbs.add_parser("mappings", help="list, export, import or forget mappings", allow_abbrev=False)
    )
    _add_experience(
        verbs.add_parser("experience", help="what cars of this workshop really had", allow_abbrev=False)
    )
    _add_walk(verbs.add_parser("walk", help="ask for the next step, one at a time", allow_abbrev=False))
    _add_simulate(
        verbs.add_parser("simulate", help="write a road test with a known fault", allow_abbrev=False)
    )
    return parser


def _add_rank(rank: argparse.ArgumentParser) -> None:
    _add_log(rank)
    rank.add_argument("--rules", metavar="DIR", help="another rule book")
    rank.add_argument(
        "--observe",
        action="append",
        default=[],
        type=_observation,
        metavar="CHECK[@CORNER]=OUTCOME",
        help="an answer found at the car, such as rock-wheel@FL=none (repeatable)",
    )
    rank.add_argument(
        "--answers", metavar="FILE.toml", help="take in the answers to checks that a walk has kept there"
    )
    _add_experience_option(rank)


def read_options(given: argparse.Namespace, vehicle: Vehicle | None) -> ReadOptions:
    """Gather what the arguments say about reading."""
    return ReadOptions(
        databases=tuple(given.dbc),
        mapping=dict(given.map),
        unit=given.unit,
        circumference_m=vehicle.circumference_m if vehicle is not None else None,
        pulses_per_rev=vehicle.pulses_per_rev if vehicle is not None else None,
        sheet=given.sheet or "",
    )


def circumference_of_radius(text: str) -> float:
    """Turn a tyre radius such as ``0.312`` or ``0,312`` into the rolling circumference.

    Returns
    -------
    float
        Circumference in metres.

    Raises
    ------
    argparse.ArgumentTypeError
        When it is no number or no radius of a tyre in metres.
    """
    radius_m = _number(text)
    low, high = _RADIUS_RANGE_M
    if not low <= radius_m <= high:
        raise argparse.ArgumentTypeError(f"{text} is no tyre radius in metres ({low:g} to {high:g})")
    return 2 * math.pi * radius_m


def _number(text: str) -> float:
    try:
        value = float(text.strip().replace(",", "."))
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text!r} is no number") from None
    if not math.isfinite(value):
        raise argparse.ArgumentTypeError(f"{text!r} is no number")
    return value


def _corner_name(text: str) -> tuple[Corner, str]:
    corner, sign, name = text.partition("=")
    for known in CORNERS:
        if corner.strip().upper() == known and sign and name.strip():
            return known, name.strip()
    raise argparse.ArgumentTypeError(f"{text!r} must be CORNER=NAME with one of {', '.join(CORNERS)}")


def _observation(text: str) -> str:
    check, sign, outcome = text.partition("=")
    if not (check.strip() and sign and outcome.strip()):
        raise argparse.ArgumentTypeError(f"{text!r} must be CHECK=OUTCOME or CHECK@CORNER=OUTCOME")
    return text


def _place(text: str) -> str:
    for known in (*CORNERS, VEHICLE):
        if text.strip().lower() == known.lower():
            return known
    raise argparse.ArgumentTypeError(f"{text!r} must be one of {', '.join((*CORNERS, VEHICLE))}")


def _add_log(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "log", nargs="+", metavar="LOG", help="a recording, its parts in any order, or a folder of them"
    )
    parser.add_argument("--json", action="store_true", help="write one JSON document to standard output")
    add_memory(parser)
    _add_reading(parser)


def _add_experience_option(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--experience", metavar="GROUP", help="take in what cars of this group really had (see experience)"
    )
    parser.add_argument("--experience-file", metavar="FILE.toml", help="where that is kept, when elsewhere")


def _add_experience(parser: argparse.ArgumentParser) -> None:
    deeds = parser.add_subparsers(dest="deed", metavar="DEED", required=True)
    add = deeds.add_parser("add", help="keep what one car really had", allow_abbrev=False)
    add.add_argument("--group", required=True, metavar="NAME", help="any name for cars that are alike")
    add.add_argument("--cause", required=True, metavar="ID", help="such as encoder-debris")
    add.add_argument("--corner", type=_place, metavar="C", help="where it was")
    add.add_argument("--note", default="", metavar="TEXT", help="for the reader")
    show = deeds.add_parser("list", help="show what is kept", allow_abbrev=False)
    show.add_argument("--group", metavar="NAME", help="of this group only")
    remove = deeds.add_parser("remove", help="forget one car", allow_abbrev=False)
    remove.add_argument("number", type=int, metavar="NUMBER", help="as list shows it")
    turn_on = deeds.add_parser("on", help="let rank --experience use it", allow_abbrev=False)
    turn_off = deeds.add_parser("off", help="let no verdict use it; nothing is forgotten", allow_abbrev=False)
    for deed in (add, show, remove, turn_on, turn_off):
        deed.add_argument("--file", metavar="FILE.toml", help="where it is kept, when elsewhere")
        deed.add_argument("--rules", metavar="DIR", help="another rule book")


def _add_walk(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "log", nargs="*", metavar="LOG", help="a recording of the car; the walk works without one too"
    )
    parser.add_argument("--rules", metavar="DIR", help="another rule book")
    parser.add_argument(
        "--answers", metavar="FILE.toml", help="where the answers are kept; beside the log when not given"
    )
    _add_experience_option(parser)
    add_memory(parser)
    _add_reading(parser)


def _add_reading(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--dbc", action="append", default=[], metavar="FILE", help="signal database (repeatable)"
    )
    parser.add_argument(
        "--map",
        action="append",
        default=[],
        type=_corner_name,
        metavar="FL=NAME",
        help="column, or Message.Signal, of a wheel (repeatable)",
    )
    parser.add_argument("--sheet", metavar="NAME", help="sheet of a workbook, if not that with the wheels")
    parser.add_argument("--unit", choices=SPEED_UNITS, help="unit of the wheel speeds, when the log is wrong")
    parser.add_argument(
        "--tyre-radius",
        type=circumference_of_radius,
        metavar="M",
        help="rolling radius in metres, for logs in rad/s, rpm or hz",
    )
    parser.add_argument("--vehicle", metavar="FILE.toml", help="dimensions of the car")


def _add_simulate(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--cause", required=True, metavar="ID", help="such as encoder-debris, or no-fault-found"
    )
    parser.add_argument("--corner", type=_place, metavar="C", help=f"one of {', '.join(CORNERS)}, or vehicle")
    parser.add_argument("--severity", type=_number, default=0.5, metavar="0..1", help="0.5 when not given")
    parser.add_argument("--seconds", type=_number, default=180.0, metavar="N", help="180 when not given")
    parser.add_argument(
        "--seed", type=int, default=0, metavar="S", help="0 when not given; same seed, same bytes"
    )
    parser.add_argument("--out", required=True, metavar="FILE", help="table to write (.csv or .csv.gz)")
