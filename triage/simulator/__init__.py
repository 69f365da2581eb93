"""Road tests with a known fault.

The chain is that of a real car: ``vehicle_path`` (speed and curvature) turns four wheels
(``wheel_motion``), each carries an ``encoder`` past a ``sensor``, the ``control_unit`` makes speeds of the
edges, the ``recorder`` samples them. ``setup`` draws car and equipment, ``faults`` changes one link, and
``road_test`` runs it all. Its only way out is a :class:`triage.speed_log.SpeedLog`.
"""
