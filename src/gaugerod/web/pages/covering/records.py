"""The generic records as a person chooses among them."""

from gaugerod.adapters.job_file.double_lap_record import RANDOM
from gaugerod.coverings.catalogue import catalogue
from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.double_lap_catalogue import plain_tiles, sized_slates
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.web.pages.covering.context import CoveringChoice, CoveringGroup

OWN = "own"
"""Chosen when the figures are one's own, measured in a test lay."""
RANDOM_SLATES = "Random or reclaimed slates"

Record = SingleLapTile | PlainTile | SizedSlate


def record_named(name: str) -> Record | None:
    """The generic record of this name; None when there is none."""
    single = next((tile for tile in catalogue() if tile.name == name), None)
    return single or plain_tiles().get(name) or sized_slates().get(name)


def groups(*, chosen: str, own_title: str | None) -> tuple[CoveringGroup, ...]:
    """Every record, by family; one's own first when there is one."""
    families: list[tuple[str, tuple[CoveringChoice, ...]]] = []
    if own_title is not None:
        families.append(("Your own", (CoveringChoice(name=OWN, title=own_title, figures="figures of your own"),)))
    families += [
        ("Single-lap tiles", tuple(_choice(tile) for tile in catalogue())),
        ("Plain tiles", tuple(_choice(tile) for tile in plain_tiles().values())),
        ("Slates of one size", tuple(_choice(slate) for slate in sized_slates().values())),
        (
            RANDOM_SLATES,
            (
                CoveringChoice(
                    name=RANDOM,
                    title="Random slates in diminishing courses",
                    figures="counted on the ground, heap by heap",
                ),
            ),
        ),
    ]
    return tuple(
        CoveringGroup(title=title, choices=choices, opened=any(choice.name == chosen for choice in choices))
        for title, choices in families
    )


def _choice(record: Record) -> CoveringChoice:
    return CoveringChoice(name=record.name, title=record.title, figures=figures_said(record))


def figures_said(record: Record) -> str:
    """The figures a roofer asks first.

    >>> figures_said(record_named("flat-interlocking-420x330"))
    '420 × 330 mm, gauge 295 to 345 mm, pitch from 30°'
    """
    said = [f"{record.length_mm:g} × {record.width_mm:g} mm"]
    if isinstance(record, SingleLapTile):
        least_mm = record.gauge_min_mm
        said.append(f"gauge {'up' if least_mm is None else f'{least_mm:g}'} to {record.gauge_max_mm:g} mm")
    if isinstance(record, PlainTile):
        said.append(f"lap at least {record.headlap_min_mm:g} mm")
    if not isinstance(record, SizedSlate) and record.pitch_min_deg is not None:
        said.append(f"pitch from {record.pitch_min_deg:g}°")
    return ", ".join(said)
