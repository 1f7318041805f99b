"""Measuring one slope."""
