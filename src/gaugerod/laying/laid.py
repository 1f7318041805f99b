"""The answer of the laying: whole units as runs, cut units with what shows of them, and what was too small to lay."""

from dataclasses import dataclass

from gaugerod.geometry.polygon import Point

Rings = tuple[tuple[Point, ...], ...]
"""Closed outlines: counter-clockwise ones bound a piece, clockwise ones a hole in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Whole units side by side in one course: unit ``first``, ``first + 1``, … ``count`` of them."""

    course: int
    first: int
    count: int


@dataclass(frozen=True, slots=True)
class CutCell:
    """What shows of one unit that an edge runs through. (Made by the thousand: positional.)

    ``rings``     outline of what shows, in the slope's plane
    ``area_mm2``  its area
    ``edges``     numbers of the edges that touch it: outline first, then each opening, in the order given
    """

    course: int
    index: int
    rings: Rings
    area_mm2: float
    edges: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Small:
    """Pieces too small to matter, and their area together."""

    count: int
    area_mm2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseLaid:
    """One course: its whole and cut units, and the area it shows. ``length_mm`` is that area over the mean gauge:
    the metres run of a course of random slates.
    """

    whole_count: int
    cut_count: int
    area_mm2: float
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Laying:
    """Every unit of one slope.

    ``cuts``     cut units; ``lapped`` strips beside the last unit of a course, no wider than its side lap: that unit
                 covers them itself, so no unit is laid there
    ``slivers``  pieces that would show less than 1 mm²: not laid
    ``nicks``    units that would lose less than 1 mm²: laid whole
    ``bare_mm2`` what no course reaches (the courses end short of the outline); float noise when they reach it all

    slope area = whole + cut + lapped + slivers − nicks + bare.
    """

    where: str
    runs: tuple[Run, ...]
    cuts: tuple[CutCell, ...]
    lapped: tuple[CutCell, ...]
    courses: tuple[CourseLaid, ...]
    whole_count: int
    whole_area_mm2: float
    cut_area_mm2: float
    lapped_area_mm2: float
    slivers: Small
    nicks: Small
    slope_area_mm2: float
    bare_mm2: float

    @property
    def cut_count(self) -> int:
        """How many units are cut in what shows of them."""
        return len(self.cuts)
