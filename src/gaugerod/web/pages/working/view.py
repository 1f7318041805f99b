"""How every number was come by, opened step by step."""

from gaugerod.basis.working import Step
from gaugerod.sheets.working_table import value_said
from gaugerod.web.asked import Asked
from gaugerod.web.job_answer import answer_of, lacks
from gaugerod.web.keeping import opened
from gaugerod.web.pages.working.context import StepShown, WorkingContext
from gaugerod.web.reply import Reply, Shown
from gaugerod.web.services import Services


def working_view(services: Services, asked: Asked) -> Reply:
    """The working of the job."""
    newest, head = opened(services, asked)
    answer = answer_of(newest.document)
    context = WorkingContext(
        working=None if answer.result is None else _step(answer.result.working),
        lacks=() if answer.result is not None else lacks(newest.document, answer, job=head.id),
    )
    return Shown(page="working", title="Working", context=context, job=head)


def _step(step: Step) -> StepShown:
    return StepShown(
        name=step.name,
        value=f"{value_said(step.value)} {step.unit}".strip(),
        formula=step.formula,
        inputs=tuple(f"{name} {value_said(value)}" for name, value in step.inputs.items()),
        source="" if step.citation is None else str(step.citation),
        parts=tuple(_step(part) for part in step.parts),
    )
