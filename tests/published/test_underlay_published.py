"""Underlay against what was read in print. Each case names its source; none was computed here."""

from typing import NamedTuple

import pytest

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.finding import Verdict
from gaugerod.basis.limit import Limit
from gaugerod.coverings.underlay import LabelRating, Resistance, Support, UnderlayRecord
from gaugerod.rules.underlay_lap import underlay_lap
from gaugerod.rules.underlay_type import counts_as, underlay_type
from gaugerod.rules.underlay_wind import UpliftSite, underlay_wind
from gaugerod.standards.edition import Edition
from gaugerod.standards.table import OffTable
from gaugerod.standards.underlay import (
    UnderlayFigure,
    underlay_figure,
    underlay_lap_least,
    underlay_zone_pressure,
)

GB = Edition.GB
RAFTERS, DECK = Support.RAFTERS, Support.RIGID_INSULATION


class Lap(NamedTuple):
    """One printed cell of the laps, at a pitch inside its band."""

    pitch_deg: float
    support: Support
    printed_mm: float


# Horizontal laps of BS 5534 as quoted in an independent consultant's trade article on underlay, printed for 12.5 to 14, 15 to
# 34, and 35 degrees and over; each end of each band.
LAPS = [
    Lap(12.5, RAFTERS, 225.0), Lap(14.0, RAFTERS, 225.0), Lap(15.0, RAFTERS, 150.0), Lap(34.0, RAFTERS, 150.0),
    Lap(35.0, RAFTERS, 100.0), Lap(60.0, RAFTERS, 100.0), Lap(12.5, DECK, 150.0), Lap(14.0, DECK, 150.0),
    Lap(15.0, DECK, 100.0), Lap(34.0, DECK, 100.0), Lap(35.0, DECK, 75.0), Lap(60.0, DECK, 75.0),
]  # fmt: skip


@pytest.mark.parametrize("case", LAPS)
def test_the_horizontal_lap_is_the_printed_one(case: Lap) -> None:
    least = underlay_lap_least(GB, pitch_deg=case.pitch_deg, fully_supported=case.support.full)
    assert isinstance(least, Limit)
    assert case.printed_mm == least.value
    for lap_mm, verdict in ((case.printed_mm, Verdict.WITHIN), (case.printed_mm - 1, Verdict.OUTSIDE)):
        found = underlay_lap(
            where="rear", lap_mm=lap_mm, pitch_deg=case.pitch_deg, fully_supported=case.support.full, edition=GB
        )
        assert verdict is found[0].verdict


def test_below_12_5_degrees_the_table_does_not_reach() -> None:
    """Source: the same article: the table starts at 12.5 degrees."""
    assert isinstance(underlay_lap_least(GB, pitch_deg=12.4, fully_supported=False), OffTable)


def test_the_trade_body_asks_150_or_100_from_35_degrees() -> None:
    """Source: roof tile trade association, technical library: 150 mm, reducible to 100 mm at 35 degrees and over."""
    for pitch_deg, lap_mm in ((20.0, 150.0), (34.0, 150.0), (35.0, 100.0)):
        found = underlay_lap(where="rear", lap_mm=lap_mm, pitch_deg=pitch_deg, fully_supported=False, edition=GB)
        assert lap_mm == found[1].limit
        assert "trade association" in found[1].citation.source


@pytest.mark.parametrize(
    ("which", "printed"),
    [
        # Roof tile trade association, technical library, and an independent consultant's article: side laps.
        (UnderlayFigure.SIDE_LAP_LEAST, 100.0),
        # Roof tile trade association, technical library, and NHBC Standards 2024 7.2.14.
        (UnderlayFigure.EAVES_CARRIER_LAP_LEAST, 150.0),
        (UnderlayFigure.RIDGE_BEDDED_OVER_LEAST, 150.0),
        (UnderlayFigure.RIDGE_BEDDED_OVER_LEAST_STEEP, 100.0),
        (UnderlayFigure.RIDGE_DRY_STOP_SHORT, 30.0),
        (UnderlayFigure.MONO_RIDGE_OVER_LEAST_OTHER, 100.0),
        (UnderlayFigure.HIP_PAST_LEAST, 150.0),
        (UnderlayFigure.VALLEY_OVER_STRIP_LEAST, 150.0),
        (UnderlayFigure.ABUTMENT_TURN_UP_LEAST, 100.0),
        (UnderlayFigure.DRAPE_NOMINAL, 10.0),
        # A trade page on choosing underlay; a trade page on zones.
        (UnderlayFigure.ZONE_ALTITUDE_GREATEST, 100.0),
        (UnderlayFigure.ZONE_RIDGE_GREATEST, 15.0),
    ],
)  # fmt: skip
def test_a_figure_is_the_printed_one(which: UnderlayFigure, printed: float) -> None:
    assert printed == underlay_figure(GB, which).value
    assert Basis.PUBLISHED is underlay_figure(GB, which).citation.basis


@pytest.mark.parametrize(("zone", "printed_pa"), [(1, 820.0), (2, 975.0), (3, 1150.0), (4, 1330.0), (5, 1600.0)])
def test_the_zone_pressure_is_the_printed_one(zone: int, printed_pa: float) -> None:
    """Source: a professional development article (2018 on) quoting BS 5534:2014+A2:2018 Annex A."""
    pressure = underlay_zone_pressure(GB, zone=zone)
    assert isinstance(pressure, Limit)
    assert printed_pa == pressure.value
    site = UpliftSite(zone=zone, altitude_m=100.0, ridge_height_m=15.0, on_hill_or_cliff=False, ceiling_sealed=True)

    def verdict(resistance_pa: float) -> Verdict:
        label = LabelRating(resistance_pa=resistance_pa, gauge_mm=345.0, lap_restrained=False)
        found = underlay_wind(
            where="rear", site=site, pitch_deg=35.0, fully_supported=False, ratings=[label], gauge_mm=345.0,
            laps_restrained=False, edition=GB,
        )  # fmt: skip
        return found[-1].verdict

    assert (Verdict.WITHIN, Verdict.OUTSIDE) == (verdict(printed_pa), verdict(printed_pa - 1))


def membrane(*, vapour: float | None = None, air: float | None = None) -> UnderlayRecord:
    says = Citation(source="its label", basis=Basis.PUBLISHED)
    return UnderlayRecord(
        title="membrane",
        roll_width_mm=1000.0,
        roll_length_mm=50000.0,
        resistance=Resistance.LOW,
        vapour_resistance=None if vapour is None else Limit(value=vapour, unit="MN.s/g", citation=says),
        air_permeability=None if air is None else Limit(value=air, unit="m3/(m2.h) at 50 Pa", citation=says),
        citation=says,
    )


def test_low_resistance_is_below_a_quarter() -> None:
    """Source: NHBC Standards 2024 7.2.14: low below 0.25 MN·s/g, high above it."""
    verdicts = [
        underlay_type(where="rear", record=membrane(vapour=value), edition=GB)[0].verdict
        for value in (0.24, 0.25, 0.26)
    ]
    assert [Verdict.WITHIN, Verdict.NOT_COVERED, Verdict.OUTSIDE] == verdicts


def test_low_resistance_on_boards_counts_as_high() -> None:
    """Source: NHBC Standards 2024 7.2.14."""
    assert Resistance.HIGH is counts_as(record=membrane(), support=Support.BOARDS)


def test_two_sources_draw_the_line_of_air_permeable_at_20_and_at_34() -> None:
    """Source: a merchant's note on BS 5534 A2 (20), NHBC Standards 2024 7.2.14 (34), in m³/(m²·h) at 50 Pa."""
    for air, verdicts in (
        (19.9, [Verdict.NOT_COVERED, Verdict.NOT_COVERED]),
        (20.0, [Verdict.WITHIN, Verdict.NOT_COVERED]),
        (33.9, [Verdict.WITHIN, Verdict.NOT_COVERED]),
        (34.0, [Verdict.WITHIN, Verdict.WITHIN]),
    ):
        assert verdicts == [
            found.verdict for found in underlay_type(where="rear", record=membrane(air=air), edition=GB)
        ]
