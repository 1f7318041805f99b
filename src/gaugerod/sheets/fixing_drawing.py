"""The fixing plan: perimeter and field as areas to chalk, courses nailed throughout hatched and numbered."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.fixing.plan import FixingPlan, Region
from gaugerod.geometry.polygon import Point, bounding_box_mm, signed_area_mm2
from gaugerod.job.result import Laid, SlopeResult
from gaugerod.sheets.dimension_lanes import Label
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Words
from gaugerod.sheets.edge_names import named_edges, opening_box, words_along
from gaugerod.sheets.hatching import hatched
from gaugerod.sheets.lengths_shown import bare_length
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.numbers_beside import beside, shown_of
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.plan_frame import Beside, lanes_below, plan_frame
from gaugerod.sheets.slope_labels import opening_letters
from gaugerod.sheets.slope_lines import Line, inside_parts, opening_rings

_NUMBER_SIZE_MM = 2.3
_NUMBERS_MM = 9.0


def fixing_drawing(
    slope: SlopeResult,
    laid: Laid,
    plan: FixingPlan,
    *,
    unit: LengthUnit,
    room_width_mm: float,
    room_height_mm: float,
) -> Placed:
    """The slope as large as the room allows at a standard scale."""
    outline = laid.ask.outline.points_mm
    low_mm, high_mm = bounding_box_mm((*outline, *slope.shape.outline_mm))
    sides = Beside(
        left=_height_labels(laid, plan, unit),
        below=lanes_below(_across_labels(slope, laid, plan, unit), room_width_mm=room_width_mm),
        numbers_mm=_NUMBERS_MM,
    )
    frame = plan_frame(
        low_mm=low_mm, high_mm=high_mm, beside=sides, room_width_mm=room_width_mm, room_height_mm=room_height_mm
    )
    paper, lanes = frame.paper, frame.lanes()
    named = tuple(_field_words(plan))
    taken = [*(opening_box(each, paper) for each in slope.slope.openings), *(words_box(each, paper) for each in named)]
    return Placed(
        drawing=Drawing(
            title=f"Slope {slope.slope.name}, fixings",
            says=_said(slope, plan),
            paths=tuple(_paths(slope, laid, plan, paper)),
            words=(
                *named,
                *_course_numbers(laid, plan, low_mm, paper),
                *words_along(named_edges(slope), paper=paper, taken=taken),
                *opening_letters(slope, scale_ratio=paper.scale_ratio),
                *(words for lane in lanes for words in lane.words),
            ),
            leaders=tuple(leader for lane in lanes for leader in lane.leaders),
        ),
        paper=paper,
    )


def _largest_field(plan: FixingPlan) -> tuple[Point, ...] | None:
    return max(plan.field_mm, key=signed_area_mm2, default=None)


def _course_of(laid: Laid, at_mm: Point) -> int:
    """The course that starts nearest to a point of the field, counted from the eaves."""
    x, y = at_mm
    heights_mm = [line.height_mm(x) for line in laid.ask.lines]
    return min(range(len(heights_mm)), key=lambda index: max(heights_mm[index] - y, y - heights_mm[index])) + 1


def _height_labels(laid: Laid, plan: FixingPlan, unit: LengthUnit) -> tuple[Label, ...]:
    """Where the field starts and ends up the slope, at its left: each line between courses once."""
    labels: dict[int, Label] = {}
    for ring in plan.field_mm:
        # The ring goes up its right side, half of its corners, and down its left.
        tail, top = ring[-1], ring[len(ring) // 2]
        for at_mm, said in ((tail, "tail, course {0}"), (top, "top of course {1}")):
            course = _course_of(laid, at_mm)
            value = bare_length(at_mm[1], unit) if at_mm[1] >= 0 else f"-{bare_length(-at_mm[1], unit)}"
            labels.setdefault(course, Label(at_mm=at_mm, name=said.format(course, course - 1), value=value))
    return tuple(labels.values())


def _across_labels(slope: SlopeResult, laid: Laid, plan: FixingPlan, unit: LengthUnit) -> tuple[Label, ...]:
    """The eaves; and the largest part of the field across its lowest course."""
    width_mm = slope.slope.taped.eaves_mm
    labels = [Label(at_mm=(width_mm, 0.0), name="along the eaves", value=bare_length(width_mm, unit))]
    field = _largest_field(plan)
    if field is not None:
        left_mm, right_mm = field[-1][0], field[0][0]
        course = _course_of(laid, field[-1])
        labels += [
            Label(at_mm=(x_mm, 0.0), name=f"field, course {course}, {end}", value=bare_length(x_mm, unit))
            for x_mm, end in ((left_mm, "from"), (right_mm, "to"))
            if x_mm >= 0
        ]
    return tuple(labels)


def _paths(slope: SlopeResult, laid: Laid, plan: FixingPlan, paper: Paper) -> Iterator[Path]:
    outline = laid.ask.outline.points_mm
    yield Path(pen=Pen.PERIMETER, runs_mm=(outline,), closed=True)
    tails = tuple(part for line in laid.ask.lines[1:-1] for part in _across(line.at_mm, line.rise_ratio, outline))
    nailed = tuple(
        part
        for number in _marked_courses(plan)
        for field in plan.field_mm
        for part in hatched(_course_ring(laid, number, outline), scale_ratio=paper.scale_ratio, within=field)
    )
    paths = (
        Path(pen=Pen.FIELD, runs_mm=plan.field_mm, closed=True),
        Path(pen=Pen.RAFTER, runs_mm=tails),
        Path(pen=Pen.HATCH, runs_mm=nailed),
        Path(pen=Pen.OPENING, runs_mm=opening_rings(slope), closed=True),
        Path(pen=Pen.OVERHANG, runs_mm=(outline,), closed=True),
    )
    yield from (path for path in paths if path.runs_mm)
    yield Path(pen=Pen.OUTLINE, runs_mm=(slope.shape.outline_mm,), closed=True)


def _marked_courses(plan: FixingPlan) -> tuple[int, ...]:
    """Courses told from their neighbours; none where all are held alike."""
    return plan.nailed_courses if plan.field_rule.every_count > 1 else ()


def _across(at_mm: float, rise_ratio: float, outline: tuple[Point, ...]) -> list[Line]:
    (left_mm, _), (right_mm, _) = bounding_box_mm(outline)
    return inside_parts(
        (left_mm - 1.0, at_mm + rise_ratio * (left_mm - 1.0)),
        (right_mm + 1.0, at_mm + rise_ratio * (right_mm + 1.0)),
        outline,
    )


def _course_ring(laid: Laid, number: int, outline: tuple[Point, ...]) -> tuple[Point, ...]:
    (left_mm, _), (right_mm, _) = bounding_box_mm(outline)
    tail, head = laid.ask.lines[number - 1], laid.ask.lines[number]
    return (
        (left_mm, tail.height_mm(left_mm)),
        (right_mm, tail.height_mm(right_mm)),
        (right_mm, head.height_mm(right_mm)),
        (left_mm, head.height_mm(left_mm)),
    )


def _field_words(plan: FixingPlan) -> Iterator[Words]:
    """``field`` in the largest part of it."""
    field = _largest_field(plan)
    if field is None:
        return
    low, high = bounding_box_mm(field)
    middle_mm = (low[1] + high[1]) / 2
    parts = inside_parts((low[0], middle_mm), (high[0], middle_mm), field)
    if parts:
        start, end = max(parts, key=lambda part: part[1][0] - part[0][0])
        yield Words(
            at_mm=((start[0] + end[0]) / 2, middle_mm),
            text="field",
            letter=Letter.EDGE,
            size_paper_mm=4.0,
            anchor=Anchor.MIDDLE,
            shift_paper_mm=(0.0, -1.4),
        )


def _course_numbers(laid: Laid, plan: FixingPlan, low_mm: Point, paper: Paper) -> Iterator[Words]:
    """The courses nailed throughout, in heavy figures; where all are held alike, as many as there is room for."""
    lines = laid.ask.lines
    middles_mm = [(lines[index].at_mm + lines[index + 1].at_mm) / 2 for index in range(len(lines) - 1)]
    marked = _marked_courses(plan)
    numbers = marked or tuple(range(1, len(middles_mm) + 1))
    heights_mm = [middles_mm[number - 1] for number in numbers]
    for index in shown_of(heights_mm, size_mm=_NUMBER_SIZE_MM, scale_ratio=paper.scale_ratio):
        yield beside(
            (low_mm[0], heights_mm[index]),
            str(numbers[index]),
            size_mm=_NUMBER_SIZE_MM,
            off_mm=1.5,
            letter=Letter.KEY if marked else Letter.NAME,
        )


def _said(slope: SlopeResult, plan: FixingPlan) -> str:
    listed = ", ".join(map(str, _marked_courses(plan)))
    return (
        f"Slope {slope.slope.name}: perimeter shaded, {plan.units_count(Region.PERIMETER)} units; field white, "
        f"{plan.units_count(Region.FIELD)} units" + (f"; courses nailed throughout: {listed}." if listed else ".")
    )
