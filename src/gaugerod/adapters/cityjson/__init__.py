"""Measured roofs from CityJSON 1.1 and 2.0."""
