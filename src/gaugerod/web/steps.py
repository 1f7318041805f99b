"""The pages of a job, in the order of the work."""

from dataclasses import dataclass

_STEPS = (
    ("site", "Site", ("site",)),
    ("slopes", "Slopes", ("slopes", "slope", "plan", "check_roof")),
    ("covering", "Covering", ("covering", "test_lay")),
    ("set-out", "Set out", ("setting_out",)),
    ("beneath", "Battens, underlay", ("beneath",)),
    ("edges", "Edges", ("edges",)),
    ("order", "Order", ("order", "quotation")),
    ("findings", "Findings", ("findings",)),
    ("working", "Working", ("working",)),
    ("sheets", "Sheets", ("sheets", "on_roof")),
    ("record", "Record", ("record",)),
    ("history", "History", ("history", "compare")),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step: where it is, what it is called, and whether we stand on it."""

    href: str
    label: str
    here: bool


def steps_of(job: str, *, here: str) -> tuple[Step, ...]:
    """The steps of a job, the one of the page ``here`` marked.

    >>> [step.label for step in steps_of("a1", here="slope") if step.here]
    ['Slopes']
    """
    return tuple(Step(href=f"/jobs/{job}/{path}", label=label, here=here in pages) for path, label, pages in _STEPS)
