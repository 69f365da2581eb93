"""The product in parts against the plain one."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.one_core import product_on_one_core


@pytest.mark.parametrize("rows", [1, 7, 16, 100])
@pytest.mark.parametrize("height", [0, 1, 16, 33])
def test_parts_give_the_plain_product(rows: int, height: int) -> None:
    rng = np.random.default_rng(height)
    left, right = rng.normal(size=(height, 9)), rng.normal(size=(9, 5))
    assert product_on_one_core(left, right, rows=rows) == pytest.approx(left @ right, rel=1e-12, abs=1e-12)
