"""Wheel-end triage: from a road-test log to a ranked, explained verdict. Imports no Qt."""

__version__ = "0.1.0"
