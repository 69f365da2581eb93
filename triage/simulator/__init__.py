"""Road tests with a known fault, or two.

The chain is that of a real car: ``vehicle_path`` (speed and curvature) turns four wheels (``wheel_motion``,
with ``road_hits`` and ``slips``), each carries an ``encoder`` past a ``sensor``, the ``control_unit`` makes
speeds and counts of the edges (``plausibility``: what it doubts), the ``recorder`` samples them. ``setup``
draws the ``equipment`` and the drive, ``faults`` change one link, and ``road_test`` runs it all. Out of it
come a :class:`triage.speed_log.SpeedLog`, the edges behind it, and the ``truth``.
"""
