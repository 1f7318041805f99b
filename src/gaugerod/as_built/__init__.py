"""The as-built check: what was nailed or laid, held against what the covering needs; which lap leaks first, what cures it."""
