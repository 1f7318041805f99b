"""The working on paper: every number, what it was come by from, and its source."""

from gaugerod.basis.working import Step
from gaugerod.sheets.sheet import Column, ColumnKind, Table

_INDENT = "· "


def working_table(working: Step) -> Table:
    """The tree in reading order; dots before a name say how deep it stands."""
    return Table(
        columns=(
            Column(heading="Number", share_ratio=1.5),
            Column(heading="How, and its source (how sure)", share_ratio=3.5),
            Column(heading="Comes to", kind=ColumnKind.FIGURES),
        ),
        rows=tuple(
            (
                f"{_INDENT * depth}{step.name}",
                _how(step),
                f"{value_said(step.value)} {step.unit}".strip(),
            )
            for depth, step in working.walk()
        ),
    )


def _how(step: Step) -> str:
    inputs = "; ".join(f"{name} {value_said(value)}" for name, value in step.inputs.items())
    how = " — ".join(part for part in (step.formula, inputs) if part)
    return how if step.citation is None else f"{how}\nSource: {step.citation}"


def value_said(value: float | str) -> str:
    """A number of the working, to a thousandth, no idle noughts.

    >>> value_said(345.0), value_said(322.7142857), value_said("set out")
    ('345', '322.714', 'set out')
    """
    if isinstance(value, str):
        return value
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
