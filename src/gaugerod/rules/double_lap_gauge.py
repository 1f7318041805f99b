"""Gauge, holing and count of double-lap coverings: one formula each.

L length, h headlap, G gauge, W width, j side joint. Headlap counts over the course two below.
"""

from gaugerod.rules.real_figures import refuse_unless_above_nothing, refuse_unreal


def greatest_gauge_mm(*, length_mm: float, headlap_mm: float, lost_at_head_mm: float = 0.0) -> float:
    """Greatest gauge of plain tiles and slates: (L − (h + what is lost at the head)) / 2.

    Nothing is lost of a plain tile or a centre-nailed slate; a head-nailed slate loses what stands above its hole,
    because its lap counts from the hole. Raises NothingToSetOut when no gauge is left.

    Source: Notes on Building Construction (19th century), lap and gauge (published). Scope: courses of one length.

    >>> greatest_gauge_mm(length_mm=265.0, headlap_mm=65.0)
    100.0
    >>> greatest_gauge_mm(length_mm=20.0, headlap_mm=3.0, lost_at_head_mm=1.0)
    8.0
    """
    refuse_unless_above_nothing(rule="gauge", where="length", value=length_mm, unit="mm")
    refuse_unless_above_nothing(rule="gauge", where="headlap", value=headlap_mm, unit="mm")
    refuse_unreal(rule="gauge", where="lost at the head", value=lost_at_head_mm, unit="mm")
    gauge_mm = (length_mm - (headlap_mm + lost_at_head_mm)) / 2
    refuse_unless_above_nothing(rule="gauge", where="what the lap leaves", value=gauge_mm, unit="mm")
    return gauge_mm


def headlap_mm(*, length_mm: float, gauges_mm: tuple[float, float], lost_at_head_mm: float = 0.0) -> float:
    """Headlap that two neighbouring gauges leave: L − what is lost at the head − both. Negative: a gap.

    Source: geometry of the section. Scope: courses of one length.

    >>> headlap_mm(length_mm=265.0, gauges_mm=(99.0, 101.0)), headlap_mm(length_mm=265.0, gauges_mm=(140.0, 130.0))
    (65.0, -5.0)
    """
    return length_mm - lost_at_head_mm - sum(gauges_mm)


def holing_gauge_mm(*, length_mm: float, gauge_mm: float, nail_clear_mm: float) -> float:
    """Tail to nail hole of a centre-nailed slate: just clear of the head of the slate below, L − G + clearance.

    Source: supplier-hosted page on holing gauge, G + h + 8 to 15 mm (published); G + h is L − G. An independent
    consultant's article (published) has 3 to 5 mm. Scope: centre-nailed slates of one length.

    >>> holing_gauge_mm(length_mm=500.0, gauge_mm=200.0, nail_clear_mm=4.0)
    304.0
    """
    return length_mm - gauge_mm + nail_clear_mm


def under_eaves_length_mm(*, length_mm: float, gauge_mm: float) -> float:
    """Length of the under-eaves slate or tile: L − G, so that the second course laps it as any lap is lapped.

    Source: supplier-hosted page, G + h for centre-nailed slates (published); L − G also holds for head-nailed ones
    (geometry). Scope: courses of one length.

    >>> under_eaves_length_mm(length_mm=500.0, gauge_mm=200.0)
    300.0
    """
    return length_mm - gauge_mm


def units_per_m2_count(*, width_mm: float, gauge_mm: float, joint_mm: float) -> float:
    """Units to the square metre of slope: 1 000 000 / ((W + j) × G). State the joint beside it: none and 5 mm differ.

    Source: geometry; BS 8000-6:1990 as cited in trade tables counts a 5 mm joint (published).
    Scope: whole courses; no waste, no cuts.

    >>> round(units_per_m2_count(width_mm=165.0, gauge_mm=100.0, joint_mm=0.0), 1)
    60.6
    """
    refuse_unless_above_nothing(rule="count", where="width", value=width_mm, unit="mm")
    refuse_unless_above_nothing(rule="count", where="gauge", value=gauge_mm, unit="mm")
    return 1_000_000 / ((width_mm + joint_mm) * gauge_mm)


def batten_m_per_m2(*, gauge_mm: float) -> float:
    """Metres of batten to the square metre: 1000 / G. Eaves, top and waste come on top.

    Source: geometry. Scope: whole courses.

    >>> batten_m_per_m2(gauge_mm=100.0)
    10.0
    """
    refuse_unless_above_nothing(rule="battens", where="gauge", value=gauge_mm, unit="mm")
    return 1000 / gauge_mm


def sidelap_mm(*, width_mm: float, joint_mm: float, offset_ratio: float = 0.5) -> float:
    """Sidelap of a bond: from a joint's nearer side to the next course's joint, a part of the unit over. mm.

    Half bond: half of unit and joint, less half a joint at each side. Source: geometry. Scope: units of one width.

    >>> sidelap_mm(width_mm=165.0, joint_mm=3.0)
    81.0
    """
    across_mm = width_mm + joint_mm
    return min(offset_ratio, 1.0 - offset_ratio) * across_mm - joint_mm
