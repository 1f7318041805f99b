"""The rules for plain tiles and slates against what their sources print.

NHBC: NHBC Standards 2020, 7.2.19 Table 12 (limits), and 7.2.19 Table 21 with its text (pitch of clay tiles).
HEADLAPS: BS 5534:1997 headlap tables for natural slate as three suppliers reproduce them; FIRST and SECOND where the
reproductions differ. "-": the size is not recommended at that pitch.
"""

from dataclasses import replace

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap import MadeTo
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.rules.plain_tile import greatest_headlap, plain_tile_headlap, plain_tile_pitch
from gaugerod.rules.slate_lap_missing import slate_lap_missing
from gaugerod.rules.slates import slate_headlap_least, slate_laps, slate_pitch
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.slate_headlap import Reading

PITCHES_DEG = (20.0, 22.5, 25.0, 27.5, 30.0, 35.0, 40.0, 45.0)
HEADLAPS = (
    ("600x300", Exposure.MODERATE, Reading.FIRST, "- - 95 85 80 70 60 55"),
    ("500x300", Exposure.MODERATE, Reading.FIRST, "115 105 95 85 80 70 60 55"),
    ("500x250", Exposure.MODERATE, Reading.FIRST, "- - 95 85 80 70 60 55"),
    ("400x200", Exposure.MODERATE, Reading.FIRST, "- - - - 80 70 60 55"),
    ("300x200", Exposure.MODERATE, Reading.FIRST, "- - - - 80 70 60 55"),
    ("500x300", Exposure.SEVERE, Reading.FIRST, "- 130 120 110 100 90 80 70"),
    ("500x300", Exposure.SEVERE, Reading.SECOND, "- 130 120 110 100 90 80 70"),
    ("600x300", Exposure.SEVERE, Reading.FIRST, "- - - - 100 90 80 70"),
    ("600x300", Exposure.SEVERE, Reading.SECOND, "- - - - 120 110 90 85"),
    ("500x250", Exposure.SEVERE, Reading.FIRST, "- - - 110 100 90 80 70"),
    ("500x250", Exposure.SEVERE, Reading.SECOND, "- - - - 120 105 100 95"),
    ("400x250", Exposure.SEVERE, Reading.SECOND, "- - - - 100 90 80 70"),
    ("400x200", Exposure.SEVERE, Reading.SECOND, "- - - - - 110 105 100"),
    ("350x200", Exposure.SEVERE, Reading.SECOND, "- - - - 100 90 80 70"),
)


@pytest.mark.parametrize(("size", "exposure", "reading", "printed"), HEADLAPS)
def test_slate_headlaps_are_the_printed_ones(size: str, exposure: Exposure, reading: Reading, printed: str) -> None:
    least = [
        slate_headlap_least(
            slate=sized_slate(f"slate-{size}"),
            pitch_deg=pitch_deg,
            exposure=exposure,
            edition=Edition.GB,
            reading=reading,
        )
        for pitch_deg in PITCHES_DEG
    ]
    assert printed == " ".join("-" if limit is None else f"{limit.value:g}" for limit in least)


@pytest.mark.parametrize(("size", "exposure"), dict.fromkeys((size, exposure) for size, exposure, _, _ in HEADLAPS))
def test_a_size_that_is_not_recommended_is_told_with_the_least_pitch_printed_for_it(
    size: str, exposure: Exposure
) -> None:
    lowest_deg = {
        PITCHES_DEG[next(at for at, lap in enumerate(printed.split()) if lap != "-")]
        for row_size, row_exposure, _, printed in HEADLAPS
        if (row_size, row_exposure) == (size, exposure)
    }
    told = slate_lap_missing(
        where="", slate=sized_slate(f"slate-{size}"), pitch_deg=20.0, exposure=exposure, edition=Edition.GB
    )
    assert lowest_deg - {20.0} <= {finding.limit for finding in told}


def test_nhbc_plain_tile_limits() -> None:
    """Headlap 65 mm, 75 mm in severe exposure; pitch 35 degrees, 40 for clay not to the sizes of BS EN 1304."""
    tile = plain_tile("clay-plain-265x165")
    laps = [
        plain_tile_headlap(tile=tile, exposure=each, edition=Edition.GB).value
        for each in (Exposure.MODERATE, Exposure.SEVERE)
    ]
    assert [65.0, 75.0] == laps
    pitches = [
        plain_tile_pitch(where="", pitch_deg=45.0, tile=replace(tile, made_to=made), edition=Edition.GB).limit
        for made in (MadeTo.BS_EN_1304, None)
    ]
    assert [35.0, 40.0] == pitches


def test_nhbc_slate_limits() -> None:
    """Pitch 20 degrees at least, headlap 54 mm at least, and a third of the length at most."""
    assert slate_pitch(where="", pitch_deg=30.0, edition=Edition.GB).limit == 20.0
    found = slate_laps(
        where="",
        least_lap_mm=53.9,
        greatest_lap_mm=53.9,
        slate=sized_slate("slate-500x300"),
        pitch_deg=85.0,
        exposure=Exposure.MODERATE,
        edition=Edition.GB,
    )
    floor = next(finding for finding in found if finding.rule == "headlap floor")
    assert (54.0, Verdict.OUTSIDE) == (floor.limit, floor.verdict)
    assert greatest_headlap(where="", headlap_mm=80.0, length_mm=300.0, edition=Edition.GB).limit == 100.0
