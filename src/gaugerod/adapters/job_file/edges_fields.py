"""The kinds of value the tables of the edges hold: lengths of units, of lead and of liners, codes of lead, areas of air."""

from enum import StrEnum
from typing import Annotated

from pydantic_core import PydanticCustomError

from gaugerod.adapters.job_file.allowed import Allowed
from gaugerod.adapters.job_file.fields import kind, length_of, within, words
from gaugerod.adapters.job_file.number_fields import number_of, whole_of
from gaugerod.adapters.job_file.refusing import refuse, refuse_value
from gaugerod.basis.errors import Fault


class SharedEdge(StrEnum):
    """The line in which two slopes meet."""

    RIDGE = "ridge"
    HIP = "hip"
    VALLEY = "valley"


def two_slopes(value: object) -> tuple[str, str]:
    """The names of two slopes."""
    if not isinstance(value, list) or len(value) != 2:
        do = "Give the names of two slopes in square brackets."
        raise refuse_value(value, allowed='[one, other], like ["front", "rear"]', do=do)
    names: list[str] = []
    faults: list[Fault] = []
    for index, each in enumerate(value):
        try:
            names.append(words(each))
        except PydanticCustomError as refused:
            faults.extend(within(f"[{index}]", refused))
    if faults:
        raise refuse(*faults)
    one, other = names
    return one, other


LINE_UNIT = Allowed(least_mm=100, greatest_mm=1_000, what="the length of one ridge or hip unit")
LINE_UNIT_COVER = Allowed(least_mm=50, greatest_mm=1_000, what="what one ridge or hip unit gains along the line")
UNDERCLOAK = Allowed(least_mm=200, greatest_mm=3_000, what="the length of one undercloak strip")
VERGE_BED = Allowed(least_mm=20, greatest_mm=300, what="the width of a mortar bed")
VALLEY_CLEAR = Allowed(least_mm=50, greatest_mm=500, what="the clear width of a valley")
VALLEY_GIRTH = Allowed(least_mm=150, greatest_mm=2_000, what="the width of lead or liner before it is dressed")
LINER = Allowed(least_mm=500, greatest_mm=6_000, what="the length of one valley liner")
LINER_LAP = Allowed(least_mm=20, greatest_mm=1_000, what="the lap of one liner over the next")
SIDE_COVER = Allowed(least_mm=50, greatest_mm=600, what="the reach of a flashing over the covering")
EAVES_GAP = Allowed(least_mm=0, greatest_mm=200, what="the open height under the tail of a tile")
EAVES_TRAY = Allowed(least_mm=300, greatest_mm=6_000, what="the length of one eaves tray")
AIR_UNIT = Allowed(least_mm=50, greatest_mm=6_000, what="the length of one ventilation unit along the edge")

LineUnitLength = Annotated[float, *length_of(LINE_UNIT)]
LineUnitCover = Annotated[float, *length_of(LINE_UNIT_COVER)]
UndercloakLength = Annotated[float, *length_of(UNDERCLOAK)]
VergeBed = Annotated[float, *length_of(VERGE_BED)]
ValleyClear = Annotated[float, *length_of(VALLEY_CLEAR)]
ValleyGirth = Annotated[float, *length_of(VALLEY_GIRTH)]
LinerLength = Annotated[float, *length_of(LINER)]
LinerLap = Annotated[float, *length_of(LINER_LAP)]
SideCover = Annotated[float, *length_of(SIDE_COVER)]
EavesGap = Annotated[float, *length_of(EAVES_GAP)]
EavesTray = Annotated[float, *length_of(EAVES_TRAY)]
AirUnitLength = Annotated[float, *length_of(AIR_UNIT)]

LeadCode = Annotated[int, *whole_of(least=3, greatest=8, what="a code of sheet lead")]
UnitFixings = Annotated[int, *whole_of(least=0, greatest=10, what="fixings of one unit")]
FreeArea = Annotated[float, *number_of(least=1, greatest=500_000, what="net free area in mm²")]

_NAME = {"type": "string", "minLength": 1, "maxLength": 120}
_TWO_NAMES = {"title": "the names of two slopes", "type": "array", "items": _NAME, "minItems": 2, "maxItems": 2}
TwoSlopes = Annotated[tuple[str, str], *kind(two_slopes, _TWO_NAMES)]
