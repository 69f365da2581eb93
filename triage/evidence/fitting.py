"""Which checks fit the car: some electrical ones are done at one kind of sensor only."""

from __future__ import annotations

from collections.abc import Sequence

from triage.evidence.check_tables import Check
from triage.evidence.hypotheses import Finding
from triage.evidence.rule_tables import Rulebook


def known_sensor(findings: Sequence[Finding], rulebook: Rulebook) -> str | None:
    """Return the kind of sensor the answers tell, None when they do not."""
    for finding in findings:
        check = rulebook.checks.get(finding.source)
        if check is not None and check.tells_sensor:
            return max(finding.band_probability, key=lambda kind: finding.band_probability[kind])
    return None


def fits(check: Check, sensor: str | None) -> bool:
    """Say whether a check can be done at a kind of sensor, and is one that can tell a fault.

    With a kind that nobody knows yet, every check fits.
    """
    return not check.tells_sensor and (sensor is None or not check.sensors or sensor in check.sensors)


def sensor_check(rulebook: Rulebook) -> Check | None:
    """Return the check that tells the kind of sensor, None when the rule book has none."""
    return next((check for check in rulebook.checks.values() if check.tells_sensor), None)
