"""Which checks fit the car (some are done at one kind of sensor only), and which were asked already."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from triage.corners import CORNERS, VEHICLE
from triage.evidence.check_tables import Check
from triage.evidence.hypotheses import Finding
from triage.evidence.likelihoods import SOUND
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


def kind_shares(rulebook: Rulebook) -> Mapping[str, float]:
    """Return how often each kind of sensor is met on a car of which nothing is known."""
    check = sensor_check(rulebook)
    return dict(zip(check.outcomes, check.table.rows[SOUND], strict=True)) if check else {}


def asked_already(findings: Sequence[Finding], rulebook: Rulebook) -> frozenset[str]:
    """Return what need not be asked again, as ``check@place``.

    A check done once for the whole car, whose answer may name a wheel, is answered for all of them.
    """
    once = {one.source for one in findings if one.source in rulebook.checks}
    once = {name for name in once if rulebook.checks[name].names_corner}
    return frozenset(one.id for one in findings) | {
        f"{name}@{place}" for name in once for place in (*CORNERS, VEHICLE)
    }
