"""What to do next, what it costs, and when to stop looking and repair."""
