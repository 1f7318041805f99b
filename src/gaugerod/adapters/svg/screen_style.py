"""The style sheet of drawings on a page: chalk on slate by night, ink on paper in daylight and on paper."""

from gaugerod.adapters.svg.themes import CHALK_ON_SLATE, INK_ON_PAPER
from gaugerod.adapters.svg.writer import theme_style


def screen_style() -> str:
    """Daylight first; night where the page or the machine asks for it; print always daylight.

    ``data-light`` of the page is ``day``, ``night``, or ``auto`` for what the machine has.
    """
    day, night = theme_style(INK_ON_PAPER), theme_style(CHALK_ON_SLATE)
    by_choice = f'html[data-light="night"]{{{night}}}'
    by_machine = f'@media (prefers-color-scheme:dark){{html[data-light="auto"]{{{night}}}}}'
    return f"{day}\n@media screen{{{by_choice}\n{by_machine}}}\n"
