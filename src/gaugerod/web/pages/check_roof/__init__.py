"""Checking a roof as it was built."""
