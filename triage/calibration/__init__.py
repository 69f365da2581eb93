"""Making the likelihood tables from simulated road tests, and judging how far the verdicts can be believed.

Run ``python -m triage.calibration --help``. No part of the program's daily work; it writes
``rules/likelihoods.toml``.
"""
