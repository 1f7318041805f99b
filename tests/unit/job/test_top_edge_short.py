"""A ridge or flashing too short for its cover: nothing that is offered instead may claim to mend it."""

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.set_out import set_out

PORCH = """
[job]
title = "Porch against the house wall"
exposure = "moderate"

[covering]
from = "flat-interlocking-420x330"

[[slope]]
name = "porch"
pitch = "35°"
across = "1.450 m"
rafters = ["0.905 m", "0.905 m"]
left = "verge"
right = "verge"
top = "abutment"

[set_out]
ridge_cover = "{reach} mm"
"""


def test_no_alternative_keeps_every_limit_while_the_flashing_is_too_short() -> None:
    found = set_out(read_job_text(PORCH.format(reach=150).encode()))
    assert found.alternatives
    assert not any(alternative.keeps_limits for _, alternative in found.alternatives)
    assert all("must still reach further down" in alternative.costs for _, alternative in found.alternatives)


def test_with_a_flashing_that_reaches_far_enough_one_does() -> None:
    found = set_out(read_job_text(PORCH.format(reach=178).encode()))
    assert any(alternative.keeps_limits for _, alternative in found.alternatives)
