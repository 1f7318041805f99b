"""Diminishing courses: all that the plan depends on."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.band import Band
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.setting_out.stations import Station


class Aim(StrEnum):
    """Which of the plans that keep every lap is wished.

    ``least-left``      the most courses, so the least run of slate stays on the ground
    ``fewest-courses``  the longest slates first: fewer courses, battens and nails; the short slates stay
    """

    LEAST_LEFT = "least-left"
    FEWEST_COURSES = "fewest-courses"


@dataclass(frozen=True, slots=True, kw_only=True)
class DiminishingAsk:
    """One slope and one stack. Lengths in mm along the slope, y up from the fascia face.

    ``stations``             one or more, left to right: each gets its own rod
    ``course_width_mm``      the widest course, verge overhangs included
    ``side_waste_mm``        run lost to cutting at the two ends of each course, over and above its width
    ``headlap``              the lap to keep at every course, over the slate two below (its hole when head-fixed)
    ``overhang``             band for the tail past the fascia face, measured on the slope
    ``ridge_cover_mm``       apex down to the lower edge of the ridge
    ``ridge_lap``            least cover of the ridge over the head of the top course
    ``apex_clear``           heads are cut to keep at least this far below the apex
    ``least_batten_gauge``   least distance from one batten to the next: two battens need room
    ``nail_clear``           centre-nailed: nail hole above the head of the slate it passes
    """

    where: str
    slates: RandomSlates
    stations: tuple[Station, ...]
    course_width_mm: float
    side_waste_mm: float
    headlap: Limit
    overhang: Band
    ridge_cover_mm: float
    ridge_lap: Limit
    apex_clear: Limit
    least_batten_gauge: Limit
    nail_clear: Limit
    division: Division
    aim: Aim = Aim.LEAST_LEFT
