"""``python -m triage.planning.excess_paid``: what is really paid above the cost of knowing.

Cars of the simulated workshops are worked on by the plan. Before every step two numbers are taken by the
belief of that moment: what repairing at once would cost above the cost of one who knows the cause, and, when
the car is right, what was paid from there on above it. Sorted by the first, the second shows how much the
possibility to look again is worth: what :mod:`triage.planning.cost_to_go` rests on.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from typing import Final

import numpy as np

from triage.evidence.rulebook import load_rulebook
from triage.planning.look_ahead import cost_of_acting
from triage.planning.simulated_cars import Car, Shop, draw_car, open_shop
from triage.planning.simulated_workshops import planned
from triage.speed_log import FloatArray

CLASSES: Final = 10


def collect_excess(shop: Shop, cars: int, *, seed: int) -> FloatArray:
    """Return for every step its excess by repairing at once, and the excess paid; float64[steps, 2]."""
    return np.concatenate([_steps_of(draw_car(shop, seed=seed, number=i), shop) for i in range(cars)])


def _steps_of(car: Car, shop: Shop) -> FloatArray:
    repairing, knowing, before = [], [], []
    while not car.right:
        repairing.append(cost_of_acting(car.desk, car.share[np.newaxis], car.is_open).item())
        knowing.append(float(car.share @ car.desk.knowing_money(car.is_open)))
        before.append(car.money)
        planned(car, shop)
    paid = car.money - np.array(before)
    return np.column_stack((np.array(repairing) - knowing, paid - knowing))


def format_excess(excess: FloatArray) -> str:
    """Write down both by classes of equally many steps; ``+-`` takes the steps of a car as independent."""
    lines = [f"{'repairing at once':>18}{'paid':>8}{'+-':>6}{'steps':>7}"]
    for rows in np.array_split(excess[np.argsort(excess[:, 0])], CLASSES):
        mean, spread = rows.mean(axis=0), rows[:, 1].std() / np.sqrt(len(rows))
        lines.append(f"{mean[0]:>18.0f}{mean[1]:>8.0f}{spread:>6.0f}{len(rows):>7}")
    return "\n".join(lines) + "\n"


def main(argv: Sequence[str] | None = None) -> int:
    """Work on the cars and print the table."""
    ask = argparse.ArgumentParser(prog="python -m triage.planning.excess_paid")
    ask.add_argument("--cars", type=int, default=500, help="cars (500)")
    ask.add_argument("--seed", type=int, default=201)
    given = ask.parse_args(argv)
    rulebook = load_rulebook()
    sys.stdout.write(
        format_excess(collect_excess(open_shop(rulebook, rulebook), given.cars, seed=given.seed))
    )
    return 0


if __name__ == "__main__":
    sys.exit(main())
