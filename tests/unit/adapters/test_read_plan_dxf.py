"""Plans from DXF: drawings made here, job files out, everything else refused in words."""

import sys
from pathlib import Path

import pytest
from ezdxf.document import Drawing
from ezdxf.filemanagement import new

from gaugerod.adapters.dxf.read import read_dxf
from gaugerod.adapters.job_draft.from_plan import job_text_from_plan_file
from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.errors import InputRefused

SQUARE = [(100.0, 50.0), (110.0, 50.0), (110.0, 58.0), (100.0, 58.0)]
COURT = [(104.0, 53.0), (106.0, 53.0), (106.0, 55.0), (104.0, 55.0)]


def drawing(code: int = 6) -> Drawing:
    made = new()
    made.header["$INSUNITS"] = code
    return made


def saved(made: Drawing, folder: Path) -> Path:
    path = folder / "plan.dxf"
    made.saveas(path)
    return path


def refused(path: Path, layer: str | None = None) -> str:
    with pytest.raises(InputRefused) as faults:
        read_dxf(path, layer=layer)
    return str(faults.value)


def test_a_closed_polyline_is_a_building(tmp_path: Path) -> None:
    made = drawing()
    made.modelspace().add_lwpolyline(SQUARE, close=True)
    made.modelspace().add_lwpolyline([(0, 0), (5, 5)])
    read = read_dxf(saved(made, tmp_path))
    assert ((0.0, 0.0), (10000.0, 0.0), (10000.0, 8000.0), (0.0, 8000.0)) == read.plans[0].outer_mm
    assert ("The drawing says its lengths are in m. Check one wall with the tape.", "Open polylines left out: 1.") == (
        read.remarks
    )


def test_an_old_polyline_and_one_that_ends_where_it_began_are_closed(tmp_path: Path) -> None:
    made = drawing()
    made.modelspace().add_polyline2d(SQUARE, close=True)
    made.modelspace().add_lwpolyline([*((x + 20, y) for x, y in SQUARE), (120.0, 50.0)])
    assert [4, 4] == [len(plan.outer_mm) for plan in read_dxf(saved(made, tmp_path)).plans]


def test_a_polyline_inside_another_is_its_courtyard_and_one_inside_that_a_building(tmp_path: Path) -> None:
    made = drawing()
    for ring in ([(104.5, 53.5), (105.5, 53.5), (105.5, 54.5), (104.5, 54.5)], COURT, SQUARE):
        made.modelspace().add_lwpolyline(ring, close=True)
    assert [1, 0] == [len(plan.holes_mm) for plan in read_dxf(saved(made, tmp_path)).plans]


@pytest.mark.parametrize(("code", "wide_mm"), [(1, 254.0), (2, 3048.0), (4, 10.0), (5, 100.0), (6, 10000.0)])
def test_the_unit_of_the_drawing_is_honoured(tmp_path: Path, code: int, wide_mm: float) -> None:
    made = drawing(code)
    made.modelspace().add_lwpolyline(SQUARE, close=True)
    assert wide_mm == pytest.approx(read_dxf(saved(made, tmp_path)).plans[0].outer_mm[1][0])


def test_a_drawing_without_a_unit_asks_for_it(tmp_path: Path) -> None:
    made = drawing(0)
    made.modelspace().add_lwpolyline(SQUARE, close=True)
    path = saved(made, tmp_path)
    assert "$INSUNITS says nothing" in refused(path)
    assert (3048.0, 0.0) == pytest.approx(read_dxf(path, unit="ft").plans[0].outer_mm[1])


def test_only_the_layer_named_is_read(tmp_path: Path) -> None:
    made = drawing()
    made.modelspace().add_lwpolyline(SQUARE, close=True, dxfattribs={"layer": "Walls"})
    made.modelspace().add_lwpolyline([(x + 20, y) for x, y in SQUARE], close=True, dxfattribs={"layer": "plot"})
    path = saved(made, tmp_path)
    assert 1 == len(read_dxf(path, layer="walls").plans)
    assert "no polylines on layer roof" in refused(path, layer="roof")


def test_all_faults_of_a_drawing_are_told_together(tmp_path: Path) -> None:
    made = drawing(0)
    made.modelspace().add_lwpolyline([(0, 0, 0.5), (9, 0, 0), (9, 9, 0)], format="xyb", close=True)
    made.modelspace().add_polyline3d([(0, 0, 0), (9, 0, 0), (9, 9, 3)], close=True)
    told = refused(saved(made, tmp_path))
    assert all(words in told for words in ("a curved side", "at different heights", "--unit mm"))


@pytest.mark.parametrize("content", [b"", b"0\nSECTION\n", b"\x00\xff" * 100, b"{}", b"AutoCAD Binary DXF\r\n\x1a\x00"])
def test_what_is_no_drawing_is_refused(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "plan.dxf"
    path.write_bytes(content)
    assert "file" in refused(path)


def test_a_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    assert "cannot be opened" in refused(tmp_path / "none.dxf")


def test_without_the_optional_part_it_says_what_to_install(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = saved(drawing(), tmp_path)
    monkeypatch.delitem(sys.modules, "gaugerod.adapters.dxf.polylines", raising=False)
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    assert "pip install gaugerod[dxf]" in refused(path)


def test_the_job_file_is_one_the_door_takes(tmp_path: Path) -> None:
    made = drawing()
    for ring in (SQUARE, COURT):
        made.modelspace().add_lwpolyline(ring, close=True)
    text = job_text_from_plan_file(saved(made, tmp_path), pitch="8 in 12", unit=None, layer=None)
    (building,) = read_job_text(text.encode()).buildings
    assert (1, 8) == (len(building.plan.holes_mm), len(building.plan.walls))
