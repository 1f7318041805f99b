"""Measuring your own tile: a test lay on the ground, step by step, with what follows from each figure."""

from collections.abc import Mapping

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.measured import Measured
from gaugerod.coverings.single_lap import Form, Material
from gaugerod.web.asked import Asked
from gaugerod.web.form import Choice, Field, placed
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.test_lay.context import Found, LayStep, TestLayContext
from gaugerod.web.pages.test_lay.lay import covering_table, measured_of
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services

_STEPS: tuple[tuple[str, str, tuple[tuple[str, str], ...]], ...] = (
    (
        "Two tiles on loose battens",
        "Hang one over the other at the least lap you will allow.",
        (("lap", "Lap"), ("gauge_at_lap", "Batten to batten, top edge to top edge")),
    ),
    (
        "Push the battens together",
        "As close as the tiles let them come.",
        (("closest_gauge", "Batten to batten now"),),
    ),
    (
        "Ten tiles side by side",
        "First pushed up tight, then pulled fully open.",
        (("ten_closed", "Ten pushed up"), ("ten_open", "Ten pulled open")),
    ),
    (
        "One tile and a rule",
        "Hanging length: from the bearing face of the nibs to the tail.",
        (("length", "Length"), ("width", "Width"), ("hanging_length", "Hanging length"), ("mass", "Mass of one, kg")),
    ),
    (
        "From the maker",
        "Least pitch as the maker states it. High points: where the crowns of the profile are from the left edge, parted by ;",
        (("pitch_min", "Least pitch"), ("high_points", "High points")),
    ),
)
_MATERIALS = (Material.CONCRETE, Material.CLAY)


def test_lay_view(services: Services, asked: Asked) -> Reply:
    """Show the steps, what follows so far, or save the record as the covering."""
    newest, head = opened(services, asked)
    if not asked.posted:
        return _shown(asked.query, head, None, ())
    base = base_of(asked, newest, services)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    try:
        found = measured_of(asked.form)
    except InputRefused as refused:
        return _shown(asked.form, head, None, refused.faults)
    if asked.part or found.record is None:
        return _shown(asked.form, head, found, ())
    document = {**base.document, "covering": covering_table(found.record)}
    measured = document.get("slope") or document.get("building")
    return kept(services, asked, base, document, go_to=f"/jobs/{head.id}/{'set-out' if measured else 'slopes'}")


test_lay_view.__test__ = False  # type: ignore[attr-defined] # the name means a lay, not a test of ours


def _shown(form: Mapping[str, str], head: JobHead, found: Measured | None, faults: tuple[Fault, ...]) -> Shown:
    steps = [(title, says, [_field(name, label, form) for name, label in figures]) for title, says, figures in _STEPS]
    steps.append(("The tile", "What it is called and made of.", _choices(form)))
    every, listed = placed([field for _, _, fields in steps for field in fields], faults)
    known = {field.name: field for field in every}
    no_record = found is not None and found.record is None
    context = TestLayContext(
        steps=tuple(
            LayStep(title=title, says=says, fields=tuple(known[field.name] for field in fields))
            for title, says, fields in steps
        ),
        found=() if found is None else tuple(_found(found)),
        says=() if found is None else found.says,
        missing=() if found is None else tuple(f"{name.replace('_', ' ')}: {why}" for name, why in found.missing),
        faults=listed,
        rev=head.rev,
    )
    status = 422 if faults or no_record else 200
    return Shown(page="test_lay", title="Measure your own tile", context=context, job=head, status=status)


def _field(name: str, label: str, form: Mapping[str, str]) -> Field:
    return Field(name=name, label=label, value=form.get(name, ""))


def _choices(form: Mapping[str, str]) -> list[Field]:
    yes_no = (Choice(value="no", label="no"), Choice(value="yes", label="yes"))
    asked: tuple[tuple[str, str, tuple[Choice, ...]], ...] = (
        ("face", "Face", tuple(Choice(value=each.value, label=each.value) for each in Form)),
        ("material", "Made of", tuple(Choice(value=each.value, label=each.value) for each in _MATERIALS)),
        ("ten_measured", "Ten were measured", (
            Choice(value="over-all", label="over all, outer edge to outer edge"),
            Choice(value="edge-to-edge", label="first left edge to the eleventh left edge"),
        )),
        ("bond", "Usual bond", (Choice(value="straight", label="straight"), Choice(value="broken", label="broken"))),
        ("half_unit", "Half units to be had", yes_no),
        ("unit_and_a_half", "One-and-a-halves to be had", yes_no),
    )  # fmt: skip
    title = Field(name="title", label="Title on the sheets", value=form.get("title", ""), length=False)
    return [
        title,
        *(
            Field(name=name, label=label, value=form.get(name, choices[0].value), choices=choices)
            for name, label, choices in asked
        ),
    ]


def _found(measured: Measured) -> list[Found]:
    tile = measured.record
    if tile is None:
        return []
    least_mm = tile.gauge_min_mm
    found = [
        Found(label="Greatest gauge", value=f"{tile.gauge_max_mm:g} mm"),
        Found(label="Least gauge", value="not known" if least_mm is None else f"{least_mm:g} mm"),
        Found(label="Length", value=f"{tile.length_mm:g} mm"),
    ]
    if tile.cover_closed_mm is not None and tile.cover_open_mm is not None:
        found.append(Found(label="Cover of one", value=f"{tile.cover_closed_mm:.1f} to {tile.cover_open_mm:.1f} mm"))
    return found
