"""The job in money, to hand to a client: materials, labour, tax, total; first of all what the total leaves out."""

from collections.abc import Iterator
from decimal import Decimal

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.money_said import money_said
from gaugerod.sheets.order_cautions import QUOTATION_CAUTIONS
from gaugerod.sheets.order_left_out import left_out
from gaugerod.sheets.order_tables import trade_said
from gaugerod.sheets.quantity_said import charged_said, unit_said
from gaugerod.sheets.sheet import (
    Alarm,
    Block,
    Bullets,
    Column,
    ColumnKind,
    Figure,
    Figures,
    Heading,
    PaperSize,
    Prose,
    Sheet,
    Table,
)
from gaugerod.take_off.answer import Trade
from gaugerod.take_off.money import LabourCost, MaterialCost, Quotation
from gaugerod.take_off.wished import MoneySettings

TO_FILL_IN = "_" * 60
"""A line to write on."""
NOT_PRICED = "▲ no price"


def quotation_sheet(result: Result, quotation: Quotation, *, size: PaperSize) -> Sheet:
    """The quotation on paper."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Quotation. Quantities: the order of the whole job, by edition {result.job.edition.value}. Prices and rates: the "
        "list they were read from.",
        size=size,
        foot=job_foot(result),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, quotation)),
    )


def _blocks(result: Result, quotation: Quotation) -> Iterator[Block]:
    money, unit = quotation.money, result.job.show_lengths_in
    yield Heading(text="Quotation", level=1)
    yield from _left_out(result, quotation)
    yield Figures(figures=tuple(_figures(quotation)))
    yield _blanks(
        ("For", result.job.record.handed_to),
        ("Of the roof at", result.job.record.site),
        ("Date", ""),
        ("Holds until", ""),
    )
    for trade in Trade:
        of_trade = [each for each in quotation.materials if each.line.measured.trade is trade]
        if of_trade:
            yield Heading(text=f"Materials: {trade_said(trade).lower()}", kept_mm=34.0)
            yield _table(tuple(_material(each, money, unit) for each in of_trade))
    if quotation.labour:
        yield Heading(text="Labour", kept_mm=34.0)
        yield _table(tuple(_labour(each, money, unit) for each in quotation.labour))
    yield Heading(text="Total", kept_mm=50.0)
    yield Table(
        columns=(Column(heading="", share_ratio=3.0), Column(heading="Amount", kind=ColumnKind.MARK)),
        rows=tuple(_totals(quotation)),
    )
    if quotation.not_priced:
        yield Prose(
            text=f"▲ The total leaves out {counted(len(quotation.not_priced), 'thing')}, named on the first page."
        )
    yield Heading(text="Conditions", kept_mm=50.0)
    yield _blanks(("Scaffold, access, waste", ""), ("Not included", ""), ("Payment", ""), ("Other", ""), ("Signed", ""))
    yield Heading(text="Care", kept_mm=40.0)
    yield Bullets(lines=QUOTATION_CAUTIONS)


def _left_out(result: Result, quotation: Quotation) -> Iterator[Block]:
    """What is in no total, first and plainly: what has no price, and what was not counted at all."""
    if quotation.not_priced:
        yield Alarm(
            title=f"▲ {counted(len(quotation.not_priced), 'thing')} NOT in the total: there is no price",
            lines=quotation.not_priced,
        )
    not_counted = left_out(result)
    if not_counted:
        yield Alarm(title=f"◇ {counted(len(not_counted), 'thing')} not counted, and in no total", lines=not_counted)


def _figures(quotation: Quotation) -> Iterator[Figure]:
    money = quotation.money
    wrong = f"{len(quotation.not_priced)} not in it" if quotation.not_priced else ""
    yield Figure(label="Materials", values=(money_said(quotation.materials_total, money),))
    yield Figure(label="Labour", values=(money_said(quotation.labour_total, money),))
    yield Figure(
        label="Tax" if quotation.tax is None else _tax_said(money),
        values=("none counted" if quotation.tax is None else money_said(quotation.tax, money),),
    )
    yield Figure(label="Total", values=(money_said(quotation.total, money),), wrong=wrong)


def _tax_said(money: MoneySettings) -> str:
    name = money.tax_name or "Tax"
    return name if money.tax_percent is None else f"{name}, {money.tax_percent.normalize():f} %"


def _table(rows: tuple[tuple[str, ...], ...]) -> Table:
    figures = ColumnKind.FIGURES
    return Table(
        columns=(
            Column(heading="What", share_ratio=2.6),
            Column(heading="How much", kind=figures, share_ratio=1.0),
            Column(heading="Price", kind=figures, share_ratio=1.3),
            Column(heading="Amount", kind=figures, share_ratio=0.9),
        ),
        rows=rows,
    )


def _material(cost: MaterialCost, money: MoneySettings, unit: LengthUnit) -> tuple[str, ...]:
    measured, price = cost.line.measured, cost.price
    note = "" if price is None else _note(price.note, measured.what)
    return (
        f"{measured.what[:1].upper()}{measured.what[1:]}{note}",
        charged_said(cost.quantity, measured.unit, unit).replace(" (", "\n("),
        "–" if price is None else f"{money_said(price.amount, money)} {_per(price.per, price.unit)}",
        NOT_PRICED if cost.amount is None else money_said(cost.amount, money),
    )


def _note(note: str, what: str) -> str:
    """The user's own words below the line's; nothing where they only repeat it, as in the list this job wrote."""
    return "" if note.removeprefix("'") in {"", what} else f"\n{note}"


_FOR_ONE = {"pieces": "each", "rolls": "a roll", "litres": "a litre"}


def _per(per: Decimal, unit: str) -> str:
    """What a price is for: one piece, a thousand, a metre.

    >>> _per(Decimal(1000), "pieces"), _per(Decimal(1), "m2"), _per(Decimal(1), "pieces"), _per(Decimal(1), "litres")
    ('for 1000', 'for 1 m²', 'each', 'a litre')
    """
    if per == 1 and unit in _FOR_ONE:
        return _FOR_ONE[unit]
    return f"for {per.normalize():f} {unit_said(unit)}".rstrip()


def _labour(cost: LabourCost, money: MoneySettings, unit: LengthUnit) -> tuple[str, ...]:
    task, rate = cost.task, cost.rate
    note = "" if rate is None else _note(rate.note, task.what)
    return (
        f"{task.what[:1].upper()}{task.what[1:]}{note}",
        charged_said(cost.quantity, task.unit, unit).replace(" (", "\n("),
        "–" if rate is None else f"{money_said(rate.amount, money)} {_per(Decimal(1), rate.unit)}",
        NOT_PRICED if cost.amount is None else money_said(cost.amount, money),
    )


def _totals(quotation: Quotation) -> Iterator[tuple[str, str]]:
    money = quotation.money
    yield "Materials", money_said(quotation.materials_total, money)
    yield "Labour", money_said(quotation.labour_total, money)
    yield "Together, before tax", money_said(quotation.net_total, money)
    if quotation.tax is None:
        yield "Tax: none is counted", "–"
    else:
        yield _tax_said(money), money_said(quotation.tax, money)
    left_out = " (some things have no price and are not in it)" if quotation.not_priced else ""
    yield f"TOTAL{left_out}", money_said(quotation.total, money)


def _blanks(*lines: tuple[str, str]) -> Table:
    """What is to be filled in by hand, or stands there already."""
    return Table(
        columns=(Column(heading="", share_ratio=1.0), Column(heading="", share_ratio=3.0)),
        rows=tuple((name, said or f" \n{TO_FILL_IN}") for name, said in lines),
    )
