"""The workshop's own experience: what cars turned out to have, and what that does to the priors."""
