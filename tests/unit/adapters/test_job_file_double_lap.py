"""Plain tiles, slates and random slates in a job file."""

from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_document, read_job_text
from gaugerod.basis.errors import InputRefused
from gaugerod.coverings.double_lap import MadeTo, Nailing, PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import Material
from gaugerod.job.model import Job

SLOPE = {
    "name": "rear",
    "pitch": "40°",
    "across": "6 m",
    "rafters": ["4.5 m"],
    "left": "verge",
    "right": "verge",
    "top": "ridge",
}


def job(covering: dict[str, object], **set_out: object) -> Job:
    return read_job_document(
        {"job": {"title": "Yard", "exposure": "moderate"}, "covering": covering, "slope": [SLOPE], "set_out": set_out}
    )


def faults(covering: dict[str, object]) -> dict[str, str]:
    with pytest.raises(InputRefused) as refused:
        job(covering)
    return {fault.field: fault.do for fault in refused.value.faults}


@pytest.mark.parametrize(
    ("name", "kind"), [("plain-tiles", PlainTile), ("slates", SizedSlate), ("random-slates", RandomSlates)]
)
def test_the_examples_are_in_order(name: str, kind: type) -> None:
    text = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_bytes()
    assert isinstance(read_job_text(text).covering, kind)


def test_a_plain_tile_with_figures_put_right() -> None:
    tile = job({"from": "clay-plain-265x165", "length": "267 mm", "unit_and_a_half": False}).covering
    assert isinstance(tile, PlainTile)
    assert (267.0, False) == (tile.length_mm, tile.unit_and_a_half)
    assert "given in the job: length, unit_and_a_half" in tile.citation.source


def test_a_clay_tile_is_declared_to_its_standard_and_a_material_stated_is_that_material() -> None:
    declared = job({"from": "clay-plain-265x165", "made_to": "BS EN 1304", "material": "clay"}).covering
    assert isinstance(declared, PlainTile)
    assert (MadeTo.BS_EN_1304, Material.CLAY) == (declared.made_to, declared.material)
    assert declared.material is Material.CLAY
    plain = job({"from": "clay-plain-265x165"}).covering
    assert isinstance(plain, PlainTile)
    assert plain.made_to is None


def test_a_slate_nailed_near_its_head() -> None:
    slate = job({"from": "slate-400x200", "nailing": "head"}).covering
    assert isinstance(slate, SizedSlate)
    assert Nailing.HEAD is slate.nailing


def test_heaps_counted_or_measured_by_the_run() -> None:
    heaps = [{"length": "600 mm", "slates": 100, "average_width": "300 mm"}, {"length": "400 mm", "run": "50 m"}]
    slates = job({"from": "random-slates", "heap": heaps, "broken": "8 %"}).covering
    assert isinstance(slates, RandomSlates)
    assert 0.08 == pytest.approx(slates.broken_ratio)
    assert [(100, None), (None, 50000.0)] == [(heap.slates_count, heap.run_mm) for heap in slates.heaps]


@pytest.mark.parametrize(
    ("covering", "field"),
    [
        ({"from": "clay-plain-265x165", "cover_open": "170 mm"}, "covering.cover_open"),
        ({"from": "clay-plain-265x165", "hanging_length": "270 mm"}, "covering.hanging_length"),
        ({"from": "clay-plain-265x165", "headlap_min": "140 mm"}, "covering.headlap_min"),
        ({"from": "slate-500x250", "heap": [{"length": "400 mm", "run": "9 m"}]}, "covering.heap"),
        ({"from": "random-slates"}, "covering.heap"),
        ({"from": "random-slates", "heap": [{"length": "400 mm"}]}, "covering.heap[0]"),
        ({"from": "random-slates", "heap": [{"length": "400 mm", "run": "9 m"}], "broken": "80 %"}, "covering.broken"),
        ({"from": "flat-interlocking-420x330", "nailing": "head"}, "covering.nailing"),
        ({"from": "flat-interlocking-420x330", "made_to": "BS EN 1304"}, "covering.made_to"),
        ({"from": "concrete-plain-265x165", "made_to": "BS EN 1304"}, "covering.made_to"),
        ({"from": "clay-plain-265x165", "made_to": "BS EN 490"}, "covering.made_to"),
        ({"from": "slate-500x250", "made_to": "BS EN 1304"}, "covering.made_to"),
        ({"from": "slate-500x251"}, "covering.from"),
    ],
)
def test_what_does_not_belong_together_is_refused_by_name(covering: dict[str, object], field: str) -> None:
    assert field in faults(covering)


def test_wishes_of_double_lap_reach_the_job() -> None:
    wishes = job({"from": "slate-500x250"}, headlap="90 mm", slate_laps="second", joint=["2 mm", "4 mm"]).wishes
    assert (90.0, "second") == (wishes.headlap_mm, wishes.slate_reading.value)


def test_a_heap_longer_than_any_roof_is_a_heap_all_the_same() -> None:
    stack = job({"from": "random-slates", "heap": [{"length": "400 mm", "run": "900 m"}]}).covering
    assert isinstance(stack, RandomSlates)
    assert stack.heaps[0].run_mm == 900_000.0
