"""The battens in words: the method with this roof's own figures, and its working."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.working import Step
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.edition import Edition
from gaugerod.substrate.battens.answer import Arrangement, BattenLine, CuttingList, Nails, SlopeBattens
from gaugerod.substrate.battens.ask import BattensAsk


def metres(length_mm: float) -> str:
    """A length in metres to the millimetre.

    >>> metres(4910), metres(4800)
    ('4.910 m', '4.800 m')
    """
    return f"{length_mm / 1000:.3f} m"


def method_of(
    slopes: Sequence[SlopeBattens], cutting: CuttingList, nails: Sequence[Nails], edition: Edition
) -> Iterator[str]:
    """What to buy, how to cut, how to fix, one step a line."""
    moist = batten_figure(edition, BattenFigure.MOISTURE_GREATEST)
    yield (
        f"Use graded battens, marked with supplier, species, grade and size, treated, and at {moist.value:g} % moisture at most "
        "when fixed and when covered."
    )
    if cutting.buy:
        yield "Buy " + ", ".join(f"{each.count} of {metres(each.stock_mm)}" for each in cutting.buy) + "."
        yield "Cut square, longest pieces first, as the cutting list says; keep each offcut for the piece named beside it."
    for slope in slopes:
        yield from _of_slope(slope)
    for nail in nails:
        yield (
            f"Nail the {nail.what} with nails {nail.length_mm:g} × {nail.shank_mm:g} mm, galvanised or sherardised: "
            f"{nail.count}, about {nail.mass_kg:.1f} kg without their heads."
        )
    if any(slope.joints_count for slope in slopes):
        yield "Butt the ends tight over the middle of the rafter, a skew nail in each; one nail at every other support."


def _of_slope(slope: SlopeBattens) -> Iterator[str]:
    if slope.arrangement is Arrangement.NONE:
        yield f"{slope.where}: {slope.why}"
        return
    if slope.repeats_every is not None:
        for line in slope.lines[: slope.repeats_every]:
            yield f"{slope.where}, {_letter(line)}: start with {_pieces(line)}."
        if slope.repeats_every > 1:
            letters = " ".join(line.letter or "–" for line in slope.lines[: slope.repeats_every])
            yield f"{slope.where}: carry on {letters} {letters} … up to batten {slope.lines[-1].name}."
        return
    yield f"{slope.where}: the battens differ from course to course; follow the joint plan."


def _letter(line: BattenLine) -> str:
    return f"course {line.letter}" if line.letter else "every course without a joint"


def _pieces(line: BattenLine) -> str:
    (stretch,) = line.stretches
    if not stretch.joints:
        return f"one piece of {metres(stretch.pieces_mm[0])}"
    then = [
        f"a joint on rafter {joint}, then {metres(piece)}"
        for joint, piece in zip(stretch.joints, stretch.pieces_mm[1:], strict=True)
    ]
    return f"{metres(stretch.pieces_mm[0])} at the left, {', '.join(then)}"


def working_of(ask: BattensAsk, slopes: Sequence[SlopeBattens], cutting: CuttingList, nails: Sequence[Nails]) -> Step:
    """The tree: metres of each slope, what is bought, and the nails."""
    return Step(
        name="battens",
        formula="stock bought, the least that holds every piece",
        inputs={"laid (m)": cutting.net_mm / 1000, "kerf (mm)": ask.kerf.value},
        value=cutting.bought_mm / 1000,
        unit="m",
        citation=ask.stock[0].citation,
        parts=(*(_slope_step(slope) for slope in slopes), *(_nails_step(nail) for nail in nails)),
    )


def _slope_step(slope: SlopeBattens) -> Step:
    return Step(
        name=f"battens, {slope.where}",
        formula="sum of the lines, end to end",
        inputs={"battens": len(slope.lines), "joints": slope.joints_count, "arrangement": slope.arrangement.value},
        value=slope.net_mm / 1000,
        unit="m",
        citation=None if slope.section is None else slope.section.citation,
    )


def _nails_step(nail: Nails) -> Step:
    return Step(
        name=f"nails of the {nail.what}",
        formula="number × quarter of pi × shank² × length × density of steel",
        inputs={"number": nail.count, "shank (mm)": nail.shank_mm, "length (mm)": nail.length_mm},
        value=nail.mass_kg,
        unit="kg",
        citation=nail.mass_citation,
    )
