"""Setting out: courses up the slope, perps across it."""
