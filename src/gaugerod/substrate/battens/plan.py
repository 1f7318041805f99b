"""Battens, from the marks on the rods to the cutting list."""

from gaugerod.substrate.battens.answer import Arrangement, Battens, SlopeBattens
from gaugerod.substrate.battens.ask import BattensAsk
from gaugerod.substrate.battens.ask_faults import refuse_faults
from gaugerod.substrate.battens.counter_battens import counter_battens
from gaugerod.substrate.battens.course_by_course import Stuck
from gaugerod.substrate.battens.findings import slope_findings
from gaugerod.substrate.battens.laid_lines import lines_of, repeats_every
from gaugerod.substrate.battens.nails import nails_of
from gaugerod.substrate.battens.planned import Planned, ground_of, planned, stock_of
from gaugerod.substrate.battens.relaxed import relaxed_plans, why_stuck
from gaugerod.substrate.battens.repeating import Repeating
from gaugerod.substrate.battens.whole_cutting import whole_cutting
from gaugerod.substrate.battens.words import method_of, working_of


def plan_battens(ask: BattensAsk) -> Battens:
    r"""Every batten of the roof: where it ends, where it is joined, what it is cut from, and its nails.

    The rules of length, supports and joints are never broken: where no plan keeps them, the slope has none, with the
    reason and the plans on offer. Battens all alike get the pattern that repeats with the least stock and then the fewest
    lengths, by exact search as far as ``Proof`` says; others are chosen course by course. All pieces are then cut together.

    Raises InputRefused with every fault of the ask. Source: NHBC Standards 2021 7.2.17 (published).
    Scope: battens on rafters at up to 600 mm centres; not battens that carry ridges, hips or valleys.

    >>> from gaugerod.laying.ask import Edge, EdgeKind, Ring
    >>> from gaugerod.rules.battens import BattenedCovering
    >>> from gaugerod.standards.edition import Edition
    >>> from gaugerod.substrate.battens.ask import BattenedSlope, BattenMark, EvenRafters, usual_battens
    >>> eaves, verge, ridge = (Edge(name=kind.value, kind=kind) for kind in (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE))
    >>> outline = Ring(points_mm=((0, 0), (7_650, 0), (7_650, 4_000), (0, 4_000)), edges=(eaves, verge, ridge, verge))
    >>> marks = tuple(BattenMark(name=str(row), at_mm=((0.0, 300.0 * row),)) for row in range(1, 13))
    >>> slope = BattenedSlope(where="rear", outline=outline, openings=(), marks=marks,
    ...                       rafters=EvenRafters(first_mm=225.0, spacing_mm=600.0))
    >>> battens = plan_battens(usual_battens(slopes=(slope,), covering=BattenedCovering.TILE_SINGLE_LAP,
    ...                                      edition=Edition.GB))
    >>> battens.slopes[0].repeats_every, [line.letter for line in battens.slopes[0].lines[:5]]
    (4, ['A', 'B', 'C', 'D', 'A'])
    >>> battens.slopes[0].lines[0].stretches[0].pieces_mm
    (1988, 3600, 1988)
    >>> [(each.count, each.stock_mm) for each in battens.cutting.buy], battens.cutting.bought_mm - battens.cutting.net_mm
    ([(1, 3600), (2, 4200), (2, 4800), (14, 5100)], 2088)
    """
    refuse_faults(ask)
    stock_mm = stock_of(ask)
    known: dict[tuple[object, ...], Repeating | None] = {}
    plans = [planned(ask, ground_of(ask, slope, stock_mm=stock_mm), known=known) for slope in ask.slopes]
    slopes = tuple(_laid(ask, plan) for plan in plans)
    cutting = whole_cutting(ask, plans, slopes)
    nails = tuple(nails_of(ask, slopes))
    return Battens(
        slopes=slopes,
        cutting=cutting,
        nails=nails,
        findings=tuple(
            finding
            for plan, laid in zip(plans, slopes, strict=True)
            for finding in slope_findings(ask, plan.ground, laid)
        ),
        method=tuple(method_of(slopes, cutting, nails, ask.edition)),
        working=working_of(ask, slopes, cutting, nails),
    )


def _laid(ask: BattensAsk, plan: Planned) -> SlopeBattens:
    """One slope as it will lie."""
    ground, slope = plan.ground, plan.ground.slope
    stuck = isinstance(plan.joints, Stuck)
    lines = () if isinstance(plan.joints, Stuck) else lines_of(ground, plan.joints)
    stretches = [stretch for line in lines for stretch in line.stretches]
    joints_count = sum(len(stretch.joints) for stretch in stretches)
    every = repeats_every(lines, most_count=plan.stagger.window_count)
    counter = None
    if ask.nailing.counter_batten_depth_mm is not None:
        counter = counter_battens(
            outline=slope.outline, openings=slope.openings, rafters_mm=ground.rafters_mm, edition=ask.edition
        )
    return SlopeBattens(
        where=slope.where,
        rafters_mm=ground.rafters_mm,
        section=ground.section,
        arrangement=Arrangement.NONE if stuck else Arrangement.REPEATING if every else Arrangement.BY_COURSE,
        repeats_every=every,
        why=_why(plan, every),
        lines=lines,
        relaxed=tuple(relaxed_plans(ask, plan, plan.joints)) if isinstance(plan.joints, Stuck) else (),
        net_mm=sum(plan.pieces_mm),
        crossings_count=sum(sum(stretch.supports) for stretch in stretches) - joints_count,
        joints_count=joints_count,
        counter_battens=counter,
    )


def _why(plan: Planned, every: int | None) -> str:
    if isinstance(plan.joints, Stuck):
        return why_stuck(plan, plan.joints)
    rule = plan.stagger
    kept = f"not more than {rule.joints_count} joined on one rafter in any {rule.window_count} consecutive battens"
    trim = f" Their ends differ by up to {plan.ground.trim_mm:.0f} mm: cut to the longest, trim in place."
    trimmed = trim if plan.ground.trim_mm > 1.0 else ""
    match every:
        case None:
            return f"Chosen course by course, for the battens differ: {kept}.{trimmed}"
        case 1:
            return f"Every batten alike.{trimmed}"
        case _:
            return f"A pattern of {every} courses that repeats: {kept}.{trimmed}"
