"""The rolls of a whole job: every run and strip of every slope cut with the least waste, what is left told.

Source: side laps of 100 mm over a rafter, measured to its far edge where a roll ends between rafters (published).
Scope: rolls of one width and length; strips narrower than the roll are counted at the roll's full width.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused, NothingToSetOut
from gaugerod.basis.finding import TOUCH
from gaugerod.basis.limit import Limit
from gaugerod.basis.working import Step
from gaugerod.standards.edition import Edition
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure
from gaugerod.substrate.underlay.answer import Demand
from gaugerod.substrate.underlay.roll_pieces import Part, part_length_mm, part_of, total_length_mm
from gaugerod.substrate.underlay.roll_search import Found, fewest_rolls


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece cut from a roll and where it goes. Where it is not the leftmost of its run, its left end laps the last one.

    ``side_lap_mm``  how much of its left end lies over the piece before it; nothing for the first
    """

    name: str
    from_mm: float
    to_mm: float
    side_lap_mm: float

    @property
    def length_mm(self) -> float:
        """The length to cut, side lap and all."""
        return self.to_mm - self.from_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class RollCut:
    """One roll: its pieces in the order to cut them, and what is left on it."""

    number: int
    pieces: tuple[Piece, ...]
    left_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RollCuts:
    """Every roll. ``proven``: there can be no fewer rolls, and with so many no fewer side laps.

    ``rolls_proven``  the number of rolls alone is proven
    """

    rolls: tuple[RollCut, ...]
    roll_length_mm: float
    net_length_mm: float
    side_laps_count: int
    rolls_proven: bool
    proven: bool
    says: tuple[str, ...]
    working: Step

    @property
    def rolls_count(self) -> int:
        """Rolls to order."""
        return len(self.rolls)

    @property
    def left_mm(self) -> float:
        """What is left on all rolls together."""
        return sum(roll.left_mm for roll in self.rolls)


def cut_rolls(demands: Sequence[Demand], *, roll_length_mm: float, edition: Edition) -> RollCuts:
    """Cut every demand from the fewest rolls, then with the fewest side laps. Demands of several slopes go together.

    Raises InputRefused for a roll of no length, NothingToSetOut where a demand is longer than a roll and may not be joined.
    Source and scope: see the head of this page.

    >>> runs = [Demand(name=f"run {n}", from_mm=0.0, to_mm=10000.0, breaks_mm=(4019.0, 5019.0, 6019.0)) for n in (1, 2, 3)]
    >>> cuts = cut_rolls(runs, roll_length_mm=16000.0, edition=Edition.GB)
    >>> cuts.rolls_count, cuts.side_laps_count, cuts.proven
    (2, 1, True)
    >>> [piece.length_mm for roll in cuts.rolls for piece in roll.pieces]
    [5081.0, 10000.0, 10000.0, 5019.0]
    """
    faults = [*_faults(demands, roll_length_mm)]
    if faults:
        raise InputRefused(faults)
    side_lap = underlay_figure(edition, UnderlayFigure.SIDE_LAP_LEAST)
    least = underlay_figure(edition, UnderlayFigure.PIECE_LEAST)
    parts = [part_of(each, side_lap_mm=side_lap.value, piece_least_mm=least.value) for each in demands]
    roll_mm = int(roll_length_mm + TOUCH)
    found = fewest_rolls(parts, roll_mm=roll_mm)
    if found is None:
        raise NothingToSetOut(_too_long(demands, roll_length_mm))
    side_laps_count = sum(map(len, found.rolls)) - len(parts)
    return RollCuts(
        rolls=_placed(found, demands, parts, roll_mm=roll_mm),
        roll_length_mm=roll_length_mm,
        net_length_mm=float(total_length_mm(parts)),
        side_laps_count=side_laps_count,
        rolls_proven=found.rolls_proven,
        proven=found.rolls_proven and found.joints_proven,
        says=_says(found, side_laps_count, roll_length_mm),
        working=_working(found, parts, roll_length_mm=roll_length_mm, side_lap=side_lap),
    )


def _faults(demands: Sequence[Demand], roll_length_mm: float) -> list[Fault]:
    faults = []
    if not (isfinite(roll_length_mm) and roll_length_mm >= 1):
        faults.append(Fault("roll_length", f"{roll_length_mm:g} mm", "1 mm or more", "Read it off the roll."))
    for at, demand in enumerate(demands):
        places = (demand.from_mm, *demand.breaks_mm, demand.to_mm)
        if not all(map(isfinite, places)) or any(b <= a for a, b in pairwise(places)):
            faults.append(Fault(f"demands[{at}]", str(places), "places from left to right", f"Check {demand.name}."))
    return faults


def _too_long(demands: Sequence[Demand], roll_length_mm: float) -> str:
    long = [demand for demand in demands if demand.to_mm - demand.from_mm > roll_length_mm]
    named = ", ".join(f"{demand.name} ({demand.to_mm - demand.from_mm:.0f} mm)" for demand in long)
    return (
        f"longer than a roll of {roll_length_mm:g} mm, and with no rafter given where it may be joined: {named}. "
        "Give the rafters' places, or take a longer roll."
    )


def _placed(found: Found, demands: Sequence[Demand], parts: Sequence[Part], *, roll_mm: int) -> tuple[RollCut, ...]:
    """The pieces back in their places: parts that are alike were not told from each other in the search, so each chain of
    pieces from the left end to the right is given to the next demand of its kind.
    """
    waiting = defaultdict(list)
    for number, roll in enumerate(found.rolls):
        for stretch, first, last in roll:
            waiting[stretch, first].append((number, last))
    pieces: list[list[Piece]] = [[] for _ in found.rolls]
    for demand, (stretch, _, end) in zip(demands, parts, strict=True):
        at = 0
        while at != end:
            number, last = waiting[stretch, at].pop()
            lap_mm = float(stretch.side_lap_mm if at else 0)
            start_mm = demand.from_mm + stretch.places_mm[at] - lap_mm
            to_mm = start_mm + stretch.length_mm(at, last)
            pieces[number].append(Piece(name=demand.name, from_mm=start_mm, to_mm=to_mm, side_lap_mm=lap_mm))
            at = last
    return tuple(
        RollCut(number=number, pieces=tuple(cut), left_mm=roll_mm - sum(piece.length_mm for piece in cut))
        for number, cut in enumerate(pieces, 1)
    )


def _says(found: Found, side_laps_count: int, roll_length_mm: float) -> tuple[str, ...]:
    rolls = "1 roll" if len(found.rolls) == 1 else f"{len(found.rolls)} rolls"
    laps = "no side lap" if not side_laps_count else f"{side_laps_count} side lap{'s'[: side_laps_count > 1]}"
    sure = "No plan takes fewer." if found.rolls_proven and found.joints_proven else (
        "No plan takes fewer rolls; whether one takes fewer side laps was not settled."
        if found.rolls_proven
        else "Whether a plan takes fewer was not settled."
    )  # fmt: skip
    return (f"{rolls} of {roll_length_mm:g} mm, with {laps}. {sure}",)


def _working(found: Found, parts: Sequence[Part], *, roll_length_mm: float, side_lap: Limit) -> Step:
    return Step(
        name="rolls of underlay",
        formula="fewest rolls that hold every run and strip, with a side lap for each joint over a rafter",
        inputs={
            "runs and strips (mm)": float(total_length_mm(parts)),
            "roll (mm)": roll_length_mm,
            "side laps": float(sum(map(len, found.rolls)) - len(parts)),
            "side lap (mm)": side_lap.value,
        },
        value=float(len(found.rolls)),
        unit="rolls",
        citation=side_lap.citation,
        parts=tuple(
            Step(
                name=f"roll {number}",
                formula="its pieces together",
                inputs={f"piece {at} (mm)": float(part_length_mm(piece)) for at, piece in enumerate(roll, 1)},
                value=float(total_length_mm(roll)),
                unit="mm",
            )
            for number, roll in enumerate(found.rolls, 1)
        ),
    )
