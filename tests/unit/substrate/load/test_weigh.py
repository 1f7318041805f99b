"""The mass of one slope, and the change when it is re-covered."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import house
from gaugerod.basis.errors import InputRefused, NothingToSetOut
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.limit import Limit
from gaugerod.coverings.catalogue import covering
from gaugerod.coverings.double_lap import Heap, Nailing, RandomSlates
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.coverings.single_lap import Material
from gaugerod.rules.recovering import recovering
from gaugerod.standards.edition import Edition
from gaugerod.standards.roof_masses import MassBand, TypicalMass, typical_mass
from gaugerod.substrate.load.ask import LoadAsk, OldRoof, Timber, UnderlayLaid
from gaugerod.substrate.load.covering_mass import stated_mass
from gaugerod.substrate.load.weigh import Load, weigh
from tests.scenario.underlaid_slopes import MEMBRANE

FLAT = replace(covering("flat-interlocking-420x330"), mass_kg=4.5)
ASK = LoadAsk(where="rear", covering=FLAT, area_mm2=40e6, gauge_mm=345.0, cover_mm=300.0, edition=Edition.GB)
STACK = RandomSlates(
    name="stack", title="Random slates", material=Material.NATURAL_SLATE, nailing=Nailing.HEAD, hole_below_mm=25.0,
    heaps=(Heap(length_mm=400.0, slates_count=100, average_width_mm=200.0),), broken_ratio=0.05, joint_mm=3.0,
    citation=house("counted"),
)  # fmt: skip
TEN, TWELVE = (Limit(value=value, unit="percent", citation=house("this job's own")) for value in (10.0, 12.0))


def mass_kg_m2(load: Load, part: str) -> float:
    (found,) = (each.mass for each in load.parts if each.name == part)
    assert found.least_kg_m2 == found.greatest_kg_m2
    return found.least_kg_m2


def changes(load: Load) -> list[Finding]:
    return [finding for finding in load.findings if finding.rule.startswith("re-covering")]


def test_the_mass_of_one_unit_makes_that_of_the_slope() -> None:
    assert pytest.approx(4.5 / (0.3 * 0.345)) == mass_kg_m2(weigh(ASK), "covering")


def test_an_unknown_unit_mass_leaves_the_typical_band() -> None:
    load = weigh(replace(ASK, covering=replace(FLAT, mass_kg=None, material=Material.CONCRETE)))
    assert (42.0, 55.0) == (load.parts[0].mass.least_kg_m2, load.parts[0].mass.greatest_kg_m2)
    assert "memory" == load.parts[0].mass.citation.basis.value


def test_an_unknown_cover_leaves_the_typical_band_as_well() -> None:
    assert weigh(replace(ASK, cover_mm=None)).parts[0].formula.startswith("typical")


def test_plain_tiles_closer_than_100_mm_weigh_more_in_proportion() -> None:
    tile = replace(plain_tile("clay-plain-265x165"), mass_kg=None)
    at_100 = weigh(replace(ASK, covering=tile, gauge_mm=100.0)).parts[0].mass
    at_88 = weigh(replace(ASK, covering=tile, gauge_mm=88.0)).parts[0].mass
    assert (62.0, 75.0) == (at_100.least_kg_m2, at_100.greatest_kg_m2)
    assert pytest.approx(75.0 / 0.88) == at_88.greatest_kg_m2


def test_a_slate_whose_thickness_is_not_known_is_typical_and_a_made_one_has_its_own_band() -> None:
    slate = replace(sized_slate("slate-500x250"), mass_kg=None, thickness_mm=None)
    assert 25.0 == weigh(replace(ASK, covering=slate, gauge_mm=200.0)).parts[0].mass.least_kg_m2
    made = replace(slate, material=Material.FIBRE_CEMENT, thickness_mm=4.0)
    assert 22.0 == weigh(replace(ASK, covering=made, gauge_mm=200.0)).parts[0].mass.greatest_kg_m2


@pytest.mark.parametrize(
    "unknown", [STACK, replace(plain_tile("clay-plain-265x165"), mass_kg=None, material=Material.FIBRE_CEMENT)]
)
def test_a_covering_nothing_is_known_of_is_not_covered_until_it_is_weighed(unknown: RandomSlates) -> None:
    load = weigh(replace(ASK, covering=unknown, old=OldRoof(title="old", covering=stated_mass(50.0))))
    assert load.total is None
    assert (None, None, None, None) == (load.least_kg, load.greatest_kg, load.least_kn_m2, load.greatest_kn_m2)
    assert [] == changes(load)
    assert Verdict.NOT_COVERED is load.findings[0].verdict
    weighed = weigh(replace(ASK, covering=unknown, stated=stated_mass(80.0)))
    assert 80.0 == mass_kg_m2(weighed, "covering")


def test_battens_and_underlay_are_weighed_when_both_are_known_and_typical_when_not() -> None:
    battens = Timber(name="battens", width_mm=50.0, depth_mm=25.0, length_mm=116_000.0)
    counter = Timber(name="counter-battens", width_mm=38.0, depth_mm=25.0, length_mm=66_000.0)
    sheet = UnderlayLaid(record=replace(MEMBRANE, mass_kg_m2=0.15), laid_area_mm2=46e6)
    load = weigh(replace(ASK, timbers=(battens, counter), underlay=sheet))
    assert pytest.approx(0.05 * 0.025 * 116 * 500 / 40) == mass_kg_m2(load, "battens")
    assert pytest.approx(0.038 * 0.025 * 66 * 500 / 40) == mass_kg_m2(load, "counter-battens")
    assert pytest.approx(0.15 * 46 / 40) == mass_kg_m2(load, "underlay")
    for partly in (replace(ASK, timbers=(battens,)), replace(ASK, underlay=sheet)):
        below = weigh(partly).parts[-1]
        assert ("battens and underlay", 3.0, 5.0) == (below.name, below.mass.least_kg_m2, below.mass.greatest_kg_m2)


def test_the_parts_make_the_total_and_the_total_the_slope() -> None:
    load = weigh(ASK)
    assert load.total is not None
    assert pytest.approx(sum(part.mass.least_kg_m2 for part in load.parts)) == load.total.least_kg_m2
    assert load.greatest_kg == pytest.approx(load.total.greatest_kg_m2 * 40)
    assert load.greatest_kn_m2 == pytest.approx(load.total.greatest_kg_m2 * 9.81 / 1000)
    assert load.working.value == load.total.greatest_kg_m2


def test_a_new_roof_has_no_change_to_judge_and_always_a_word_on_loading_out() -> None:
    load = weigh(ASK)
    assert [] == changes(load)
    assert ["loading out"] == [finding.rule for finding in load.findings]
    assert "pallet" in load.says[-1]


def test_from_slate_to_concrete_is_heavier_and_from_concrete_to_slate_lighter() -> None:
    new = stated_mass(50.0)
    heavier = changes(weigh(replace(ASK, stated=new, old=OldRoof(title="slates", covering=stated_mass(30.0)))))
    assert [Verdict.OUTSIDE, Verdict.OUTSIDE, Verdict.WITHIN] == [finding.verdict for finding in heavier]
    lighter = changes(weigh(replace(ASK, stated=stated_mass(30.0), old=OldRoof(title="tiles", covering=new))))
    assert [Verdict.WITHIN, Verdict.WITHIN, Verdict.OUTSIDE] == [finding.verdict for finding in lighter]


def test_the_old_battens_and_underlay_are_taken_as_alike_unless_they_are_given() -> None:
    alike = weigh(replace(ASK, old=OldRoof(title="old", covering=stated_mass(50.0))))
    assert alike.old is not None
    assert (53.0, 55.0) == (alike.old.least_kg_m2, alike.old.greatest_kg_m2)
    none = weigh(replace(ASK, old=OldRoof(title="old", covering=stated_mass(50.0), below=stated_mass(1.0))))
    assert none.old is not None
    assert 51.0 == none.old.least_kg_m2


def test_thresholds_are_settings() -> None:
    asked = replace(ASK, warn=TEN, significant=TWELVE, old=OldRoof(title="old", covering=stated_mass(45.0)))
    assert [12.0, 10.0, 10.0] == [finding.limit for finding in changes(weigh(asked))]


def change(old: MassBand, new_kg_m2: float) -> list[Verdict]:
    found = recovering(where="rear", new=stated_mass(new_kg_m2), old=old, warn=TEN, significant=TWELVE)
    return [finding.verdict for finding in found]


def test_bands_that_allow_both_leave_the_change_open() -> None:
    old = typical_mass(Edition.GB, TypicalMass.CLAY_INTERLOCKING)
    assert [Verdict.NOT_COVERED, Verdict.NOT_COVERED, Verdict.NOT_COVERED] == change(old, 44.0)
    assert [Verdict.OUTSIDE, Verdict.OUTSIDE, Verdict.WITHIN] == change(old, 60.0)


@pytest.mark.parametrize(
    ("new_kg_m2", "verdicts"),
    [
        (109.9, ["within", "within", "within"]), (110.0, ["within", "within", "within"]),
        (110.1, ["within", "outside", "within"]), (111.9, ["within", "outside", "within"]),
        (112.0, ["within", "outside", "within"]), (112.1, ["outside", "outside", "within"]),
        (90.1, ["within", "within", "within"]), (90.0, ["within", "within", "within"]),
        (89.9, ["within", "within", "outside"]),
    ],
)  # fmt: skip
def test_the_change_just_below_at_and_just_above_each_threshold(new_kg_m2: float, verdicts: list[str]) -> None:
    assert verdicts == [verdict.value for verdict in change(stated_mass(100.0), new_kg_m2)]


@pytest.mark.parametrize("figure", [float("nan"), float("inf"), -1.0, 0.0])
def test_figures_that_cannot_be_are_refused(figure: float) -> None:
    with pytest.raises(NothingToSetOut):
        change(stated_mass(figure), 100.0)
    with pytest.raises(NothingToSetOut):
        change(stated_mass(100.0), figure)
    for wrong in (
        {"area_mm2": figure}, {"gauge_mm": figure}, {"cover_mm": figure},
        {"warn": Limit(value=figure, unit="percent", citation=house("x"))},
        {"timbers": (Timber(name="battens", width_mm=figure, depth_mm=25.0, length_mm=1.0),)},
        {"underlay": UnderlayLaid(record=MEMBRANE, laid_area_mm2=figure)},
        {"underlay": UnderlayLaid(record=replace(MEMBRANE, mass_kg_m2=figure), laid_area_mm2=1.0)},
        {"stated": stated_mass(figure)}, {"old": OldRoof(title="old", covering=stated_mass(figure))},
        {"old": OldRoof(title="old", covering=stated_mass(1.0), below=stated_mass(figure))},
    ):  # fmt: skip
        with pytest.raises(InputRefused):
            replace(ASK, **wrong)


@pytest.mark.parametrize("times", [2.0, 10.0])
def test_a_larger_slope_weighs_more_in_proportion(times: float) -> None:
    small, large = weigh(ASK), weigh(replace(ASK, area_mm2=ASK.area_mm2 * times))
    assert small.total == large.total
    assert small.least_kg is not None
    assert pytest.approx(small.least_kg * times) == large.least_kg
