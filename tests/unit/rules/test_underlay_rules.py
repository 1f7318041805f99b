"""Rules of underlay at their limits, and figures that cannot be."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.basis.limit import Limit
from gaugerod.coverings.underlay import LabelRating, Resistance
from gaugerod.rules.underlay_lap import underlay_lap
from gaugerod.rules.underlay_type import underlay_type
from gaugerod.rules.underlay_wind import UpliftSite, underlay_wind
from gaugerod.standards.edition import Edition
from tests.scenario.underlaid_slopes import MEMBRANE

NO_FIGURES = [float("nan"), float("inf"), -1.0, 0.0]
SITE = UpliftSite(zone=3, altitude_m=100.0, ridge_height_m=15.0, on_hill_or_cliff=False, ceiling_sealed=True)
LABEL = LabelRating(resistance_pa=1150.0, gauge_mm=345.0, lap_restrained=False)


def uplift(
    site: UpliftSite = SITE,
    *,
    pitch_deg: float = 35.0,
    ratings: tuple[LabelRating, ...] = (LABEL,),
    gauge_mm: float | None = 345.0,
    held: bool = True,
) -> Verdict:
    return underlay_wind(
        where="rear",
        site=site,
        pitch_deg=pitch_deg,
        fully_supported=False,
        ratings=ratings,
        gauge_mm=gauge_mm,
        laps_restrained=held,
        edition=Edition.GB,
    )[-1].verdict


@pytest.mark.parametrize(
    ("site", "verdict"),
    [
        (replace(SITE, altitude_m=99.9), Verdict.WITHIN),
        (replace(SITE, altitude_m=100.1), Verdict.NOT_COVERED),
        (replace(SITE, altitude_m=None), Verdict.NOT_COVERED),
        (replace(SITE, ridge_height_m=14.9), Verdict.WITHIN),
        (replace(SITE, ridge_height_m=15.1), Verdict.NOT_COVERED),
        (replace(SITE, ridge_height_m=None), Verdict.NOT_COVERED),
        (replace(SITE, on_hill_or_cliff=True), Verdict.NOT_COVERED),
        (replace(SITE, on_hill_or_cliff=None), Verdict.NOT_COVERED),
        (replace(SITE, ceiling_sealed=False), Verdict.NOT_COVERED),
        (replace(SITE, ceiling_sealed=None), Verdict.NOT_COVERED),
        (replace(SITE, zone=None), Verdict.NOT_COVERED),
        (replace(SITE, zone=6), Verdict.NOT_COVERED),
        (replace(SITE, zone=4), Verdict.OUTSIDE),
        (replace(SITE, zone=2), Verdict.WITHIN),
    ],
)  # fmt: skip
def test_a_gate_that_is_not_passed_leaves_the_label_unjudged(site: UpliftSite, verdict: Verdict) -> None:
    assert verdict is uplift(site)


@pytest.mark.parametrize(
    ("pitch_deg", "verdict"),
    [
        (12.4, Verdict.NOT_COVERED), (12.5, Verdict.WITHIN), (12.6, Verdict.WITHIN), (74.9, Verdict.WITHIN),
        (75.0, Verdict.WITHIN), (75.1, Verdict.NOT_COVERED),
    ],
)  # fmt: skip
def test_the_pitch_is_a_gate_as_well(pitch_deg: float, verdict: Verdict) -> None:
    assert verdict is uplift(pitch_deg=pitch_deg)


def test_the_strongest_line_of_the_label_that_reaches_the_gauge_answers() -> None:
    close = LabelRating(resistance_pa=1600.0, gauge_mm=250.0, lap_restrained=True)
    assert Verdict.OUTSIDE is uplift(replace(SITE, zone=5), ratings=(LABEL, close), gauge_mm=250.1)
    assert Verdict.WITHIN is uplift(replace(SITE, zone=5), ratings=(LABEL, close), gauge_mm=250.0)
    assert Verdict.OUTSIDE is uplift(replace(SITE, zone=5), ratings=(LABEL, close), gauge_mm=250.0, held=False)
    assert Verdict.NOT_COVERED is uplift(ratings=())
    assert Verdict.NOT_COVERED is uplift(gauge_mm=None)


@pytest.mark.parametrize(("resistance_pa", "verdict"), [(1149.9, Verdict.OUTSIDE), (1150.1, Verdict.WITHIN)])
def test_the_label_is_judged_just_below_and_just_above(resistance_pa: float, verdict: Verdict) -> None:
    assert verdict is uplift(ratings=(replace(LABEL, resistance_pa=resistance_pa),))


def test_on_a_deck_the_zones_say_nothing() -> None:
    (only,) = underlay_wind(
        where="rear", site=SITE, pitch_deg=35.0, fully_supported=True, ratings=(LABEL,), gauge_mm=345.0,
        laps_restrained=True, edition=Edition.GB,
    )  # fmt: skip
    assert Verdict.NOT_COVERED is only.verdict


@pytest.mark.parametrize("figure", NO_FIGURES)
def test_figures_that_cannot_be_are_refused(figure: float) -> None:
    with pytest.raises(NothingToSetOut):
        uplift(pitch_deg=figure)
    with pytest.raises(NothingToSetOut):
        uplift(replace(SITE, altitude_m=figure))
    with pytest.raises(NothingToSetOut):
        uplift(ratings=(replace(LABEL, gauge_mm=figure),))
    with pytest.raises(NothingToSetOut):
        uplift(ratings=(replace(LABEL, resistance_pa=figure),))
    with pytest.raises(NothingToSetOut):
        uplift(gauge_mm=figure)
    with pytest.raises(NothingToSetOut):
        underlay_lap(where="rear", lap_mm=100.0, pitch_deg=figure, fully_supported=False, edition=Edition.GB)
    label = Limit(value=figure, unit="MN.s/g", citation=house("label"))
    for record in (replace(MEMBRANE, vapour_resistance=label), replace(MEMBRANE, air_permeability=label)):
        with pytest.raises(NothingToSetOut):
            underlay_type(where="rear", record=record, edition=Edition.GB)


@pytest.mark.parametrize("lap_mm", [float("nan"), float("inf")])
def test_a_lap_that_cannot_be_is_refused(lap_mm: float) -> None:
    with pytest.raises(NothingToSetOut):
        underlay_lap(where="rear", lap_mm=lap_mm, pitch_deg=35.0, fully_supported=False, edition=Edition.GB)


def test_a_lap_below_nothing_is_outside() -> None:
    found = underlay_lap(where="rear", lap_mm=-1.0, pitch_deg=35.0, fully_supported=False, edition=Edition.GB)
    assert Verdict.OUTSIDE is found[0].verdict


def test_a_label_that_contradicts_its_type_is_outside() -> None:
    label = Limit(value=0.1, unit="MN.s/g", citation=house("label"))
    felt = replace(MEMBRANE, resistance=Resistance.HIGH, vapour_resistance=label)
    assert Verdict.OUTSIDE is underlay_type(where="rear", record=felt, edition=Edition.GB)[0].verdict
