"""A real gable roof surveyed from the air: pitches and sloped area against those its publisher prints with it.

Source: 3DBAG, building NL.IMBAG.Pand.0851100000000564, LoD 2.2, CC BY 4.0: the attributes ``b3_hellingshoek`` (pitch of
each roof plane) and ``b3_opp_dak_schuin`` (sloped roof area, printed to 0.1 m²) beside the geometry.
The file itself is not part of this project: it is read from a folder ``shared/data`` beside it, when there is one.
"""

from pathlib import Path

import pytest

from gaugerod.adapters.cityjson.read import job_text_from_cityjson
from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.geometry.polygon import signed_area_mm2

SURVEY = Path(__file__).parents[3] / "shared" / "data" / "3dbag_gable_0851100000000564.city.json"

PITCHES_DEG = (26.4351, 27.1986)
PITCH_TOLERANCE_DEG = 0.02
"""The publisher fits its planes to the cloud of points; the file holds their corners to a millimetre."""
SLOPED_AREA_M2 = 77.2
HALF_THE_LAST_PLACE_M2 = 0.05


@pytest.mark.skipif(not SURVEY.is_file(), reason="the survey is not part of the project and is not at hand")
def test_the_surveyed_gable_has_the_pitches_and_the_area_its_publisher_prints() -> None:
    slopes = read_job_text(job_text_from_cityjson(SURVEY.read_bytes(), title="surveyed gable").encode()).slopes
    assert pytest.approx(PITCHES_DEG, abs=PITCH_TOLERANCE_DEG) == tuple(slope.pitch_deg for slope in slopes)
    areas_mm2 = [signed_area_mm2(slope.outline.points_mm) for slope in slopes if slope.outline is not None]
    assert pytest.approx(SLOPED_AREA_M2, abs=HALF_THE_LAST_PLACE_M2) == sum(areas_mm2) / 1e6
