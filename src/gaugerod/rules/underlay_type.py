"""What type is the underlay: of low or high resistance to vapour, and air-permeable or not?

Source: NHBC Standards 2024 7.2.14 (published): low resistance below 0.25 MN·s/g, and low resistance on boards counts as
high. Air-permeable: 20 m³/(m²·h) at 50 Pa by BS 5534 A2 as a merchant note quotes it, 34 by NHBC 2024 (both published):
they disagree, and each is shown.
Scope: underlays of pitched roofs in one layer.
"""

from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.underlay import Resistance, Support, UnderlayRecord
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure

PERMEABLE = "air-permeable underlay"


def counts_as(*, record: UnderlayRecord, support: Support) -> Resistance:
    """The resistance the underlay counts as where it lies: low resistance on boards counts as high.

    Source and scope: see the head of this page.

    >>> from gaugerod.basis.citation import house
    >>> membrane = UnderlayRecord(title="membrane", roll_width_mm=1000.0, roll_length_mm=50000.0,
    ...                           resistance=Resistance.LOW, citation=house("example"))
    >>> counts_as(record=membrane, support=Support.RAFTERS).value, counts_as(record=membrane, support=Support.BOARDS).value
    ('low', 'high')
    """
    return Resistance.HIGH if support is Support.BOARDS else record.resistance


def underlay_type(*, where: str, record: UnderlayRecord, edition: Edition) -> tuple[Finding, ...]:
    """The label's figures against what its type asks, and against both meanings of air-permeable.

    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> from gaugerod.basis.citation import house
    >>> from gaugerod.basis.limit import Limit
    >>> airy = Limit(value=25.0, unit="m3/(m2.h) at 50 Pa", citation=house("example"))
    >>> membrane = UnderlayRecord(title="membrane", roll_width_mm=1000.0, roll_length_mm=50000.0, citation=house("example"),
    ...                           resistance=Resistance.LOW, air_permeability=airy)
    >>> [f.limit for f in underlay_type(where="rear", record=membrane, edition=Edition.GB) if f.rule == PERMEABLE]
    [20.0, None]
    """
    return (*_resistance(where, record, edition), *_permeable(where, record, edition))


def is_air_permeable(*, record: UnderlayRecord, edition: Edition, by: UnderlayFigure) -> bool:
    """Does the label's figure reach one of the two meanings of air-permeable? A label without a figure does not."""
    declared = record.air_permeability
    return declared is not None and declared.value >= underlay_figure(edition, by).value - TOUCH


def _resistance(where: str, record: UnderlayRecord, edition: Edition) -> tuple[Finding, ...]:
    declared = record.vapour_resistance
    if declared is None:
        return ()
    refuse_unless_above_nothing(rule="underlay resistance", where=where, value=declared.value, unit=declared.unit)
    below = underlay_figure(edition, UnderlayFigure.LOW_RESISTANCE_BELOW)
    at_limit = below.value - TOUCH < declared.value < below.value + TOUCH
    if at_limit:
        says = (
            "Low resistance is below this figure and high above it; this is neither. Ventilate as for high resistance."
        )
        return (
            not_covered(
                rule="underlay resistance", where=where, proposed=declared.value, unit=declared.unit,
                citation=below.citation, says=says,
            ),
        )  # fmt: skip
    low = record.resistance is Resistance.LOW
    agrees = low == (declared.value < below.value)
    return (
        Finding(
            rule="underlay resistance",
            where=where,
            proposed=declared.value,
            limit=below.value,
            unit=declared.unit,
            sense=Sense.AT_MOST if low else Sense.AT_LEAST,
            citation=below.citation,
            says=(
                f"The label's figure is that of {record.resistance.value} resistance."
                if agrees
                else f"The label's figure is not that of {record.resistance.value} resistance. Read the label again: the "
                "ventilation hangs on it."
            ),
        ),
    )


def _permeable(where: str, record: UnderlayRecord, edition: Edition) -> tuple[Finding, ...]:
    declared = record.air_permeability
    meanings = [
        underlay_figure(edition, which)
        for which in (UnderlayFigure.AIR_PERMEABLE_FROM, UnderlayFigure.AIR_PERMEABLE_FROM_OTHER)
    ]
    if declared is None:
        says = "The label gives no air permeability, so the underlay is not taken as air-permeable. Ask its maker."
        return (
            not_covered(
                rule=PERMEABLE,
                where=where,
                proposed=None,
                unit=meanings[0].unit,
                citation=meanings[0].citation,
                says=says,
            ),
        )
    refuse_unless_above_nothing(rule=PERMEABLE, where=where, value=declared.value, unit=declared.unit)
    found = []
    for meaning in meanings:
        reached = declared.value >= meaning.value - TOUCH
        found.append(
            Finding(
                rule=PERMEABLE,
                where=where,
                proposed=declared.value,
                limit=meaning.value if reached else None,
                unit=declared.unit,
                sense=Sense.AT_LEAST,
                citation=meaning.citation,
                says=(
                    f"Air-permeable by this source, from {meaning.value:g}."
                    if reached
                    else f"Not air-permeable by this source, which starts at {meaning.value:g}. The sources differ."
                ),
            )
        )
    return tuple(found)
