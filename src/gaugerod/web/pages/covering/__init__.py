"""Choosing the covering."""
