"""Broken drawings: whatever stands in the file, it is read or refused in words, never anything else."""

import json
from contextlib import suppress
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from gaugerod.adapters.cityjson.read import job_text_from_cityjson
from gaugerod.adapters.geojson.read import read_geojson
from gaugerod.adapters.job_draft.draft import plan_job_text
from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.errors import InputRefused

PLAN = json.dumps(
    {
        "type": "FeatureCollection",
        "features": [
            {
                "type": "Feature",
                "properties": {"name": "house"},
                "geometry": {
                    "type": "Polygon",
                    "coordinates": [[[900, 900], [910, 900], [910, 908], [900, 908], [900, 900]]],
                },
            }
        ],
    }
).encode()
ROOF: dict[str, Any] = {
    "type": "CityJSON",
    "version": "2.0",
    "transform": {"scale": [0.001, 0.001, 0.001], "translate": [0, 0, 0]},
    "CityObjects": {
        "house": {
            "geometry": [
                {
                    "type": "MultiSurface",
                    "lod": "2",
                    "boundaries": [[[0, 1, 5, 4]], [[1, 2, 5]], [[2, 3, 4, 5]], [[3, 0, 4]]],
                    "semantics": {"surfaces": [{"type": "RoofSurface"}], "values": [0, 0, 0, 0]},
                }
            ]
        }
    },
    "vertices": [[0, 0, 0], [10000, 0, 0], [10000, 8000, 0], [0, 8000, 0], [4000, 4000, 4000], [6000, 4000, 4000]],
}
ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=8,
)


def read_plan(content: bytes) -> None:
    with suppress(InputRefused):
        text = plan_job_text(read_geojson(content), title="plan", pitch_deg=None)
        assert read_job_text(text.encode()).buildings


def read_roof(content: bytes) -> None:
    with suppress(InputRefused):
        assert read_job_text(job_text_from_cityjson(content, title="roof").encode()).slopes


@given(st.integers(0, len(PLAN) - 1), st.binary(max_size=4), st.integers(0, 6))
def test_a_plan_with_bytes_put_in_or_lost_is_read_or_refused(at: int, put_in: bytes, lost_count: int) -> None:
    read_plan(PLAN[:at] + put_in + PLAN[at + lost_count :])


@given(st.lists(st.lists(st.lists(st.floats() | st.integers(), max_size=4), max_size=6), max_size=3))
def test_any_coordinates_of_a_plan_are_read_or_refused(rings: list[list[list[float]]]) -> None:
    closed = [[*ring, ring[0]] if ring else ring for ring in rings]
    read_plan(json.dumps({"type": "Polygon", "coordinates": closed}).encode())


@given(st.sampled_from(["type", "version", "transform", "CityObjects", "vertices"]), ANYTHING)
def test_a_roof_with_anything_in_one_place_is_read_or_refused(key: str, value: object) -> None:
    read_roof(json.dumps({**ROOF, key: value}).encode())


@given(st.sampled_from(["type", "lod", "boundaries", "semantics"]), ANYTHING)
def test_a_geometry_with_anything_in_one_place_is_read_or_refused(key: str, value: object) -> None:
    geometry = {**ROOF["CityObjects"]["house"]["geometry"][0], key: value}
    read_roof(json.dumps({**ROOF, "CityObjects": {"house": {"geometry": [geometry]}}}).encode())


@given(
    st.lists(st.lists(st.integers(0, 5), max_size=6), max_size=6),
    st.lists(st.integers(-9000, 9000), min_size=18, max_size=18),
)
def test_any_surfaces_over_any_corners_are_read_or_refused(rings: list[list[int]], parts: list[int]) -> None:
    geometry = {
        "type": "MultiSurface",
        "lod": "2",
        "boundaries": [[ring] for ring in rings],
        "semantics": {"surfaces": [{"type": "RoofSurface"}], "values": [0] * len(rings)},
    }
    corners = [parts[at : at + 3] for at in range(0, 18, 3)]
    read_roof(json.dumps({**ROOF, "vertices": corners, "CityObjects": {"house": {"geometry": [geometry]}}}).encode())
