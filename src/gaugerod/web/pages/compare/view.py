"""Two saves compared by what was typed and by which marks moved."""

from collections.abc import Iterator, Mapping

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Result
from gaugerod.web.asked import Asked
from gaugerod.web.job_answer import answer_of, marks_alone
from gaugerod.web.keeping import opened
from gaugerod.web.pages.compare.context import CompareContext, MarkRow, RodRows
from gaugerod.web.pages.compare.typed import NONE, typed_differently
from gaugerod.web.reply import Reply, Shown
from gaugerod.web.services import Services

_STILL_MM = 1e-6
Marks = Mapping[str, tuple[float, ...]]


def compare_view(services: Services, asked: Asked) -> Reply:
    """The comparison. Raises NotKept for a save that is not there."""
    newest, head = opened(services, asked)
    before = services.store.load(newest.job, _rev(asked, "before", otherwise=newest.rev))
    after = services.store.load(newest.job, _rev(asked, "after", otherwise=newest.rev))
    was, now = (answer_of(marks_alone(each.document)).result for each in (before, after))
    rods: tuple[RodRows, ...] = ()
    if was is None or now is None:
        says = "Marks cannot be compared: one of the two could not be set out."
    else:
        rods = tuple(_rods(_marks(was), _marks(now), unit=now.job.show_lengths_in))
        says = "" if any(rod.rows for rod in rods) else "No mark moved."
    context = CompareContext(
        before=before.rev,
        after=after.rev,
        typed=tuple(typed_differently(before.document, after.document)),
        rods=tuple(rod for rod in rods if rod.rows),
        says=says,
    )
    return Shown(page="compare", title=f"Save {before.rev} and save {after.rev}", context=context, job=head)


def _rev(asked: Asked, name: str, *, otherwise: int) -> int:
    given = asked.query.get(name, "")
    return int(given) if given.isascii() and given.isdigit() and len(given) < 10 else otherwise


def _marks(result: Result) -> Marks:
    """Every row of marks by its name."""
    marks: dict[str, tuple[float, ...]] = {}
    for slope in result.slopes:
        for number, rod in enumerate(slope.courses.rods, start=1):
            marks[f"{slope.slope.name}, rod {number}"] = rod.marks_mm
        for line in () if slope.across is None else slope.across.perp_lines:
            marks[f"{slope.slope.name}, perps along the {line.line}"] = line.marks_mm
    return marks


def _rods(before: Marks, after: Marks, *, unit: LengthUnit) -> Iterator[RodRows]:
    for title in dict.fromkeys([*before, *after]):
        was, now = before.get(title, ()), after.get(title, ())
        rows = [
            _row(number, was[number] if number < len(was) else None, now[number] if number < len(now) else None, unit)
            for number in range(max(len(was), len(now)))
        ]
        moved = tuple(row for row in rows if row is not None)
        yield RodRows(title=title, rows=moved, still_count=len(rows) - len(moved))


def _row(index: int, was_mm: float | None, now_mm: float | None, unit: LengthUnit) -> MarkRow | None:
    """The mark, when it moved."""
    moved = ""
    if was_mm is not None and now_mm is not None:
        by_mm = now_mm - was_mm
        if -_STILL_MM < by_mm < _STILL_MM:
            return None
        moved = ("+" if by_mm > 0 else "") + write_length(by_mm, unit)
    return MarkRow(
        mark=f"{index + 1}",
        before=NONE if was_mm is None else write_length(was_mm, unit),
        after=NONE if now_mm is None else write_length(now_mm, unit),
        moved=moved or ("new" if was_mm is None else "gone"),
    )
