"""What the window shows right now, typed and without Qt."""
