"""Where no strict plan was found: why, and the plans on offer, each with what it breaks and by how much.

Nothing here is taken of itself: someone must choose it, and where a rule is broken someone must design it, or accept it in
writing.
"""

from collections.abc import Iterator, Sequence

from gaugerod.rules.batten_joints import CloseJoints, Stagger, stagger_rule
from gaugerod.substrate.battens.answer import Relaxed
from gaugerod.substrate.battens.any_pattern import places_that_can_be_joined
from gaugerod.substrate.battens.ask import BattensAsk
from gaugerod.substrate.battens.course_by_course import PiecePrice, Stuck, joints_course_by_course
from gaugerod.substrate.battens.planned import Ground, Planned, cuts_of, ground_of, pieces_of, rule_of, stock_of

LONGER_STEP_MM, LONGEST_STOCK_MM = 300, 7_200
"""Longer stock is tried in these steps, up to this length (house)."""


def why_stuck(plan: Planned, stuck: Stuck) -> str:
    """The reason in words: which batten, and the rafters it could be joined on."""
    ground, course = plan.ground, plan.ground.courses[stuck.course]
    name = ground.slope.marks[stuck.course].name
    if stuck.impossible:
        return (
            f"Batten {name} cannot be made up at all: from lengths of {ground.rules.greatest_mm} mm at most, no joints on "
            f"rafters give pieces of {ground.rules.least_mm} mm or more on {ground.rules.supports_count} supports."
        )
    could = sorted(ways.rafters[at] + 1 for ways in course.stretches for at in places_that_can_be_joined(ways))
    only = f"rafters {', '.join(map(str, could))}" if len(could) > 1 else f"rafter {could[0]}"
    joints = f"{plan.stagger.joints_count} joint{'' if plan.stagger.joints_count == 1 else 's'} on one rafter"
    rule = f"not more than {joints} in any {plan.stagger.window_count} battens"
    if ground.alike is not None and plan.stagger.joints_count == 1:
        count = min(plan.stagger.window_count, len(ground.courses))
        return (
            f"No plan keeps the rule of {rule}: every batten must be joined, only {only} can take a joint, and they are not "
            f"enough for {count} battens to be joined on different ones."
        )
    return (
        f"No plan was found that keeps the rule of {rule}: batten {name} must be joined, only {only} can take its joint, and "
        "the battens below it have used them up."
    )


def relaxed_plans(ask: BattensAsk, plan: Planned, stuck: Stuck) -> Iterator[Relaxed]:
    """The plans on offer: the rule read less strictly, longer stock, joints nearer than the rule allows."""
    ground, rule = plan.ground, rule_of(ask, plan.ground)
    if not stuck.impossible and rule.joints_count > 1 and ask.close_joints is CloseJoints.APART:
        together = stagger_rule(gauge_mm=ground.gauge_mm, edition=ask.edition, close_joints=CloseJoints.TOGETHER)
        yield from _offered(
            ask,
            ground,
            together,
            change=f"joints on neighbouring battens, up to {together.run_count} in a row",
            breaks="nothing as one supplier-hosted page reads the rule; the warranty standard does not say",
            keeps_rules=True,
        )
    yield from _longer(ask, plan)
    if not stuck.impossible:
        yield from _nearer(ask, ground, rule)


def _longer(ask: BattensAsk, plan: Planned) -> Iterator[Relaxed]:
    """The least longer stock with which a strict plan is found."""
    stock_mm = stock_of(ask)
    for length_mm in range(max(stock_mm) + LONGER_STEP_MM, LONGEST_STOCK_MM + 1, LONGER_STEP_MM):
        with_longer = (*stock_mm, length_mm)
        ground = ground_of(ask, plan.ground.slope, stock_mm=with_longer)
        offered = list(
            _offered(
                ask,
                ground,
                plan.stagger,
                change=f"battens {length_mm} mm long besides the stock",
                breaks="nothing",
                keeps_rules=True,
                stock_mm=with_longer,
            )
        )
        if offered:
            yield from offered
            return


def _nearer(ask: BattensAsk, ground: Ground, rule: Stagger) -> Iterator[Relaxed]:
    """The widest window with which a plan is found: joints come nearer than the rule allows, and it says by how much."""
    for window in range(rule.window_count - 1, 0, -1):
        nearer = Stagger(
            window_count=window, joints_count=rule.joints_count, run_count=rule.joints_count, citation=rule.citation
        )
        found = list(
            _offered(
                ask,
                ground,
                nearer,
                change=f"not more than {rule.joints_count} joined on one rafter in any {window} consecutive battens",
                breaks=f"the rule asks it of any {rule.window_count}: the window is {rule.window_count - window} short. "
                "Only as someone designs it, or the warranty accepts it in writing",
                keeps_rules=False,
            )
        )
        if found:
            yield from found
            return


def _offered(
    ask: BattensAsk,
    ground: Ground,
    stagger: Stagger,
    *,
    change: str,
    breaks: str,
    keeps_rules: bool,
    stock_mm: Sequence[int] | None = None,
) -> Iterator[Relaxed]:
    stock = stock_of(ask) if stock_mm is None else tuple(stock_mm)
    price = PiecePrice(stock_mm=stock, least_piece_mm=ground.rules.least_mm, kerf_mm=ask.kerf.value)
    joints = joints_course_by_course(ground.courses, stagger=stagger, price=price)
    if isinstance(joints, Stuck):
        return
    cuts = cuts_of(pieces_of(ground.courses, joints), ask, stock_mm=stock)
    yield Relaxed(
        change=change,
        breaks=breaks,
        keeps_rules=keeps_rules,
        bought_mm=sum(cut.stock_mm for cut in cuts),
        lengths_count=len(cuts),
    )
