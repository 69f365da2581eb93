"""Qt panels. Each knows the window's state and no other panel."""
