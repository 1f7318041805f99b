"""The job in money."""
