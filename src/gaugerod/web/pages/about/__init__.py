"""Settings, and what this program is not."""
