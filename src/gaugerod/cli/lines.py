"""Lines for the terminal that more than one summary prints."""

import textwrap
from collections.abc import Iterator, Sequence

from gaugerod.basis.finding import Finding, Verdict

_WIDTH_COUNT = 100
_MARK = {Verdict.WITHIN: "ok ", Verdict.OUTSIDE: "OUT", Verdict.NOT_COVERED: "?  "}


def finding_lines(findings: Sequence[Finding]) -> Iterator[str]:
    """Outside first, then not covered; what is within is only counted, the sheet lists it.

    What is said alike of several places is said once, with all of them.
    """
    told = [finding for finding in findings if finding.verdict is not Verdict.WITHIN]
    order = [Verdict.OUTSIDE, Verdict.NOT_COVERED]
    yield ""
    yield f"Findings: {len(findings) - len(told)} within their rules, {len(told)} to read"
    gathered: dict[tuple[Verdict, str], list[str]] = {}
    for finding in sorted(told, key=lambda finding: order.index(finding.verdict)):
        said = f"{finding.rule}. {finding.says} [{finding.citation}]"
        gathered.setdefault((finding.verdict, said), []).append(finding.where)
    for (verdict, said), places in gathered.items():
        yield from wrapped(f"{'; '.join(dict.fromkeys(places))}: {said}", first=f"  {_MARK[verdict]}  ")


def wrapped(text: str, *, first: str = "") -> list[str]:
    """The text in lines that fit, the later ones set in as far as ``first`` is long."""
    return textwrap.wrap(text, _WIDTH_COUNT, initial_indent=first, subsequent_indent=" " * len(first))
