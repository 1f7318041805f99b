"""The work of the job as it is measured, to be charged by the user's own rates."""

from collections.abc import Iterator

from gaugerod.edges.ask import LineKind
from gaugerod.laying.cut_unit import Remedy
from gaugerod.take_off.ask import TakeOffAsk
from gaugerod.take_off.money import Task

_LINES = (
    (LineKind.EAVES, "eaves", "along the eaves"),
    (LineKind.VERGE, "verge", "along the verges"),
    (LineKind.RIDGE, "ridge", "along the ridges"),
    (LineKind.MONO_RIDGE, "ridge", "along the mono ridges"),
    (LineKind.HIP, "hip", "over the hips"),
    (LineKind.VALLEY, "valley", "down the valleys"),
    (LineKind.SIDE_ABUTMENT, "side-abutment", "beside walls"),
    (LineKind.TOP_ABUTMENT, "top-abutment", "under walls along the top"),
)


def tasks(ask: TakeOffAsk) -> tuple[Task, ...]:
    """Every task there is work for. Areas of slope, lengths of edges as they are covered, pieces to saw.

    Scope: slopes that were laid. Nothing is added for access, scaffold, getting rid of what comes off, or the unforeseen.
    """
    return tuple(task for task in _tasks(ask) if task.quantity > 0)


def _tasks(ask: TakeOffAsk) -> Iterator[Task]:
    area_m2 = sum(slope.area_mm2 for slope in ask.slopes) / 1e6
    old_m2 = sum(load.area_mm2 for load in ask.loads if load.old is not None) / 1e6
    yield Task(task="strip-old", what="take off the old covering", unit="m2", quantity=old_m2)
    laid_m2 = sum(plan.slope_area_mm2 for plan in ask.underlay) / 1e6
    yield Task(task="underlay", what="lay the underlay", unit="m2", quantity=laid_m2)
    battens_m = 0.0 if ask.battens is None else ask.battens.cutting.net_mm / 1000
    yield Task(task="battens", what="set out and nail the battens", unit="m", quantity=battens_m)
    yield Task(task="lay-covering", what="lay the covering", unit="m2", quantity=area_m2)
    # A random slate is not sawn narrower: one of that width is taken from the stack.
    pieces = sum(piece.remedy is not Remedy.CHOOSE_WIDTH for slope in ask.slopes for piece in slope.pieces)
    yield Task(task="cut", what="saw units to the line", unit="pieces", quantity=float(pieces))
    yield from _edges(ask)


def _edges(ask: TakeOffAsk) -> Iterator[Task]:
    if ask.edges is None:
        return
    lengths: dict[str, float] = {}
    words: dict[str, str] = {}
    for kind, task, what in _LINES:
        along = sum(edge.line.laid_mm for edge in ask.edges.edges if edge.line is not None and edge.line.kind is kind)
        lengths[task] = lengths.get(task, 0.0) + along / 1000
        words.setdefault(task, what)
    for task, metres in lengths.items():
        yield Task(task=task, what=f"make the edge {words[task]}", unit="m", quantity=metres)
    openings = sum(1 for edge in ask.edges.edges if edge.opening is not None)
    yield Task(task="opening", what="make good round an opening", unit="pieces", quantity=float(openings))
