"""Rules of the trade: each answers within, outside or not covered, with its source."""
