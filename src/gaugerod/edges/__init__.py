"""Ridge, hip, verge, valley, abutment, eaves and openings: how each is made, its units, its lead, its air."""
