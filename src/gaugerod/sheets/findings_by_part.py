"""The findings of a job by the part of it that they are of, in the order of the work."""

from collections.abc import Sequence

from gaugerod.basis.finding import Finding
from gaugerod.job.result import Beneath, Result

SETTING_OUT = "Setting out"
Parted = tuple[tuple[str, tuple[Finding, ...]], ...]


def parted(result: Result) -> Parted:
    """Every finding of the job under the name of its part; parts without one are left out."""
    return (*parted_setting_out(result), *parted_beneath(result.beneath), *parted_edges(result), *parted_order(result))


def parted_setting_out(result: Result) -> Parted:
    """The findings of all that is neither beneath the covering nor of its edges or its order."""
    elsewhere = {*result.beneath.findings, *_of_edges(result), *_of_order(result)}
    return _with_some(((SETTING_OUT, tuple(finding for finding in result.findings if finding not in elsewhere)),))


def parted_edges(result: Result) -> Parted:
    """The findings of the edges."""
    return _with_some((("Edges", _of_edges(result)),))


def parted_order(result: Result) -> Parted:
    """The findings of the order."""
    return _with_some((("Order", _of_order(result)),))


def _of_edges(result: Result) -> tuple[Finding, ...]:
    return () if result.edges is None else result.edges.findings


def _of_order(result: Result) -> tuple[Finding, ...]:
    return () if result.take_off is None else result.take_off.findings


def parted_beneath(under: Beneath) -> Parted:
    """The findings of what lies beneath."""
    of_parts = (
        ("Battens", () if under.battens is None else under.battens.findings),
        ("Underlay", tuple(finding for plan in under.underlay for finding in plan.findings)),
        ("Openings for air", tuple(finding for air in under.air for finding in air.findings)),
        ("Nails and clips", tuple(finding for plan in under.fixings for finding in plan.findings)),
        ("Mass on the slope", tuple(finding for load in under.loads for finding in load.findings)),
    )
    placed = {finding for _, findings in of_parts for finding in findings}
    others = tuple(finding for finding in under.findings if finding not in placed)
    return _with_some((("Could not be planned", others), *of_parts))


def _with_some(parts: Sequence[tuple[str, tuple[Finding, ...]]]) -> Parted:
    return tuple((name, findings) for name, findings in parts if findings)
