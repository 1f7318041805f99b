from math import inf, nan, pi

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.rules.nails import (
    Nailed,
    NailMetal,
    hook_findings,
    least_nail_mm,
    least_shank,
    nail_density,
    nail_mass_kg,
    nail_penetration,
    penetration_findings,
    shank_findings,
    slate_hole_findings,
    slate_hole_from_side_mm,
)
from gaugerod.standards.edition import Edition


@pytest.mark.parametrize(
    ("reaches_mm", "verdicts"),
    [
        (14.9, ["outside", "outside"]),
        (15.0, ["within", "outside"]),
        (19.9, ["within", "outside"]),
        (20.0, ["within", "within"]),
        (0.0, ["outside", "outside"]),
        (-3.0, ["outside", "outside"]),
    ],
)
def test_both_sources_on_penetration_are_shown(reaches_mm: float, verdicts: list[str]) -> None:
    found = penetration_findings(where="rear", penetration_mm=reaches_mm, edition=Edition.GB)
    assert verdicts == [finding.verdict.value for finding in found]


def test_the_safer_of_two_penetrations_chooses_the_nail() -> None:
    assert 20.0 == nail_penetration(Edition.GB).value
    assert [25.0, 30.0, 35.0, 35.0] == [
        least_nail_mm(passes_mm=at, edition=Edition.GB) for at in (5.0, 9.9, 10.1, 15.0)
    ]


@pytest.mark.parametrize("passes_mm", [0.5, 4.0, 7.3, 12.0, 24.99])
def test_the_least_nail_always_reaches_far_enough_and_is_no_step_too_long(passes_mm: float) -> None:
    reaches_mm = least_nail_mm(passes_mm=passes_mm, edition=Edition.GB) - passes_mm
    assert 20.0 <= reaches_mm < 25.0


@pytest.mark.parametrize("bad", [nan, inf, 0.0, -4.0])
def test_figures_that_cannot_be_are_refused(bad: float) -> None:
    with pytest.raises(NothingToSetOut):
        least_nail_mm(passes_mm=bad, edition=Edition.GB)
    with pytest.raises(NothingToSetOut):
        nail_mass_kg(metal=NailMetal.COPPER, shank_mm=bad, length_mm=40.0, edition=Edition.GB)
    with pytest.raises(NothingToSetOut):
        nail_mass_kg(metal=NailMetal.COPPER, shank_mm=3.0, length_mm=bad, edition=Edition.GB)
    with pytest.raises(NothingToSetOut):
        list(shank_findings(where="rear", shank_mm=bad, nailed=Nailed.TILE, edition=Edition.GB))


@pytest.mark.parametrize("bad", [nan, inf])
def test_a_penetration_or_hole_that_is_no_measurement_is_refused(bad: float) -> None:
    with pytest.raises(NothingToSetOut):
        list(penetration_findings(where="rear", penetration_mm=bad, edition=Edition.GB))
    with pytest.raises(NothingToSetOut):
        list(slate_hole_findings(where="rear", from_side_mm=bad, edition=Edition.GB))


@pytest.mark.parametrize(
    ("nailed", "shank_mm", "verdicts"),
    [
        (Nailed.TILE, 2.64, ["outside"]),
        (Nailed.TILE, 2.65, ["within"]),
        (Nailed.SLATE, 2.99, ["outside", "outside"]),
        (Nailed.SLATE, 3.0, ["outside", "within"]),
        (Nailed.SLATE, 3.35, ["within", "within"]),
    ],
)
def test_a_thin_shank_is_told(nailed: Nailed, shank_mm: float, verdicts: list[str]) -> None:
    found = shank_findings(where="rear", shank_mm=shank_mm, nailed=nailed, edition=Edition.GB)
    assert verdicts == [finding.verdict.value for finding in found]


def test_the_least_shank_is_the_safer_one() -> None:
    assert [2.65, 3.35] == [least_shank(nailed=nailed, edition=Edition.GB).value for nailed in Nailed]


def test_a_nail_weighs_its_shank_and_its_head_in_its_metal() -> None:
    by_hand_mm3 = pi * (3.35 / 2) ** 2 * 40 + pi * 5**2 * 1
    masses = {}
    for metal in NailMetal:
        masses[metal] = nail_mass_kg(metal=metal, shank_mm=3.35, length_mm=40.0, edition=Edition.GB)
        density = nail_density(metal=metal, edition=Edition.GB)
        assert ("kg_m3", "memory") == (density.unit, density.citation.basis.value)
        assert by_hand_mm3 * density.value / 1e9 == pytest.approx(masses[metal])
    assert sorted(masses, key=masses.__getitem__) == [
        NailMetal.ALUMINIUM, NailMetal.STAINLESS_STEEL, NailMetal.SILICON_BRONZE, NailMetal.COPPER,
    ]  # fmt: skip


def test_the_default_hole_lies_in_both_published_ranges() -> None:
    at_mm = slate_hole_from_side_mm(Edition.GB)
    assert {"within"} == {
        finding.verdict.value for finding in slate_hole_findings(where="rear", from_side_mm=at_mm, edition=Edition.GB)
    }


@pytest.mark.parametrize(
    ("at_mm", "outside"), [(19.9, 2), (20.0, 1), (24.9, 1), (25.0, 0), (25.1, 1), (30.0, 1), (30.1, 2)]
)
def test_a_hole_is_held_against_both_ranges(at_mm: float, outside: int) -> None:
    found = slate_hole_findings(where="rear", from_side_mm=at_mm, edition=Edition.GB)
    assert outside == sum(finding.verdict.value == "outside" for finding in found)


@pytest.mark.parametrize(
    ("pitch_deg", "wire_mm", "thickness_mm", "verdicts"),
    [
        (24.9, 2.7, 5.0, ["outside", "within", "within"]),
        (25.0, 2.69, 5.0, ["within", "outside", "within"]),
        (25.1, 2.7, 2.7, ["within", "within", "within"]),
        (25.1, 2.8, 2.7, ["within", "within", "outside"]),
        (25.1, 2.7, None, ["within", "within", "not-covered"]),
    ],
)
def test_hooks_by_pitch_wire_and_slate(
    pitch_deg: float, wire_mm: float, thickness_mm: float | None, verdicts: list[str]
) -> None:
    found = hook_findings(
        where="rear", pitch_deg=pitch_deg, wire_mm=wire_mm, thickness_mm=thickness_mm, edition=Edition.GB
    )
    assert verdicts == [finding.verdict.value for finding in found]
