"""One file per kind of measurement; :mod:`triage.signals.measures.table` lists them all."""
