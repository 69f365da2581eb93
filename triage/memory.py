"""Memory that stays with the process between one array and the next."""

from __future__ import annotations

from typing import Final

import numpy as np

LARGEST_KEPT_BYTES: Final = 32_000_000
"""Somewhat below 32 MiB, beyond which the C library adjusts itself to no piece."""


def keep_freed_memory() -> None:
    """Have the C library keep what is freed for the next arrays, of up to 32 MB each.

    Notes
    -----
    glibc gives an array of more than 128 kB back to the system as soon as it is freed, and the next one gets
    every page anew: on a recording of an hour that costs a tenth of all work. But it takes the largest piece
    that was ever freed for one of the usual ones, and keeps those (mallopt(3), M_MMAP_THRESHOLD and
    M_TRIM_THRESHOLD). The piece asked for here is never touched; other C libraries do not mind it.
    """
    np.empty(LARGEST_KEPT_BYTES, dtype=np.uint8)
