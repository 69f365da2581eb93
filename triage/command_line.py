"""The command ``wheel-triage``: opens the window, or does one job in the terminal.

Exit codes: 0 done; 2 wrong use of the command; 3 an input cannot be used; 4 the output could not be written;
130 stopped by the user.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, Final

from triage import __version__
from triage.command_arguments import build_parser, read_options
from triage.errors import OutputError, SettingsError, TriageError
from triage.inspection import build_inspection, format_inspection
from triage.logs import read_log
from triage.mapping_commands import options_with_memory, remember_if_asked, run_mappings
from triage.output_file import whole_file
from triage.progress import Cancelled, Progress, no_progress, part_of
from triage.vehicle import Vehicle, load_vehicle

EXIT_DONE: Final = 0
EXIT_WRONG_USE: Final = 2
EXIT_INPUT: Final = 3
EXIT_STOPPED: Final = 130


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command.

    Parameters
    ----------
    argv : sequence of str, optional
        Arguments without the program's name; those of the process when not given.

    Returns
    -------
    int
        Exit code.
    """
    _speak_utf8()
    try:
        given = build_parser(__version__).parse_args(argv)
        return int(_VERBS[given.verb or "window"](given))
    except SystemExit as stop:
        return stop.code if isinstance(stop.code, int) else 2
    except TriageError as error:
        _say(str(error))
        return error.exit_code
    except (KeyboardInterrupt, Cancelled):
        _say("stopped.")
        return EXIT_STOPPED
    except BrokenPipeError:
        return _leave_pipe()
    except MemoryError:
        _say("the input needs more memory than there is. Cut the recording in parts.")
        return EXIT_INPUT


def _window(given: argparse.Namespace) -> int:
    screens = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    if sys.platform.startswith("linux") and not any(os.environ.get(name) for name in screens):
        # Qt would abort the process.
        raise TriageError("there is no screen for a window", hint="Use inspect and rank in the terminal.")
    try:
        from ui.window import main as open_window  # noqa: PLC0415 - no verb but this may load Qt
    except ImportError as error:
        raise TriageError(
            f"the window cannot be opened: {error}",
            hint="Install PySide6-Essentials and pyqtgraph, or use inspect and rank in the terminal.",
        ) from None
    vehicle = _vehicle(given)
    return int(open_window(list(given.log), read_options(given, vehicle), vehicle))


def _inspect(given: argparse.Namespace) -> int:
    progress = _terminal_progress()
    options = options_with_memory(given, read_options(given, _vehicle(given)))
    log = read_log(given.log, options, progress)
    _end_progress(progress)
    _print(_as_json(build_inspection(log)) if given.json else format_inspection(log))
    _say_remembered(remember_if_asked(given, log, options))
    return EXIT_DONE


def _rank(given: argparse.Namespace) -> int:
    # loaded only here: inspecting a log needs none of it
    from triage.evidence.answers import parse_observation  # noqa: PLC0415
    from triage.evidence.judge import judge  # noqa: PLC0415
    from triage.evidence.rulebook import load_rulebook  # noqa: PLC0415
    from triage.experience.command import experience_with  # noqa: PLC0415
    from triage.experience.effect import Effect, build_effect, format_effect  # noqa: PLC0415
    from triage.experience.priors import with_priors  # noqa: PLC0415
    from triage.run import run_triage  # noqa: PLC0415
    from triage.verdict_text import build_verdict, format_verdict  # noqa: PLC0415
    from triage.walk.answer_file import read_kept_answers  # noqa: PLC0415

    rulebook = load_rulebook(given.rules)
    kept = read_kept_answers(Path(given.answers), rulebook) if given.answers else None
    told = tuple(parse_observation(text) for text in given.observe)
    observations = (*(kept.observations if kept else ()), *told)
    changes = experience_with(given.experience, given.experience_file, rulebook)
    asked = with_priors(rulebook, changes) if changes else rulebook
    vehicle = _vehicle(given)
    progress = _terminal_progress()
    options = options_with_memory(given, read_options(given, vehicle))
    log = read_log(given.log, options, _share(progress, 0.0, 0.4))
    result = run_triage(log, asked, observations, vehicle=vehicle, progress=_share(progress, 0.4, 1.0))
    _end_progress(progress)
    document = build_verdict(result)
    text = "" if given.json else format_verdict(result, asked)
    if kept:
        document["answers"] = {"file": given.answers, "taken": len(kept.observations)}
        text += f"\n{kept.words}\n"
    if changes:
        plain = judge(result.measurements, result.not_measurable, rulebook, observations).posterior
        effect = Effect(given.experience, changes, result.posterior, plain)
        document["experience"] = build_effect(effect)
        text += "\n" + format_effect(effect, asked)
    _print(_as_json(document) if given.json else text)
    _say_remembered(remember_if_asked(given, log, options))
    return EXIT_DONE


def _mappings(given: argparse.Namespace) -> int:
    _print(run_mappings(given))
    return EXIT_DONE


def _say_remembered(text: str) -> None:
    if text:
        _say(text)


def _experience(given: argparse.Namespace) -> int:
    from triage.experience.command import run_experience  # noqa: PLC0415 - reading a log needs none of it

    _print(run_experience(given))
    return EXIT_DONE


def _check_rules(given: argparse.Namespace) -> int:
    from triage.evidence.rulebook import examine_rulebook  # noqa: PLC0415 - reading a log needs none of it

    rulebook, problems = examine_rulebook(given.rules)
    where = given.rules or "the program's own rule book"
    if problems or rulebook is None:
        _print("".join(f"{problem}\n" for problem in problems))
        count = "1 problem" if len(problems) == 1 else f"{len(problems)} problems"
        _say(f"{where}: {count}, each with its place on standard output.\nMend the places and run it again.")
        return EXIT_INPUT
    _print(
        f"{where}: no problem in {len(rulebook.causes)} causes, {len(rulebook.measurements)} measurements, "
        f"{len(rulebook.checks)} checks and {len(rulebook.repairs)} repairs.\n"
    )
    return EXIT_DONE


def _walk(given: argparse.Namespace) -> int:
    from triage.evidence.rulebook import load_rulebook  # noqa: PLC0415 - reading a log needs none of it
    from triage.experience.command import experience_with  # noqa: PLC0415
    from triage.experience.priors import with_priors  # noqa: PLC0415
    from triage.run import run_triage  # noqa: PLC0415
    from triage.walk.answer_file import load_answers, prepare_answer_file  # noqa: PLC0415
    from triage.walk.assessment import Recording  # noqa: PLC0415
    from triage.walk.terminal import Walk, walk_in_terminal  # noqa: PLC0415

    rulebook = load_rulebook(given.rules)
    changes = experience_with(given.experience, given.experience_file, rulebook)
    rulebook = with_priors(rulebook, changes) if changes else rulebook
    path = prepare_answer_file(given.answers, given.log, os.environ)
    state = load_answers(path, rulebook)
    recording = Recording()
    if given.log:
        vehicle = _vehicle(given)
        progress = _terminal_progress()
        options = options_with_memory(given, read_options(given, vehicle))
        log = read_log(given.log, options, _share(progress, 0.0, 0.4))
        result = run_triage(log, rulebook, vehicle=vehicle, progress=_share(progress, 0.4, 1.0))
        _end_progress(progress)
        _say_remembered(remember_if_asked(given, log, options))
        recording = Recording(result.measurements, result.not_measurable)
    walk = Walk(recording, rulebook, path, given.log[0] if given.log else "A walk without a recording")
    walk_in_terminal(walk, state, read_line=_read_line, write=_print)
    return EXIT_DONE


def _read_line() -> str | None:
    """Next line typed, None at the end of the input."""
    if sys.stdin is None:
        return None
    try:
        line = sys.stdin.readline()
    except (OSError, ValueError):  # the terminal has gone, or was closed by the caller
        return None
    return line.strip() if line else None


def _simulate(given: argparse.Namespace) -> int:
    from triage.simulator.road_test import simulate_road_test, write_road_test  # noqa: PLC0415

    progress = _terminal_progress()
    with whole_file(given.out) as unfinished:
        try:
            test = simulate_road_test(
                cause=given.cause,
                corner=given.corner,
                severity=given.severity,
                duration_s=given.seconds,
                seed=given.seed,
                progress=progress,
            )
        except SettingsError as error:
            # Here every setting is an option of this command: a bad one is wrong use, not a bad input.
            error.exit_code = EXIT_WRONG_USE
            raise
        write_road_test(test, unfinished)
    _end_progress(progress)
    return EXIT_DONE


_VERBS: Final = {
    "window": _window,
    "inspect": _inspect,
    "rank": _rank,
    "check-rules": _check_rules,
    "walk": _walk,
    "experience": _experience,
    "mappings": _mappings,
    "simulate": _simulate,
}


def _vehicle(given: argparse.Namespace) -> Vehicle | None:
    """Vehicle of the user; the tyre radius given beside it goes before that of the file."""
    vehicle = load_vehicle(given.vehicle) if given.vehicle else None
    if given.tyre_radius is None:
        return vehicle
    return replace(vehicle or Vehicle(), circumference_m=given.tyre_radius)


def _share(progress: Progress, begin: float, end: float) -> Progress:
    return progress if progress is no_progress else part_of(progress, begin, end)


def _terminal_progress() -> Progress:
    """Progress on standard error, only when a person looks at it."""
    if sys.stderr is None or not sys.stderr.isatty():
        return no_progress
    shown = [-1]

    def report(fraction: float, stage: str) -> None:
        percent = int(100 * fraction)
        if percent != shown[0]:
            shown[0] = percent
            sys.stderr.write(f"\r{percent:3d} % {stage:<40}")
            sys.stderr.flush()

    return report


def _end_progress(progress: Progress) -> None:
    if progress is not no_progress:
        sys.stderr.write("\r" + " " * 48 + "\r")


def _as_json(document: dict[str, Any]) -> str:
    return json.dumps(document, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def _print(text: str) -> None:
    if sys.stdout is None:  # closed by the caller, as in a shell's >&-
        raise OutputError("the output could not be written: standard output is closed", hint="Leave it open.")
    try:
        sys.stdout.write(_readable(text))
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        _silence_stdout()
        raise OutputError(
            f"the output could not be written: {error.strerror or error}",
            hint="Free some space and try again.",
        ) from None


def _say(message: str) -> None:
    if sys.stderr is None:
        return
    lines = message.splitlines()
    # the last line says what to do
    shown = lines if len(lines) <= 6 else [*lines[:4], f"... and {len(lines) - 5} lines more", lines[-1]]
    sys.stderr.write(_readable("wheel-triage: " + "\n  ".join(shown) + "\n"))


def _readable(text: str) -> str:
    """Give file names that the locale could not decode as what their bytes say."""
    return text.encode("utf-8", "surrogateescape").decode("utf-8", "replace")


def _speak_utf8() -> None:
    """Write UTF-8 whatever the locale."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="backslashreplace")
    typed = getattr(sys.stdin, "reconfigure", None)
    if typed is not None:
        typed(errors="replace")


def _leave_pipe() -> int:
    """Leave without a word when the reader of our output has gone."""
    _silence_stdout()
    return EXIT_DONE


def _silence_stdout() -> None:
    # the interpreter flushes at its end and would complain once more
    try:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except (OSError, ValueError):
        return
