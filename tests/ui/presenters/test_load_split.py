from __future__ import annotations

from dataclasses import replace

import pytest

from triage.signals.load_split import Estimate, LoadShare
from triage.signals.measurement import Measurement
from ui.presenters.load_split import build_load_groups, build_load_sentences
from ui.state.opening import Opened


def share(load: str, wave: float | None, *, seconds: float = 30.0, losses: int = 2) -> LoadShare:
    estimate = None if wave is None else Estimate(wave, 0.001)
    return LoadShare(load, seconds, 20, estimate, estimate, losses, Estimate(60.0 * losses / seconds, 2.0))


SHARES = (share("outer", 0.02), share("straight", 0.004), share("inner", 0.003))


def test_values_come_in_per_cent_with_their_uncertainty() -> None:
    swing, noise, losses = build_load_groups(SHARES)
    assert [bar.value for bar in swing.bars] == pytest.approx([2.0, 0.4, 0.3])
    assert swing.bars[0].text == "2.00 ± 0.10"
    assert swing.full_scale == pytest.approx(2.1)
    assert (noise.unit, losses.unit) == ("%", "1/min")
    assert all(group.help.endswith(".") for group in (swing, noise, losses))


def test_a_difference_counts_from_three_standard_uncertainties() -> None:
    swing, _, losses = build_load_groups(SHARES)
    assert swing.verdict == "Clearly more when loaded than when relieved."
    assert losses.verdict == "No clear difference between loaded and relieved."
    turned, _, _ = build_load_groups((SHARES[2], SHARES[1], SHARES[0]))
    assert turned.verdict == "Clearly less when loaded than when relieved."


def test_what_was_not_driven_is_said_with_the_driving_that_helps(opened: Opened) -> None:
    shares = (share("outer", None, seconds=1.0), SHARES[1], SHARES[2])
    swing, _, _ = build_load_groups(shares)
    assert swing.bars[0].value is None
    assert swing.bars[0].text == "too little driving (1 s)"
    assert swing.verdict == "Loaded and relieved cannot be compared."
    assert "Five steady curves to each side" in build_load_sentences(opened, 0, shares)[-1]


def test_the_curves_that_load_a_wheel(opened: Opened) -> None:
    left, right = (build_load_sentences(opened, row, SHARES)[0] for row in (0, 1))
    assert "outer, loaded one in right-hand curves" in left
    assert "outer, loaded one in left-hand curves" in right


def test_measurements_and_their_lack_are_told_for_this_wheel_alone(opened: Opened) -> None:
    measured = Measurement("loaded-line", "FL", 1.03, 0.31, "%", 100, ())
    result = replace(opened.result, measurements=(measured,))
    told = replace(opened, result=result, measurement_titles={"loaded-line": "Line under side load"})
    assert "The verdict takes in: Line under side load: 1.03 ± 0.31 %." in build_load_sentences(
        told, 0, SHARES
    )
    assert not any("Line under" in text for text in build_load_sentences(told, 1, SHARES))
    missing = [text for text in build_load_sentences(told, 2, SHARES) if text.startswith("Not measurable")]
    (told_once,) = missing
    assert told_once.startswith("Not measurable: Side load contrast. Too few curves.")
    assert told_once.endswith("Would help: Two brisk curves in either direction.")
