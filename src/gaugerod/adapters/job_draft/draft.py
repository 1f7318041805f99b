"""A job drafted from a file: what could be read stands in it, what a person must look at is written beside it."""

import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from gaugerod.adapters.job_draft.plan_read import NamedPlan, PlanRead
from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.coverings.catalogue import covering
from gaugerod.geometry.polygon import Point
from gaugerod.standards.edition import Exposure

STAND_IN_COVERING = "flat-interlocking-420x330"
STAND_IN_PITCH_DEG = 40.0
STAND_IN_EXPOSURE = Exposure.VERY_SEVERE
"""What stands in the draft where the file cannot say (house choices; the exposure is the hardest one).
Each has a remark beside it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftSlope:
    """One slope by its outline, with what was noticed about it."""

    name: str
    pitch_deg: float
    outline_mm: tuple[Point, ...]
    edges: tuple[str, ...]
    remarks: tuple[str, ...]


def plan_job_text(read: PlanRead, *, title: str, pitch_deg: float | None) -> str:
    """The job file of the buildings on a plan. Raises InputRefused with every fault the door finds in it."""
    remarks = list(read.remarks)
    if pitch_deg is None:
        remarks.append(f"The plan does not say the pitch: {STAND_IN_PITCH_DEG:g}° stands on every wall. Measure it.")
    remarks.append("Every wall has a slope: write gable where a wall stands up to the roof. No overhangs are set.")
    angle_deg = STAND_IN_PITCH_DEG if pitch_deg is None else pitch_deg
    body = (line for plan in read.plans for line in _building_lines(plan, pitch_deg=angle_deg))
    return _checked(_job_lines(title, remarks, body))


def slopes_job_text(slopes: Sequence[DraftSlope], *, title: str, remarks: Sequence[str]) -> str:
    """The job file of measured slopes. Raises InputRefused with every fault the door finds in it."""
    return _checked(_job_lines(title, remarks, (line for slope in slopes for line in slope_lines(slope))))


def _checked(lines: Iterable[str]) -> str:
    text = "\n".join(lines) + "\n"
    read_job_text(text.encode())
    return text


def _job_lines(title: str, remarks: Sequence[str], body: Iterable[str]) -> Iterator[str]:
    yield "# Drafted from a file. Check before use:"
    yield from (f"# - {remark}" for remark in map(_one_line, remarks))
    yield ""
    yield "[job]"
    yield f"title = {_quoted(title)}"
    yield f"exposure = {_quoted(STAND_IN_EXPOSURE.value)} # the hardest: look the site up on the map of your code"
    yield ""
    yield "[covering]"
    yield f"from = {_quoted(covering(STAND_IN_COVERING).name)} # a stand-in: see gaugerod coverings"
    yield from body


def _building_lines(plan: NamedPlan, *, pitch_deg: float) -> Iterator[str]:
    yield from ("", "[[building]]", f"name = {_quoted(plan.name)}", "outline = [")
    yield from (f"    {_corner(corner)}, # wall {wall}" for wall, corner in enumerate(plan.outer_mm, 1))
    yield "]"
    if plan.holes_mm:
        yield "holes = ["
        yield from (f"    [{', '.join(map(_corner, hole))}]," for hole in plan.holes_mm)
        yield "]"
    sides = len(plan.outer_mm) + sum(map(len, plan.holes_mm))
    yield f"pitch = [{', '.join([_quoted(f'{pitch_deg:g}°')] * sides)}]"


def slope_lines(slope: DraftSlope) -> Iterator[str]:
    """The table of one slope."""
    yield ""
    yield from (f"# {_one_line(remark)}" for remark in slope.remarks)
    yield from ("[[slope]]", f"name = {_quoted(slope.name)}", f"pitch = {_quoted(f'{slope.pitch_deg:.2f}°')}")
    yield "outline = ["
    yield from (f"    {_corner(corner)}, # {edge}" for corner, edge in zip(slope.outline_mm, slope.edges, strict=True))
    yield "]"
    yield f"edges = [{', '.join(map(_quoted, slope.edges))}]"


def _corner(corner: Point) -> str:
    return "[" + ", ".join(f'"{part / 1000 + 0.0:.3f} m"' for part in corner) + "]"


def _quoted(text: str) -> str:
    """A TOML string: for what can be printed, JSON writes the same."""
    return json.dumps(text, ensure_ascii=False)


def _one_line(text: str) -> str:
    return "".join(letter if letter.isprintable() else " " for letter in text)


def printable_name(text: object, *, otherwise: str) -> str:
    r"""A name as the job file takes it: one printable line of up to 100 letters, or the other where there is none.

    >>> printable_name("Barn\n2 ", otherwise="building 1"), printable_name(None, otherwise="building 1")
    ('Barn 2', 'building 1')
    """
    if not isinstance(text, str):
        return otherwise
    return " ".join(_one_line(text).split())[:100].strip() or otherwise
