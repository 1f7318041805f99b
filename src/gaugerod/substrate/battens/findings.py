"""What the rules say of the battens of one slope."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.band_findings import within_band
from gaugerod.rules.batten_joints import batten_piece, joint_stagger
from gaugerod.rules.battens import batten_section
from gaugerod.rules.misfit import misfit
from gaugerod.standards.battens import BattenFigure, abutment_gutter_stop_band, batten_figure, verge_stop_band
from gaugerod.substrate.battens.answer import Arrangement, BattenLine, SlopeBattens
from gaugerod.substrate.battens.ask import BattensAsk
from gaugerod.substrate.battens.laid_lines import joined_by_rafter
from gaugerod.substrate.battens.planned import Ground

NAMED_COUNT = 4
"""So many battens are named one by one; more are counted."""


def slope_findings(ask: BattensAsk, ground: Ground, laid: SlopeBattens) -> Iterator[Finding]:
    """Section, pieces, joints, ends; and what no rule reaches."""
    where = ground.slope.where
    yield batten_section(where=where, covering=ask.covering, rafter_spacing_mm=ground.spacing_mm, edition=ask.edition)
    if laid.arrangement is Arrangement.NONE:
        yield not_covered(
            rule="batten plan",
            where=where,
            proposed=None,
            unit="count",
            citation=house("search over the ways every batten can be made up"),
            says=f"{laid.why} See the plans on offer.",
        )
    else:
        yield from _pieces(ask, ground, laid.lines)
        yield from joint_stagger(
            where=where,
            rafters=list(joined_by_rafter(laid.lines, rafters_count=len(laid.rafters_mm))),
            gauge_mm=ground.gauge_mm or batten_figure(ask.edition, BattenFigure.WIDE_GAUGE_OVER).value * 2,
            edition=ask.edition,
        )
    yield from _ends(ask, ground)


def _pieces(ask: BattensAsk, ground: Ground, lines: Sequence[BattenLine]) -> Iterator[Finding]:
    """The shortest piece and the one on fewest supports, of all that could be longer; then the stretches that could not."""
    where, rules = ground.slope.where, ground.rules
    could: list[tuple[int, int]] = []
    could_not: list[tuple[str, int]] = []
    for line in lines:
        for stretch in line.stretches:
            pieces = list(zip(stretch.pieces_mm, stretch.supports, strict=True))
            ((length_mm, supports), *more) = pieces
            if not more and (length_mm < rules.least_mm or supports < rules.supports_count):
                could_not.append((line.name, length_mm))
            else:
                could.extend(pieces)
    if could:
        yield from batten_piece(
            where=where,
            length_mm=float(min(length_mm for length_mm, _ in could)),
            supports_count=min(supports for _, supports in could),
            edition=ask.edition,
        )
    if could_not:
        shortest_mm = min(length_mm for _, length_mm in could_not)
        names = ", ".join(dict.fromkeys(name for name, _ in could_not[:NAMED_COUNT]))
        others = f" and {len(could_not) - NAMED_COUNT} more" if len(could_not) > NAMED_COUNT else ""
        yield not_covered(
            rule="batten length",
            where=where,
            proposed=float(shortest_mm),
            unit="mm",
            citation=batten_figure(ask.edition, BattenFigure.LENGTH_LEAST).citation,
            says=(
                f"Where the slope itself is so narrow (batten {names}{others}; the shortest {shortest_mm} mm), no batten of "
                f"{rules.least_mm} mm on {rules.supports_count} supports fits: one piece from end to end, nailed at every "
                "support. The rule as read does not speak of such places; agree it with whoever inspects."
            ),
        )


def _ends(ask: BattensAsk, ground: Ground) -> Iterator[Finding]:
    """How far short of each kind of edge the battens end."""
    where, stops = ground.slope.where, ask.stops
    kinds = {edge.kind for edge in ground.slope.outline.edges}
    if EdgeKind.VERGE in kinds:
        yield from within_band(
            rule="batten end at a verge",
            where=where,
            length_mm=stops.verge.value,
            band=verge_stop_band(ask.edition),
            too_little="The batten end touches the mortar or shows.",
            too_much="The verge unit has nothing to lie on.",
        )
    if EdgeKind.VALLEY in kinds:
        yield _at_valley(ask, where)
    if EdgeKind.ABUTMENT in kinds and stops.secret_gutter:
        yield from within_band(
            rule="batten end beside a secret gutter",
            where=where,
            length_mm=stops.abutment.value,
            band=abutment_gutter_stop_band(ask.edition),
            too_little="There is no room for the gutter.",
            too_much="The gutter's lining has nothing to lie on.",
        )


def _at_valley(ask: BattensAsk, where: str) -> Finding:
    limit = batten_figure(ask.edition, BattenFigure.VALLEY_STOP_FROM_WELT)
    short_mm = limit.value - ask.stops.valley.value
    return Finding(
        rule="batten end at a valley",
        where=where,
        proposed=ask.stops.valley.value,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=limit.citation,
        says=f"Short of the lead welt, which is taken {ask.stops.valley_welt.value:g} mm from the valley line "
        f"({ask.stops.valley_welt.citation.basis.value}); nail the end on the valley board."
        if short_mm <= TOUCH
        else f"{misfit(short_mm)} too near the welt: the batten end lies on it and holds water.",
    )
