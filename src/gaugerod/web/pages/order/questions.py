"""What is asked of the order, in the words of the form. Nothing of it is needed."""

from gaugerod.adapters.job_file.order_tables import MOST_PACKS_COUNT
from gaugerod.web.questions import Kind, More, PartQuestions, Question

ORDER = PartQuestions(
    key="order",
    title="Allowances, packs, money",
    says="",
    first=(
        Question(key="breakage", label="Breakage, %", kind=Kind.NUMBER, hint="of the covering; left empty: the usual"),
        Question(key="flat_waste", label="Flat share, %", kind=Kind.NUMBER,
                 hint="to compare the count with; left empty: the usual"),
    ),
    more=(
        More(
            title="Packs",
            says="What one pack holds, in the unit of the item. The name of each item stands at its line of the order.",
            questions=(),
            rows_key="pack",
            rows=(
                Question(key="item", label="Item", kind=Kind.WORDS),
                Question(key="size", label="One pack holds", kind=Kind.NUMBER),
                Question(key="pallet", label="Packs on a pallet", kind=Kind.NUMBER),
            ),
            most_rows_count=MOST_PACKS_COUNT,
        ),
        More(
            title="Money",
            questions=(
                Question(key="money.currency", label="Currency", kind=Kind.WORDS, hint="its name or sign"),
                Question(key="money.places", label="Decimal places", kind=Kind.NUMBER, hint="left empty: 2"),
                Question(key="money.tax", label="Tax, %", kind=Kind.NUMBER, hint="on the whole; left empty: none"),
                Question(key="money.tax_name", label="What the tax is called", kind=Kind.WORDS),
            ),
        ),
    ),
)  # fmt: skip
PARTS = (ORDER,)
