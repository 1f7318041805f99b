"""Nails of the battens and of the counter-battens: length, shank, how many, and their mass."""

from collections.abc import Iterator, Sequence
from math import ceil, pi

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import TOUCH
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.edition import Edition
from gaugerod.substrate.battens.answer import Nails, SlopeBattens
from gaugerod.substrate.battens.ask import BattensAsk


def nails_of(ask: BattensAsk, slopes: Sequence[SlopeBattens]) -> Iterator[Nails]:
    """The nails of all the slopes, by depth of batten; then those of the counter-battens."""
    by_depth: dict[float, int] = {}
    for slope in slopes:
        if slope.section is not None:
            depth_mm = slope.section.depth_mm
            by_depth[depth_mm] = by_depth.get(depth_mm, 0) + batten_nails_count(slope, ask.edition)
    counter_mm = ask.nailing.counter_batten_depth_mm or 0.0
    for depth_mm, count in by_depth.items():
        length_mm, citation = batten_nail_length(
            depth_mm=depth_mm, counter_batten_depth_mm=counter_mm, gun=ask.nailing.gun, edition=ask.edition
        )
        yield _nails("battens", length_mm, citation, count=count, ask=ask)
    fixings = sum(slope.counter_battens.fixings_count for slope in slopes if slope.counter_battens is not None)
    if fixings:
        length_mm, citation = longer_nail_length(passes_mm=counter_mm, edition=ask.edition)
        yield _nails("counter-battens", length_mm, citation, count=fixings, ask=ask)


def batten_nails_count(slope: SlopeBattens, edition: Edition) -> int:
    """One at every support, two where two ends meet on a rafter."""
    each = int(batten_figure(edition, BattenFigure.NAILS_EACH_CROSSING).value)
    at_joint = int(batten_figure(edition, BattenFigure.NAILS_EACH_JOINT).value)
    return slope.crossings_count * each + slope.joints_count * (at_joint - each)


def batten_nail_length(
    *, depth_mm: float, counter_batten_depth_mm: float, gun: bool, edition: Edition
) -> tuple[float, Citation]:
    """The least nail for a batten of this depth (mm) and its source; through a counter-batten (0: none) into the rafter.

    Scope: the published sizes are for a batten of 25 mm without counter-batten; else depth and the least penetration.

    >>> batten_nail_length(depth_mm=25.0, counter_batten_depth_mm=0.0, gun=False, edition=Edition.GB)[0]
    65.0
    >>> length, citation = batten_nail_length(depth_mm=25.0, counter_batten_depth_mm=38.0, gun=False, edition=Edition.GB)
    >>> length, citation.basis.value
    (105.0, 'memory')
    """
    published_mm = batten_figure(edition, BattenFigure.NAILED_BATTEN_DEPTH).value
    if counter_batten_depth_mm == 0 and published_mm - TOUCH <= depth_mm <= published_mm + TOUCH:
        nail = batten_figure(edition, BattenFigure.GUN_NAIL_LENGTH if gun else BattenFigure.HAND_NAIL_LENGTH)
        return nail.value, nail.citation
    return longer_nail_length(passes_mm=depth_mm + counter_batten_depth_mm, edition=edition)


def longer_nail_length(*, passes_mm: float, edition: Edition) -> tuple[float, Citation]:
    """The least nail that passes so much timber before the rafter and holds in it, in steps up (mm), and its source."""
    into = batten_figure(edition, BattenFigure.NAIL_PENETRATION_LEAST)
    step_mm = batten_figure(edition, BattenFigure.NAIL_LENGTH_STEP).value
    return ceil((passes_mm + into.value - TOUCH) / step_mm) * step_mm, into.citation


def nail_mass_kg(*, length_mm: float, shank_mm: float, edition: Edition) -> float:
    """The mass of one steel nail counted as a plain round shank: the head is not in it, so allow some more. kg.

    >>> round(1000 * nail_mass_kg(length_mm=65.0, shank_mm=3.35, edition=Edition.GB), 2)
    4.5
    """
    density = batten_figure(edition, BattenFigure.STEEL_DENSITY).value
    return pi / 4 * shank_mm * shank_mm * length_mm * 1e-9 * density


def _nails(what: str, length_mm: float, citation: Citation, *, count: int, ask: BattensAsk) -> Nails:
    gun = ask.nailing.gun and what == "battens"
    shank = batten_figure(ask.edition, BattenFigure.GUN_NAIL_SHANK if gun else BattenFigure.HAND_NAIL_SHANK)
    one_kg = nail_mass_kg(length_mm=length_mm, shank_mm=shank.value, edition=ask.edition)
    return Nails(
        what=what,
        length_mm=length_mm,
        shank_mm=shank.value,
        count=count,
        mass_kg=count * one_kg,
        length_citation=citation,
        mass_citation=batten_figure(ask.edition, BattenFigure.STEEL_DENSITY).citation,
    )
