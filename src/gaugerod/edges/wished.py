"""How the edges are to be made: what the job says of them. None: not said, and then nothing is counted for that edge."""

from dataclasses import dataclass, field
from enum import StrEnum


class RidgeMade(StrEnum):
    """How ridge and hip units are held: dry with a fixing kit, or bedded in mortar and fixed as well."""

    DRY = "dry"
    BEDDED = "bedded"


class HipMade(StrEnum):
    """What lies over a hip.

    ``units``   hip units end to end, as at a ridge
    ``bonnet``  one bonnet to each course
    ``mitred``  cut to meet, a soaker to each course
    """

    UNITS = "units"
    BONNET = "bonnet"
    MITRED = "mitred"


class VergeMade(StrEnum):
    """How a verge is made: dry with a unit to each course, bedded on an undercloak, or with cloaked verge tiles."""

    DRY = "dry"
    BEDDED = "bedded"
    CLOAKED = "cloaked"


class ValleyMade(StrEnum):
    """What lines a valley: sheet lead on boards, a preformed liner, or one valley tile to each course."""

    LEAD = "lead"
    LINER = "liner"
    VALLEY_TILES = "valley-tiles"


class SideMade(StrEnum):
    """How the covering meets a wall at its side: one flashing that steps and covers, or soakers under step flashing."""

    STEP_AND_COVER = "step-and-cover"
    SOAKERS = "soakers"


class OpeningMade(StrEnum):
    """What stands in an opening: a chimney, dressed in lead; or a window that comes with its own flashing kit."""

    CHIMNEY = "chimney"
    KIT = "kit"


@dataclass(frozen=True, slots=True, kw_only=True)
class LineUnit:
    """A unit laid end to end along a line: ridge, hip or mono-ridge unit.

    ``length_mm``  of one unit; ``cover_mm`` what it gains along the line: less than its length where units overlap
    ``fixings_count``  screws, nails or clips of one unit
    """

    length_mm: float
    cover_mm: float
    fixings_count: int = 2
    mass_kg: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RidgeWished:
    """Ridges and hips. A unit that is None is not known: then its line has a length and no count."""

    made: RidgeMade
    ridge: LineUnit | None = None
    mono_ridge: LineUnit | None = None
    hip: LineUnit | None = None
    hips: HipMade = HipMade.UNITS


@dataclass(frozen=True, slots=True, kw_only=True)
class VergeWished:
    """Verges. ``undercloak_length_mm`` of one strip; ``bed_mm`` width of the mortar bed. None: the edition's."""

    made: VergeMade
    undercloak_length_mm: float | None = None
    bed_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ValleyWished:
    """Valleys. ``girth_mm`` is the width of lead or liner before it is dressed. None: the edition's, or not known."""

    made: ValleyMade
    clear_mm: float | None = None
    lead_code: int | None = None
    girth_mm: float | None = None
    liner_length_mm: float | None = None
    liner_lap_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WallWished:
    """Walls. ``beside`` None: by the covering. ``splash``: does rain splash up the wall, as over a flat or a balcony?

    ``lead_code`` of flashings; soakers have the edition's own. ``side_cover_mm`` of a flashing that steps and covers.
    """

    beside: SideMade | None = None
    splash: bool = False
    lead_code: int | None = None
    side_cover_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class EavesWished:
    """Eaves. ``gap_mm``: the open height under a profiled tile at its tail; None: not measured.

    ``tray_length_mm`` of one rigid tray under the underlay; None: none is counted.
    """

    gap_mm: float | None = None
    tray_length_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class AirUnit:
    """A ventilation unit: its net free area, and its length along the edge where it is a strip (None: a single vent)."""

    title: str
    area_mm2: float
    length_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class AirUnitsWished:
    """Units for the openings at low and at high level. None: the openings are told, and no units counted."""

    low: AirUnit | None = None
    high: AirUnit | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedLine:
    """Two slopes measured one by one that meet in one line: ``kind`` is ridge, hip or valley."""

    slopes: tuple[str, str]
    kind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgesWished:
    """Everything that is said of the edges."""

    ridge: RidgeWished | None = None
    verge: VergeWished | None = None
    valley: ValleyWished | None = None
    wall: WallWished | None = None
    eaves: EavesWished | None = None
    air: AirUnitsWished = field(default_factory=AirUnitsWished)
    shared: tuple[SharedLine, ...] = ()
