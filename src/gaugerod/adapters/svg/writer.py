"""A drawing written as SVG: one path for each pen, letters as text, a title and the picture in words.

The picture is measured in paper millimetres, y down, as SVG has it; the same text always comes out for the
same drawing.
"""

from collections.abc import Collection
from xml.sax.saxutils import escape

from gaugerod.adapters.svg.themes import INK_ON_PAPER, Stroke, Theme
from gaugerod.sheets.drawing import Drawing, Leader, Letter, Paper, Path, Pen, Words

FACE = "'DejaVu Sans Mono', monospace"
"""The one face of drawings; fixed width, so that labels can be kept apart by counting letters."""


def write_svg(drawing: Drawing, *, paper: Paper, theme: Theme | None = INK_ON_PAPER) -> str:
    """The drawing as SVG text, at true size: one SVG unit is one paper millimetre.

    Without a theme it carries no colours of its own: the page it stands on dresses it with ``theme_style``.
    """
    pens = {path.pen for path in drawing.paths} | {leader.pen for leader in drawing.leaders}
    style = [] if theme is None else [f"<style>{theme_style(theme, pens=pens)}</style>"]
    width, height = _number(paper.width_mm), _number(paper.height_mm)
    lines = [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
            f'viewBox="0 0 {width} {height}" role="img" class="drawing">'
        ),
        f"<title>{escape(drawing.title)}</title>",
        f"<desc>{escape(drawing.says)}</desc>",
        *style,
        *(_path(path, paper) for path in drawing.paths),
        *_leaders(drawing, paper),
        *(_words(words, paper) for words in drawing.words),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def theme_style(theme: Theme, *, pens: Collection[Pen] = tuple(Pen)) -> str:
    """The theme as a style sheet for these pens."""
    rules = [f".drawing .{pen.value}{{{_stroke_style(theme.strokes[pen])}}}" for pen in Pen if pen in pens]
    rules.append(f".drawing text{{font-family:{FACE};fill:{theme.ink};stroke:none}}")
    rules.append(
        f".drawing .{Letter.EDGE.value}{{paint-order:stroke;stroke:{theme.paper};stroke-width:0.7;stroke-linejoin:round}}"
    )
    rules.append(f".drawing .{Letter.VALUE.value},.drawing .{Letter.KEY.value}{{font-weight:700}}")
    return "".join(rules)


def _stroke_style(stroke: Stroke) -> str:
    style = f"fill:{stroke.fill};stroke:{stroke.colour};stroke-width:{_number(stroke.weight_mm)}"
    style += ";stroke-linejoin:round"
    if stroke.dashes_mm:
        style += f";stroke-dasharray:{' '.join(_number(dash) for dash in stroke.dashes_mm)}"
    return style


def _path(path: Path, paper: Paper) -> str:
    end = "Z" if path.closed else ""
    data = "".join(_run([_on_paper(point, (0.0, 0.0), paper) for point in run]) + end for run in path.runs_mm)
    return f'<path class="{path.pen.value}" d="{data}"/>'


def _leaders(drawing: Drawing, paper: Paper) -> list[str]:
    lines: list[str] = []
    for pen in Pen:
        runs = [_leader(leader, paper) for leader in drawing.leaders if leader.pen is pen]
        if runs:
            lines.append(f'<path class="{pen.value}" d="{"".join(runs)}"/>')
    return lines


def _leader(leader: Leader, paper: Paper) -> str:
    points = zip(leader.points_mm, leader.shifts_paper_mm, strict=True)
    return _run([_on_paper(point, shift, paper) for point, shift in points])


def _run(points: list[tuple[float, float]]) -> str:
    return "M" + "L".join(f"{_number(x)} {_number(y)}" for x, y in points)


def _words(words: Words, paper: Paper) -> str:
    x, y = (_number(value) for value in _on_paper(words.at_mm, words.shift_paper_mm, paper))
    turn = f' transform="rotate({_number(-words.turned_deg)} {x} {y})"' if words.turned_deg else ""
    return (
        f'<text class="{words.letter.value}" x="{x}" y="{y}" font-size="{_number(words.size_paper_mm)}" '
        f'text-anchor="{words.anchor.value}"{turn}>{escape(words.text)}</text>'
    )


def _on_paper(point: tuple[float, float], shift: tuple[float, float], paper: Paper) -> tuple[float, float]:
    x_mm = paper.origin_paper_mm[0] + point[0] / paper.scale_ratio + shift[0]
    y_mm = paper.origin_paper_mm[1] + point[1] / paper.scale_ratio + shift[1]
    return (x_mm, paper.height_mm - y_mm)


def _number(value: float) -> str:
    """Hundredths of a millimetre, no idle zeros, never minus nothing."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text
