"""Measuring your own tile."""
