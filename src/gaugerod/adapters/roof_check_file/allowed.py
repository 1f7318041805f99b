"""Which lengths make sense on a roof to check. House limits: they catch slips of unit and of the pen."""

from gaugerod.adapters.job_file.allowed import Allowed

MARGIN = Allowed(least_mm=5, greatest_mm=2_000, what="the visible margin of one course, tail to tail")
OVERHANG = Allowed(least_mm=0, greatest_mm=500, what="the first tail past the fascia face, on the slope")
