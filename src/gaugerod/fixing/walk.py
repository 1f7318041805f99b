"""Every course parted into runs of units held alike, and its pieces to saw. Work grows with edges and courses."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from itertools import chain

from gaugerod.fixing.ask import FixingAsk, Units
from gaugerod.fixing.held import BONDED_AND_CLIPPED, Held, held
from gaugerod.fixing.perimeter import Along, Perimeter
from gaugerod.fixing.plan import HeldCourse, HeldPiece, HeldRun
from gaugerod.fixing.why import BIT, why_of
from gaugerod.laying.cut_unit import CutUnit, Remedy
from gaugerod.laying.laid import CutCell
from gaugerod.rules.fixings import FieldRule, LeastFixing, PerimeterRule

Needs = Callable[[int], tuple[LeastFixing, Held]]
"""What a unit of this course needs for its place (the bits of its edges), and how a whole one is held."""

WIDER = (Remedy.UNIT_AND_A_HALF, Remedy.DOUBLE)
"""Remedies that lay one wider unit for a cut one and its neighbour."""


def held_courses(
    ask: FixingAsk, units: Units, *, field: FieldRule, perimeter: PerimeterRule, holes_count: int | None
) -> Iterator[HeldCourse]:
    """Each course of these units, from the eaves up. ``holes_count``: nail holes of a tile, None when not known."""
    edges = Perimeter(units.ask, perimeter)
    bits = [BIT[edge.kind] for edge in units.ask.edges]
    full = units is ask.full
    by_nailed = {
        nailed: _needs(ask, field.least if nailed else field.between, perimeter, holes_count)
        for nailed in (True, False)
    }
    for course, laid in enumerate(_by_course(units)):
        nailed = full and (course + 1) % field.every_count == 0
        laid.mark(edges, course, bits)
        yield HeldCourse(
            name=f"{units.name} {course + 1}" if full else units.name,
            number=course + 1 if full else 0,
            nailed=nailed,
            runs=tuple(_runs(laid, by_nailed[nailed])),
            pieces=tuple(_pieces(ask, laid, by_nailed[nailed], holes_count)),
        )


def _needs(ask: FixingAsk, field: LeastFixing, perimeter: PerimeterRule, holes_count: int | None) -> Needs:
    """The stronger of the field's and the perimeter's rule; each kind of place is worked out once."""
    found: dict[int, tuple[LeastFixing, Held]] = {}

    def needs(bits: int) -> tuple[LeastFixing, Held]:
        if bits not in found:
            least = field.at_least(perimeter.least) if bits else field
            # A slate is holed on site, for as many nails as it needs.
            holes = least.in_all_count if ask.is_slate else holes_count
            found[bits] = least, held(least, holes_count=holes, why=why_of(bits))
        return found[bits]

    return needs


class _Laid:
    """One course as laid: whole units, cut ones, the pieces to saw of both, and which of them lie at an edge."""

    def __init__(self) -> None:
        self.whole: list[tuple[int, int]] = []
        self.cuts: dict[int, CutCell] = {}
        self.pieces: dict[int, list[CutUnit]] = {}
        self.along: list[Along] = []
        self.at_edge: defaultdict[int, int] = defaultdict(int)
        self.taken: set[int] = set()

    def mark(self, edges: Perimeter, course: int, bits: Sequence[int]) -> None:
        """Every unit at an edge: along it, at the end of a stretch, or with the edge running through it."""
        self.along = list(edges.along(course))
        for index, bit in edges.ends(course, self._blocks(), self.cuts):
            self.at_edge[index] |= bit
        for index, cell in self.cuts.items():
            for number in cell.edges:
                self.at_edge[index] |= bits[number]
        for index, pieces in sorted(self.pieces.items()):
            for piece in pieces:
                for cut in piece.cuts:
                    self.at_edge[index] |= bits[cut.edge_number]
                # A unit laid as part of a wider one takes no other with it.
                if _is_wider(piece) and index not in self.taken:
                    self.taken.add(piece.neighbour)

    def bits(self, index: int) -> int:
        """The kinds of edges one unit lies at."""
        found = self.at_edge.get(index, 0)
        for first, past, bit in self.along:
            if first <= index < past:
                found |= bit
        return found

    def _blocks(self) -> list[tuple[int, int]]:
        """Stretches laid without a gap: first unit, and past the last."""
        blocks: list[tuple[int, int]] = []
        for first, past in sorted((*self.whole, *((index, index + 1) for index in self.cuts))):
            if blocks and blocks[-1][1] == first:
                blocks[-1] = (blocks[-1][0], past)
            else:
                blocks.append((first, past))
        return blocks


def _is_wider(piece: CutUnit) -> bool:
    return piece.remedy in WIDER and piece.neighbour != piece.index


def _by_course(units: Units) -> list[_Laid]:
    courses = [_Laid() for _ in units.laying.courses]
    for run in units.laying.runs:
        courses[run.course].whole.append((run.first, run.first + run.count))
    for cut in units.laying.cuts:
        courses[cut.course].cuts[cut.index] = cut
    for piece in units.pieces:
        courses[piece.course].pieces.setdefault(piece.index, []).append(piece)
    return courses


def _runs(laid: _Laid, needs: Needs) -> Iterator[HeldRun]:
    """Whole units, and cut ones not worth a saw, in runs of one reason each."""
    alone = {*laid.pieces, *laid.taken}
    singles = {*laid.at_edge, *alone}
    ends = {*singles, *(index + 1 for index in singles), *chain.from_iterable(along[:2] for along in laid.along)}
    unsawn = ((index, index + 1) for index in laid.cuts if index not in alone)
    for first, past in sorted((*laid.whole, *unsawn)):
        at = first
        for end in (*sorted(end for end in ends if first < end < past), past):
            if at not in alone:
                bits = laid.bits(at)
                yield HeldRun(at, end - at, why_of(bits), *needs(bits))
            at = end


def _pieces(ask: FixingAsk, laid: _Laid, needs: Needs, holes_count: int | None) -> Iterator[HeldPiece]:
    for index, pieces in laid.pieces.items():
        if index in laid.taken:
            continue
        own_bits = laid.bits(index)
        for piece in pieces:
            bits = own_bits | laid.bits(piece.neighbour) if _is_wider(piece) else own_bits
            least, is_held = needs(bits)
            short_count = 0
            if piece.remedy is Remedy.BOND_AND_CLIP:
                is_held = BONDED_AND_CLIPPED
            elif piece.remedy is Remedy.AS_CUT and holes_count is not None and not ask.is_slate:
                kept_count = min(piece.holes_kept_count, holes_count)
                if kept_count < is_held.nails_count:
                    short_count = max(least.nails_count - kept_count, 0)
                    is_held = held(least, holes_count=kept_count, why=why_of(bits))
            yield HeldPiece(piece.number, index, piece.remedy, why_of(bits), least, is_held, short_count)
