"""The walk through questions, checks and repairs: one at a time, saved as they are answered."""
