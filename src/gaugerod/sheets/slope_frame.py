"""A section's own axes: s up the slope, n square off it, turned by the pitch; and dimensions along the slope."""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.sheets.drawing import Anchor, Leader, Letter, Pen, Point, Words
from gaugerod.sheets.lettering import words_width_mm

_SIZE_MM = 2.7
_LANE_MM = 5.4
_TICK_MM = 1.0
_GAP_MM = 1.5
"""Air before and after words, on paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A length along the slope from s to s, and what it is said to be; ``under`` the rafter or over the covering.

    ``short`` is said instead where ``text`` does not fit between the ends; empty when there is no shorter way.
    """

    from_mm: float
    to_mm: float
    text: str
    short: str = ""
    under: bool = False

    def said(self, scale_ratio: float) -> str:
        """Its words at this scale."""
        return self.short if self.short and not self._fits(self.text, scale_ratio) else self.text

    def words_fit(self, scale_ratio: float) -> bool:
        """Do its words fit between its ends on the paper?"""
        return self._fits(self.said(scale_ratio), scale_ratio)

    def _fits(self, text: str, scale_ratio: float) -> bool:
        return words_width_mm(text, _SIZE_MM) + _GAP_MM < (self.to_mm - self.from_mm) / scale_ratio

    def taken_mm(self, scale_ratio: float) -> tuple[float, float]:
        """The stretch of lane it takes, in model mm, its words included."""
        if self.words_fit(scale_ratio):
            return (self.from_mm, self.to_mm)
        words_mm = words_width_mm(self.said(scale_ratio), _SIZE_MM) + 2 * _GAP_MM
        return (self.from_mm - words_mm * scale_ratio, self.to_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimensions:
    """Dimensions as drawn."""

    words: tuple[Words, ...]
    leaders: tuple[Leader, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeFrame:
    """Turns s (up the slope) and n (square off it) into x to the right and y up."""

    pitch_deg: float

    def at(self, s_mm: float, n_mm: float) -> Point:
        """The point in the section."""
        along, off = cos_deg(self.pitch_deg), sin_deg(self.pitch_deg)
        return (s_mm * along - n_mm * off, s_mm * off + n_mm * along)

    def at_plumb(self, x_mm: float, n_mm: float) -> Point:
        """Where a plumb line at x meets the line n off the slope."""
        return self.at((x_mm + n_mm * sin_deg(self.pitch_deg)) / cos_deg(self.pitch_deg), n_mm)

    def block(self, *, from_mm: float, to_mm: float, low_mm: float, high_mm: float) -> tuple[Point, ...]:
        """A rectangle lying along the slope."""
        return (
            self.at(from_mm, low_mm),
            self.at(to_mm, low_mm),
            self.at(to_mm, high_mm),
            self.at(from_mm, high_mm),
        )

    def dimensions(self, spans: Sequence[Span], *, over_mm: float, under_mm: float, scale_ratio: float) -> Dimensions:
        """The spans drawn along the slope, in lanes above n = ``over_mm`` and below n = ``under_mm``.

        Words that do not fit between the ticks stand before the first of them.
        """
        words: list[Words] = []
        leaders: list[Leader] = []
        for under in (False, True):
            here = [span for span in spans if span.under is under]
            for span, lane in zip(here, lanes(here, scale_ratio=scale_ratio), strict=True):
                away_mm = (lane + 1.0) * _LANE_MM * scale_ratio
                n_mm = under_mm - away_mm if under else over_mm + away_mm
                leaders += self._span_lines(span, n_mm, scale_ratio, starts_mm=0.0 if under else over_mm)
                words.append(self._span_words(span, n_mm, scale_ratio))
        return Dimensions(words=tuple(words), leaders=tuple(leaders))

    def _span_lines(self, span: Span, n_mm: float, scale_ratio: float, *, starts_mm: float) -> list[Leader]:
        """The dimension line, a tick at each end, and a line from each end to what is measured."""
        tick_mm = _TICK_MM * scale_ratio
        outwards_mm = tick_mm if n_mm > starts_mm else -tick_mm
        lines = [_line(self.at(span.from_mm, n_mm), self.at(span.to_mm, n_mm), Pen.DIMENSION)]
        for s_mm in (span.from_mm, span.to_mm):
            lines.append(_line(self.at(s_mm, starts_mm), self.at(s_mm, n_mm + outwards_mm), Pen.LEADER))
            lines.append(
                _line(self.at(s_mm - tick_mm, n_mm - tick_mm), self.at(s_mm + tick_mm, n_mm + tick_mm), Pen.DIMENSION)
            )
        return lines

    def _span_words(self, span: Span, n_mm: float, scale_ratio: float) -> Words:
        fits = span.words_fit(scale_ratio)
        s_mm = (span.from_mm + span.to_mm) / 2 if fits else span.from_mm - 1.6 * _GAP_MM * scale_ratio
        lift_paper_mm = 0.8 if fits else -0.36 * _SIZE_MM
        return Words(
            at_mm=self.at(s_mm, n_mm + lift_paper_mm * scale_ratio),
            text=span.said(scale_ratio),
            letter=Letter.DIMENSION,
            size_paper_mm=_SIZE_MM,
            anchor=Anchor.MIDDLE if fits else Anchor.END,
            turned_deg=self.pitch_deg,
        )


def lanes(spans: Sequence[Span], *, scale_ratio: float) -> tuple[int, ...]:
    """The lane of each span: the lowest in which nothing stands there yet; spans may meet end to end."""
    taken: list[list[tuple[float, float]]] = []
    chosen: list[int] = []
    for span in spans:
        from_mm, to_mm = span.taken_mm(scale_ratio)
        free = [
            lane
            for lane, stretches in enumerate(taken)
            if all(to_mm <= other_from_mm or other_to_mm <= from_mm for other_from_mm, other_to_mm in stretches)
        ]
        if not free:
            taken.append([])
            free = [len(taken) - 1]
        taken[free[0]].append((from_mm, to_mm))
        chosen.append(free[0])
    return tuple(chosen)


def _line(start: Point, end: Point, pen: Pen) -> Leader:
    return Leader(pen=pen, points_mm=(start, end), shifts_paper_mm=((0.0, 0.0), (0.0, 0.0)))
