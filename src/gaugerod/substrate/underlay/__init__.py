"""Underlay: its runs from eaves to ridge, their laps against the battens, its strips, and the rolls it takes."""
