"""Advice: what is outside a house tolerance only. It shows, it does not leak, and it puts nothing outside a rule."""

from gaugerod.as_built.evenness import UNLIKE
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.standards.defaults import Tolerance, tolerance
from gaugerod.standards.edition import Edition


def is_advice(finding: Finding, *, edition: Edition) -> bool:
    """Is this outside one of this program's own tolerances, and outside no rule?

    A limit of the record or the edition is a rule wherever it was found broken: a course under the least gauge, or a gap
    over the greatest, is never advice.

    >>> from gaugerod.basis.finding import Sense
    >>> limit = tolerance(Edition.GB, Tolerance.RUN_OUT_OVER_SLOPE)
    >>> run_out = Finding(rule="gauge run-out", where="rear", proposed=12.0, limit=limit.value, unit="mm",
    ...                   sense=Sense.AT_MOST, citation=limit.citation, says="The courses have run out.")
    >>> is_advice(run_out, edition=Edition.GB)
    True
    """
    tolerances = {UNLIKE.citation, *(tolerance(edition, each).citation for each in Tolerance)}
    return finding.verdict is Verdict.OUTSIDE and finding.citation in tolerances
