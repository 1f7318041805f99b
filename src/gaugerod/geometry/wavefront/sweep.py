"""The sweep: from the eaves up, event by event, until nothing is left open."""

from collections.abc import Sequence
from math import inf

from gaugerod.basis.errors import RoofAsks, RoofWillNotClose
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.wavefront.corner import Corner, Loop
from gaugerod.geometry.wavefront.front import Front, cheek_between, face_each_other, run_of_meeting
from gaugerod.geometry.wavefront.next_event import rise_to_next_event_mm
from gaugerod.geometry.wavefront.nodes_at_spots import NodesAtSpots
from gaugerod.geometry.wavefront.rejoin import Piece, gather_spots, part_meetings, pieces_of, walk_loops
from gaugerod.geometry.wavefront.trace import Trace

_ROUNDS_PER_WALL = 30
_ROUNDS_STANDING_STILL = 3


class Sweep:
    """One sweep over one outline at one tolerance."""

    def __init__(self, fronts: Sequence[Front], *, tolerance_mm: float, cheeks_allowed: bool, origin_mm: Point) -> None:
        self.trace = Trace(fronts)
        self.cheeks: list[tuple[int, Point]] = []
        """The cheeks put in between in-line fronts: front number, and foot on plan from the plan's own origin."""
        self._tolerance_mm = tolerance_mm
        self._cheeks_allowed = cheeks_allowed
        self._origin_mm = origin_mm
        self._height_mm = 0.0

    def run(self, rings: Sequence[Sequence[Point]], front_of_wall: Sequence[int], *, from_mm: float) -> Trace:
        """Sweep up from the outline. Raises RoofWillNotClose, and RoofAsks where a person must choose."""
        self._height_mm = from_mm
        loops = self._first_loops(rings, front_of_wall)
        still = 0
        for _ in range(_ROUNDS_PER_WALL * len(front_of_wall) + 100):
            if not loops:
                return self.trace
            rise_mm = rise_to_next_event_mm(
                loops, self.trace.fronts, height_mm=self._height_mm, tolerance_mm=self._tolerance_mm
            )
            if rise_mm == inf:
                raise self._never_meets(loops)
            still = 0 if rise_mm > 0 else still + 1
            if still > _ROUNDS_STANDING_STILL + len(front_of_wall):
                break
            self._height_mm += rise_mm
            loops = self._join_anew(loops)
        raise RoofWillNotClose(
            where_mm=self._place_mm(loops[0][0]), why="the lines of the slopes keep crossing each other here"
        )

    def _first_loops(self, rings: Sequence[Sequence[Point]], front_of_wall: Sequence[int]) -> list[Loop]:
        loops: list[Loop] = []
        first = 0
        for ring in rings:
            nodes = [self.trace.add_node(x, y, self._height_mm) for x, y in ring]
            fronts = front_of_wall[first : first + len(ring)]
            for at, front in enumerate(fronts):
                self.trace.add_wall_side(front, nodes[at], nodes[(at + 1) % len(ring)], wall=first + at)
            first += len(ring)
            turns = [(nodes[at], fronts[at - 1], fronts[at]) for at in range(len(ring)) if fronts[at - 1] != fronts[at]]
            loops.append([corner for turn in turns for corner in self._corners_at(*turn)])
        return loops

    def _corners_at(self, node: int, before: int, after: int) -> list[Corner]:
        """The corner between two fronts at a node; two corners with a cheek between where in-line fronts part."""
        fronts = self.trace.fronts
        run = run_of_meeting(fronts[before], fronts[after])
        x_mm, y_mm, height_mm = self.trace.nodes[node]
        if run is not None:
            return [Corner(node, x_mm, y_mm, height_mm, before, after, *run)]
        where_mm = (x_mm, y_mm)
        if face_each_other(fronts[before], fronts[after]):
            raise RoofWillNotClose(where_mm=where_mm, why="two walls fold back on each other here")
        where_on_plan_mm = (x_mm + self._origin_mm[0], y_mm + self._origin_mm[1])
        if not self._cheeks_allowed:
            raise RoofAsks(
                where_mm=where_on_plan_mm,
                question="two slopes in one line, or nearly, rise at different pitches and part here, "
                f"at a height of {height_mm:.0f} mm.",
                choices=(
                    "give both walls the same pitch and eaves height",
                    "if one is a gable, give it a pitch with its eaves at this height",
                    "set one wall forward of the other, if only by a few millimetres, and say what the return between them carries",
                    "allow an upright cheek between the slopes",
                ),
            )
        cheek = self.trace.add_front(cheek_between(fronts[before], fronts[after], where_mm))
        self.cheeks.append((cheek, where_on_plan_mm))
        return [*self._corners_at(node, before, cheek), *self._corners_at(node, cheek, after)]

    def _join_anew(self, loops: Sequence[Loop]) -> list[Loop]:
        fronts, height_mm, tolerance_mm = self.trace.fronts, self._height_mm, self._tolerance_mm
        spots = gather_spots(loops, height_mm=height_mm, tolerance_mm=tolerance_mm)
        pieces = pieces_of(loops, spots, fronts, height_mm=height_mm, tolerance_mm=tolerance_mm)
        going_on, meetings = part_meetings(pieces)
        nodes = NodesAtSpots(self.trace, spots, height_mm=height_mm, tolerance_mm=tolerance_mm)
        for start, end, front, met in meetings:
            self.trace.add_shared_side(left=met, right=front, start=nodes[start], end=nodes[end])
        going_on = [self._with_pitch_changed(piece, nodes) for piece in going_on]
        new_loops = [self._loop_of(line, nodes) for line in walk_loops(going_on, fronts)]
        carried = {id(corner) for loop in new_loops for corner in loop}
        for loop, own in zip(loops, spots.of_loop, strict=True):
            for corner, spot in zip(loop, own, strict=True):
                if id(corner) not in carried:
                    self.trace.add_shared_side(
                        left=corner.before, right=corner.after, start=corner.node, end=nodes[spot]
                    )
        return new_loops

    def _with_pitch_changed(self, piece: Piece, nodes: NodesAtSpots) -> Piece:
        """The piece as it goes on: on its wall's next front where the height of the change is reached."""
        start, end, front = piece
        then = self.trace.fronts[front].then
        if then is None or self._height_mm < self.trace.fronts[front].until_mm:
            return piece
        self.trace.add_shared_side(left=then, right=front, start=nodes[start], end=nodes[end])
        return start, end, then

    def _loop_of(self, line: Sequence[Piece], nodes: NodesAtSpots) -> Loop:
        loop: Loop = []
        if line[-1][1] != line[0][0]:
            raise RoofWillNotClose(
                where_mm=nodes.place_mm(line[-1][1]), why="the lines of the slopes do not meet up here"
            )
        for at, (spot, _, front) in enumerate(line):
            before = line[at - 1][2]
            if before == front:
                continue
            corner = nodes.corner_that_goes_on(spot, before, front)
            loop += [corner] if corner else self._corners_at(nodes[spot], before, front)
        if len(loop) < 3:
            raise RoofWillNotClose(where_mm=nodes.place_mm(line[0][0]), why="two slopes meet edge to edge here")
        return loop

    def _never_meets(self, loops: Sequence[Loop]) -> RoofWillNotClose:
        upright = all(self.trace.fronts[corner.after].run_ratio == 0 for corner in loops[0])
        return RoofWillNotClose(
            where_mm=self._place_mm(loops[0][0]),
            why="only upright walls stand round this part of the plan; give one of them a pitch"
            if upright
            else "the slopes of this part of the plan never meet; check for a gable too many",
        )

    def _place_mm(self, corner: Corner) -> Point:
        rise_mm = self._height_mm - corner.height_mm
        return corner.x_mm + corner.run_x_ratio * rise_mm, corner.y_mm + corner.run_y_ratio * rise_mm
