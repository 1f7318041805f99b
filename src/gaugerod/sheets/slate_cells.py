"""What the rod table of random slates says of each course beside its mark: the slate, what shows of it, and its lap."""

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length


def slate_cells(plan: DiminishingPlan, index: int, *, unit: LengthUnit) -> tuple[tuple[str, str, str], ...]:
    """The under-eaves course, then every course, of the rod at one station: slate, margin, lap over the slate two below.

    The laps of the rod begin with the second course, over the under-eaves slate; the ridge's own lap is left out here.
    """
    rod = plan.rods[index]
    lengths_mm = [group.length_mm for group in plan.groups for _ in range(group.courses_count)]
    cut_mm = dict(rod.cut_lengths_mm)
    laps = ["", *(bare_fine_length(lap, unit, towards=Sense.AT_LEAST) for lap in rod.laps_mm[: len(lengths_mm) - 1])]
    courses = zip(lengths_mm, rod.margins_mm, laps, strict=True)
    return (
        (f"cut {bare_length(plan.under_eaves_length_mm, unit)}", "", ""),
        *(
            (
                f"cut {bare_length(cut_mm[course], unit)}" if course in cut_mm else bare_length(length_mm, unit),
                bare_length(margin_mm, unit),
                lap,
            )
            for course, (length_mm, margin_mm, lap) in enumerate(courses, 1)
        ),
    )
