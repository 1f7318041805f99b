"""An edge the job says nothing of: its length, and where in the job file more can be said."""

from gaugerod.basis.rounding import Division
from gaugerod.basis.working import Step
from gaugerod.edges.answer import MadeEdge
from gaugerod.edges.ask import EdgeLine
from gaugerod.setting_out.said import said


def untold(line: EdgeLine, *, table: str) -> MadeEdge:
    """The line with its length and nothing counted. ``table`` of the job file says how it is made: ``[edges.ridge]``.

    >>> from gaugerod.edges.ask import LineKind
    >>> ridge = EdgeLine(name="front and rear, ridge", kind=LineKind.RIDGE, slopes=("front", "rear"), length_mm=9000.0,
    ...                  past_ends_mm=90.0, slope_deg=0.0, courses_count=(0, 0))
    >>> untold(ridge, table="[edges.ridge]").says
    ('9090 mm long. How it is made is not said: give it in [edges.ridge].',)
    """
    return MadeEdge(
        name=line.name,
        line=line,
        opening=None,
        made="",
        run=None,
        clear_mm=None,
        parts=(),
        lead=(),
        says=(f"{said(line.laid_mm, Division.MILLIMETRE)} long. How it is made is not said: give it in {table}.",),
        findings=(),
        working=laid_length(line),
    )


def laid_length(line: EdgeLine) -> Step:
    """How far the line is laid: on the structure, and past its ends. mm."""
    return Step(
        name=f"{line.name}: length",
        formula="length on the structure + what the covering runs past its ends",
        inputs={"length (mm)": line.length_mm, "past both ends (mm)": line.past_ends_mm},
        value=line.laid_mm,
        unit="mm",
    )
