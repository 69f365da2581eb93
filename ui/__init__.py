"""The window: opens a log, shows the wheels over time and the verdict with its evidence."""
