"""The maintainer's own commands."""
