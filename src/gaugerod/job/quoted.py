"""The job in money: its take-off and its tasks at the user's own prices and rates."""

from gaugerod.job.result import Result
from gaugerod.job.take_off_ask import take_off_ask
from gaugerod.take_off.cost import cost
from gaugerod.take_off.money import PriceList, Quotation, Task
from gaugerod.take_off.tasks import tasks


def tasks_of(result: Result) -> tuple[Task, ...]:
    """The work of the job as it is measured, to be charged by rates. Scope: slopes that were set out."""
    return tasks(
        take_off_ask(
            result.job,
            slopes=result.slopes,
            not_set_out=result.not_set_out,
            offcuts=result.offcuts,
            under=result.beneath,
            edges=result.edges,
        )
    )


def quoted(result: Result, prices: PriceList) -> Quotation | None:
    """The quotation; None where nothing could be taken off."""
    if result.take_off is None:
        return None
    return cost(take_off=result.take_off, tasks=tasks_of(result), prices=prices, money=result.job.order.money)
