"""Work on several wheels at once: the order of results, failures, stopping, and no threads within threads."""

from __future__ import annotations

import threading
import time

import pytest

from triage.progress import Cancelled
from triage.side_by_side import WORKERS, both, map_side_by_side


def test_results_come_in_the_order_of_the_items() -> None:
    def late_if_early(number: int) -> int:
        time.sleep(0.02 if number == 0 else 0.0)
        return number * number

    heard: list[int] = []
    assert map_side_by_side(late_if_early, range(6), done=heard.append) == [0, 1, 4, 9, 16, 25]
    assert heard == [1, 2, 3, 4, 5, 6]


def test_what_goes_wrong_is_raised_and_the_rest_left_out() -> None:
    begun: list[int] = []

    def fail_at_first(number: int) -> None:
        begun.append(number)
        time.sleep(0.01)
        if number == 0:
            raise ValueError("first")

    with pytest.raises(ValueError, match="first"):
        map_side_by_side(fail_at_first, range(100))
    assert len(begun) < 50


def test_who_hears_of_results_can_stop_the_rest() -> None:
    begun: list[int] = []

    def work(number: int) -> None:
        begun.append(number)
        time.sleep(0.01)

    def stop(_count: int) -> None:
        raise Cancelled

    with pytest.raises(Cancelled):
        map_side_by_side(work, range(100), done=stop)
    assert len(begun) < 50


def test_threads_start_no_threads() -> None:
    def nested(number: int) -> list[str]:
        return map_side_by_side(lambda _: threading.current_thread().name, range(3))

    names = {name for inner in map_side_by_side(nested, range(8)) for name in inner}
    assert 1 <= len(names) <= WORKERS
    assert threading.current_thread().name not in names


def test_both_results_and_both_failures_arrive() -> None:
    assert both(lambda: 1, lambda: "two") == (1, "two")
    with pytest.raises(ZeroDivisionError):
        both(lambda: 1 // 0, lambda: 2)
    with pytest.raises(ZeroDivisionError):
        both(lambda: 1, lambda: 1 // 0)
