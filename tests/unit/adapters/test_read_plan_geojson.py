"""Plans from GeoJSON: made-up outlines in, job files out, everything else refused in words."""

import json
import tomllib
from math import isclose
from pathlib import Path

import pytest

from gaugerod.adapters.geojson.read import read_geojson
from gaugerod.adapters.geojson.tangent_plane import on_tangent_plane_mm
from gaugerod.adapters.job_draft.from_plan import PlanUnit, job_text_from_plan_file
from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.errors import InputRefused
from gaugerod.geometry.polygon import signed_area_mm2
from gaugerod.geometry.roof_form import roof_form

SQUARE = [[1000.0, 2000.0], [1010.0, 2000.0], [1010.0, 2008.0], [1000.0, 2008.0], [1000.0, 2000.0]]
COURT = [[1004.0, 2003.0], [1004.0, 2005.0], [1006.0, 2005.0], [1006.0, 2003.0], [1004.0, 2003.0]]


def polygon(*rings: object, **more: object) -> bytes:
    return json.dumps({"type": "Polygon", "coordinates": rings, **more}).encode()


def faults_of(content: bytes) -> list[str]:
    with pytest.raises(InputRefused) as refused:
        read_geojson(content)
    return [str(fault) for fault in refused.value.faults]


def test_a_polygon_in_metres_is_a_building_from_its_own_corner() -> None:
    read = read_geojson(polygon(SQUARE))
    (plan,) = read.plans
    assert ((0.0, 0.0), (10000.0, 0.0), (10000.0, 8000.0), (0.0, 8000.0)) == plan.outer_mm
    assert "taken as metres" in read.remarks[0]


def test_rings_in_the_other_order_are_turned_round_and_it_is_said() -> None:
    read = read_geojson(polygon(SQUARE[::-1], COURT[::-1]))
    (plan,) = read.plans
    assert signed_area_mm2(plan.outer_mm) == 80e6
    assert signed_area_mm2(plan.holes_mm[0]) == -4e6
    assert any("turned round" in remark for remark in read.remarks)


def test_corners_in_the_middle_of_a_wall_are_left_out_and_counted() -> None:
    read = read_geojson(polygon([SQUARE[0], [1005.0, 2000.0005], SQUARE[1], *SQUARE[1:]]))
    assert 4 == len(read.plans[0].outer_mm)
    assert any("2 corners" in remark for remark in read.remarks)


def test_degrees_are_laid_on_a_plane_by_the_printed_length_of_a_degree() -> None:
    """A degree of latitude and of longitude at 45°: 111.132 km and 78.847 km.

    Source: any table of the WGS 84 ellipsoid (memory): 111.1318 km and 78.8468 km at 45°.
    """
    ((east_mm, _), (_, north_mm)) = on_tangent_plane_mm([(0.001, 45.0), (0.0, 45.001)], middle=(0.0, 45.0))
    assert isclose(78_846.8, east_mm, abs_tol=0.1)
    assert isclose(111_131.8, north_mm, abs_tol=0.1)


def test_a_plan_in_degrees_says_how_it_was_laid_flat() -> None:
    ring = [[0.0, 52.0], [0.0001, 52.0], [0.0001, 52.0001], [0.0, 52.0001], [0.0, 52.0]]
    read = read_geojson(polygon(ring))
    x, y = read.plans[0].outer_mm[1]
    assert isclose(6867.7, x, abs_tol=1.0)
    assert isclose(0.0, y, abs_tol=1e-6)
    assert "touches the ellipsoid" in read.remarks[0]


def test_a_file_that_names_another_system_is_in_metres_even_near_nothing() -> None:
    crs = {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::27700"}}
    ring = [[x - 1000.0, y - 2000.0] for x, y in SQUARE]
    assert (10000.0, 0.0) == read_geojson(polygon(ring, crs=crs)).plans[0].outer_mm[1]
    assert (10000.0, 0.0) == read_geojson(polygon(ring), unit="m").plans[0].outer_mm[1]


def test_every_feature_is_a_building_under_its_own_name() -> None:
    shape = {"type": "Polygon", "coordinates": [SQUARE]}
    features = [
        {"type": "Feature", "properties": {"name": "barn"}, "geometry": shape},
        {"type": "Feature", "properties": {"name": "barn"}, "geometry": shape},
        {"type": "Feature", "properties": None, "geometry": {"type": "Point", "coordinates": [0, 0]}},
        {"type": "Feature", "properties": {}, "geometry": None},
        {
            "type": "Feature",
            "properties": {},
            "geometry": {"type": "MultiPolygon", "coordinates": [[SQUARE], [SQUARE]]},
        },
    ]
    read = read_geojson(json.dumps({"type": "FeatureCollection", "features": features}).encode())
    assert ["barn", "barn 2", "building 3", "building 4"] == [plan.name for plan in read.plans]
    assert any("Point" in remark for remark in read.remarks)


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "breaks off at line 1"),
        (b"\x80 {}", "Save it as UTF-8"),
        (b"[]", "Write it again"),
        (b"[" * 100_000, "JSON without end"),
        (b'{"type": "Polygon", "coordinates": [[[NaN, 0], [1, 0], [1, 1], [NaN, 0]]]}', "two finite numbers"),
        (b"{}", "a type of RFC 7946"),
        (b'{"type": "Point", "coordinates": [0, 0]}', "Draw each building as a closed polygon"),
        (polygon(), "an outer ring"),
        (polygon(SQUARE[:-1]), "Close the ring"),
        (polygon(SQUARE[:2]), "four positions or more"),
        (polygon([[0, 0], [9, 0], [9, 9], [0, 0]]), "km across"),
    ],
    ids=str,
)
def test_what_cannot_be_used_is_refused_in_words(content: bytes, words: str) -> None:
    assert words in " ".join(faults_of(content))


def test_all_faults_are_told_together() -> None:
    shapes = [[SQUARE[:-1]], [[["x", 0], *SQUARE[1:]]], []]
    told = faults_of(json.dumps({"type": "MultiPolygon", "coordinates": shapes}).encode())
    assert ["file.coordinates[0][0]", "file.coordinates[1][0][0]", "file.coordinates[2]"] == [
        fault.partition(": ")[0] for fault in told
    ]


def test_near_a_pole_the_plane_is_not_tried() -> None:
    ring = [[0, 85.0], [0.0001, 85.0], [0.0001, 85.0001], [0, 85.0]]
    assert ["say --unit m" in fault for fault in faults_of(polygon(ring))] == [True]


def test_the_job_file_is_one_the_door_takes_and_its_roof_closes(tmp_path: Path) -> None:
    path = tmp_path / "yard.geojson"
    path.write_bytes(polygon(SQUARE, COURT))
    text = job_text_from_plan_file(path, pitch="35°", unit=None, layer=None)
    job = read_job_text(text.encode())
    assert isclose(76e6 / 0.8191520442889918, roof_form(job.buildings[0].plan).area_mm2, rel_tol=1e-9)
    assert "# - Every wall has a slope" in text
    assert ["35°"] * 8 == tomllib.loads(text)["building"][0]["pitch"]


def test_a_pitch_nobody_gave_stands_in_and_is_said(tmp_path: Path) -> None:
    path = tmp_path / "yard.json"
    path.write_bytes(polygon(SQUARE))
    assert "does not say the pitch: 40°" in job_text_from_plan_file(path, pitch=None, unit=None, layer=None)


@pytest.mark.parametrize(
    ("pitch", "unit", "layer", "field"),
    [("90", None, None, "--pitch"), ("steep", None, None, "--pitch"), ("0.5", None, None, "--pitch"),
     (None, "ft", None, "--unit"), (None, None, "walls", "--layer")],
)  # fmt: skip
def test_options_that_make_no_sense_are_refused(
    tmp_path: Path, pitch: str | None, unit: PlanUnit | None, layer: str | None, field: str
) -> None:
    path = tmp_path / "yard.json"
    path.write_bytes(polygon(SQUARE))
    with pytest.raises(InputRefused) as refused:
        job_text_from_plan_file(path, pitch=pitch, unit=unit, layer=layer)
    assert [field] == [fault.field for fault in refused.value.faults]


def test_an_outline_that_crosses_itself_is_refused_by_the_door(tmp_path: Path) -> None:
    path = tmp_path / "yard.json"
    path.write_bytes(polygon([SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3], SQUARE[0]]))
    with pytest.raises(InputRefused, match="crosses the side from corner"):
        job_text_from_plan_file(path, pitch=None, unit=None, layer=None)
