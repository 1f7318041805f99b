"""What the job says of its edges that cannot all be true: a unit that gains more than its length, a line no slope has.

They are sought in the document as it was written: only what can be read is compared.
"""

from collections import Counter
from collections.abc import Iterable, Iterator

from gaugerod.adapters.job_file.allowed import MOST_BUILDINGS_COUNT, MOST_CORNERS_COUNT, MOST_SLOPES_COUNT
from gaugerod.adapters.job_file.as_written import Table, length_in_mm, listed, table_in, tables_in, words_of
from gaugerod.adapters.job_file.edges_fields import (
    LINE_UNIT,
    LINE_UNIT_COVER,
    LINER,
    LINER_LAP,
    VALLEY_CLEAR,
    VALLEY_GIRTH,
    SharedEdge,
)
from gaugerod.adapters.job_file.edges_tables import MOST_SHARED_COUNT
from gaugerod.adapters.job_file.plan_fields import NamedEdge
from gaugerod.adapters.job_file.refusing import shown
from gaugerod.adapters.job_file.slope_tables import BY_OUTLINE, given_how
from gaugerod.basis.errors import Fault

_EDGES = frozenset(edge.value for edge in NamedEdge)
_SHARED = frozenset(edge.value for edge in SharedEdge)


def edges_contradictions(document: Table) -> Iterator[Fault]:
    """Every contradiction of the edges, each with the path of the later of the two figures."""
    edges = table_in(document, "edges")
    ridge, valley = table_in(edges, "ridge"), table_in(edges, "valley")
    for key in ("unit", "mono_unit", "hip_unit"):
        yield from _cover_within_length(table_in(ridge, key), f"edges.ridge.{key}")
    yield from _valley(valley, "edges.valley")
    yield from _shared(document, edges)


def _cover_within_length(unit: Table, path: str) -> Iterator[Fault]:
    whole_mm, cover_mm = length_in_mm(unit, "length", LINE_UNIT), length_in_mm(unit, "cover", LINE_UNIT_COVER)
    if whole_mm is not None and cover_mm is not None and cover_mm > whole_mm:
        allowed = f"up to its length, {whole_mm:g} mm"
        yield Fault(f"{path}.cover", f"{cover_mm:g} mm", allowed, "A unit cannot gain more than its length.")


def _valley(valley: Table, path: str) -> Iterator[Fault]:
    liner_mm, lap_mm = length_in_mm(valley, "liner_length", LINER), length_in_mm(valley, "liner_lap", LINER_LAP)
    if liner_mm is not None and lap_mm is not None and lap_mm >= liner_mm:
        allowed = f"less than its length, {liner_mm:g} mm"
        yield Fault(f"{path}.liner_lap", f"{lap_mm:g} mm", allowed, "Such a liner would never get up the valley.")
    clear_mm, girth_mm = length_in_mm(valley, "clear", VALLEY_CLEAR), length_in_mm(valley, "girth", VALLEY_GIRTH)
    if clear_mm is not None and girth_mm is not None and girth_mm <= clear_mm:
        allowed = f"more than the clear width, {clear_mm:g} mm"
        yield Fault(f"{path}.girth", f"{girth_mm:g} mm", allowed, "The lining must reach under the covering.")


def _shared(document: Table, edges: Table) -> Iterator[Fault]:
    """Lines said to be shared by slopes that are not there, have no such edge, or have no more of them."""
    slopes = {name: _edges_of(slope) for name, slope in _named(document, "slope", most=MOST_SLOPES_COUNT)}
    buildings = [name for name, _ in _named(document, "building", most=MOST_BUILDINGS_COUNT)]
    used: Counter[tuple[str, str]] = Counter()
    for path, line in tables_in(edges, "shared", most=MOST_SHARED_COUNT, inside="edges."):
        kind = shown(line.get("edge"))
        names = [words_of(each) for each in listed(line, "slopes", most=2)]
        if len(names) == 2 and names[0] is not None and names[0] == names[1]:
            yield Fault(f"{path}.slopes", f"{names[0]} twice", "two slopes", "A slope meets another, not itself.")
            continue
        for at, name in enumerate(names):
            if name is None:
                continue
            where = f"{path}.slopes[{at}]"
            if name not in slopes:
                yield _no_such_slope(where, name, slopes, buildings)
            elif kind in _SHARED and (has := slopes[name]) is not None:
                used[name, kind] += 1
                yield from _edge_is_there(where, name, kind, has=has, used=used[name, kind])


def _no_such_slope(where: str, name: str, slopes: Iterable[str], buildings: list[str]) -> Fault:
    of = next((each for each in buildings if name.startswith(f"{each} ")), None)
    do = "Write the name as its [[slope]] has it."
    if of is not None:
        do = f"The slopes of {of} are joined by its plan already: take this out."
    return Fault(where, name, f"a slope of this job: {', '.join(slopes) or 'there is none'}", do)


def _edge_is_there(where: str, name: str, kind: str, *, has: Counter[str], used: int) -> Iterator[Fault]:
    if not has[kind]:
        yield Fault(
            where, f"{name}, {kind}", f"an edge that it has: {', '.join(has)}", "Check the edge, and the slope's sides."
        )
    elif used > has[kind]:
        allowed = f"{has[kind]} in all, as many as the slope has"
        yield Fault(where, f"{name}, {kind}, {used} times", allowed, "Each edge meets one other: take one out.")


def _edges_of(slope: Table) -> Counter[str] | None:
    """How many edges of each kind a slope has; None where one of them cannot be read."""
    found = (
        listed(slope, "edges", most=MOST_CORNERS_COUNT)
        if given_how(slope) == BY_OUTLINE
        else [slope.get(key) for key in ("left", "right", "top")]
    )
    known = [each for each in found if isinstance(each, str) and each in _EDGES]
    return Counter(known) if len(known) == len(found) else None


def _named(document: Table, key: str, *, most: int) -> Iterator[tuple[str, Table]]:
    for _, table in tables_in(document, key, most=most):
        name = words_of(table.get("name"))
        if name is not None:
            yield name, table
