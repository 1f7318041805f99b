"""The wavefront: a roof closed over a plan by letting every eaves line move in as the height grows.

At any height the roof is cut by a level plane in closed lines: the fronts. A front moves in by its run for every
millimetre of rise; an upright wall does not move. Corners of fronts draw hips and valleys as they go; where two
fronts meet head-on they draw a ridge and vanish. The sweep goes from event to event (a side shrinks to nothing, an inner
corner runs into a side, a wall changes its pitch) and at each joins the lines anew, so any number of
events at one height are one case.
"""
