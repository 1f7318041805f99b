"""The shape of what the result document says of plain tiles, slates and random slates besides courses and perps."""

from typing import Annotated, TypedDict

from gaugerod.setting_out.diminishing.ask import Aim
from gaugerod.setting_out.double_lap_across import MadeOf


class ShortCourseDocument(TypedDict):
    """The short course between the top full course and the ridge."""

    mark_mm: Annotated[float, "batten top edge or nail line, up from the fascia face"]
    tail_mm: Annotated[float, "its tail, up from the fascia face"]
    length_mm: Annotated[float, "of its units"]
    above_mm: Annotated[float, "its mark above the mark of the top full course"]


class DoubleLapRodDocument(TypedDict):
    """What double lap adds to one rod."""

    at_mm: Annotated[float, "from the left end of the roof structure, along the eaves"]
    tails_mm: Annotated[list[float], "tail of every course, up from the fascia face; the first is below it"]
    under_eaves_mark_mm: Annotated[float, "mark of the course under the first, up from the fascia face"]
    short: Annotated[ShortCourseDocument | None, "the short course at the top; null where none is needed"]
    laps_mm: Annotated[list[float], "each course over the second below it, eaves to ridge, on the section as laid"]


class DoubleLapDocument(TypedDict):
    """What double lap adds to the courses."""

    marks_are: Annotated[str, "top edge of batten, or nail line"]
    under_eaves_length_mm: Annotated[float, "of the units under the first course"]
    holing_mm: Annotated[float | None, "tail to nail hole of slates; null for tiles"]
    greatest_headlap_mm: Annotated[float, "the greatest lap of one full course over another"]
    rods: Annotated[list[DoubleLapRodDocument], "one for each station, in the order of courses.rods"]


class VergePieceDocument(TypedDict):
    """The unit at one verge in one kind of course."""

    at: Annotated[str, "left or right"]
    bond_row: Annotated[int, "which courses: 0 the first, third and so on; 1 those between"]
    made_of: Annotated[str, "what it is made of", MadeOf]
    width_mm: Annotated[float, "its true width, no joint in it"]


class LengthGroupDocument(TypedDict):
    """The courses of one length of random slates."""

    length_mm: Annotated[float, "of its slates"]
    first_course: Annotated[int, "counted from the eaves, from 1"]
    last_course: Annotated[int, "the last of this length"]
    gauge_mm: Annotated[float, "their margin at most"]
    drop_gauge_mm: Annotated[float | None, "mark to mark where this length begins; null for the first length"]


class CutLengthDocument(TypedDict):
    """One course cut at the head below the apex."""

    course: Annotated[int, "counted from the eaves"]
    length_mm: Annotated[float, "what its slates are cut to"]


class DiminishingRodDocument(TypedDict):
    """The rod of one station in diminishing courses: one entry for each course, from the eaves."""

    at_mm: Annotated[float, "from the left end of the roof structure, along the eaves"]
    rafter_mm: Annotated[float, "outer face of the fascia to the apex, up the slope"]
    under_eaves_mark_mm: Annotated[float, "mark of the under-eaves course, up from the fascia face"]
    marks_mm: Annotated[list[float], "nail or peg line of every course"]
    tails_mm: Annotated[list[float], "tail of every course; the first is below the fascia face"]
    margins_mm: Annotated[list[float], "what each course shows"]
    laps_mm: Annotated[list[float], "each course over the slate two below, the ridge's last"]
    cut_lengths_mm: Annotated[list[CutLengthDocument], "courses cut at the head"]


class HeapUseDocument(TypedDict):
    """What one heap gives to the roof, and what stays."""

    length_mm: Annotated[float, "of its slates"]
    courses_there: Annotated[int, "courses it could lay"]
    courses_laid: Annotated[int, "courses laid of it"]
    under_eaves_run_mm: Annotated[float, "run used under the eaves"]
    left_run_mm: Annotated[float, "run that stays on the ground"]
    left_slates: Annotated[int | None, "slates that stay; null for a heap measured by the run"]


class DiminishingDocument(TypedDict):
    """How a stack of random slates goes on the roof."""

    aim: Annotated[str, "what was aimed for", Aim]
    groups: Annotated[list[LengthGroupDocument], "courses of each length, from the eaves"]
    under_eaves_length_mm: Annotated[float, "what the under-eaves slates are cut to"]
    least_lap_mm: Annotated[float, "the smallest lap anywhere, on the section as laid"]
    rods: Annotated[list[DiminishingRodDocument], "one for each station"]
    heaps: Annotated[list[HeapUseDocument], "every heap, in the order given"]
    sorting: Annotated[list[str], "what to do with the heaps before carrying up"]
    top_notes: Annotated[list[str], "what to do below the apex"]
