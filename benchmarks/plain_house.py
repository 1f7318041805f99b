"""The house of the benchmarks: hipped, 200 m² of plain tiles, as a job file."""

PLAIN_HOUSE = """
[job]
title = "Bench"
exposure = "moderate"
[covering]
from = "clay-plain-265x165"
[[building]]
name = "house"
outline = [["0 m", "0 m"], ["16 m", "0 m"], ["16 m", "9.5 m"], ["0 m", "9.5 m"]]
pitch = ["40°", "40°", "40°", "40°"]
rafter_spacing = "400 mm"
[set_out]
ridge_cover = "150 mm"
"""
