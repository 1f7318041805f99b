"""How long a batten must be, what it must rest on, and how its joints must be staggered.

Source: NHBC Standards 2021 7.2.17 (published). Whether the three joints in twelve may lie on neighbouring battens: NHBC
does not say; a supplier-hosted page reads "3 consecutive in any 12" (published); the safer reading keeps them apart.
Scope: battens nailed to rafters, joints square cut, tightly butted and central over a rafter.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.basis.limit import Limit
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing, refuse_unreal
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.edition import Edition


class CloseJoints(StrEnum):
    """May joints on one rafter lie on neighbouring battens, where the gauge is 200 mm or less?

    ``apart``     no: the safer reading, and the default
    ``together``  yes, up to three in a row: as one supplier-hosted page reads the rule
    """

    APART = "apart"
    TOGETHER = "together"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stagger:
    """Not more than ``joints_count`` joints in any ``window_count`` consecutive battens on one rafter, and not more than
    ``run_count`` of them on neighbouring battens.
    """

    window_count: int
    joints_count: int
    run_count: int
    citation: Citation

    def allows(self, joined: Sequence[bool]) -> bool:
        """May the last of these consecutive battens have its joint on this rafter, the ones before it being as they are?

        >>> wide = stagger_rule(gauge_mm=345.0, edition=Edition.GB)
        >>> wide.allows([True, False, False, True]), wide.allows([True, False, False, False, True])
        (False, True)
        """
        run = 0
        for here in reversed(joined):
            if not here:
                break
            run += 1
        return sum(joined[-self.window_count :]) <= self.joints_count and run <= self.run_count


def stagger_rule(*, gauge_mm: float, edition: Edition, close_joints: CloseJoints = CloseJoints.APART) -> Stagger:
    """The rule on joints at this gauge (mm; the widest of the slope). Source: see the head of this page.

    Raises NothingToSetOut for a gauge that is not above nothing.

    >>> [(rule.joints_count, rule.window_count) for gauge in (200.0, 200.1)
    ...  for rule in (stagger_rule(gauge_mm=gauge, edition=Edition.GB),)]
    [(3, 12), (1, 4)]
    """
    refuse_unless_above_nothing(rule="joint stagger", where="gauge", value=gauge_mm, unit="mm")
    if gauge_mm > batten_figure(edition, BattenFigure.WIDE_GAUGE_OVER).value + TOUCH:
        joints = batten_figure(edition, BattenFigure.WIDE_GAUGE_JOINTS)
        window, run = batten_figure(edition, BattenFigure.WIDE_GAUGE_WINDOW), joints
    else:
        joints = batten_figure(edition, BattenFigure.CLOSE_GAUGE_JOINTS)
        window, run = batten_figure(edition, BattenFigure.CLOSE_GAUGE_WINDOW), _close_run(close_joints, edition)
    return Stagger(
        window_count=int(window.value),
        joints_count=int(joints.value),
        run_count=int(run.value),
        citation=joints.citation,
    )


def _close_run(close_joints: CloseJoints, edition: Edition) -> Limit:
    apart = close_joints is CloseJoints.APART
    which = BattenFigure.CLOSE_GAUGE_RUN_APART if apart else BattenFigure.CLOSE_GAUGE_RUN_TOGETHER
    return batten_figure(edition, which)


def most_joints_in_window_count(joined: Sequence[bool], *, window_count: int) -> int:
    """The most joints in any so many consecutive battens on one rafter.

    >>> most_joints_in_window_count([True, False, True, False, False, True], window_count=4)
    2
    """
    return max((sum(joined[at : at + window_count]) for at in range(len(joined))), default=0)


def longest_run_count(joined: Sequence[bool]) -> int:
    """The most neighbouring battens joined on one rafter.

    >>> longest_run_count([True, True, False, True])
    2
    """
    longest = run = 0
    for here in joined:
        run = run + 1 if here else 0
        longest = max(longest, run)
    return longest


def joint_stagger(
    *, where: str, rafters: Sequence[Sequence[bool]], gauge_mm: float, edition: Edition
) -> tuple[Finding, ...]:
    """Every window of consecutive battens on every rafter against the rule of this gauge (mm).

    ``rafters`` holds, for each rafter, whether each batten that crosses it is joined there, from the eaves up. At a gauge
    of 200 mm or less both readings of the rule are shown. Source: see the head of this page.

    >>> [f.verdict.value for f in joint_stagger(where="rear", rafters=[[True, True, False, True]], gauge_mm=100.0,
    ...                                         edition=Edition.GB)]
    ['within', 'outside', 'within']
    """
    rule = stagger_rule(gauge_mm=gauge_mm, edition=edition)
    most = max((most_joints_in_window_count(joined, window_count=rule.window_count) for joined in rafters), default=0)
    found = [
        Finding(
            rule="joint stagger",
            where=where,
            proposed=float(most),
            limit=float(rule.joints_count),
            unit="count",
            sense=Sense.AT_MOST,
            citation=rule.citation,
            says=f"The most joints on one rafter in any {rule.window_count} consecutive battens."
            if most <= rule.joints_count
            else f"{most} joints on one rafter in {rule.window_count} consecutive battens: the joints line up.",
        )
    ]
    if rule.window_count == int(batten_figure(edition, BattenFigure.WIDE_GAUGE_WINDOW).value):
        return tuple(found)
    run = max((longest_run_count(joined) for joined in rafters), default=0)
    for reading in CloseJoints:
        limit = _close_run(reading, edition)
        found.append(
            Finding(
                rule="joints beside one another",
                where=where,
                proposed=float(run),
                limit=limit.value,
                unit="count",
                sense=Sense.AT_MOST,
                citation=limit.citation,
                says="The most neighbouring battens joined on one rafter."
                if run <= limit.value
                else f"{run} neighbouring battens are joined on one rafter.",
            )
        )
    return tuple(found)


def batten_piece(*, where: str, length_mm: float, supports_count: int, edition: Edition) -> tuple[Finding, Finding]:
    """One batten (or the least of many) against the least length and the least number of supports. mm.

    >>> [f.verdict.value for f in batten_piece(where="rear", length_mm=1199.9, supports_count=3, edition=Edition.GB)]
    ['outside', 'within']
    """
    refuse_unreal(rule="batten length", where=where, value=length_mm, unit="mm")
    least = batten_figure(edition, BattenFigure.LENGTH_LEAST)
    supports = batten_figure(edition, BattenFigure.SUPPORTS_LEAST)
    return (
        Finding(
            rule="batten length",
            where=where,
            proposed=length_mm,
            limit=least.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=least.citation,
            says="The shortest batten."
            if length_mm >= least.value - TOUCH
            else f"A batten is {misfit(least.value - length_mm)} short of the least.",
        ),
        Finding(
            rule="batten supports",
            where=where,
            proposed=float(supports_count),
            limit=supports.value,
            unit="count",
            sense=Sense.AT_LEAST,
            citation=supports.citation,
            says="The fewest supports under any batten, its ends counted."
            if supports_count >= supports.value
            else f"A batten rests on {supports_count} supports: it springs under the foot and the hammer.",
        ),
    )


def widest_gauge_mm(heights_mm: Sequence[Sequence[float]]) -> float:
    """The widest gap between neighbouring battens at any of the places where they were marked. mm.

    >>> widest_gauge_mm([(345.0, 690.0, 1034.0), (345.0, 689.0, 1032.0)])
    345.0
    """
    return max((upper - lower for rod in heights_mm for lower, upper in pairwise(rod)), default=0.0)
