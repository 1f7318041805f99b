"""Benchmarks, as ratios measured in one run."""
