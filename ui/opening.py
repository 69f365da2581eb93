"""Reading and judging a recording, as the worker does it. Knows no Qt."""

from __future__ import annotations

from triage.progress import Progress, part_of
from ui.state.opening import CauseText, Opened, OpenOrder


def open_and_judge(order: OpenOrder, progress: Progress) -> Opened:
    """Read a recording and rank what may be wrong.

    Parameters
    ----------
    order : OpenOrder
        Files and how to read them.
    progress : Progress
        Called often.

    Returns
    -------
    Opened

    Raises
    ------
    TriageError
        When the recording, a signal database or the rule book cannot be used.
    Cancelled
        When the user stopped it.
    """
    # Imported here, on the worker: scipy and pandas take most of a second, and the start page need not wait.
    from triage.evidence.rulebook import load_rulebook  # noqa: PLC0415
    from triage.logs import read_log  # noqa: PLC0415
    from triage.run import run_triage  # noqa: PLC0415
    from triage.walk.assessment import Recording, assess  # noqa: PLC0415
    from ui.bench_opening import with_assessment  # noqa: PLC0415
    from ui.memory import keep, recall  # noqa: PLC0415
    from ui.presenters.entries import build_log_summary, build_wheel_rows  # noqa: PLC0415
    from ui.presenters.plot_data import build_plot_data  # noqa: PLC0415

    rulebook = load_rulebook()
    options, heard = recall(order)
    log = read_log(order.files, options, part_of(progress, 0.0, 0.5))
    log = log.noticed(*heard, *keep(order, log))
    result = run_triage(log, rulebook, vehicle=order.vehicle, progress=part_of(progress, 0.5, 1.0))
    if order.answers.given:
        recording = Recording(result.measurements, result.not_measurable)
        result = with_assessment(result, assess(order.answers, recording, rulebook))
    return Opened(
        result,
        causes={
            cause.id: CauseText(cause.title, cause.claim, cause.what_to_do)
            for cause in rulebook.causes.values()
        },
        measurement_titles={rule.id: rule.title for rule in rulebook.measurements.values()},
        answers=order.answers,
        rulebook=rulebook,
        plot_data=build_plot_data(result),
        log_summary=build_log_summary(log),
        wheel_rows=build_wheel_rows(log),
    )
