"""A product of matrices that starts no threads."""

from __future__ import annotations

import numpy as np

from triage.speed_log import FloatArray


def product_on_one_core(left: FloatArray, right: FloatArray, *, rows: int) -> FloatArray:
    """Multiply two matrices by so many rows at a time, few enough for one core.

    A larger product is shared out to threads that stay awake for a while after it, in the way of whoever
    works beside.
    """
    product = np.empty((len(left), right.shape[1]))
    for begin in range(0, len(left), rows):
        part = slice(begin, begin + rows)
        product[part] = left[part] @ right
    return product
