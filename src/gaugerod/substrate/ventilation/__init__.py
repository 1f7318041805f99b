"""Ventilation: the openings of one roof at its eaves and at high level."""
