"""Exercises for trainees: hidden faults, answers that cost time, and what a trainee's work was worth."""
