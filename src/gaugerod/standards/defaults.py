"""What is taken when a job says nothing: limits and bands, each with its source, by edition."""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Citation
from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """What one source says of a length. None: it gives no figure on that side."""

    least_mm: float | None
    greatest_mm: float | None
    says: str
    citation: Citation


class Tolerance(StrEnum):
    """How far the work may lie from where it should be: this program's own choices, never a standard."""

    BATTEN_FROM_MARK = "batten-from-its-mark"
    GAUGE_FROM_SET_OUT = "gauge-from-set-out"
    RUN_OUT_OVER_SLOPE = "run-out-over-slope"
    LINE_BOW_IN_10_M = "bow-of-course-line-in-10-m"
    LINE_BOW_TO_FLAG = "bow-of-course-line-to-flag"


def single_lap_headlap_least(edition: Edition) -> Limit:
    """Least headlap of single-lap tiles where the maker gives none.

    Source: the edition's warranty standard (published). Scope: single-lap interlocking tiles.

    >>> print(single_lap_headlap_least(Edition.GB).value, single_lap_headlap_least(Edition.GB).citation.basis.value)
    75.0 published
    """
    match edition:
        case Edition.GB:
            return _figure("gb/nhbc_standards_2024/single_lap", "headlap-least")
        case _ as unreachable:
            assert_never(unreachable)


def single_lap_pitch_least(edition: Edition) -> Limit:
    """Pitch below which single-lap tiles need evidence of performance.

    Source: the edition's warranty standard (published). Scope: single-lap interlocking tiles.

    >>> single_lap_pitch_least(Edition.GB).value, single_lap_pitch_least(Edition.GB).unit
    (30.0, 'deg')
    """
    match edition:
        case Edition.GB:
            return _figure("gb/nhbc_standards_2024/single_lap", "pitch-least")
        case _ as unreachable:
            assert_never(unreachable)


def eaves_overhang_band(edition: Edition) -> Band:
    """Tail of the eaves course past the fascia face, tape laid on the slope.

    Source: common practice; the published statements are in ``eaves_overhang_statements``.
    Scope: eaves over a gutter whose centre the tails do not pass.

    >>> eaves_overhang_band(Edition.GB).least_mm, eaves_overhang_band(Edition.GB).greatest_mm
    (45.0, 55.0)
    """
    return _band(edition, "eaves-overhang")


def eaves_overhang_statements(edition: Edition) -> tuple[Statement, ...]:
    """What published sources say of the eaves overhang. They disagree; each is shown.

    >>> [(statement.least_mm, statement.greatest_mm) for statement in eaves_overhang_statements(Edition.GB)]
    [(50.0, None), (None, 50.0)]
    """
    match edition:
        case Edition.GB:
            table = load_table("gb/trade_practice_2026/eaves_overhang_statements")
        case _ as unreachable:
            assert_never(unreachable)
    return tuple(
        Statement(
            least_mm=row.number_or_none("least_mm"),
            greatest_mm=row.number_or_none("greatest_mm"),
            says=row.word("says"),
            citation=row.citation,
        )
        for row in table.rows
    )


def verge_overhang_band(edition: Edition) -> Band:
    """Units past the face of the wall or undercloak at a verge.

    Source: a consultant's trade article (published). Scope: bedded verges; a dry verge's maker gives his own.

    >>> verge_overhang_band(Edition.GB).least_mm, verge_overhang_band(Edition.GB).greatest_mm
    (38.0, 50.0)
    """
    return _band(edition, "verge-overhang")


def top_batten_band(edition: Edition) -> Band:
    """Top edge of the top batten below the apex, down the slope.

    Source: common practice. Scope: single-lap tiles under a ridge.

    >>> top_batten_band(Edition.GB).aim_mm
    37.5
    """
    return _band(edition, "top-batten-below-apex")


def abutment_set_back_band(edition: Edition) -> Band:
    """Units clear of the wall at a side abutment under a step-and-cover flashing.

    Source: house. Scope: not a secret gutter, which has its own.

    >>> abutment_set_back_band(Edition.GB).least_mm, abutment_set_back_band(Edition.GB).citation.basis.value
    (5.0, 'house')
    """
    return _band(edition, "abutment-set-back")


def ridge_cover_least(edition: Edition) -> Limit:
    """How far the ridge must cover the heads of the top course, down the slope.

    >>> ridge_cover_least(Edition.GB).value
    75.0
    """
    return _practice(edition, "ridge-cover-least")


def top_flashing_cover_least(edition: Edition) -> Limit:
    """How far a flashing at a top-edge abutment must cover the top course where there are no tops tiles.

    >>> top_flashing_cover_least(Edition.GB).value
    150.0
    """
    return _practice(edition, "top-flashing-cover-least")


def perps_every_count(edition: Edition) -> Limit:
    """A perp line is struck every so many units.

    >>> perps_every_count(Edition.GB).value
    3.0
    """
    return _practice(edition, "perps-every")


def minimum_cut(edition: Edition) -> Limit:
    """The least piece of a unit, as a ratio of its cover width.

    >>> minimum_cut(Edition.GB).value, minimum_cut(Edition.GB).unit
    (0.5, 'ratio')
    """
    return _practice(edition, "minimum-cut")


def tolerance(edition: Edition, which: Tolerance) -> Limit:
    """One of this program's own tolerances, either side.

    >>> tolerance(Edition.GB, Tolerance.BATTEN_FROM_MARK).value
    3.0
    """
    match edition:
        case Edition.GB:
            return _figure("gb/house_2026/tolerances", which.value)
        case _ as unreachable:
            assert_never(unreachable)


def _practice(edition: Edition, name: str) -> Limit:
    match edition:
        case Edition.GB:
            return _figure("gb/trade_practice_2026/figures", name)
        case _ as unreachable:
            assert_never(unreachable)


def _band(edition: Edition, name: str) -> Band:
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/bands").own_row(name=name)
        case _ as unreachable:
            assert_never(unreachable)
    return Band(least_mm=row.number("least_mm"), greatest_mm=row.number("greatest_mm"), citation=row.citation)


def _figure(table: str, name: str) -> Limit:
    row = load_table(table).own_row(name=name)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)
