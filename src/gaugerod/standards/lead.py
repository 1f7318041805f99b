"""Sheet lead: thickness and mass by code, and the figures flashings, soakers and saddles are made by, by edition."""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table
from gaugerod.standards.table import OffTable

_FIGURES = "gb/trade_practice_2026/lead_figures"


class LeadPlace(StrEnum):
    """Where lead lies, as far as the greatest length of a piece goes. Aprons, saddles and back gutters are flashings."""

    SOAKER = "soaker"
    FLASHING = "flashing"
    VALLEY = "valley"


class LeadFigure(StrEnum):
    """What a figure says of sheet lead."""

    RISE_BETWEEN_PIECES = "rise-between-pieces"
    LAPPED_SLOPE_LEAST = "lapped-slope-least"
    LAP_LEVEL_LEAST = "lap-level-least"
    SOAKER_LONGEST_RECALLED = "piece-longest-soaker-code-3-recalled"
    SOAKER_CODE = "soaker-code"
    FLASHING_CODE_LEAST = "flashing-code-least"
    BACK_GUTTER_CODE = "back-gutter-code"
    SOAKER_PAST_GAUGE_AND_LAP = "soaker-past-gauge-and-lap"
    SOAKER_UP = "soaker-up"
    SOAKER_UNDER = "soaker-under"
    HIP_SOAKER_UNDER = "hip-soaker-under"
    WATER_LINE = "water-line"
    BRICK_COURSE = "brick-course"
    INTO_JOINT_LEAST = "into-joint-least"
    UPSTAND_LEAST = "upstand-least"
    UPSTAND_SPLASH = "upstand-splash"
    SIDE_COVER_LEAST = "side-cover-least"
    SIDE_COVER_GREATEST = "side-cover-greatest"
    TOPS_COVER_LEAST = "tops-cover-least"
    CHIMNEY_APRON_DOWN = "chimney-apron-down"
    PAST_CORNER = "past-corner"
    BACK_GUTTER_UP = "back-gutter-up"
    BACK_GUTTER_SOLE = "back-gutter-sole"
    BACK_GUTTER_UNDER = "back-gutter-under"
    COVER_FLASHING_DOWN = "cover-flashing-down"
    CLIP_CENTRES_LEAST = "clip-centres-least"
    CLIP_CENTRES_GREATEST = "clip-centres-greatest"
    WEDGE_CENTRES_GREATEST = "wedge-centres-greatest"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadCode:
    """Sheet lead of one code: its colour mark, thickness and mass."""

    code: int
    colour: str
    thickness_mm: float
    mass_kg_m2: float
    citation: Citation


def lead_code(edition: Edition, code: int) -> LeadCode | OffTable:
    """Thickness and mass of a code of sheet lead; what the table covers where it has no such code.

    >>> lead = lead_code(Edition.GB, 4)
    >>> lead.colour, lead.thickness_mm, lead.mass_kg_m2
    ('blue', 1.8, 20.41)
    >>> lead_code(Edition.GB, 9).says
    'no row for code 9; the table covers: rolled sheet lead of codes 3 to 8'
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/bs_en_12588_2006/lead_codes").row_where(code=str(code))
        case _ as unreachable:
            assert_never(unreachable)
    if isinstance(row, OffTable):
        return row
    return LeadCode(
        code=code,
        colour=row.word("colour"),
        thickness_mm=row.number("thickness_mm"),
        mass_kg_m2=row.number("mass_kg_m2"),
        citation=row.citation,
    )


def longest_piece(edition: Edition, *, place: LeadPlace, code: int) -> Limit | OffTable:
    """The greatest length of one piece of this code here, mm; what the figures cover where none states it.

    >>> longest_piece(Edition.GB, place=LeadPlace.VALLEY, code=5).value
    1500.0
    >>> longest_piece(Edition.GB, place=LeadPlace.FLASHING, code=6).says.partition("; ")[2]
    'the table covers: soakers of code 3, and flashings, saddles and valleys of codes 4 and 5'
    """
    match edition:
        case Edition.GB:
            row = load_table(_FIGURES).row_where(name=f"piece-longest-{place.value}-code-{code}")
        case _ as unreachable:
            assert_never(unreachable)
    if isinstance(row, OffTable):
        return row
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)


def lead_figure(edition: Edition, which: LeadFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> print(lead_figure(Edition.GB, LeadFigure.WATER_LINE))
    65 mm (leadwork detail sheets: the water line of step flashing 65 mm above the covering (published))
    """
    match edition:
        case Edition.GB:
            row = load_table(_FIGURES).own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)
