"""A few sheets and drawings, whole, as text. A change here is read by a person before it is kept."""

import io
from collections.abc import Callable
from datetime import UTC, datetime

import pypdf

from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.adapters.svg.writer import write_svg
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.edge_detail import detail_placed
from gaugerod.sheets.edges_sheet import details
from gaugerod.sheets.joint_drawing import joint_drawing
from gaugerod.sheets.joint_pattern import joint_pattern
from gaugerod.sheets.order_sheet import order_sheet
from gaugerod.sheets.section_details import eaves_section
from gaugerod.sheets.setting_out_sheet import setting_out_sheet
from gaugerod.sheets.sheet import PaperSize
from gaugerod.sheets.slope_drawing import slope_drawing
from gaugerod.sheets.underlay_drawing import underlay_drawing
from gaugerod.substrate.battens.plan import plan_battens
from gaugerod.substrate.underlay.lay_underlay import lay_underlay
from tests.scenario.battened_slopes import asked, gable
from tests.scenario.beneath_results import beneath_result
from tests.scenario.by_hand import TILE, result_by_hand
from tests.scenario.underlaid_slopes import rectangle, underlay_ask

Compare = Callable[[str, str], None]


def test_the_slope_drawing_is_as_it_was(same_as_golden: Compare) -> None:
    slope = result_by_hand().slopes[0]
    placed = slope_drawing(slope, unit=LengthUnit.MM, room_width_mm=182.0, room_height_mm=150.0)
    same_as_golden("slope.svg", write_svg(placed.drawing, paper=placed.paper))


def test_the_eaves_section_is_as_it_was(same_as_golden: Compare) -> None:
    placed = eaves_section(result_by_hand(unit=LengthUnit.FT_IN).slopes[0], TILE, unit=LengthUnit.FT_IN)
    same_as_golden("eaves.svg", write_svg(placed.drawing, paper=placed.paper))


def test_the_pages_of_the_sheet_read_as_they_did(same_as_golden: Compare) -> None:
    result = result_by_hand(outside=True)
    sheet = setting_out_sheet(result, result.slopes[0], size=PaperSize.A4)
    pdf = write_pdf(sheet, made_at=datetime(2026, 3, 1, tzinfo=UTC))
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages]
    same_as_golden("sheet.txt", "\n\f\n".join(pages) + "\n")


def test_the_joint_plan_and_its_pattern_are_as_they_were(same_as_golden: Compare) -> None:
    slope = result_by_hand().slopes[0]
    (battens,) = plan_battens(asked(gable(width_mm=7460.0, courses=14, gauge_mm=345.0))).slopes
    plan = joint_drawing(slope, battens, unit=LengthUnit.MM, room_width_mm=182.0, room_height_mm=150.0)
    same_as_golden("joints.svg", write_svg(plan.drawing, paper=plan.paper))
    pattern = joint_pattern(slope, battens, unit=LengthUnit.MM, room_width_mm=182.0)
    assert pattern is not None
    same_as_golden("pattern.svg", write_svg(pattern.drawing, paper=pattern.paper))


def test_the_underlay_plan_is_as_it_was(same_as_golden: Compare) -> None:
    slope = result_by_hand().slopes[0]
    plan = lay_underlay(underlay_ask(outline=rectangle(width_mm=7460.0, length_mm=4905.0)))
    placed = underlay_drawing(slope, plan, side_laps=(), unit=LengthUnit.MM, room_width_mm=182.0, room_height_mm=150.0)
    same_as_golden("underlay.svg", write_svg(placed.drawing, paper=placed.paper))


def test_the_valley_of_the_house_is_drawn_as_it_was(same_as_golden: Compare) -> None:
    result = beneath_result("hipped-house")
    (detail,) = [detail for detail, _ in details(result) if ", valley in section" in detail.title]
    placed = detail_placed(detail)
    same_as_golden("valley.svg", write_svg(placed.drawing, paper=placed.paper))


def test_the_order_reads_as_it_did(same_as_golden: Compare) -> None:
    pdf = write_pdf(order_sheet(beneath_result("demo"), size=PaperSize.A4), made_at=datetime(2026, 3, 1, tzinfo=UTC))
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages]
    same_as_golden("order.txt", "\n\f\n".join(pages) + "\n")
