"""Memory that stays with the process between one array and the next."""

from __future__ import annotations

import ctypes
import sys
from typing import Final

LARGEST_KEPT_BYTES: Final = 32_000_000
"""Somewhat below 32 MiB, the most that glibc takes for a usual piece."""

MOST_KEPT_BYTES: Final = 256_000_000
"""About what the work on an hour at 100 Hz frees; more is given back to the system."""

_TRIM_THRESHOLD: Final = -1
_MMAP_THRESHOLD: Final = -3
"""Numbers of the two settings in the C library's header ``malloc.h``."""


def keep_freed_memory() -> None:
    """Have the C library keep what is freed for the next arrays, of up to 32 MB each.

    Notes
    -----
    glibc gives an array of more than 128 kB back to the system as soon as it is freed, and the next one gets
    every page anew: on a recording of an hour that costs a tenth of all work (mallopt(3), M_MMAP_THRESHOLD
    and M_TRIM_THRESHOLD). Other C libraries have no such setting.
    """
    set_option = getattr(ctypes.CDLL(None), "mallopt", None) if sys.platform == "linux" else None
    if set_option is not None:
        set_option(_MMAP_THRESHOLD, LARGEST_KEPT_BYTES)
        set_option(_TRIM_THRESHOLD, MOST_KEPT_BYTES)
