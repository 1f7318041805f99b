"""Where the tape contradicts itself: by how much, and which measurement to take again first."""

from gaugerod.basis.citation import common_practice, house
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.geometry.four_corners import DIAGONALS, SIDES, implied_mm, out_of_rectangle_mm
from gaugerod.geometry.taped_slope import TapedSlope

MISFIT_MM = 10.0
"""Tape figures that disagree by more than this are reported as a contradiction."""
MISFIT_CITATION = house("setting of this program: tape figures should agree to 10 mm")
SQUARE_CITATION = common_practice("rafters are taken as square to the eaves where no diagonal was measured")

Point = tuple[float, float]

_NAMES = {
    "AB": "the eaves",
    "BC": "the right-hand rafter",
    "CD": "the ridge",
    "AD": "the left-hand rafter",
    "AC": "the diagonal from the left end of the eaves",
    "BD": "the diagonal from the right end of the eaves",
}


def closing_findings(
    taped: TapedSlope, *, left_mm: float, right_mm: float, ridge_drawn_mm: float | None, where: str
) -> tuple[Finding, ...]:
    """How ridge and diagonals agree with the sides.

    ``ridge_drawn_mm`` is the ridge that eaves, rafters and diagonals give; None when those cannot meet.
    """
    diagonals = (taped.diagonal_from_left_mm, taped.diagonal_from_right_mm)
    if ridge_drawn_mm is None:
        return (_does_not_close(taped, left_mm=left_mm, right_mm=right_mm, where=where),)
    if diagonals == (None, None):
        unchecked = _square_sides_assumed(where=where)
        if taped.ridge_mm is None:
            return (unchecked,)
        return (unchecked, _ridge_against_square_sides(taped.ridge_mm - ridge_drawn_mm, where=where))
    if taped.ridge_mm is None or taped.diagonal_from_left_mm is None or taped.diagonal_from_right_mm is None:
        return ()
    lengths = {
        "AB": taped.eaves_mm,
        "BC": right_mm,
        "CD": taped.ridge_mm,
        "AD": left_mm,
        "AC": taped.diagonal_from_left_mm,
        "BD": taped.diagonal_from_right_mm,
    }
    return (_six_lengths(lengths, taped.ridge_mm - ridge_drawn_mm, where=where),)


def _six_lengths(lengths: dict[str, float], misfit_mm: float, *, where: str) -> Finding:
    size_mm = max(misfit_mm, -misfit_mm)
    if size_mm <= MISFIT_MM:
        says = f"Sides, ridge and both diagonals agree to {size_mm:.1f} mm."
    else:
        says = (
            f"The tape contradicts itself: with these sides and diagonals the ridge would be "
            f"{lengths['CD'] - misfit_mm:.1f} mm, not {lengths['CD']:.1f} mm. {likeliest_wrong(lengths)} "
            f"The slope is set out with square sides until then."
        )
    return _contradiction("sides, ridge and diagonals", size_mm, says, where=where)


def likeliest_wrong(lengths_mm: dict[str, float]) -> str:
    """Which of six contradicting lengths to measure again first.

    Any one of the six could be put right to close the figure. The likeliest slip is the one whose mending leaves
    the slope nearest a rectangle, since roofs are built to be square.

    >>> lengths = {"AB": 7460.0, "BC": 4905.0, "CD": 7460.0, "AD": 4905.0, "AC": 9028.0, "BD": 8928.0}
    >>> likeliest_wrong(lengths)[:60]
    'Likeliest wrong: the diagonal from the left end of the eaves'
    """
    mended: list[tuple[float, str, float]] = []
    for name in (*SIDES, *DIAGONALS):
        value_mm = implied_mm(name, lengths_mm)
        if value_mm is not None:
            mended.append((out_of_rectangle_mm({**lengths_mm, name: value_mm}), name, value_mm))
    if not mended:
        return "No single one of them can be mended to close it: measure all six again."
    _, name, value_mm = min(mended)
    return (
        f"Likeliest wrong: {_NAMES[name]} ({lengths_mm[name]:.1f} mm; the other five make it {value_mm:.1f} mm). "
        f"Measure it again."
    )


def _ridge_against_square_sides(misfit_mm: float, *, where: str) -> Finding:
    size_mm = max(misfit_mm, -misfit_mm)
    if size_mm <= MISFIT_MM:
        says = f"The ridge agrees with square sides to {size_mm:.1f} mm."
    else:
        longer = "longer" if misfit_mm > 0 else "shorter"
        says = (
            f"The ridge is {size_mm:.1f} mm {longer} than square sides make it. Either a side leans or a length is "
            f"wrong: measure one diagonal to settle it. The slope is set out with square sides until then."
        )
    return _contradiction("ridge against eaves and rafters", size_mm, says, where=where)


def _does_not_close(taped: TapedSlope, *, left_mm: float, right_mm: float, where: str) -> Finding:
    """A diagonal too long or too short for its triangle: say by how much at the least."""
    short_mm = 0.0
    name = _NAMES["CD"]
    for key, diagonal_mm, rafter_mm in (
        ("AC", taped.diagonal_from_left_mm, right_mm),
        ("BD", taped.diagonal_from_right_mm, left_mm),
    ):
        if diagonal_mm is None:
            continue
        over_mm = max(
            diagonal_mm - (taped.eaves_mm + rafter_mm), rafter_mm - taped.eaves_mm - diagonal_mm,
            taped.eaves_mm - rafter_mm - diagonal_mm,
        )  # fmt: skip
        if over_mm > short_mm:
            short_mm, name = over_mm, _NAMES[key]
    says = (
        f"These lengths cannot meet: likeliest wrong is {name}, out by {short_mm:.1f} mm at the least. Measure it "
        f"again. The slope is set out with square sides until then."
    )
    return _contradiction("sides, ridge and diagonals", max(short_mm, MISFIT_MM + 1), says, where=where)


def ridge_straight_findings(taped: TapedSlope, *, where: str) -> tuple[Finding, ...]:
    """Rafters between the outermost should end on one straight ridge."""
    if len(taped.rafters) < 3:
        return ()
    suspect, off_mm, one_alone = _station_out_of_line(taped.rafters)
    at_mm, length_mm = taped.rafters[suspect]
    size_mm = max(off_mm, -off_mm)
    longer = "longer" if off_mm > 0 else "shorter"
    rafter = f"The rafter {at_mm:.1f} mm from the left ({length_mm:.1f} mm) is {size_mm:.1f} mm {longer} than"
    if size_mm <= MISFIT_MM:
        says = f"The rafters end on a straight line to {size_mm:.1f} mm."
    elif one_alone:
        says = (
            f"{rafter} the others make it. Measure that one again; if it stands, the ridge or the fascia is not straight "
            f"there."
        )
    else:
        says = (
            f"{rafter} a straight line between the two end ones, and no one rafter alone is to blame. Measure them all again; "
            f"if they stand, the ridge or the fascia is bowed: sight along both with a string line."
        )
    return (_contradiction("straight ridge", size_mm, says, where=where),)


def _station_out_of_line(rafters: tuple[tuple[float, float], ...]) -> tuple[int, float, bool]:
    """The station out of line, how far it is off, and whether it alone is: without it all others lie straight.

    Of three stations any two lie straight, so none is to blame alone; nor where the whole line bows. Then it is the one
    furthest off the line between the two ends.
    """
    if len(rafters) > 3:
        scored: list[tuple[float, int, float]] = []
        for index in range(len(rafters)):
            rest = rafters[:index] + rafters[index + 1 :]
            bend = max(_off_line(middle, rest[0], rest[-1])[1] for middle in rest[1:-1])
            scored.append((bend, index, _off_line(rafters[index], rest[0], rest[-1])[0]))
        bend, index, off_mm = min(scored)
        if bend <= MISFIT_MM:
            return index, off_mm, True
    between = range(1, len(rafters) - 1)
    furthest = max(between, key=lambda index: _off_line(rafters[index], rafters[0], rafters[-1])[1])
    return furthest, _off_line(rafters[furthest], rafters[0], rafters[-1])[0], False


def _off_line(
    station: tuple[float, float], first: tuple[float, float], last: tuple[float, float]
) -> tuple[float, float]:
    """How far a station's length is off the line through two others: signed, and its size."""
    on_line = first[1] + (last[1] - first[1]) * (station[0] - first[0]) / (last[0] - first[0])
    off_mm = station[1] - on_line
    return off_mm, max(off_mm, -off_mm)


def _contradiction(rule: str, size_mm: float, says: str, *, where: str) -> Finding:
    return Finding(
        rule=rule,
        where=where,
        proposed=size_mm,
        limit=MISFIT_MM,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=MISFIT_CITATION,
        says=says,
    )


def _square_sides_assumed(*, where: str) -> Finding:
    """Said when no diagonal was measured: squareness is not known."""
    return not_covered(
        rule="square check",
        where=where,
        proposed=None,
        unit="mm",
        citation=SQUARE_CITATION,
        says="No diagonal was measured, so the sides are taken as square to the eaves. Measure both to check.",
    )
