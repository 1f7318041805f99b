"""Battens: their lines on every slope, the joints of each line, the lengths they are cut from, and their nails."""
