"""Keeping what libraries say to their developers from the user's terminal."""

from __future__ import annotations

import logging
import warnings
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def quiet(*libraries: str) -> Iterator[None]:
    """Silence the logs and warnings of libraries; what matters of them is told by our own messages.

    Parameters
    ----------
    libraries : str
        Names of their top loggers.
    """
    loggers = [logging.getLogger(name) for name in libraries]
    levels = [logger.level for logger in loggers]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        for logger in loggers:
            logger.setLevel(logging.CRITICAL + 1)
        try:
            yield
        finally:
            for logger, level in zip(loggers, levels, strict=True):
                logger.setLevel(level)
