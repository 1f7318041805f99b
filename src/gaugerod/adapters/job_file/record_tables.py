"""The hand-over record as it is written: who, where, and what was accepted. What is left out is a line to fill in by hand."""

from pydantic import Field

from gaugerod.adapters.job_file.fields import Words
from gaugerod.adapters.job_file.order_fields import Day, Sentence
from gaugerod.adapters.job_file.part import Part
from gaugerod.job.record_wished import Deviation, RecordWished

MOST_DEVIATIONS_COUNT = 100


class DeviationTable(Part):
    """Something that was accepted though a rule asks for more, or reaches no further."""

    what: Sentence = Field(description="What was accepted.")
    accepted_by: Words = Field(description="Who accepted it.")
    rule: Words | None = Field(
        default=None, description="The rule, as the finding names it. Left out: of no one finding."
    )
    where: Words | None = Field(default=None, description="The place, as the finding names it.")
    on: Day | None = Field(default=None, description="The day, as you write it.")

    def deviation(self) -> Deviation:
        """What the job is told."""
        return Deviation(
            what=self.what,
            accepted_by=self.accepted_by,
            rule=self.rule or "",
            where=self.where or "",
            on=self.on or "",
        )


class RecordTable(Part):
    """What the hand-over record says besides what was worked out."""

    site: Sentence | None = Field(default=None, description="Where the roof is.")
    laid_by: Words | None = Field(default=None, description="Who laid it.")
    measured_by: Words | None = Field(default=None, description="Who measured it.")
    handed_to: Words | None = Field(default=None, description="Who it is handed to.")
    deviation: list[DeviationTable] = Field(
        default=[], max_length=MOST_DEVIATIONS_COUNT, description="What was accepted, and by whom."
    )

    def wished(self) -> RecordWished:
        """What the job is told."""
        return RecordWished(
            site=self.site or "",
            laid_by=self.laid_by or "",
            measured_by=self.measured_by or "",
            handed_to=self.handed_to or "",
            deviations=tuple(deviation.deviation() for deviation in self.deviation),
        )
