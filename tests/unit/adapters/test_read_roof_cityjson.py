"""Measured roofs from CityJSON: small made-up houses in, job files out, everything else refused in words."""

import copy
import json
from collections.abc import Sequence
from math import isclose, sqrt
from typing import Any

import pytest

from gaugerod.adapters.cityjson.read import job_text_from_cityjson
from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.errors import InputRefused
from gaugerod.job.model import Slope
from gaugerod.job.set_out import set_out

# A hipped house of 10 by 8 m, walls 3 m high, every slope 45°, ridge 2 m long at 7 m. Millimetres, far from the origin.
CORNERS = [
    (0, 0, 3),
    (10, 0, 3),
    (10, 8, 3),
    (0, 8, 3),
    (4, 4, 7),
    (6, 4, 7),
    (0, 0, 0),
    (10, 0, 0),
    (10, 8, 0),
    (0, 8, 0),
]
HIPPED = [[[0, 1, 5, 4]], [[1, 2, 5]], [[2, 3, 4, 5]], [[3, 0, 4]]]
WALLS = [[[6, 7, 1, 0]], [[7, 8, 2, 1]], [[8, 9, 3, 2]], [[9, 6, 0, 3]]]


def city(roof: list[Any], walls: list[Any], corners: Sequence[tuple[float, ...]]) -> dict[str, Any]:
    return {
        "type": "CityJSON",
        "version": "2.0",
        "transform": {"scale": [0.001, 0.001, 0.001], "translate": [400_000.0, 300_000.0, 50.0]},
        "CityObjects": {
            "house": {
                "type": "Building",
                "geometry": [
                    {
                        "type": "Solid",
                        "lod": "2.2",
                        "boundaries": [[*roof, *walls]],
                        "semantics": {
                            "surfaces": [{"type": "RoofSurface"}, {"type": "WallSurface"}],
                            "values": [[0] * len(roof) + [1] * len(walls)],
                        },
                    }
                ],
            }
        },
        "vertices": [[round(part * 1000) for part in corner] for corner in corners],
    }


def text_of(document: object) -> str:
    return job_text_from_cityjson(json.dumps(document).encode(), title="house")


def slopes_of(document: object) -> tuple[Slope, ...]:
    return read_job_text(text_of(document).encode()).slopes


def edges_of(slope: Slope) -> list[str]:
    assert slope.outline is not None
    return [kind.value for kind in slope.outline.kinds]


def geometry_of(document: dict[str, Any]) -> dict[str, Any]:
    geometry: dict[str, Any] = document["CityObjects"]["house"]["geometry"][0]
    return geometry


@pytest.fixture
def hipped() -> dict[str, Any]:
    return city(HIPPED, WALLS, CORNERS)


def refused(document: object) -> str:
    with pytest.raises(InputRefused) as faults:
        text_of(document)
    return str(faults.value)


def test_a_hipped_roof_has_its_slopes_their_pitch_and_their_edges(hipped: dict[str, Any]) -> None:
    slopes = slopes_of(hipped)
    assert ["slope 1 south", "slope 2 east", "slope 3 north", "slope 4 west"] == [slope.name for slope in slopes]
    assert [45.0] * 4 == [slope.pitch_deg for slope in slopes]
    assert ["eaves", "hip", "ridge", "hip"] == edges_of(slopes[0])
    assert ["eaves", "hip", "hip"] == edges_of(slopes[1])
    assert slopes[0].outline is not None
    assert isclose(4 * sqrt(2) * 1000, max(y for _, y in slopes[0].outline.points_mm), abs_tol=0.6)


def test_the_areas_are_those_of_the_plan_over_the_cosine(hipped: dict[str, Any]) -> None:
    result = set_out(read_job_text(text_of(hipped).encode()))
    assert isclose(80 * sqrt(2), sum(slope.shape.area_mm2 for slope in result.slopes) / 1e6, abs_tol=0.02)


def test_surfaces_in_one_plane_become_one_slope(hipped: dict[str, Any]) -> None:
    parted = city([[[0, 1, 5]], [[0, 5, 4]], *HIPPED[1:]], WALLS, CORNERS)
    assert [edges_of(slope) for slope in slopes_of(hipped)] == [edges_of(slope) for slope in slopes_of(parted)]
    assert "5 roof surfaces lie in 4 planes" in text_of(parted)


def test_a_corner_on_a_neighbours_side_does_not_hide_the_neighbour() -> None:
    """The south slope is parted where the north one is not, in the middle of the ridge and of the eaves."""
    corners = [*CORNERS, (5, 4, 7), (5, 0, 3)]
    parted = city([[[0, 11, 10, 4]], [[11, 1, 5, 10]], *HIPPED[1:]], WALLS, corners)
    assert ["eaves", "hip", "ridge", "hip"] == edges_of(slopes_of(parted)[0])


def test_a_gable_has_verges() -> None:
    gable = [(0, 0, 3), (10, 0, 3), (10, 8, 3), (0, 8, 3), (0, 4, 7), (10, 4, 7)]
    assert ["eaves", "verge", "ridge", "verge"] == edges_of(
        slopes_of(city([[[0, 1, 5, 4]], [[2, 3, 4, 5]]], [], gable))[0]
    )


def test_two_slopes_that_fall_together_meet_in_a_valley() -> None:
    corners = [(0, 0, 3), (4, 0, 3), (4, -4, 3), (8, -4, 7), (8, 4, 7), (0, 4, 7)]
    slopes = slopes_of(city([[[0, 1, 4, 5]], [[1, 2, 3, 4]]], [], corners))
    assert [["eaves", "valley", "ridge", "verge"], ["eaves", "verge", "ridge", "valley"]] == [
        sorted_from_eaves(edges_of(slope)) for slope in slopes
    ]


def sorted_from_eaves(edges: list[str]) -> list[str]:
    at = edges.index("eaves")
    return edges[at:] + edges[:at]


def test_a_wall_that_stands_over_a_side_makes_it_an_abutment() -> None:
    corners = [(0, 0, 3), (6, 0, 3), (6, 4, 6), (0, 4, 6), (6, 0, 9), (6, 4, 9), (0, 4, 4)]
    lean_to = city([[[0, 1, 2, 3]]], [[[1, 4, 5, 2]]], corners)
    (slope,) = slopes_of(lean_to)
    assert ["eaves", "abutment", "ridge", "verge"] == edges_of(slope)
    assert 'edges = ["eaves", "abutment", "mono-ridge", "verge"]' in text_of(lean_to)


def test_eaves_out_of_level_are_followed_and_it_is_said(hipped: dict[str, Any]) -> None:
    hipped["vertices"][1][2] += 100
    assert "The eaves rise +100 mm from left to right" in text_of(hipped)


def test_flat_roofs_and_those_that_face_down_are_left_out_and_counted() -> None:
    roof = [*HIPPED, [[0, 1, 2, 3]], [[3, 2, 1, 0]]]
    told = text_of(city(roof, WALLS, CORNERS))
    assert "1 roof surfaces face down" in told
    assert "1 flat or upright roof planes are left out" in told


def test_the_finest_level_of_detail_two_is_read(hipped: dict[str, Any]) -> None:
    geometries = hipped["CityObjects"]["house"]["geometry"]
    geometries.insert(0, {**copy.deepcopy(geometries[0]), "lod": "2"})
    geometries.append({"type": "MultiSurface", "lod": "1.2", "boundaries": []})
    assert "read at LoD 2.2" in text_of(hipped)
    assert 4 == len(slopes_of(hipped))


def test_a_shell_less_geometry_is_read_too(hipped: dict[str, Any]) -> None:
    geometry = geometry_of(hipped)
    geometry.update(type="MultiSurface", boundaries=geometry["boundaries"][0])
    geometry["semantics"]["values"] = geometry["semantics"]["values"][0]
    assert 4 == len(slopes_of(hipped))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"type": "FeatureCollection"}, "Read another file"),
        ({"version": "1.0"}, "1.1 or 2.0"),
        ({"transform": {"scale": [0, 1, 1], "translate": [0, 0]}}, "transform.translate"),
        ({"transform": None}, "transform.scale"),
        ({"vertices": [[0, 0]]}, "vertices[0]"),
        ({"vertices": [[float("nan"), 0, 0]]}, "three whole numbers"),
        ({"vertices": []}, "a ring that leads nowhere"),
        ({"CityObjects": {}}, "no roof surfaces"),
        ({"CityObjects": []}, "no roof surfaces"),
    ],
    ids=str,
)
def test_what_cannot_be_used_is_refused_in_words(hipped: dict[str, Any], change: dict[str, Any], words: str) -> None:
    assert words in refused({**hipped, **change})


@pytest.mark.parametrize(
    "change",
    [{"type": "Cube"}, {"boundaries": [[[[0, 1, 99]]]]}, {"boundaries": [[[[0, True, 2]]]]}, {"semantics": None}],
    ids=str,
)
def test_a_broken_geometry_is_refused(hipped: dict[str, Any], change: dict[str, Any]) -> None:
    geometry_of(hipped).update(change)
    assert refused(hipped)


def test_a_roof_of_no_size_or_of_a_district_is_refused(hipped: dict[str, Any]) -> None:
    for factor in (0.0, 1e-9, 100.0):
        assert refused({**hipped, "vertices": [[part * factor for part in corner] for corner in hipped["vertices"]]})


def test_two_buildings_keep_their_slopes_apart_by_name(hipped: dict[str, Any]) -> None:
    hipped["CityObjects"]["barn"] = copy.deepcopy(hipped["CityObjects"]["house"])
    names = [slope.name for slope in slopes_of(hipped)]
    assert ["house slope 1 south", "barn slope 1 south"] == [names[0], names[4]]
