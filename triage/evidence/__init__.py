"""From measurements and answers to a probability for every (corner, cause)."""
