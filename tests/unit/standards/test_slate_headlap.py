from math import inf, nan

import pytest

from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.slate_headlap import BetweenPitches, PrintedLap, Reading, printed_laps, slate_headlap
from gaugerod.standards.table import OffTable


def lap(
    size: str,
    pitch_deg: float,
    exposure: Exposure = Exposure.MODERATE,
    *,
    reading: Reading = Reading.SAFER,
    between: BetweenPitches = BetweenPitches.NEXT_LOWER,
) -> float | str | None:
    length_mm, width_mm = map(float, size.split("x"))
    found = slate_headlap(
        length_mm=length_mm,
        width_mm=width_mm,
        pitch_deg=pitch_deg,
        exposure=exposure,
        edition=Edition.GB,
        reading=reading,
        between=between,
    )
    return found.headlap_mm if isinstance(found, PrintedLap) else "no row"


def test_between_printed_pitches_the_lower_one_answers() -> None:
    pitches = (29.9, 30.0, 30.1, 34.9, 35.0, 35.1)
    assert [85.0, 80.0, 80.0, 80.0, 70.0, 70.0] == [lap("600x300", pitch) for pitch in pitches]


def test_interpolated_it_lies_on_the_line_between_the_two() -> None:
    def on_the_line(size: str, pitch_deg: float) -> float | str | None:
        return lap(size, pitch_deg, reading=Reading.FIRST, between=BetweenPitches.INTERPOLATED)

    # 95 at 25, 85 at 27.5: a forum post that quotes the code for 500 × 250 at about 26 degrees has 91.
    assert on_the_line("500x250", 26.0) == pytest.approx(91.0)
    assert [55.0, 55.0, 52.5, 50.0] == [on_the_line("500x250", pitch) for pitch in (45.0, 75.0, 80.0, 85.0)]


def test_a_dash_is_not_recommended_and_never_interpolated_into() -> None:
    for between in BetweenPitches:
        assert lap("400x200", 29.9, between=between) is None
        assert lap("400x200", 30.0, between=between) == 80.0


def test_the_two_reproductions_are_both_shown_and_the_safer_answers() -> None:
    def readings(size: str, pitch_deg: float, exposure: Exposure) -> list[float | str | None]:
        return [lap(size, pitch_deg, exposure, reading=reading) for reading in Reading]

    assert [100.0, 120.0, 120.0] == readings("600x300", 30.0, Exposure.SEVERE)
    assert [70.0, 85.0, 85.0] == readings("600x300", 45.0, Exposure.VERY_SEVERE)
    # One recommends the size at 27.5 degrees, the other does not: the safer does not.
    assert [110.0, None, None] == readings("500x250", 27.5, Exposure.SEVERE)
    # Only one has the size: it alone answers.
    assert ["no row", 130.0, 130.0] == readings("450x225", 30.0, Exposure.SEVERE)
    assert [95.0, 100.0, 100.0] == readings("500x250", 25.0, Exposure.SHELTERED)


def test_sizes_a_little_larger_are_read_as_the_printed_size() -> None:
    sizes = ("499x250", "500x250", "510x255", "510x260", "510x261", "511x250")
    assert ["no row", 80.0, 80.0, 80.0, "no row", "no row"] == [lap(size, 30.0) for size in sizes]


@pytest.mark.parametrize("pitch_deg", [19.9, 0.0, -30.0, 90.0, nan, inf])
def test_off_the_table_there_is_no_row(pitch_deg: float) -> None:
    assert lap("500x300", pitch_deg) == "no row"


def test_off_the_table_the_scope_is_named() -> None:
    found = slate_headlap(
        length_mm=450.0, width_mm=300.0, pitch_deg=30.0, exposure=Exposure.MODERATE, edition=Edition.GB
    )
    assert isinstance(found, OffTable)
    assert "450 × 300" in found.says
    assert "nine printed sizes" in found.says


def test_no_lap_of_either_table_grows_with_the_pitch() -> None:
    for size in ("600x300", "500x300", "500x250", "400x250", "400x200", "300x200"):
        length_mm, width_mm = map(float, size.split("x"))
        for exposure in (Exposure.MODERATE, Exposure.SEVERE):
            for reading in range(2):
                laps = [
                    found[reading].headlap_mm or inf
                    for pitch in (20.0, 22.5, 25.0, 27.5, 30.0, 35.0, 40.0, 45.0)
                    if len(
                        found := printed_laps(
                            length_mm=length_mm,
                            width_mm=width_mm,
                            pitch_deg=pitch,
                            exposure=exposure,
                            edition=Edition.GB,
                        )
                    )
                    > reading
                ]
                assert sorted(laps, reverse=True) == laps
