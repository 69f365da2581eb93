"""Arrays one after the other are given the same pages."""

from __future__ import annotations

import platform
import subprocess
import sys

import pytest

COUNT_NEW_PAGES = """
import resource, sys
import numpy as np
from triage.memory import keep_freed_memory
if sys.argv[1] == "keep":
    keep_freed_memory()
work = lambda: [np.ones(1_000_000) for _ in range(12)]
work(), work()
before = resource.getrusage(resource.RUSAGE_SELF).ru_minflt
for _ in range(20):
    work()
print(resource.getrusage(resource.RUSAGE_SELF).ru_minflt - before)
"""


def _new_pages(how: str) -> int:
    command = [sys.executable, "-c", COUNT_NEW_PAGES, how]
    return int(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


@pytest.mark.skipif(platform.libc_ver()[0] != "glibc", reason="the C library is another than glibc")
def test_freed_memory_is_kept_for_the_next_array() -> None:
    """Twenty times twelve arrays of 8 MB: more, each and together, than what the library keeps by itself."""
    assert _new_pages("keep") < 0.1 * _new_pages("as it is")
