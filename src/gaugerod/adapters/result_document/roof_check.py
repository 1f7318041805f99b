"""The document of a roof checked as built: plain JSON, in a fixed order, with the names other programs may rely on."""

from typing import Any

from gaugerod import __version__
from gaugerod.adapters.result_document.document import finding_document, step_document
from gaugerod.adapters.result_document.rounded import fine
from gaugerod.as_built.evenness import CourseLine
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.leaks import RANKING, Leak
from gaugerod.as_built.roof_check import RodAsBuilt, RoofCheck
from gaugerod.as_built.strip_back import StripBack
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.cautions import CAUTIONS
from gaugerod.sheets.roof_check_words import NOT_LOOKED_AT, verdict_sentence

Json = dict[str, Any]


def roof_check_document(check: RoofCheck, *, title: str) -> Json:
    """The whole check. Lengths in mm to a ten-thousandth. ``advice`` is outside a house tolerance, and outside no rule."""
    needed = check.needed
    return {
        "title": title,
        "slope": check.ask.where,
        "edition": check.ask.edition.value,
        "version": __version__,
        "covering": {"name": check.ask.covering.name, "title": check.ask.covering.title},
        "finished": check.ask.finished,
        "courses": check.courses_count,
        "least_lap": {"mm": fine(needed.least_lap.value), "source": str(needed.least_lap.citation)},
        "edition_lap": None
        if needed.edition_lap is None
        else {"mm": fine(needed.edition_lap.value), "source": str(needed.edition_lap.citation)},
        "smallest_lap": _lap(check.least_lap),
        "marks_are": needed.marks_are,
        "rods": [_rod(rod) for rod in check.rods],
        "lines": [_line(line) for line in check.lines],
        "leaks_first": {"ranking": str(RANKING), "courses": [_leak(leak) for leak in check.leaks]},
        "strip_back": None
        if check.strip_back is None
        else _strip_back(check.strip_back, tail_to_mark_mm=needed.afresh.hanging_length_mm),
        "verdict": verdict_sentence(check, unit=LengthUnit.MM),
        "findings": [finding_document(finding) for finding in check.by_rule],
        "advice": [finding_document(finding) for finding in check.advice],
        "not_covered_here": list(NOT_LOOKED_AT),
        "cautions": list(CAUTIONS),
        "working": step_document(check.working),
    }


def _rod(rod: RodAsBuilt) -> Json:
    return {
        "at_mm": fine(rod.at_mm),
        "length_mm": fine(rod.length_mm),
        "marks_mm": [fine(mark) for mark in rod.marks_mm],
        "tails_mm": [fine(tail) for tail in rod.tails_mm],
        "overhang_mm": fine(rod.overhang_mm),
        "below_apex_mm": fine(rod.below_apex_mm),
        "cover_mm": None if rod.cover_mm is None else fine(rod.cover_mm),
        "equal_gauge_mm": fine(rod.even.equal_gauge_mm),
        "usual_gauge_mm": fine(rod.even.usual_gauge_mm),
        "gaps": [
            {
                "lower": gap.lower,
                "upper": gap.upper,
                "gap_mm": fine(gap.gap_mm),
                "run_out_mm": fine(gap.run_out_mm),
                "spacing": gap.spacing.value,
            }
            for gap in rod.even.gaps
        ],
        "laps": [_lap(lap) for lap in rod.laps],
    }


def _lap(lap: LapAsBuilt) -> Json:
    short_mm = lap.short_of_edition_mm
    return {
        "at_mm": fine(lap.at_mm),
        "course": lap.course,
        "over": lap.over,
        "lap_mm": fine(lap.lap_mm),
        "short_by_mm": fine(lap.short_by_mm),
        "short_of_edition_mm": None if short_mm is None else fine(short_mm),
    }


def _line(line: CourseLine) -> Json:
    return {
        "course": line.course,
        "out_of_parallel_mm": fine(line.out_of_parallel_mm),
        "opens_mm": fine(line.opens_mm),
    }


def _leak(leak: Leak) -> Json:
    return {
        "rank": leak.rank,
        **_lap(leak.lap),
        "open": leak.is_open,
        "missing_ratio": fine(leak.missing_ratio),
        "water_ratio": fine(leak.water_ratio),
    }


def _strip_back(cure: StripBack, *, tail_to_mark_mm: float) -> Json:
    courses = cure.courses
    return {
        "cures": cure.cures,
        "keep": cure.keep_count,
        "strip": cure.strip_count,
        "says": cure.says,
        "why": None if courses is None else courses.why,
        "rods": []
        if courses is None
        else [
            {
                "at_mm": fine(rod.at_mm),
                "gauge_mm": fine(rod.gauge_mm),
                "marks_mm": [fine(mark) for mark in rod.marks_mm],
                "tails_mm": [fine(mark - tail_to_mark_mm) for mark in rod.marks_mm],
                "kept_count": rod.kept_count,
            }
            for rod in courses.rods
        ],
        "alternatives": []
        if courses is None
        else [
            {
                "rank": each.rank,
                "change": each.change,
                "by_mm": fine(each.by_mm),
                "costs": each.costs,
                "keeps_limits": each.keeps_limits,
                "gauges": each.gauges,
                "gauge_mm": fine(each.gauge_mm),
            }
            for each in courses.alternatives
        ],
    }
