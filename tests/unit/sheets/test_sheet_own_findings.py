"""A slope's sheet tells its own findings and the job's; what stops another slope stands on that slope's sheet only."""

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.set_out import set_out
from gaugerod.sheets.not_set_out_sheet import not_set_out_sheet
from gaugerod.sheets.setting_out_sheet import setting_out_sheet
from gaugerod.sheets.sheet import Alarm, PaperSize

JOB = """
[job]
title = "Nave and aisle"
exposure = "severe"
[covering]
from = "slate-500x250"
[[slope]]
name = "nave"
pitch = "50°"
across = "12 m"
rafters = ["6.2 m"]
left = "verge"
right = "verge"
top = "ridge"
[[slope]]
name = "aisle"
pitch = "24°"
across = "12 m"
rafters = ["2.8 m"]
left = "verge"
right = "verge"
top = "abutment"
[set_out]
ridge_cover = "175 mm"
"""


def test_a_slope_that_could_not_be_set_out_raises_no_alarm_on_its_neighbours_sheet() -> None:
    result = set_out(read_job_text(JOB.encode()))
    nave = setting_out_sheet(result, result.slopes[0], size=PaperSize.A4)
    assert not any("aisle" in str(block) for block in nave.blocks)
    aisle = not_set_out_sheet(result, result.not_set_out[0], size=PaperSize.A4)
    assert any(isinstance(block, Alarm) and "NOT SET OUT" in block.title for block in aisle.blocks)
