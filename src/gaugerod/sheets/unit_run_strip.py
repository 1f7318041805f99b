"""Where the units of a ridge or hip go: a strip to scale, whole and cut units in the order they are laid, and their joints."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.edges.answer import MadeEdge, UnitRun
from gaugerod.edges.ask import LineKind
from gaugerod.edges.unit_places import joint_marks_mm, unit_covers_mm
from gaugerod.setting_out.said import counted
from gaugerod.sheets.dimension_lanes import LEVEL_LANE_MM, Label, level_lane, split_to_fit
from gaugerod.sheets.drawing import Drawing, Paper, Path, Pen, Point, largest_scale_ratio
from gaugerod.sheets.edge_detail import WIDTH_MM, box
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.placed import Placed

_EDGE_MM, _HIGH_MM, _OFF_MM = 6.0, 6.0, 1.0


def alike_runs(edges: Sequence[MadeEdge], *, unit: LengthUnit) -> tuple[tuple[MadeEdge, UnitRun, tuple[str, ...]], ...]:
    """The edges under units, those gathered whose units go alike as they are told: the first, its run, the names of all."""
    gathered: dict[str, tuple[MadeEdge, UnitRun, list[str]]] = {}
    for edge in edges:
        if edge.run is not None:
            gathered.setdefault(run_said(edge, edge.run, unit=unit), (edge, edge.run, []))[2].append(edge.name)
    return tuple((edge, run, tuple(names)) for edge, run, names in gathered.values())


def run_said(edge: MadeEdge, run: UnitRun, *, unit: LengthUnit) -> str:
    """The order of the units, and every joint from where the first begins."""
    kind = _kind(edge)
    order = ", then ".join(_group_said(cover_mm, count, run, unit) for cover_mm, count in _groups(run, kind))
    marks = ", ".join(bare_length(mark_mm, unit) for mark_mm in joint_marks_mm(run, kind=kind))
    shown_in = "" if unit is LengthUnit.FT_IN else f" ({unit.value})"
    return f"{_start(kind)}: {order}. Joints{shown_in}: {marks}."


def run_strip(edge: MadeEdge, run: UnitRun, *, unit: LengthUnit, width_mm: float = WIDTH_MM) -> Placed:
    """The strip, its groups of units told above it, where each group ends below."""
    kind = _kind(edge)
    room_mm = width_mm - 2 * _EDGE_MM
    ratio = largest_scale_ratio(model_width_mm=run.length_mm, model_height_mm=0.0, width_mm=room_mm, height_mm=_HIGH_MM)
    high_mm, start_mm = _HIGH_MM * ratio, (width_mm - run.length_mm / ratio) / 2
    between = (1.0 - start_mm, width_mm - 1.0 - start_mm)
    above, below = _group_labels(run, kind, unit, high_mm), _mark_labels(run, kind, unit)
    lanes_above = split_to_fit(above, room_mm=between[1] - between[0])
    lanes_below = split_to_fit(below, room_mm=between[1] - between[0])
    lanes = [
        level_lane(
            labels,
            side="above" if high else "below",
            line_y_mm=high_mm if high else 0.0,
            line_from_mm=None,
            off_paper_mm=_OFF_MM + at * LEVEL_LANE_MM,
            between_paper_mm=between,
            scale_ratio=ratio,
        )
        for high, rows in ((True, lanes_above), (False, lanes_below))
        for at, labels in enumerate(rows)
    ]
    under_mm = len(lanes_below) * LEVEL_LANE_MM + _OFF_MM
    return Placed(
        drawing=Drawing(
            title=f"{edge.name}: where the units go",
            says=f"{edge.name}, {counted(run.units_count, 'unit')}. {run_said(edge, run, unit=unit)}",
            paths=tuple(_paths(run, kind, high_mm)),
            words=tuple(words for lane in lanes for words in lane.words),
            leaders=tuple(leader for lane in lanes for leader in lane.leaders),
        ),
        paper=Paper(
            width_mm=width_mm,
            height_mm=under_mm + _HIGH_MM + len(lanes_above) * LEVEL_LANE_MM + _OFF_MM,
            scale_ratio=ratio,
            origin_paper_mm=(start_mm, under_mm),
        ),
    )


def _kind(edge: MadeEdge) -> LineKind:
    return LineKind.RIDGE if edge.line is None else edge.line.kind


def _start(kind: LineKind) -> str:
    return "From the foot" if kind is LineKind.HIP else "From the end you start at"


def _groups(run: UnitRun, kind: LineKind) -> Iterator[tuple[float, int]]:
    """Units alike side by side: what each covers, and how many."""
    for cover_mm, same in groupby(unit_covers_mm(run, kind=kind)):
        yield cover_mm, sum(1 for _ in same)


def _group_said(cover_mm: float, count: int, run: UnitRun, unit: LengthUnit) -> str:
    if cover_mm == run.cover_mm:
        return f"{count} whole"
    each = " each" if count > 1 else ""
    cut = f"{count} cut {fine_length(cover_mm + run.lap_mm, unit)} long{each}"
    return f"{cut}, to cover {fine_length(cover_mm, unit)}" if run.lap_mm else cut


def _group_labels(run: UnitRun, kind: LineKind, unit: LengthUnit, high_mm: float) -> list[Label]:
    labels, reached_mm = [], 0.0
    for cover_mm, count in _groups(run, kind):
        whole = cover_mm == run.cover_mm
        figure = fine_length(cover_mm if whole else cover_mm + run.lap_mm, unit)
        meant = f" {'cover' if whole else 'long'}" if run.lap_mm else ""
        name, value = f"{count} {'whole' if whole else 'CUT'}", f"{count} × {figure}" if count > 1 else figure
        labels.append(Label(at_mm=(reached_mm + count * cover_mm / 2, high_mm), name=name, value=value + meant))
        reached_mm += count * cover_mm
    return labels


def _mark_labels(run: UnitRun, kind: LineKind, unit: LengthUnit) -> list[Label]:
    labels, at = [], 0
    marks_mm = joint_marks_mm(run, kind=kind)
    for _, count in _groups(run, kind):
        at += count
        name = "end" if at == len(marks_mm) else f"joint {at}"
        labels.append(Label(at_mm=(marks_mm[at - 1], 0.0), name=name, value=write_length(marks_mm[at - 1], unit)))
    return labels


def _paths(run: UnitRun, kind: LineKind, high_mm: float) -> Iterator[Path]:
    whole: list[tuple[Point, ...]] = []
    cut: list[tuple[Point, ...]] = []
    start_mm = 0.0
    for cover_mm, end_mm in zip(unit_covers_mm(run, kind=kind), joint_marks_mm(run, kind=kind), strict=True):
        (whole if cover_mm == run.cover_mm else cut).append(box(start_mm, 0.0, end_mm - start_mm, high_mm))
        start_mm = end_mm
    if whole:
        yield Path(pen=Pen.UNIT, runs_mm=tuple(whole), closed=True)
    if cut:
        yield Path(pen=Pen.NAILED, runs_mm=tuple(cut), closed=True)
