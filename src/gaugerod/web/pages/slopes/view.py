"""The slopes and buildings of a job."""

from typing import Any

from markupsafe import Markup

from gaugerod.basis.lengths import LengthUnit
from gaugerod.web.asked import Asked
from gaugerod.web.form import list_of, shown_length, under_path
from gaugerod.web.job_answer import faults_at_the_door, unit_of
from gaugerod.web.keeping import opened
from gaugerod.web.pages.plan.roof_so_far import pocket_roof, roof_line, roof_so_far
from gaugerod.web.pages.slope.taped_so_far import taped_so_far
from gaugerod.web.pages.slopes.context import PartRow, SlopesContext
from gaugerod.web.pitch_ways import pitch_said
from gaugerod.web.reply import Reply, Shown
from gaugerod.web.services import Services


def slopes_view(services: Services, asked: Asked) -> Reply:
    """The list."""
    newest, head = opened(services, asked)
    faults = faults_at_the_door(newest.document)
    unit = unit_of(newest.document)

    def row(key: str, page: str, index: int, table: Any) -> PartRow:  # noqa: ANN401 - a draft may hold anything
        form = roof_so_far(table).form if key == "building" and isinstance(table, dict) else None
        name = _name(table, index)
        return PartRow(
            name=name,
            figures=_figures(table) if form is None else roof_line(form),
            href=f"/jobs/{head.id}/{page}/{index + 1}",
            faults_count=len(under_path(faults, f"{key}[{index}]")),
            drawing=_drawing(table, unit) if form is None else pocket_roof(name, form, unit=unit),
        )

    def rows(key: str, page: str) -> tuple[PartRow, ...]:
        return tuple(row(key, page, *each) for each in enumerate(list_of(newest.document, key)))

    context = SlopesContext(slopes=rows("slope", "slopes"), buildings=rows("building", "buildings"))
    return Shown(page="slopes", title="Slopes", context=context, job=head)


def _drawing(table: Any, unit: LengthUnit) -> Markup:  # noqa: ANN401
    taped = taped_so_far(table, unit=unit) if isinstance(table, dict) and "outline" not in table else None
    return Markup() if taped is None else taped.drawing


def _name(table: Any, index: int) -> str:  # noqa: ANN401
    name = table.get("name") if isinstance(table, dict) else None
    return name if isinstance(name, str) and name.strip() else f"number {index + 1}"


def _figures(table: Any) -> str:  # noqa: ANN401
    if not isinstance(table, dict):
        return "cannot be read"
    if isinstance(table.get("outline"), list):
        return f"by its outline, {len(table['outline'])} corners"
    said = [f"{shown_length(table.get('across'))} along the eaves"] if table.get("across") else []
    said += [f"pitch {pitch_said(table['pitch'])}"] if table.get("pitch") else []
    rafters = list_of(table, "rafters")
    said += [f"{len(rafters)} rafter{'' if len(rafters) == 1 else 's'} measured"] if rafters else []
    return ", ".join(said) or "nothing measured yet"
