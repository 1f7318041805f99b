"""The figures of a test lay, in the order they are taken: the flag, and the question."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure: its field in the test lay, its flag, and how it is taken."""

    field: str
    flag: str
    metavar: str
    help: str


FIGURES = (
    Figure("length_mm", "--length", "LENGTH", "overall length of one unit, head to tail"),
    Figure("width_mm", "--width", "LENGTH", "overall width of one unit, side to side"),
    Figure("hanging_length_mm", "--hanging-length", "LENGTH", "bearing face of the nibs to the tail, by rule"),
    Figure("lap_mm", "--lap", "LENGTH", "least lap wanted: lay two units on loose battens at this lap"),
    Figure("gauge_at_lap_mm", "--gauge-at-lap", "LENGTH", "top edge to top edge of those two battens"),
    Figure("closest_gauge_mm", "--closest-gauge", "LENGTH", "the same, battens pushed as close as the units allow"),
    Figure("ten_closed_mm", "--ten-closed", "LENGTH", "ten units pushed up tight, outer edge to outer edge"),
    Figure("ten_open_mm", "--ten-open", "LENGTH", "ten units pulled fully open, outer edge to outer edge"),
    Figure("mass_kg", "--mass", "KG", "mass of one unit in kg, like 4.7"),
    Figure("pitch_min_deg", "--pitch-min", "PITCH", "least pitch, as the maker states it"),
)
