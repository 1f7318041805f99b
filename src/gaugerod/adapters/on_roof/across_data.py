"""The perps for the page: how they are read, and the marks along each line."""

from typing import Any

from gaugerod.adapters.on_roof.grain import grain
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import SlopeResult
from gaugerod.sheets.across_tables import across_tables
from gaugerod.sheets.sheet import Prose


def across_data(slope: SlopeResult, *, unit: LengthUnit) -> dict[str, Any]:
    """The perp lines, none when the cover width is not known, and what is said of them."""
    across = slope.across
    return {
        "says": [block.text for block in across_tables(slope, unit=unit) if isinstance(block, Prose)],
        "lines": []
        if across is None
        else [
            {
                "line": line.line,
                "marks_mm": [grain(mark_mm) for mark_mm in line.marks_mm],
                "units": [
                    min(number * across.perps_every_count, across.units_count)
                    for number in range(1, len(line.marks_mm) + 1)
                ],
            }
            for line in across.perp_lines
        ],
    }
