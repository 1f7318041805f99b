"""What to do with the heaps before carrying up, and what to do at the top."""

from collections.abc import Sequence

from gaugerod.setting_out.diminishing.answer import DiminishingRod, HeapUse
from gaugerod.setting_out.diminishing.ask import DiminishingAsk
from gaugerod.setting_out.said import said


def sorting_of(ask: DiminishingAsk, *, heaps: Sequence[HeapUse], under_eaves_mm: float) -> tuple[str, ...]:
    """Sorting, in steps.

    Source: thickest at the eaves, in three or four thicknesses: slating trade pages (published). Widest for the verges:
    common practice.
    """
    sources = ", ".join(
        f"{heap.under_eaves_run_mm / 1000:.1f} m of {said(heap.length_mm, ask.division)}"
        for heap in heaps
        if heap.under_eaves_run_mm > 0
    )
    hole = " (the hole is what counts for the lap)" if ask.slates.lost_at_head_mm else ""
    return (
        f"Sort by length: measure the shortest of each heap, tail to head{hole}.",
        "Within each length sort into three or four thicknesses, like with like in a course, the thickest nearest eaves.",
        "Put the widest of each length by for the verges, where every second course starts with half a bond more.",
        f"Cut the under-eaves slates {said(under_eaves_mm, ask.division)} long: {sources}.",
    )


def top_notes_of(ask: DiminishingAsk, *, rods: Sequence[DiminishingRod]) -> tuple[str, ...]:
    """What to do with the courses whose heads are cut below the apex.

    Source: short top courses cut to hold the lap, the uppermost on a thicker batten: a slating manual (published).
    """
    notes: dict[str, None] = {}
    for rod in rods:
        for course, length_mm in rod.cut_lengths_mm:
            room_mm = rod.marks_mm[course - 1] - rod.marks_mm[course - 2] if course > 1 else None
            shared = room_mm is not None and room_mm < ask.least_batten_gauge.value
            notes[
                f"Course {course}: cut at the head to {said(length_mm, ask.division)}"
                + (" and hole again" if ask.slates.lost_at_head_mm else "")
                + (
                    f". Its nails come {said(room_mm, ask.division)} above those of course {course - 1}: too near for "
                    "two battens, so fix one wider, thicker batten for both."
                    if shared and room_mm is not None
                    else "."
                )
            ] = None
    return tuple(notes)
