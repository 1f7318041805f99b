"""Underlay and battens: what lies between the rafters and the covering."""
