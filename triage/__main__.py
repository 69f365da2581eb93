"""Lets ``python -m triage`` do what ``wheel-triage`` does."""

from __future__ import annotations

import sys

from triage.command_line import main

if __name__ == "__main__":
    sys.exit(main())
