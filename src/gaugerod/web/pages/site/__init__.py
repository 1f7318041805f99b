"""The job itself: title, exposure, units."""
