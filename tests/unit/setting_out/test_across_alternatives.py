"""What else could be done across, with its numbers and what it costs."""

from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.set_across import set_out_across
from tests.unit.setting_out.across_asked import HIP, VERGE, asked, opening


def test_nothing_cut_leaves_nothing_to_change() -> None:
    assert set_out_across(asked(7440.0)).alternatives == ()


def test_a_verge_just_past_its_band_is_offered_with_whole_units() -> None:
    # 8 × 303 + 330 = 2754 at the widest; 2680 of roof wants 74 of overhang: 37 and 37, 3 short of the band.
    offers = set_out_across(asked(2680.0)).alternatives
    first = next(offer for offer in offers if offer.change.startswith("Change"))
    assert first.change == (
        "Change the left verge overhang to 37 mm and right verge overhang to 37 mm: 9 units at 303 mm cover, "
        "nothing cut at the sides."
    )
    assert (first.by_mm, first.gauges, first.gauge_mm, first.keeps_limits) == (3.0, 9, 303.0, False)
    assert "stains" in first.costs


def test_a_verge_past_the_other_end_of_its_band_is_offered_too() -> None:
    # 9 × 297 + 330 = 3003 at the closest; 2900 of roof wants 103 of overhang: 51.5 and 51.5.
    offers = [each.change for each in set_out_across(asked(2900.0)).alternatives]
    assert any("left verge overhang to 51.5 mm" in offer and "10 units at 297 mm" in offer for offer in offers)


def test_another_covering_is_offered_by_the_cover_it_would_need() -> None:
    # (2680 + 80 − 330) / 8 = 303.75.
    offers = set_out_across(asked(2680.0)).alternatives
    other = next(offer for offer in offers if offer.change.startswith("Another covering"))
    assert other.gauge_mm == 303.75
    assert "never force it" in other.costs


def test_straight_bond_is_offered_where_broken_bond_leaves_a_sliver() -> None:
    offers = set_out_across(asked(2700.0, bond=Bond.BROKEN, half_unit=True)).alternatives
    assert [offer.rank for offer in offers] == list(range(1, len(offers) + 1))
    straight = next(offer for offer in offers if offer.change.startswith("Straight bond"))
    assert straight.keeps_limits
    larger = next(offer for offer in offers if offer.change.startswith("A unit-and-a-half"))
    assert larger.keeps_limits


def test_offers_that_keep_every_limit_come_first() -> None:
    offers = set_out_across(asked(2700.0, bond=Bond.BROKEN, half_unit=True)).alternatives
    kept = [offer.keeps_limits for offer in offers]
    assert kept == sorted(kept, reverse=True)


def test_half_units_are_offered_where_they_save_a_cut() -> None:
    offers = set_out_across(asked(7440.0, bond=Bond.BROKEN)).alternatives
    assert any(offer.change.startswith("Half units at the sides: 25 units") for offer in offers)


def test_verges_are_not_moved_when_it_is_an_opening_that_has_them_cut() -> None:
    ask = asked(7440.0, bond=Bond.BROKEN, half_unit=True, openings=(opening("rooflight", 2400.0),))
    offers = set_out_across(ask).alternatives
    assert not any("overhang" in offer.change for offer in offers)


def test_a_hip_has_no_overhang_to_change() -> None:
    offers = set_out_across(asked(2680.0, left=HIP, right=VERGE, bond=Bond.BROKEN)).alternatives
    assert not any("overhang" in offer.change for offer in offers)
