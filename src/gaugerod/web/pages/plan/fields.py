"""The fields of a building, and which of them a fault of the document belongs to."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from gaugerod.basis.errors import Fault
from gaugerod.web.form import Choice, Field
from gaugerod.web.pages.plan.context import WallRow
from gaugerod.web.pages.plan.outline_typed import OutlineTyped, Stands, Turn, WallTyped
from gaugerod.web.pitch_ways import pitch_fields

_TURNS = (
    Choice(value=Turn.LEFT.value, label="left 90°"),
    Choice(value=Turn.RIGHT.value, label="right 90°"),
    Choice(value=Turn.STRAIGHT.value, label="straight on"),
    Choice(value=Turn.ANGLE.value, label="by an angle"),
)
_CLOSES = Choice(value=Turn.CLOSES.value, label="as it closes")
_STANDS = (
    Choice(value=Stands.SLOPE.value, label="slope"),
    Choice(value=Stands.GABLE.value, label="gable"),
    Choice(value=Stands.OWN.value, label="own pitch"),
)
_ENTRY = re.compile(r"(outline|pitch|overhang|eaves_height)\[([0-9]+)\]")
_CORNER = re.compile(r"\bcorner ([0-9]+)")


def named_field(typed: OutlineTyped) -> Field:
    """What it is called."""
    hint = "house, barn, porch; its slopes are numbered after it"
    return Field(name="name", label="Name of the building", value=typed.name or "", hint=hint, length=False)


def pitch_group(typed: OutlineTyped) -> tuple[Field, ...]:
    """The pitch of all slopes, by each of the ways."""
    return pitch_fields(typed.pitch, by=typed.pitch_by)


def around_fields(typed: OutlineTyped) -> tuple[Field, ...]:
    """Overhangs of all, and the rafters."""
    return (
        Field(name="overhang", label="Eaves overhang", value=typed.overhang or "",
              hint="on the level, wall to outer face of the fascia"),
        Field(name="verge_overhang", label="Verge overhang", value=typed.verge_overhang or "",
              hint="at gables, wall to end of the roof structure"),
        Field(name="rafter_spacing", label="Rafter to rafter", value=typed.rafter_spacing or "",
              hint="centre to centre; settles the batten"),
    )  # fmt: skip


def wall_rows(typed: OutlineTyped) -> tuple[WallRow, ...]:
    """A row for every wall."""
    return tuple(_row(wall, at, len(typed.walls)) for at, wall in enumerate(typed.walls))


def _row(wall: WallTyped, at: int, count: int) -> WallRow:
    def field(key: str, label: str, value: str, choices: tuple[Choice, ...] = ()) -> Field:
        return Field(name=f"wall[{at}].{key}", label=label, value=value, choices=choices)

    last = at == count - 1
    turns = (*_TURNS, _CLOSES) if at == count - 2 or wall.turn is Turn.CLOSES else _TURNS
    return WallRow(
        number=at + 1,
        length=field("length", "Length", wall.length),
        turn=None if last else field("turn", "Then turn", wall.turn.value, turns),
        angle=None if last else field("angle", "Angle inside the corner", wall.angle),
        stands=field("stands", "On it", wall.stands.value, _STANDS),
        pitch=field("pitch", "Its pitch", wall.pitch),
        apart=(
            field("overhang", "Its own overhang", wall.overhang),
            field("height", "Height of its eaves", wall.height),
        ),
    )


def fields_of(row: WallRow) -> tuple[Field, ...]:
    """Every field of a wall."""
    maybe = (row.length, row.turn, row.angle, row.stands, row.pitch, *row.apart)
    return tuple(field for field in maybe if field is not None)


def named_in_full(row: WallRow) -> tuple[Field, ...]:
    """Every field of a wall, named so that it is known apart from those of the other walls."""
    return tuple(
        replace(field, label=f"Wall {row.number}, {field.label[0].lower()}{field.label[1:]}")
        for field in fields_of(row)
    )


def with_fields(row: WallRow, known: dict[str, Field]) -> WallRow:
    """The row with its fields as they are known now."""
    return replace(
        row,
        length=known[row.length.name],
        turn=None if row.turn is None else known[row.turn.name],
        angle=None if row.angle is None else known[row.angle.name],
        stands=known[row.stands.name],
        pitch=known[row.pitch.name],
        apart=tuple(known[field.name] for field in row.apart),
    )


def faults_in_form(
    faults: Iterable[Fault], typed: OutlineTyped, *, walls: Sequence[int], corners: Sequence[int]
) -> tuple[Fault, ...]:
    """The faults of a table under the names of the form, walls and corners counted from one, each said once.

    ``walls[i]`` and ``corners[i]`` are the typed wall and corner that stand at place i of the table.
    """
    told = [_in_form(fault, typed, walls, corners) for fault in faults]
    return tuple(dict.fromkeys(told))


def _in_form(fault: Fault, typed: OutlineTyped, walls: Sequence[int], corners: Sequence[int]) -> Fault:
    found = _ENTRY.match(fault.field)
    if found is None or int(found[2]) >= len(typed.walls):
        return _counted_from_one(fault, corners)
    kind, at = found[1], int(found[2])
    if kind == "outline":
        return replace(_counted_from_one(fault, corners), field=f"wall[{corners[at]}].length")
    return _of_wall(fault, typed, walls[at], kind=kind, rest=fault.field[found.end() :])


def _of_wall(fault: Fault, typed: OutlineTyped, at: int, *, kind: str, rest: str) -> Fault:
    """A fault of what stands on one wall: beside its own field where it has one, otherwise beside that of all."""
    wall, own = typed.walls[at], f"wall[{at}]"
    match kind:
        case "pitch" if wall.stands is Stands.SLOPE and typed.pitch is None:
            return replace(fault, field="pitch", given="nothing", allowed="the pitch of the slopes, like 35°")
        case "pitch":
            return replace(fault, field=f"{own}.pitch" if wall.stands is Stands.OWN else f"pitch{rest}")
        case "overhang" if not wall.overhang:
            return replace(fault, field="verge_overhang" if wall.stands is Stands.GABLE else "overhang")
        case "overhang":
            return replace(fault, field=f"{own}.overhang")
        case _:
            return replace(fault, field=f"{own}.height")


def _counted_from_one(fault: Fault, corners: Sequence[int]) -> Fault:
    """A fault of the outline with the sides it is about, as the drawing numbers them."""

    def number(found: re.Match[str]) -> str:
        at = int(found[1])
        return f"corner {corners[at] + 1 if at < len(corners) else at + 1}"

    if not fault.field.startswith(("outline", "holes", "eaves line")):
        return fault
    given = f"{fault.given[:1].upper()}{fault.given[1:]}. " if "corner" in fault.given else ""
    return replace(fault, do=_CORNER.sub(number, given + fault.do))
