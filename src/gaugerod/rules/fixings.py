r"""What one unit needs to be held by at the least: by its pitch, and at the perimeter.

Source: merchant page on BS 5534 fixing; trade body page on wind uplift calculations; supplier-hosted slate manuals; a
trade magazine article on Scottish slating (published); which units are the perimeter partly from memory. Each figure
carries its own.
Scope: tiles and slates on battens. Never less than this; the maker's fixing specification and the wind may ask for more.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.finding import TOUCH
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.plain_tile import plain_tile_nailing
from gaugerod.rules.real_figures import refuse_unreal
from gaugerod.standards.edition import Edition
from gaugerod.standards.fixings import FixingFigure, fixing_figure


@dataclass(frozen=True, slots=True, kw_only=True)
class LeastFixing:
    """What holds one unit at the least: so many nails, tail clips and hooks, and so many fixings in all.

    What ``fixings_count`` asks beyond nails, clips and hooks may be of any kind: a further nail, a clip, adhesive, a
    dry-verge cap.
    """

    nails_count: int = 0
    clips_count: int = 0
    hooks_count: int = 0
    fixings_count: int = 0

    def __post_init__(self) -> None:
        if min(self.nails_count, self.clips_count, self.hooks_count, self.fixings_count) < 0:
            raise ValueError(f"fewer fixings than none: {self}")

    @property
    def in_all_count(self) -> int:
        """How many fixings in all."""
        return max(self.fixings_count, self.nails_count + self.clips_count + self.hooks_count)

    def at_least(self, other: "LeastFixing") -> "LeastFixing":
        """What both ask for: the stronger in every part, so a second rule can only add.

        >>> steep, edge = LeastFixing(nails_count=1, clips_count=1), LeastFixing(nails_count=1, fixings_count=2)
        >>> steep.at_least(edge).in_all_count, edge.at_least(LeastFixing(nails_count=2)).nails_count
        (2, 2)
        """
        return LeastFixing(
            nails_count=max(self.nails_count, other.nails_count),
            clips_count=max(self.clips_count, other.clips_count),
            hooks_count=max(self.hooks_count, other.hooks_count),
            fixings_count=max(self.fixings_count, other.fixings_count),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldRule:
    """The least in the field: ``least`` in every so many-th course (1: in every one), ``between`` in those between.

    ``name`` says which rule it is, ``limits`` hold its figures with their sources.
    """

    name: str
    least: LeastFixing
    between: LeastFixing
    every_count: int
    limits: tuple[Limit, ...]


class SlateHeld(StrEnum):
    """How slates are held: by nails, or each by a hook at its tail."""

    NAILS = "nails"
    HOOKS = "hooks"


def plain_tile_field(*, pitch_deg: float, tile: PlainTile, edition: Edition) -> FieldRule:
    """Plain tiles: two nails in every tile of every fifth course; in every tile from 60 degrees, or where none has nibs.

    Source and scope: see the head of this page.

    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> tile = plain_tile("clay-plain-265x165")
    >>> [plain_tile_field(pitch_deg=pitch, tile=tile, edition=Edition.GB).every_count for pitch in (59.9, 60.0)]
    [5, 1]
    """
    rule = plain_tile_nailing(pitch_deg=pitch_deg, tile=tile, edition=edition)
    every = rule.every_count
    return FieldRule(
        name="every tile nailed twice" if every == 1 else f"every tile of every {every}th course nailed twice",
        least=LeastFixing(nails_count=rule.nails_each_count),
        between=LeastFixing(nails_count=rule.nails_each_count) if every == 1 else LeastFixing(),
        every_count=every,
        limits=(rule.every_limit,),
    )


def single_lap_field(*, pitch_deg: float, edition: Edition, nail_holes_count: int | None) -> FieldRule:
    """Single-lap tiles: each held by one fixing; nailed, through all its holes, from 45 degrees; tail clipped too from 55.

    ``nail_holes_count`` of the tile; None when not known: then one nail is counted, and the maker is to be asked.
    Source and scope: see the head of this page.

    >>> [single_lap_field(pitch_deg=pitch, edition=Edition.GB, nail_holes_count=2).least.in_all_count
    ...  for pitch in (44.9, 45.0, 54.9, 55.0)]
    [1, 2, 2, 3]
    """
    refuse_unreal(rule="single-lap fixing", where="slope", value=pitch_deg, unit="degrees")
    any_pitch, nailed, nails, clipped, clips = (
        fixing_figure(edition, which)
        for which in (
            FixingFigure.SINGLE_LAP_FIXINGS_EACH,
            FixingFigure.SINGLE_LAP_NAILED_FROM,
            FixingFigure.SINGLE_LAP_NAILS_EACH,
            FixingFigure.SINGLE_LAP_CLIPPED_FROM,
            FixingFigure.SINGLE_LAP_CLIPS_EACH,
        )
    )
    least = LeastFixing(fixings_count=int(any_pitch.value))
    name, limits = "every tile held by a nail or a clip", [any_pitch]
    if pitch_deg >= nailed.value - TOUCH:
        least = least.at_least(LeastFixing(nails_count=max(int(nails.value), nail_holes_count or 0)))
        name, limits = "every tile nailed", [nailed, nails]
    if pitch_deg >= clipped.value - TOUCH:
        least = least.at_least(LeastFixing(clips_count=int(clips.value)))
        name, limits = "every tile nailed and tail clipped", [clipped, clips, nails]
    return FieldRule(name=name, least=least, between=least, every_count=1, limits=tuple(limits))


def slate_field(*, pitch_deg: float, edition: Edition, held_by: SlateHeld) -> FieldRule:
    """Slates: two nails each, three in vertical work; or one hook each.

    Source and scope: see the head of this page. Vertical from 75 degrees is a house reading.

    >>> [slate_field(pitch_deg=pitch, edition=Edition.GB, held_by=SlateHeld.NAILS).least.nails_count
    ...  for pitch in (74.9, 75.0)]
    [2, 3]
    """
    refuse_unreal(rule="slate fixing", where="slope", value=pitch_deg, unit="degrees")
    steep = fixing_figure(edition, FixingFigure.SLATE_VERTICAL_FROM)
    limits: tuple[Limit, ...]
    match held_by:
        case SlateHeld.HOOKS:
            each = fixing_figure(edition, FixingFigure.SLATE_HOOKS_EACH)
            least, name, limits = LeastFixing(hooks_count=int(each.value)), "every slate held by a hook", (each,)
        case SlateHeld.NAILS if pitch_deg >= steep.value - TOUCH:
            each = fixing_figure(edition, FixingFigure.SLATE_NAILS_EACH_VERTICAL)
            least, name, limits = (
                LeastFixing(nails_count=int(each.value)),
                "every slate nailed three times",
                (each, steep),
            )
        case SlateHeld.NAILS:
            each = fixing_figure(edition, FixingFigure.SLATE_NAILS_EACH)
            least, name, limits = LeastFixing(nails_count=int(each.value)), "every slate nailed twice", (each,)
        case _ as unreachable:
            assert_never(unreachable)
    return FieldRule(name=name, least=least, between=least, every_count=1, limits=limits)


@dataclass(frozen=True, slots=True, kw_only=True)
class PerimeterRule:
    """The least at the perimeter, and how many courses of it lie along eaves and top, and above and below openings.

    At verges, hips, valleys and walls it is the last unit of each course.
    """

    least: LeastFixing
    courses: Limit
    opening_courses: Limit
    limits: tuple[Limit, ...]


def perimeter_rule(
    *, covering: SingleLapTile | PlainTile | SizedSlate | RandomSlates, edition: Edition
) -> PerimeterRule:
    """Two fixings to each unit of the perimeter, a nail one of them; two courses at eaves and top for plain tiles.

    Source and scope: see the head of this page. The source speaks of tiles; slates are held to it too (house).

    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
    >>> [int(perimeter_rule(covering=unit, edition=Edition.GB).courses.value)
    ...  for unit in (plain_tile("clay-plain-265x165"), sized_slate("slate-500x250"))]
    [2, 1]
    """
    fixings = fixing_figure(edition, FixingFigure.PERIMETER_FIXINGS_EACH)
    nails = fixing_figure(edition, FixingFigure.PERIMETER_NAILS_EACH)
    match covering:
        case PlainTile():
            courses = fixing_figure(edition, FixingFigure.PLAIN_TILE_PERIMETER_COURSES)
            opening_courses = fixing_figure(edition, FixingFigure.OPENING_PERIMETER_COURSES)
        case SingleLapTile() | SizedSlate() | RandomSlates():
            courses = opening_courses = fixing_figure(edition, FixingFigure.OTHER_PERIMETER_COURSES)
        case _ as unreachable:
            assert_never(unreachable)
    return PerimeterRule(
        least=LeastFixing(nails_count=int(nails.value), fixings_count=int(fixings.value)),
        courses=courses,
        opening_courses=opening_courses,
        limits=(fixings, nails),
    )
