"""How the edges are made: ridges, hips, verges, valleys, walls, eaves and openings."""
