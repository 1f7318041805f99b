"""Which batten section does the covering need at this rafter spacing?

Source: BS 5534:2014+A2:2018 Table 3, as quoted by the NFRC and NHBC Standards 7.2.17 (published).
Scope: supports at up to 600 mm centres; wider needs calculation. Not battens that carry ridges, hips or valleys.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table
from gaugerod.standards.table import OffTable, Table


class BattenedCovering(StrEnum):
    """The kinds of covering the batten table knows."""

    NATURAL_SLATE = "natural-slate"
    MADE_SLATE = "fibre-cement-or-concrete-slate"
    TILE_DOUBLE_LAP = "tile-double-lap"
    TILE_SINGLE_LAP = "tile-single-lap"


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenSection:
    """The least section of a batten, and the widest spacing its row of the table reaches."""

    width_mm: float
    depth_mm: float
    spacing_to_mm: float
    citation: Citation

    def __str__(self) -> str:
        return f"{self.width_mm:g} × {self.depth_mm:g} mm"


def least_batten_section(
    *, covering: BattenedCovering, rafter_spacing_mm: float, edition: Edition
) -> BattenSection | OffTable:
    """The least batten section on rafters at these centres (mm); OffTable beyond the table.

    Source and scope: see the head of this page.

    >>> tile = BattenedCovering.TILE_SINGLE_LAP
    >>> print(least_batten_section(covering=tile, rafter_spacing_mm=450.0, edition=Edition.GB))
    38 × 25 mm
    >>> print(least_batten_section(covering=tile, rafter_spacing_mm=600.0, edition=Edition.GB))
    50 × 25 mm
    """
    row = _table(edition).row_in_band("support_spacing", rafter_spacing_mm, covering=covering.value)
    if isinstance(row, OffTable):
        return row
    return BattenSection(
        width_mm=row.number("width_mm"),
        depth_mm=row.number("depth_mm"),
        spacing_to_mm=row.number("support_spacing_to_mm"),
        citation=row.citation,
    )


def batten_section(
    *, where: str, covering: BattenedCovering, rafter_spacing_mm: float | None, edition: Edition
) -> Finding:
    """The batten section for these rafters, as a finding on their spacing (mm).

    Raises NothingToSetOut for a spacing that is not above nothing. Source and scope: see the head of this page.

    >>> tile = BattenedCovering.TILE_SINGLE_LAP
    >>> finding = batten_section(where="rear", covering=tile, rafter_spacing_mm=600.0, edition=Edition.GB)
    >>> finding.verdict.value, finding.says
    ('within', 'Least batten at these rafters: 50 × 25 mm (width × depth), graded and marked.')
    >>> batten_section(where="rear", covering=tile, rafter_spacing_mm=601.0, edition=Edition.GB).verdict.value
    'not-covered'
    """
    if rafter_spacing_mm is None:
        return _not_covered(where, None, edition, "The rafter spacing was not given. Measure it, centre to centre.")
    refuse_unless_above_nothing(rule="batten section", where=where, value=rafter_spacing_mm, unit="mm")
    section = least_batten_section(covering=covering, rafter_spacing_mm=rafter_spacing_mm, edition=edition)
    match section:
        case BattenSection():
            return Finding(
                rule="batten section",
                where=where,
                proposed=rafter_spacing_mm,
                limit=section.spacing_to_mm,
                unit="mm",
                sense=Sense.AT_MOST,
                citation=section.citation,
                says=f"Least batten at these rafters: {section} (width × depth), graded and marked.",
            )
        case OffTable():
            return _not_covered(
                where,
                rafter_spacing_mm,
                edition,
                "Rafters this far apart are off the table: have the battens designed.",
            )
        case _ as unreachable:
            assert_never(unreachable)


def _not_covered(where: str, spacing_mm: float | None, edition: Edition, says: str) -> Finding:
    table = _table(edition)
    return not_covered(
        rule="batten section",
        where=where,
        proposed=spacing_mm,
        unit="mm",
        citation=table.citation,
        says=f"{says} The table covers: {table.scope}.",
    )


def _table(edition: Edition) -> Table:
    match edition:
        case Edition.GB:
            return load_table("gb/bs_5534_2014/batten_sections")
        case _ as unreachable:
            assert_never(unreachable)
