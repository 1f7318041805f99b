"""The marks one at a time, to take up on the roof."""
