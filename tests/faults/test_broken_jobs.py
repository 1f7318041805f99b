"""One broken job file for each way of being wrong: where the fault is said to lie, and in which words."""

from pathlib import Path

import pytest

from gaugerod.adapters.job_file.read import read_job
from gaugerod.basis.errors import Fault, InputRefused

JOBS = Path(__file__).parent / "jobs"

ONE_FAULT = {
    "band-as-words.toml": ("set_out.eaves_overhang", "cannot be read as a length"),
    "band-backwards.toml": ("set_out.eaves_overhang", "The least comes first"),
    "band-negative.toml": ("set_out.eaves_overhang[0]", "without the minus"),
    "band-of-three.toml": ("set_out.eaves_overhang", "Give two lengths, or one"),
    "binary.toml": ("file", "save it as plain text"),
    "bond-unknown.toml": ("set_out.bond", "straight, broken"),
    "building-change-of-pitch.toml": ("building[0].change_of_pitch", "two [[slope]] tables"),
    "building-cheeks-unknown.toml": ("building[0].cheeks", "Did you mean allow?"),
    "building-clockwise.toml": ("building[0].outline", "Turn the order of the corners round"),
    "building-corner-of-three.toml": ("building[0].outline[0]", "Give each corner as two lengths"),
    "building-corner-twice.toml": ("building[0].outline[3]", "a side of no length"),
    "building-eaves-height-at-a-gable.toml": ("building[0].eaves_height[1]", "Make it agree with pitch[1]"),
    "building-gables-only.toml": ("building[0].pitch", "a pitch on one wall at least"),
    "building-hole-counter-clockwise.toml": ("building[0].holes[0]", "clockwise: walked with the roof on the left"),
    "building-hole-outside.toml": ("building[0].holes[0]", "wholly inside the outline"),
    "building-in-single-brackets.toml": ("building", "double brackets: [[building]]"),
    "building-overhang-negative.toml": ("building[0].overhang[1]", "without the minus"),
    "building-overhang-too-few.toml": ("building[0].overhang", "one for each wall: 4"),
    "building-overhangs-in-line-differ.toml": ("building[0].overhang[1]", "Walls in line share one eaves line"),
    "building-pitch-of-a-wall.toml": ("building[0].pitch[0]", "1° to 89°"),
    "building-pitch-too-few.toml": ("building[0].pitch", "one for each wall: 4"),
    "building-pitch-unreadable.toml": ("building[0].pitch[1]", 'or "gable"'),
    "building-self-crossing.toml": ("building[0].outline[0]", "crosses the side from corner 2"),
    "building-slope-called-like-its-own.toml": ("slope[0].name", "The slopes of building[0] are called so"),
    "building-two-corners.toml": ("building[0].outline", "three corners or more"),
    "building-unknown-key.toml": ("building[0].overhnag", "Did you mean overhang?"),
    "building-verge-overhang-twice.toml": ("building[0].verge_overhang", "the list says the overhang at each gable"),
    "building-named-twice.toml": ("building[1].name", "Two buildings have this name"),
    "covering-laps-contradict.toml": ("covering.headlap_min", "25 mm too much"),
    "covering-mass-in-words.toml": ("covering.mass", "Weigh one"),
    "covering-measured-unknown.toml": ("covering.measured[0]", "Name the figures that you measured"),
    "covering-own-incomplete.toml": ("covering.headlap_min", "nothing can be set out without it"),
    "covering-unknown.toml": ("covering.from", "Did you mean flat-interlocking-420x330?"),
    "covering-yes-in-words.toml": ("covering.half_unit", "true or false"),
    "deep.toml": ("file", "at most 10 deep"),
    "edges-air-in-words.toml": ("edges.air.low.area", "without its unit"),
    "edges-chimney-misspelt.toml": ("slope[0].opening[0].made", "Did you mean chimney?"),
    "edges-cover-over-length.toml": ("edges.ridge.unit.cover", "up to its length, 450 mm"),
    "edges-fixings-endless.toml": ("edges.ridge.unit.fixings", "fixings of one unit, 0 to 10"),
    "edges-gap-negative.toml": ("edges.eaves.gap", "without the minus"),
    "edges-girth-as-clear.toml": ("edges.valley.girth", "more than the clear width, 150 mm"),
    "edges-hips-unknown.toml": ("edges.ridge.hips", "Did you mean bonnet?"),
    "edges-lead-code-unknown.toml": ("edges.wall.lead_code", "a code of sheet lead, 3 to 8"),
    "edges-liner-lap-as-length.toml": ("edges.valley.liner_lap", "less than its length, 600 mm"),
    "edges-misspelt.toml": ("edges.vergee", "Did you mean verge?"),
    "edges-ridge-without-made.toml": ("edges.ridge.made", "Dry with a fixing kit, or bedded"),
    "edges-shared-one-slope.toml": ("edges.shared[0].slopes", "the names of two slopes"),
    "edges-shared-slope-is-not-there.toml": ("edges.shared[0].slopes[1]", "a slope of this job: front, rear"),
    "edges-shared-twice.toml": ("edges.shared[1].slopes[0]", "as many as the slope has"),
    "edges-shared-with-itself.toml": ("edges.shared[0].slopes", "not itself"),
    "edges-unit-in-metres.toml": ("edges.ridge.mono_unit.length", "Was 450 mm meant, written as metres?"),
    "edges-valley-too-wide.toml": ("edges.valley.clear", "50 mm to 500 mm"),
    "edition-unknown.toml": ("job.edition", "allowed: GB"),
    "empty.toml": ("file", "The file is empty"),
    "exposure-misspelt.toml": ("job.exposure", "Did you mean moderate?"),
    "key-twice.json": ("file", "the key title twice in one table"),
    "key-twice.toml": ("file", "Mend line 12. A key or table stands there a second time"),
    "length-absurd.toml": ("slope[0].across", "cannot be read as a length"),
    "length-beyond-any-roof.toml": ("slope[0].across", "100 mm to 100 m. Too long"),
    "length-could-be-two.toml": ("slope[0].across", "could be 7460 mm or 7.460 m"),
    "length-inf.toml": ("slope[0].across", "no length at all"),
    "length-is-a-date.toml": ("slope[0].across", "'2026-01-01' will not do"),
    "length-is-a-table.toml": ("slope[0].across", '{"m": 7}'),
    "length-is-true.toml": ("slope[0].across", "'true' will not do"),
    "length-m-as-mm.toml": ("slope[0].rafters[0]", "Was 4.905 m meant, written as millimetres?"),
    "length-mm-as-m.toml": ("slope[0].rafters[0]", "Was 4905 mm meant, written as metres?"),
    "length-nan.toml": ("slope[0].across", "no length at all"),
    "length-negative.toml": ("slope[0].across", "without the minus"),
    "length-no-unit-in-feet.toml": ("slope[0].across", "has no unit; write 24 1/2 in"),
    "length-unreadable.toml": ("slope[0].across", "'about seven' will not do"),
    "length-zero.toml": ("slope[0].across", "Nothing was measured here"),
    "list.json": ("file", "tables: job, covering, slope"),
    "nailed-beyond-the-eaves.toml": ("slope[0].nailed[0].at", "beyond the eaves"),
    "nailed-none.toml": ("slope[0].nailed[0].marks", "Add at least one"),
    "nailed-out-of-order.toml": ("slope[0].nailed[0].marks[2]", "from the eaves up"),
    "nailed-past-the-apex.toml": ("slope[0].nailed[0].marks[1]", "past the apex"),
    "no-covering.toml": ("covering", "This is needed"),
    "no-exposure.toml": ("job.exposure", "Driving rain at the site"),
    "no-job.toml": ("job", "This is needed"),
    "no-roof.toml": ("slope", "a [[slope]] or a [[building]]"),
    "no-pitch.toml": ("slope[0].pitch", "The pitch of the rafters. This is needed"),
    "no-rafters.toml": ("slope[0].rafters", "Outer face of the fascia to apex"),
    "one-slope-in-single-brackets.toml": ("slope", "double brackets: [[slope]]"),
    "opening-named-twice.toml": ("slope[0].opening[1].name", "Two openings have this name"),
    "opening-of-no-size.toml": ("slope[0].opening[0].width", "Nothing was measured here"),
    "opening-past-the-apex.toml": ("slope[0].opening[0]", "below 4905 mm, the shortest rafter"),
    "opening-past-the-end.toml": ("slope[0].opening[0]", "right side at 7461 mm"),
    "opening-without-height.toml": ("slope[0].opening[0].height", "This is needed"),
    "openings-overlap.toml": ("slope[0].opening[1]", "it overlaps slope[0].opening[0]"),
    "order-breakage-over-half.toml": ("order.breakage", "per cent, from 0 to 50"),
    "order-item-in-words.toml": ("order.pack[0].item", "small letters, digits and dashes"),
    "order-pack-of-nothing.toml": ("order.pack[0].size", "from 0.001 to 100000"),
    "order-pack-twice.toml": ("order.pack[1].item", "Two packs are given for this item"),
    "order-places-too-many.toml": ("order.money.places", "decimal places, 0 to 4"),
    "order-tax-in-words.toml": ("order.money.tax", "per cent, from 0 to 100"),
    "order-tax-over-all.toml": ("order.money.tax", "per cent, from 0 to 100"),
    "outline-and-across.toml": ("slope[0].outline", "by tape or by its outline, not both"),
    "outline-below-the-eaves.toml": ("slope[0].outline[2]", "The courses start at the eaves"),
    "outline-corner-unreadable.toml": ("slope[0].outline[0][1]", "cannot be read as a length"),
    "outline-eaves-at-the-top.toml": ("slope[0].edges[2]", "eaves from left to right"),
    "outline-eaves-not-level.toml": ("slope[0].edges[0]", "level within 10 mm"),
    "outline-edge-unknown.toml": ("slope[0].edges[1]", "Did you mean hip?"),
    "outline-edges-too-few.toml": ("slope[0].edges", "one for each side: 4"),
    "outline-no-eaves.toml": ("slope[0].edges", "Say which side is the eaves"),
    "outline-opening-past-the-hip.toml": ("slope[0].opening[0]", "Check from_left, up_slope"),
    "outline-without-edges.toml": ("slope[0].edges", "What stands at each side"),
    "perps-every-nothing.toml": ("set_out.perps_every", "a whole number from 1 to 100"),
    "pitch-below-level.toml": ("slope[0].pitch", "below level"),
    "pitch-level.toml": ("slope[0].pitch", "No roof slope has this pitch"),
    "pitch-nan.toml": ("slope[0].pitch", "No roof slope has this pitch"),
    "pitch-of-nothing.toml": ("slope[0].pitch.rise", "Nothing was measured here"),
    "pitch-over-span.toml": ("slope[0].pitch", "rise over run or rise over span"),
    "pitch-plumb.toml": ("slope[0].pitch", "No roof slope has this pitch"),
    "pitch-rafter-shorter-than-run.toml": ("slope[0].pitch", "The rafter must be longer than its run"),
    "pitch-three-sides.toml": ("slope[0].pitch", "either the rise or the rafter"),
    "rafter-beyond-the-eaves.toml": ("slope[0].rafters[1].at", "0 to 7460 mm"),
    "rafter-without-length.toml": ("slope[0].rafters[0].length", "This is needed"),
    "rafters-at-one-place.toml": ("slope[0].rafters[1].at", "left to right"),
    "rafters-mixed.toml": ("slope[0].rafters", "some with a place, some without"),
    "rafters-none.toml": ("slope[0].rafters", "Add at least one"),
    "rafters-not-a-list.toml": ("slope[0].rafters", "square brackets"),
    "rafters-out-of-order.toml": ("slope[0].rafters[1].at", "more than 7000 mm"),
    "record-accepted-by-nobody.toml": ("record.deviation[0].accepted_by", "Who accepted it. This is needed"),
    "record-blank.toml": ("record.site", "one line of words"),
    "side-unknown.toml": ("slope[0].left", "verge, abutment, hip, valley"),
    "slope-named-twice.toml": ("slope[1].name", "Two slopes have this name"),
    "syntax-length-without-quotes.toml": ("file", "Mend line 12. Lengths with a unit go in quotes"),
    "syntax.json": ("file", "Mend line 1"),
    "syntax.toml": ("file", "Mend line 11"),
    "title-blank.toml": ("job.title", "one line of words"),
    "title-is-a-number.toml": ("job.title", "one line of words"),
    "title-too-long.toml": ("job.title", "up to 120 letters"),
    "top-is-a-side.toml": ("slope[0].top", "ridge, mono-ridge, abutment"),
    "unknown-key-in-opening.toml": ("slope[0].opening[0].wide", "Did you mean width?"),
    "unknown-key.toml": ("slope[0].ptich", "Did you mean pitch?"),
    "unknown-table.toml": ("setout", "Did you mean set_out?"),
    "utf-16.toml": ("file", "save it as plain text, UTF-8"),
}
MANY_FAULTS = {
    "band-in-metres.toml": ["set_out.eaves_overhang[0]", "set_out.eaves_overhang[1]"],
    "building-many-at-once.toml": [
        "building[0].name",
        "building[0].pitch[1]",
        "building[0].pitch[2]",
        "building[0].outline",
    ],
    "edges-many-at-once.toml": [
        "edges.ridge.made",
        "edges.valley.liner_lap",
        "order.money.places",
        "record.deviation[0].accepted_by",
        "edges.ridge.unit.cover",
        "edges.shared[0].slopes[1]",
    ],
    "edges-shared-no-such-edge.toml": ["edges.shared[0].slopes[0]", "edges.shared[0].slopes[1]"],
    "outline-clockwise.toml": ["slope[0].outline", "slope[0].edges"],
    "many-at-once.toml": [
        "job.exposure",
        "slope[0].pitch",
        "slope[0].across",
        "slope[0].left",
        "slope[0].opening[0].from_left",
        "slope[0].opening[0].from_lefft",
        "slope[0].lefft",
        "set_out.eaves_overhang",
        "slope[0].opening[0]",
    ],
}
SOUND = {
    "building-sound.toml": ("Orchard End", 1),
    "edges-sound.toml": ("Mill Lane, both slopes", 2),
    "outline-sound.toml": ("Orchard End", 1),
    "sound.toml": ("Mill Lane, rear", 1),
}


def faults_of(name: str) -> tuple[Fault, ...]:
    with pytest.raises(InputRefused) as refused:
        read_job(JOBS / name)
    return refused.value.faults


@pytest.mark.parametrize(("name", "field", "words"), [(name, *said) for name, said in ONE_FAULT.items()], ids=ONE_FAULT)
def test_a_broken_job_is_refused_for_its_one_fault(name: str, field: str, words: str) -> None:
    faults = faults_of(name)
    assert [field] == [fault.field for fault in faults]
    assert words in str(faults[0])


@pytest.mark.parametrize("name", MANY_FAULTS)
def test_all_faults_are_told_together(name: str) -> None:
    assert MANY_FAULTS[name] == [fault.field for fault in faults_of(name)]


def test_a_value_nobody_can_read_does_not_hide_a_contradiction_elsewhere() -> None:
    faults = {fault.field: str(fault) for fault in faults_of("many-at-once.toml")}
    assert "could be 7460 mm or 7.460 m" in faults["slope[0].across"]
    assert "head at 5780 mm" in faults["slope[0].opening[0]"]


@pytest.mark.parametrize("name", SOUND)
def test_the_sound_jobs_that_all_of_them_were_made_from_are_read(name: str) -> None:
    job = read_job(JOBS / name)
    assert SOUND[name] == (job.title, len(job.slopes) + len(job.buildings))


def test_no_broken_file_lies_here_untested() -> None:
    assert {*ONE_FAULT, *MANY_FAULTS, *SOUND} == {path.name for path in JOBS.iterdir()}
