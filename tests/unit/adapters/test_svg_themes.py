import re

import pytest

from gaugerod.adapters.svg.themes import CHALK_ON_SLATE, INK_ON_PAPER, Theme
from gaugerod.adapters.svg.writer import theme_style, write_svg
from gaugerod.sheets.drawing import Drawing, Paper, Path, Pen

THEMES = pytest.mark.parametrize("theme", [INK_ON_PAPER, CHALK_ON_SLATE], ids=["ink on paper", "chalk on slate"])


def luminance(colour: str) -> float:
    """Relative luminance. Source: WCAG 2.2, definition of relative luminance."""
    digits = colour.removeprefix("#")
    digits = "".join(digit * 2 for digit in digits) if len(digits) == 3 else digits
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


@THEMES
def test_every_pen_has_its_stroke(theme: Theme) -> None:
    assert set(Pen) == set(theme.strokes)


@THEMES
def test_letters_stand_off_paper_and_every_fill(theme: Theme) -> None:
    """WCAG 2.2, 1.4.3: 4.5 to 1 for letters."""
    fills = {stroke.fill for stroke in theme.strokes.values()} - {"none"}
    hard = {Pen.SECTION_BATTEN, Pen.JOINT}  # no letters are ever set on these
    fills -= {theme.strokes[pen].fill for pen in hard}
    assert [] == [fill for fill in sorted({theme.paper, *fills}) if contrast(theme.ink, fill) < 4.5]


@THEMES
def test_lines_stand_off_the_slope_they_are_drawn_on(theme: Theme) -> None:
    """WCAG 2.2, 1.4.11: 3 to 1 for what must be seen."""
    surface = theme.strokes[Pen.SURFACE].fill
    needed = set(Pen) - {Pen.SURFACE}
    assert [] == [pen for pen in needed if contrast(theme.strokes[pen].colour, surface) < 3.0]


def test_a_drawing_without_a_theme_carries_no_style_of_its_own() -> None:
    drawing = Drawing(
        title="A line", says="One line.", paths=(Path(pen=Pen.RIDGE, runs_mm=(((0.0, 0.0), (9.0, 0.0)),)),), words=()
    )
    paper = Paper(width_mm=10, height_mm=10, scale_ratio=1, origin_paper_mm=(0, 0))
    assert "style" not in write_svg(drawing, paper=paper, theme=None)
    assert ".drawing .ridge{" in write_svg(drawing, paper=paper)


def test_the_style_of_a_theme_covers_every_pen() -> None:
    style = theme_style(CHALK_ON_SLATE)
    assert {pen.value for pen in Pen} <= set(re.findall(r"\.drawing \.([a-z-]+)\{", style))
