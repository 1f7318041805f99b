"""Set out again on the phone: the script in the file gives what the engine gives, mark for mark."""

import json
from dataclasses import replace
from datetime import datetime
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from gaugerod.adapters.on_roof.grain import as_fraction
from gaugerod.adapters.on_roof.re_gauge_data import double_lap_data, limits_data
from gaugerod.adapters.on_roof.write import write_on_roof_html
from gaugerod.basis.errors import LengthUnclear
from gaugerod.basis.finding import TOUCH, Verdict
from gaugerod.basis.lengths import LengthUnit, read_length_mm, write_length
from gaugerod.basis.rounding import Division
from gaugerod.job.set_out import set_out
from gaugerod.job.up_slope import corner_ask
from gaugerod.job.wished import division_of
from gaugerod.setting_out.courses import Courses, CoursesAsk, Strategy
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import NailedRod
from gaugerod.wiring import demo_job
from tests.scenario.nailed_askew import CarriedOn, DoubleLapCase, carried_on_cases, double_lap_cases

CARRIED_ON_COUNT = 4_000
DOUBLE_LAP_COUNT = 1_500
LENGTHS_COUNT = 4_000
MADE_AT = datetime(2026, 3, 2, 7, 30)  # noqa: DTZ001 - a wall clock, as it is printed

CARRY_ON = """text => JSON.stringify(JSON.parse(text).map(({ slope, step, unit, kept }) => {
  const { answer, rods } = rodsAgain(slope, fromText(step), kept);
  const faults = rods.flatMap(rows => rows.filter(row => row.fault).map(row => row.fault.what));
  const ends = answer.rods.length ? endsOutside(slope.re_gauge, fromText(step), answer).map(each => each.end) : [];
  return {
    how: answer.how, parallel: answer.parallel, takenDown: answer.takenDown && answer.takenDown.count, ends,
    faults: [...new Set(faults)].sort(),
    rods: rods.map(rows => rows.map(row => ({
      name: row.name, kept: row.kept, shown: shown(row.mark, unit), mark: toNumber(row.mark),
      lap: row.lap && toNumber(row.lap), unit: row.unit && toNumber(row.unit),
    }))),
  };
}))"""

READ = """texts => texts.map(text => {
  try {
    const length = readLength(text);
    return `${length.top}/${length.bottom}`;
  } catch (unclear) {
    return null;
  }
})"""


@pytest.fixture(scope="module")
def script(chromium: Browser, tmp_path_factory: pytest.TempPathFactory) -> Page:
    """The file itself, opened from where it lies."""
    file = tmp_path_factory.mktemp("roof") / "on-the-roof.html"
    file.write_text(write_on_roof_html(set_out(demo_job()), made_at=MADE_AT), encoding="utf-8")
    page = chromium.new_page()
    page.goto(file.as_uri())
    return page


def carried_on(script: Page, cases: list[dict[str, Any]]) -> list[dict[str, Any]]:
    told: list[dict[str, Any]] = json.loads(script.evaluate(CARRY_ON, json.dumps(cases)))
    return told


def slope_for_script(
    limits: dict[str, Any], *, gauge_min_mm: float | None, gauge_max_mm: float, lap_mm: float
) -> dict[str, Any]:
    return {"re_gauge": limits, "gauge_min_mm": gauge_min_mm, "gauge_max_mm": gauge_max_mm, "lap_least_mm": lap_mm}


def case_for_script(case: CarriedOn) -> dict[str, Any]:
    ask = case.before
    slope = slope_for_script(
        {**limits_data(ask), "double_lap": None},
        gauge_min_mm=ask.gauge_min_mm,
        gauge_max_mm=ask.gauge_max_mm,
        lap_mm=ask.unit_length_mm - ask.gauge_max_mm,
    )
    return {
        "slope": slope,
        "step": as_fraction(ask.division.step_mm),
        "unit": unit_of(ask.division),
        "kept": [list(rod.marks_mm) for rod in case.now.nailed],
    }


def unit_of(division: Division) -> str:
    return "mm" if division is Division.MILLIMETRE else "ft-in"


def test_single_lap_courses_carried_on_are_those_of_the_engine(script: Page) -> None:
    cases = carried_on_cases(count=CARRIED_ON_COUNT, seed=20_260_302)
    told = carried_on(script, [case_for_script(case) for case in cases])
    seen = {(found["how"], found["parallel"], bool(found["takenDown"])) for found in told}
    assert {"carried-on", "none", "all-nailed", "too-short"} <= {how for how, _, _ in seen}
    assert {True, False} == {parallel for _, parallel, _ in seen} == {down for _, _, down in seen}
    for case, found in zip(cases, told, strict=True):
        assert (case.courses is None) == (found["how"] == "too-short")
        if case.courses is not None:
            check_marks(case, case.courses, found)
            check_what_is_said(case.now, case.courses, found)


def check_marks(case: CarriedOn, courses: Courses, found: dict[str, Any]) -> None:
    unit = LengthUnit(unit_of(case.now.division))
    for rod, rows in zip(courses.rods, found["rods"], strict=True):
        assert [write_length(mark, unit) for mark in rod.marks_mm] == [row["shown"] for row in rows]
        assert list(rod.marks_mm) == pytest.approx([row["mark"] for row in rows], abs=TOUCH)
        assert [number <= rod.kept_count for number in range(1, len(rod.marks_mm) + 1)] == [row["kept"] for row in rows]


def check_what_is_said(ask: CoursesAsk, courses: Courses, found: dict[str, Any]) -> None:
    """Whatever the engine finds outside a limit the page tells, and nothing else."""
    outside = [finding for finding in courses.findings if finding.verdict is Verdict.OUTSIDE]
    rules = {finding.rule for finding in outside}
    assert (courses.strategy is Strategy.PARALLEL) == found["parallel"]
    assert (courses.strategy is Strategy.NONE) == (found["how"] == "none")
    assert all(rod.kept_count == len(rod.marks_mm) for rod in courses.rods) == (found["how"] == "all-nailed")
    assert any(each.change.startswith("Take down the last") for each in courses.alternatives) == bool(
        found["takenDown"]
    )
    assert bool(rules & {"headlap", "greatest gauge"}) == bool(
        {"LAP SHORT", "NO LAP: OPEN", "GAP TOO WIDE"} & set(found["faults"])
    )
    assert ("least gauge" in rules) == ("GAP TOO CLOSE" in found["faults"])
    tops = {finding.sense.value for finding in outside if finding.rule == "top batten"}
    assert ("at-least" in tops) == ("top-too-high" in found["ends"])
    assert ("at-most" in tops) == ("top-too-low" in found["ends"])
    overhangs = [rod.overhang_mm for rod in courses.rods]
    assert any(mm < ask.overhang.least_mm - TOUCH for mm in overhangs) == ("overhang-short" in found["ends"])
    assert any(mm > ask.overhang.greatest_mm + TOUCH for mm in overhangs) == ("overhang-long" in found["ends"])


def double_lap_for_script(case: DoubleLapCase) -> dict[str, Any]:
    slope = case.job.slopes[0]
    ask = corner_ask(case.job, slope)
    assert ask is not None
    assert case.sent.double_lap is not None
    figures = double_lap_data(case.job, slope, case.unit, case.sent.double_lap)
    return {
        "slope": slope_for_script(
            {**limits_data(ask), "double_lap": figures},
            gauge_min_mm=ask.gauge_min_mm,
            gauge_max_mm=ask.gauge_max_mm,
            lap_mm=figures["headlap_mm"],
        ),
        "step": as_fraction(division_of(case.job.show_lengths_in).step_mm),
        "unit": case.job.show_lengths_in.value,
        "kept": [list(rod.marks_mm) for rod in case.nailed],
    }


def test_double_lap_courses_carried_on_are_those_of_the_engine_with_eaves_top_and_laps(script: Page) -> None:
    cases = double_lap_cases(count=DOUBLE_LAP_COUNT, seed=20_260_303)
    asked = [double_lap_for_script(case) for case in cases]
    told = carried_on(script, asked)
    assert any("LAP SHORT" in found["faults"] for found in told)
    assert {True, False} == {"ridge-lap-short" in found["ends"] for found in told}
    for case, given, found in zip(cases, asked, told, strict=True):
        figures, extras = given["slope"]["re_gauge"]["double_lap"], case.again.double_lap
        assert extras is not None
        for rod, extra, rows in zip(case.again.courses.rods, extras.rods, found["rods"], strict=True):
            marks = [extra.under_eaves_mark_mm, *rod.marks_mm, *([extra.short.mark_mm] if extra.short else [])]
            unit = case.job.show_lengths_in
            assert [write_length(mark, unit) for mark in marks] == [row["shown"] for row in rows]
            laps = [row["lap"] for row in rows[2:]]
            assert list(extra.laps_mm[: len(laps)]) == pytest.approx(laps, abs=TOUCH)
            if extra.short:
                assert extra.short.length_mm == pytest.approx(rows[-1]["unit"], abs=TOUCH)
            assert extras.under_eaves_length_mm == pytest.approx(rows[0]["unit"], abs=TOUCH)
            short = any(lap < figures["headlap_mm"] - TOUCH for lap in laps)
            assert not short or {"LAP SHORT", "NO LAP: OPEN"} & set(found["faults"])
        ridge_laps = [extra.laps_mm[-1] for extra in extras.rods if figures["ridge_cover_mm"] is not None]
        ridge_short = any(lap < figures["headlap_mm"] - TOUCH for lap in ridge_laps)
        assert ridge_short == ("ridge-lap-short" in found["ends"])


def written_by_chance(chance: Random) -> str:
    """A length as a person might write it, well or badly."""
    number = chance.choice(
        [
            "4905",
            "4.905",
            "4,905",
            "345",
            "34.5",
            "0.5",
            ".5",
            "1 234",
            "1234.5",
            "10",
            "6 3/8",
            "3/8",
            "9/8",
            "1/0",
            "12.",
            "1,5",
        ]
    )
    unit = chance.choice(
        ["", " mm", "mm", " m", "cm", " cm.", "'", '"', " ft", " in", "″", "′", " metres", " Inches", " miles", "''"]
    )
    rest = chance.choice(["", "", " 6 in", " 3", ' 6 3/8"', " 20 cm", '-6"', " 5 mm", "½", " 7½″", " 13 in", " 250 cm"])
    return chance.choice(["", "", "", " ", "about "]) + number + unit + rest


def test_lengths_are_read_and_refused_as_the_engine_reads_and_refuses_them(script: Page) -> None:
    chance = Random(20_260_304)  # noqa: S311
    texts = [written_by_chance(chance) for _ in range(LENGTHS_COUNT)]
    told = script.evaluate(READ, texts)
    assert [_read(text) for text in texts] == told
    assert 0.08 < sum(found is not None for found in told) / LENGTHS_COUNT < 0.85


def _read(text: str) -> str | None:
    try:
        return as_fraction(read_length_mm(text))
    except LengthUnclear:
        return None


def test_lengths_are_shown_as_the_engine_shows_them(script: Page) -> None:
    chance = Random(20_260_305)  # noqa: S311
    asked = [
        (round(chance.uniform(-200, 12_000), chance.choice([0, 1, 4])), chance.choice(list(LengthUnit)).value)
        for _ in range(LENGTHS_COUNT)
    ]
    told = script.evaluate("asked => asked.map(([mm, unit]) => shown(fromMm(mm), unit))", asked)
    assert [write_length(mm, LengthUnit(unit)).replace("-", "−") for mm, unit in asked] == told


def test_a_batten_typed_on_the_page_gives_the_marks_of_the_engine(script: Page) -> None:
    job = demo_job()
    sent = set_out(job).slopes[0]
    ask = corner_ask(job, sent.slope)
    assert ask is not None
    script.reload()
    script.select_option("#which", index=0)
    for _ in range(4):
        script.click("#next")
    script.fill("#again-0", "1.652 m")
    script.fill("#again-1", "164.75cm")
    script.get_by_role("button", name="Set the rest out again").click()
    kept = [(*rod.marks_mm[:4], mark) for rod, mark in zip(sent.courses.rods, (1652.0, 1647.5), strict=True)]
    nailed = tuple(
        NailedRod(at_mm=rod.at_mm, marks_mm=marks) for rod, marks in zip(sent.courses.rods, kept, strict=True)
    )
    expected = set_out_courses(replace(ask, nailed=nailed))
    for index, rod in enumerate(expected.rods):
        script.select_option("#which", index=index)
        assert [write_length(mark, LengthUnit.MM) for mark in rod.marks_mm] == script.locator(
            "#all b"
        ).all_text_contents()
    assert "Set out again from batten 5: 10 more." in script.locator("#again-says").inner_text()
    script.get_by_role("button", name="Undo").click()
    script.select_option("#which", index=0)
    assert [write_length(mark, LengthUnit.MM) for mark in sent.courses.rods[0].marks_mm] == script.locator(
        "#all b"
    ).all_text_contents()
