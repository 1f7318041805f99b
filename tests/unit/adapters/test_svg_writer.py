"""Drawings as SVG: well formed, told in words, harmless whatever the names."""

import xml.etree.ElementTree as ET

import pytest

from gaugerod.adapters.svg.themes import INK_ON_PAPER
from gaugerod.adapters.svg.writer import write_svg
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.slope_drawing import slope_drawing
from tests.scenario.by_hand import result_by_hand

SVG = "{http://www.w3.org/2000/svg}"


def svg_of(name: str = "rear") -> str:
    slope = result_by_hand(name=name).slopes[0]
    placed = slope_drawing(slope, unit=LengthUnit.MM, room_width_mm=182.0, room_height_mm=150.0)
    return write_svg(placed.drawing, paper=placed.paper)


def test_it_is_an_image_with_a_title_and_a_description() -> None:
    root = ET.fromstring(svg_of())  # noqa: S314 -- our own text
    assert "img" == root.get("role")
    assert [f"{SVG}title", f"{SVG}desc"] == [child.tag for child in root][:2]
    assert "182mm" == root.get("width")


def test_there_is_one_path_for_each_pen() -> None:
    root = ET.fromstring(svg_of())  # noqa: S314 -- our own text
    pens = [path.get("class") for path in root.iter(f"{SVG}path")]
    assert len(pens) == len(set(pens))
    assert {"batten", "fifth-batten", "perp", "outline", "opening", "rod"} <= set(pens)


@pytest.mark.parametrize("name", ["<script>alert(1)</script>", "a & b", 'quo"te', "]]>", "</text>"])
def test_a_name_with_markup_stays_a_name(name: str) -> None:
    root = ET.fromstring(svg_of(name))  # noqa: S314 -- our own text
    assert name in (root.findtext(f"{SVG}title") or "")
    assert [] == list(root.iter(f"{SVG}script"))


def test_the_theme_has_a_stroke_for_every_pen() -> None:
    assert set(Pen) == set(INK_ON_PAPER.strokes)


def test_the_same_drawing_gives_the_same_text() -> None:
    assert svg_of() == svg_of()
