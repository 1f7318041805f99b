"""What is asked of the edges, in the words of the form: only of those that this roof has."""

from collections.abc import Iterator, Mapping
from typing import Any

from gaugerod.edges.ask import LineKind
from gaugerod.web.form import table_of
from gaugerod.web.questions import YES_OR_NOT, Kind, More, PartQuestions, Question, chosen

RIDGE, VERGE, VALLEY, WALL, EAVES, AIR = (
    f"edges.{key}" for key in ("ridge", "verge", "valley", "wall", "eaves", "air")
)
_OF = {
    RIDGE: frozenset({LineKind.RIDGE, LineKind.MONO_RIDGE, LineKind.HIP}),
    VERGE: frozenset({LineKind.VERGE}),
    VALLEY: frozenset({LineKind.VALLEY}),
    WALL: frozenset({LineKind.SIDE_ABUTMENT, LineKind.TOP_ABUTMENT}),
    EAVES: frozenset({LineKind.EAVES}),
}
_UNITS = (
    ("unit", "Ridge unit", LineKind.RIDGE),
    ("mono_unit", "Mono-ridge unit", LineKind.MONO_RIDGE),
    ("hip_unit", "Hip unit", LineKind.HIP),
)
_MADE = "How it is made"
_HIPS = Question(
    key="hips",
    label="Over the hips",
    kind=Kind.CHOICE,
    choices=chosen("as usual: units", units="units, end to end", bonnet="a bonnet to each course", mitred="mitred"),
)


def _unit(key: str, title: str) -> More:
    return More(
        title=title,
        says="Measure one. Without its length the line is told in metres, and no unit is counted.",
        questions=(
            Question(key=f"{key}.length", label="Length of one"),
            Question(key=f"{key}.cover", label="It gains along the line", hint="less than its length where units overlap"),
            Question(key=f"{key}.fixings", label="Fixings of one", kind=Kind.NUMBER, hint="left empty: two"),
            Question(key=f"{key}.mass", label="Mass of one, kg", kind=Kind.NUMBER),
        ),
    )  # fmt: skip


def _ridge(kinds: frozenset[LineKind], table: Mapping[str, Any]) -> PartQuestions:
    hips = LineKind.HIP in kinds or "hips" in table
    return PartQuestions(
        key=RIDGE,
        title="Ridges and hips" if hips else "Ridges",
        says="Units, what fixes them, what seals or beds them.",
        first=(
            Question(key="made", label=_MADE, kind=Kind.CHOICE,
                     choices=chosen("choose", dry="dry, with a fixing kit", bedded="bedded in mortar, and fixed")),
            *((_HIPS,) if hips else ()),
        ),
        more=tuple(_unit(key, title) for key, title, kind in _UNITS if kind in kinds or key in table),
    )  # fmt: skip


_VERGE = PartQuestions(
    key=VERGE,
    title="Verges",
    says="Units to each course, or an undercloak and its bed.",
    first=(
        Question(key="made", label=_MADE, kind=Kind.CHOICE,
                 choices=chosen("choose", dry="dry, a unit to each course", bedded="bedded on an undercloak",
                                cloaked="cloaked verge tiles")),
    ),
    more=(
        More(
            title="Undercloak and bed",
            questions=(
                Question(key="undercloak", label="Undercloak strip, length", hint="left empty: the usual one"),
                Question(key="bed", label="Mortar bed, width", hint="left empty: the rule's"),
            ),
        ),
    ),
)  # fmt: skip
_VALLEY = PartQuestions(
    key=VALLEY,
    title="Valleys",
    says="The lining, its clear width, its pieces.",
    first=(
        Question(key="made", label="How it is lined", kind=Kind.CHOICE,
                 choices=chosen("choose", lead="sheet lead on boards", liner="a preformed liner",
                                valley_tiles="valley tiles, one to a course")),
        Question(key="clear", label="Clear width", hint="between the cut edges; left empty: the usual one"),
    ),
    more=(
        More(
            title="Lead, or liner",
            questions=(
                Question(key="lead_code", label="Lead, code", kind=Kind.NUMBER, hint="left empty: the usual one"),
                Question(key="girth", label="Width before dressing", hint="of lead or liner"),
                Question(key="liner_length", label="Liner, length", hint="left empty: liners are not counted"),
                Question(key="liner_lap", label="Liner, lap", hint="as its maker states it"),
            ),
        ),
    ),
)  # fmt: skip
_WALL = PartQuestions(
    key=WALL,
    title="Walls",
    says="Flashings and soakers at the side and along the top, piece by piece.",
    first=(
        Question(key="beside", label="At the side of a wall", kind=Kind.CHOICE,
                 choices=chosen("as usual for the covering", step_and_cover="one flashing, steps and covers",
                                soakers="soakers and step flashing")),
    ),
    more=(
        More(
            title="Lead, and rain that splashes",
            questions=(
                Question(key="lead_code", label="Lead of flashings, code", kind=Kind.NUMBER, hint="left empty: the usual one"),
                Question(key="side_cover", label="It reaches over the covering", hint="a flashing that steps and covers"),
                Question(key="splash", label="Rain splashes up the wall", kind=Kind.YES_NO, choices=YES_OR_NOT,
                         hint="as over a flat or a balcony"),
            ),
        ),
    ),
)  # fmt: skip
_EAVES = PartQuestions(
    key=EAVES,
    title="Eaves",
    says="Trays under the underlay, and what closes the gap under a profiled tile.",
    first=(
        Question(key="tray_length", label="Eaves tray, length", hint="left empty: no trays are counted"),
        Question(key="gap", label="Open under the tail", hint="height, under a profiled tile; left empty: not measured"),
    ),
)  # fmt: skip


def _air_unit(key: str, title: str) -> More:
    return More(
        title=title,
        questions=(
            Question(key=f"{key}.title", label="What to call it", kind=Kind.WORDS),
            Question(key=f"{key}.area", label="Net free area, mm²", kind=Kind.NUMBER, hint="of one vent, or one strip"),
            Question(key=f"{key}.length", label="Length of a strip", hint="left empty: a single vent"),
        ),
    )  # fmt: skip


_AIR = PartQuestions(
    key=AIR,
    title="Vents",
    says="Units for the openings for air that the page before asks for.",
    first=(),
    more=(_air_unit("low", "At low level"), _air_unit("high", "At high level")),
)
_FIXED = {VERGE: _VERGE, VALLEY: _VALLEY, WALL: _WALL, EAVES: _EAVES}


def parts_for(document: Mapping[str, Any], kinds: frozenset[LineKind]) -> tuple[PartQuestions, ...]:
    """The parts to ask of a roof with lines of these kinds; and those the job speaks of already.

    >>> [part.title for part in parts_for({}, frozenset({LineKind.RIDGE, LineKind.EAVES}))]
    ['Ridges', 'Eaves']
    >>> [part.title for part in parts_for({"edges": {"valley": {}}, "ventilation": {}}, frozenset())]
    ['Valleys', 'Vents']
    """
    return tuple(_parts(document, kinds))


def _parts(document: Mapping[str, Any], kinds: frozenset[LineKind]) -> Iterator[PartQuestions]:
    edges = table_of(document, "edges")
    for key, of in _OF.items():
        if kinds & of or key.removeprefix("edges.") in edges:
            yield _ridge(kinds, table_of(edges, "ridge")) if key == RIDGE else _FIXED[key]
    if "ventilation" in document or "air" in edges:
        yield _AIR
