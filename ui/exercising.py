"""Making and scoring exercises, as the worker does it. Knows no Qt."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from triage.errors import SettingsError
from triage.evidence.rule_tables import Rulebook
from triage.exercises.attempt import Attempt
from triage.exercises.exercise import Exercise, Wish
from triage.progress import Progress, part_of
from triage.texts import Text
from ui.state.exercise import Debrief, Prepared
from ui.state.opening import CauseText, Opened

Source = Callable[[Rulebook], Exercise]
"""Where an exercise comes from: a wish, a sample log, a file."""


def prepare(source: Source, rulebook: Rulebook, *, told: bool, progress: Progress) -> Prepared:
    """Make an exercise and drive its road test.

    Raises
    ------
    TriageError
        When the exercise cannot be made.
    Cancelled
        When the user stopped it.
    """
    # Imported here, on the worker: the simulator takes half a second that no other page needs.
    from triage.exercises.making import drive_exercise  # noqa: PLC0415

    exercise = source(rulebook)
    return Prepared(exercise, drive_exercise(exercise, progress), rulebook, told)


def from_file(path: str | Path) -> Source:
    """Return a source that opens a saved exercise."""

    def source(rulebook: Rulebook) -> Exercise:
        from triage.exercises.exercise_file import read_exercise  # noqa: PLC0415

        return read_exercise(path, rulebook)

    return source


def from_wish(wish: Wish) -> Source:
    """Return a source that makes a new exercise."""

    def source(rulebook: Rulebook) -> Exercise:
        from triage.exercises.making import make_wished  # noqa: PLC0415

        return make_wished(wish, rulebook)

    return source


def from_sample(path: str | Path) -> Source:
    """Return a source that makes an exercise of a sample log, by its line in the index beside it."""

    def source(rulebook: Rulebook) -> Exercise:
        from triage.exercises.making import exercise_of_sample  # noqa: PLC0415
        from triage.simulator.sample_logs import load_sample_index  # noqa: PLC0415

        log = Path(path)
        found = [sample for sample in load_sample_index(log.parent).logs if sample.file == log.name]
        if not found:
            told = Text("the index of the sample logs does not name it")
            raise SettingsError(told, file=str(log), hint=Text("Choose another sample log."))
        return exercise_of_sample(found[0], rulebook)

    return source


def score(prepared: Prepared, attempt: Attempt, progress: Progress) -> Debrief:
    """Judge the recording, find the ideal order, and score what was handed in.

    Raises
    ------
    SettingsError
        When nothing was handed in.
    Cancelled
        When the user stopped it.
    """
    from triage.evidence.answers import leading_corner  # noqa: PLC0415
    from triage.exercises.ideal_order import find_ideal_order  # noqa: PLC0415
    from triage.exercises.score import score_attempt  # noqa: PLC0415
    from triage.run import run_triage  # noqa: PLC0415

    rulebook = prepared.rulebook
    result = run_triage(prepared.test.log, rulebook, progress=part_of(progress, 0.0, 0.8))
    progress(0.8, "Finding the ideal order")
    first = leading_corner(result.posterior)
    ideal = find_ideal_order(prepared.exercise, result.findings, rulebook, first_corner=first)
    titles = {rule.id: rule.title for rule in rulebook.measurements.values()}
    causes = {
        cause.id: CauseText(cause.title, cause.claim, cause.what_to_do) for cause in rulebook.causes.values()
    }
    scored = score_attempt(attempt, ideal, rulebook)
    progress(1.0, "Done")
    return Debrief(attempt, scored, Opened(result, causes, titles))
