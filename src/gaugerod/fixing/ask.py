"""What the fixing of one slope depends on."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.laying.ask import LayingAsk
from gaugerod.laying.cut_unit import CutUnit
from gaugerod.laying.laid import Laying
from gaugerod.rules.fixings import SlateHeld
from gaugerod.rules.nails import NailMetal
from gaugerod.standards.edition import Edition

HeldCovering = SingleLapTile | PlainTile | SizedSlate | RandomSlates
"""Every kind of covering whose units are held."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Units:
    """Every unit laid: the full courses of a slope, or one course under the eaves or at the top.

    ``name``    of the course: ``course`` for the full ones, numbered from the eaves
    ``pieces``  every piece to saw
    """

    name: str
    ask: LayingAsk
    laying: Laying
    pieces: tuple[CutUnit, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NailWished:
    """The nail to use. ``shank_mm`` and ``length_mm``: None takes the least by rule, where it can be known."""

    metal: NailMetal
    shank_mm: float | None = None
    length_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingAsk:
    """One slope laid, and what is known of its covering's fixings.

    ``full``             the full courses
    ``extra``            the course under the eaves and the short one at the top, where there are such
    ``nail_holes_count`` of a tile; None when not known. Slates are holed on site
    ``thickness_mm``     of a unit where its nail goes through; None when not known
    ``hook_wire_mm``     of the hooks, where slates are held by hooks; None takes the least by rule
    """

    where: str
    pitch_deg: float
    covering: HeldCovering
    full: Units
    extra: tuple[Units, ...]
    edition: Edition
    nail: NailWished
    nail_holes_count: int | None = None
    thickness_mm: float | None = None
    slates_held_by: SlateHeld = SlateHeld.NAILS
    hook_wire_mm: float | None = None

    def __post_init__(self) -> None:
        faults = list(_faults(self))
        if faults:
            raise InputRefused(faults)

    @property
    def is_slate(self) -> bool:
        """Is the covering slates, holed on site?"""
        return isinstance(self.covering, SizedSlate | RandomSlates)


MOST_HOLES_COUNT = 4
"""More nail holes than this in one tile is a slip of the pen (house choice)."""


def _faults(ask: FixingAsk) -> Iterator[Fault]:
    if not (isfinite(ask.pitch_deg) and 0 < ask.pitch_deg <= 90):
        yield Fault(
            f"{ask.where}.pitch_deg", f"{ask.pitch_deg:g}", "above 0° up to 90°", "Measure the pitch of the rafters."
        )
    for field, value_mm in (
        ("nail_shank", ask.nail.shank_mm),
        ("nail_length", ask.nail.length_mm),
        ("thickness", ask.thickness_mm),
        ("hook_wire", ask.hook_wire_mm),
    ):
        if value_mm is not None and not (isfinite(value_mm) and value_mm > 0):
            yield Fault(f"{ask.where}.{field}", f"{value_mm:g} mm", "above nothing", "Measure it, or leave it out.")
    holes = ask.nail_holes_count
    if holes is not None and not 0 <= holes <= MOST_HOLES_COUNT:
        yield Fault(
            f"{ask.where}.nail_holes", str(holes), f"0 to {MOST_HOLES_COUNT}", "Count the nail holes of one tile."
        )
    if ask.slates_held_by is SlateHeld.HOOKS and not ask.is_slate:
        yield Fault(f"{ask.where}.slates_by", "hooks", "nails, for tiles", "Hooks hold slates only.")
