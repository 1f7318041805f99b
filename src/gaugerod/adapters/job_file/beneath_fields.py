"""The kinds of value the tables of what lies beneath hold: bare numbers with a unit of their own, sizes of timber and nails."""

from typing import Annotated

from gaugerod.adapters.job_file.allowed import Allowed
from gaugerod.adapters.job_file.fields import length_of
from gaugerod.adapters.job_file.number_fields import number_of, whole_of

BATTEN_STOCK = Allowed(least_mm=1_200, greatest_mm=12_000, what="a length battens are sold in")
SAW_KERF = Allowed(least_mm=0, greatest_mm=20, what="what one cut of the saw takes")
TIMBER_SIZE = Allowed(least_mm=10, greatest_mm=150, what="a size of a counter-batten's section")
ROLL_WIDTH = Allowed(least_mm=300, greatest_mm=4_000, what="the width of a roll")
ROLL_LENGTH = Allowed(least_mm=1_000, greatest_mm=200_000, what="the length of a roll")
UNDERLAY_LAP = Allowed(least_mm=20, greatest_mm=1_000, what="a lap of underlay")
EAVES_CARRIER = Allowed(least_mm=50, greatest_mm=2_000, what="the reach of the eaves carrier up the slope")
STRIP_WIDTH = Allowed(least_mm=200, greatest_mm=4_000, what="the width of a strip")
RAFTER_WIDTH = Allowed(least_mm=20, greatest_mm=300, what="the width of a rafter")
LABEL_GAUGE = Allowed(least_mm=50, greatest_mm=1_000, what="a batten gauge on the label")
ALTITUDE = Allowed(least_mm=1, greatest_mm=1_500_000, what="the height of the site above the sea")
RIDGE_HEIGHT = Allowed(least_mm=1_000, greatest_mm=200_000, what="the height of the ridge above the ground")
SPAN = Allowed(least_mm=500, greatest_mm=100_000, what="eaves to eaves on plan")
NAIL_SHANK = Allowed(least_mm=1, greatest_mm=8, what="the thickness of a nail's shank")
NAIL_LENGTH = Allowed(least_mm=15, greatest_mm=200, what="the length of a nail")
UNIT_THICKNESS = Allowed(least_mm=2, greatest_mm=100, what="how thick the unit is where its nail goes through")
HOOK_WIRE = Allowed(least_mm=1, greatest_mm=8, what="the thickness of a hook's wire")

BattenStock = Annotated[float, *length_of(BATTEN_STOCK)]
SawKerf = Annotated[float, *length_of(SAW_KERF)]
TimberSize = Annotated[float, *length_of(TIMBER_SIZE)]
RollWidth = Annotated[float, *length_of(ROLL_WIDTH)]
RollLength = Annotated[float, *length_of(ROLL_LENGTH)]
UnderlayLap = Annotated[float, *length_of(UNDERLAY_LAP)]
EavesCarrier = Annotated[float, *length_of(EAVES_CARRIER)]
StripWidth = Annotated[float, *length_of(STRIP_WIDTH)]
RafterWidth = Annotated[float, *length_of(RAFTER_WIDTH)]
LabelGauge = Annotated[float, *length_of(LABEL_GAUGE)]
Altitude = Annotated[float, *length_of(ALTITUDE)]
RidgeHeight = Annotated[float, *length_of(RIDGE_HEIGHT)]
Span = Annotated[float, *length_of(SPAN)]
NailShank = Annotated[float, *length_of(NAIL_SHANK)]
NailLength = Annotated[float, *length_of(NAIL_LENGTH)]
UnitThickness = Annotated[float, *length_of(UNIT_THICKNESS)]
HookWire = Annotated[float, *length_of(HOOK_WIRE)]

MassOnSlope = Annotated[float, *number_of(least=0.01, greatest=500, what="kilograms on each m² of slope")]
Pascals = Annotated[float, *number_of(least=1, greatest=20_000, what="pascals (N/m²)")]
VapourResistance = Annotated[float, *number_of(least=0.001, greatest=10_000, what="vapour resistance in MN·s/g")]
AirPassing = Annotated[float, *number_of(least=0, greatest=10_000, what="air through each m² at 50 Pa, m³ an hour")]
PerCent = Annotated[float, *number_of(least=0.1, greatest=100, what="per cent")]
WindZone = Annotated[int, *whole_of(least=1, greatest=5, what="a wind zone")]
NailHoles = Annotated[int, *whole_of(least=0, greatest=4, what="nail holes of one unit")]
