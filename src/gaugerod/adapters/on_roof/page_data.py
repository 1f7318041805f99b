"""What the page is told: the marks of every rod, the perps, what is outside a rule, and what re-gauging needs."""

import json
from collections.abc import Iterator, Sequence
from datetime import datetime
from hashlib import sha256
from typing import Any, assert_never

from gaugerod.adapters.on_roof.across_data import across_data
from gaugerod.adapters.on_roof.grain import as_fraction, grain
from gaugerod.adapters.on_roof.re_gauge_data import re_gauge_data
from gaugerod.adapters.on_roof.rod_data import rods_data
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.double_lap_wished import headlap_to_keep
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.wished import division_of
from gaugerod.setting_out.courses import Strategy
from gaugerod.sheets.mark_words import mark_word, marks_read
from gaugerod.sheets.told_once import told_once


def page_data(result: Result, *, made_at: datetime) -> dict[str, Any]:
    """The data of the page. ``fingerprint`` changes with anything that is shown, so that ticks never move to another job."""
    shown = {
        "title": result.job.title,
        "covering": result.job.covering.title,
        "edition": result.job.edition.value,
        "version": result.version,
        "unit": result.job.show_lengths_in.value,
        "step": as_fraction(division_of(result.job.show_lengths_in).step_mm),
        "findings": list(_told(result)),
        "not_set_out": [{"name": each.slope.name, "why": each.why} for each in result.not_set_out],
        "slopes": [_slope(result, slope) for slope in result.slopes],
        "cautions": list(result.cautions),
    }
    text = json.dumps(shown, ensure_ascii=False, allow_nan=False)
    return {
        "fingerprint": sha256(text.encode()).hexdigest()[:24],
        "made_at": made_at.strftime("%Y-%m-%d %H:%M"),
        **shown,
    }


def _told(result: Result) -> Iterator[dict[str, str]]:
    """Every finding on marks and perps that is not within its rule, with its slope; none: the whole job.

    What lies beneath is laid before, from its own sheets.
    """
    owners = [(each.slope.name, each.findings) for each in result.slopes]
    owners += [(each.slope.name, each.findings) for each in result.not_set_out]
    of_slopes = {finding for _, findings in owners for finding in findings}
    elsewhere = {*of_slopes, *result.beneath.findings}
    whole = [finding for finding in result.findings if finding not in elsewhere]
    for name, findings in (("", whole), *owners):
        yield from _told_of(result, name, findings)


def _told_of(result: Result, name: str, findings: Sequence[Finding]) -> Iterator[dict[str, str]]:
    open_ones = [finding for finding in findings if finding.verdict is not Verdict.WITHIN]
    for told in told_once(open_ones, name=name, unit=result.job.show_lengths_in):
        finding = told.finding
        yield {"slope": name, "verdict": finding.verdict.value, "rule": told.rule, "says": finding.says}


def _slope(result: Result, slope: SlopeResult) -> dict[str, Any]:
    courses = slope.courses
    least_mm = courses.gauge_min_mm
    return {
        "name": slope.slope.name,
        "word": mark_word(slope),
        "read": marks_read(slope),
        "cut_top": courses.strategy is Strategy.PARALLEL,
        "gauge_min_mm": None if least_mm is None else grain(least_mm),
        "gauge_max_mm": grain(courses.gauge_max_mm),
        "lap_least_mm": _least_lap_mm(result, slope),
        "rods": rods_data(slope, covering=result.job.covering),
        "across": across_data(slope, unit=result.job.show_lengths_in),
        "re_gauge": re_gauge_data(result, slope),
    }


def _least_lap_mm(result: Result, slope: SlopeResult) -> float | None:
    """The lap that no course may fall short of; None where the job states none for its random slates."""
    job, covering = result.job, result.job.covering
    match covering:
        case SingleLapTile():
            return grain(covering.length_mm - slope.courses.gauge_max_mm)
        case PlainTile() | SizedSlate():
            return grain(headlap_to_keep(job, slope.slope, covering).value)
        case RandomSlates():
            return job.wishes.headlap_mm
        case _ as unreachable:
            assert_never(unreachable)
