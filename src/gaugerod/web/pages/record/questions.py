"""What is asked for the hand-over record, in the words of the form. What is left empty is a line to fill in by hand."""

from gaugerod.adapters.job_file.record_tables import MOST_DEVIATIONS_COUNT
from gaugerod.web.questions import Kind, More, PartQuestions, Question

RECORD = PartQuestions(
    key="record",
    title="Who and where",
    says="",
    first=(
        Question(key="site", label="Site", kind=Kind.WORDS),
        Question(key="laid_by", label="Laid by", kind=Kind.WORDS),
        Question(key="measured_by", label="Measured by", kind=Kind.WORDS),
        Question(key="handed_to", label="Handed to", kind=Kind.WORDS),
    ),
    more=(
        More(
            title="What was accepted",
            says="Clear every field of one to take it out. Rule and place as the finding names them, or empty: of no finding.",
            questions=(),
            rows_key="deviation",
            rows=(
                Question(key="what", label="What was accepted", kind=Kind.WORDS),
                Question(key="accepted_by", label="Accepted by", kind=Kind.WORDS),
                Question(key="on", label="Day", kind=Kind.WORDS),
                Question(key="rule", label="Rule", kind=Kind.WORDS),
                Question(key="where", label="Place", kind=Kind.WORDS),
            ),
            most_rows_count=MOST_DEVIATIONS_COUNT,
        ),
    ),
)
PARTS = (RECORD,)
