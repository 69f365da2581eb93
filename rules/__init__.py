"""The rule book as data: causes, measurements, likelihoods, checks, cautions and sources. No code."""
