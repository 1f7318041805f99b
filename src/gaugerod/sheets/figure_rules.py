"""Which rules speak of which of the numbers read first, so that what is outside is said beside its number."""

from collections.abc import Sequence

from gaugerod.basis.finding import Finding, Sense, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.lengths_shown import fine_length

RULES_OF = {
    "headlap": frozenset(
        {"headlap", "headlap as laid", "headlap default", "headlap floor", "greatest headlap", "low pitch lap"}
    ),
    "gauge": frozenset({"gauge", "greatest gauge", "least gauge", "batten gauge", "plain tile gauge"}),
    "top": frozenset({"top batten", "ridge cover", "ridge lap", "ridge over the top course", "tops batten"}),
    "overhang": frozenset({"eaves overhang", "eaves overhang, published", "upper eaves overhang"}),
    "under-eaves": frozenset({"eaves batten"}),
    "holes": frozenset({"nail above the head below", "nailing"}),
    "cover": frozenset({"cover width", "joint", "sidelap"}),
    "side": frozenset({"verge overhang", "abutment set-back", "high point at the verge", "verge slate"}),
    "piece": frozenset({"least piece"}),
}
"""By figure, the names of its rules."""


def wrong(findings: Sequence[Finding], figure: str) -> str:
    """What is outside of this figure's rules, in a word or two; empty when nothing is."""
    rules = [
        finding.rule for finding in findings if finding.verdict is Verdict.OUTSIDE and finding.rule in RULES_OF[figure]
    ]
    return f"OUTSIDE: {', '.join(dict.fromkeys(rules))}" if rules else ""


def least_lap_note(findings: Sequence[Finding], unit: LengthUnit) -> str:
    """The greatest of the least laps that rules ask for here."""
    least_mm = [
        finding.limit
        for finding in findings
        if finding.rule in RULES_OF["headlap"] and finding.sense is Sense.AT_LEAST and finding.limit is not None
    ]
    return f"at least {fine_length(max(least_mm), unit, towards=Sense.AT_MOST)}" if least_mm else "no least known"
