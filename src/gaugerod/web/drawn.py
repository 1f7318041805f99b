"""Drawings as the pages carry them: bare of colours, so that the page dresses them for night, daylight and print."""

from markupsafe import Markup

from gaugerod.sheets.placed import Placed
from gaugerod.wiring import bare_drawing_svg

WIDE_MM = (165.0, 125.0)
POCKET_MM = 84.0
"""Room for a drawing on a desk, and on a phone: letters of 3 mm come out at a size that can be read."""


def markup(placed: Placed) -> Markup:
    """The drawing as markup. Everything in it was escaped by the writer."""
    return Markup(bare_drawing_svg(placed))  # noqa: S704
