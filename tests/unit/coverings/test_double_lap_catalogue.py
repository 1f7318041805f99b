import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import InputRefused, TableDamaged
from gaugerod.coverings.double_lap import Heap, Nailing
from gaugerod.coverings.double_lap_catalogue import (
    plain_tile,
    plain_tiles,
    random_slates,
    read_records,
    sized_slate,
    sized_slates,
)


def test_every_record_can_be_laid_at_its_own_least_lap() -> None:
    for tile in plain_tiles().values():
        assert tile.headlap_min_mm <= tile.length_mm / 3
        assert tile.hanging_length_mm is not None
        assert tile.hanging_length_mm < tile.length_mm
        assert tile.eaves_length_mm is not None
        # Least: greatest gauge and lap together.
        assert tile.eaves_length_mm >= 165.0


def test_old_names_from_memory_are_never_shown_as_published() -> None:
    published = {name for name, slate in sized_slates().items() if slate.citation.basis is Basis.PUBLISHED}
    assert {"lady", "countess"} == {name for name in published if not name.startswith("slate-")}


def test_only_head_nailed_slates_lose_length_to_the_hole() -> None:
    heaps = (Heap(length_mm=400.0, run_mm=1000.0),)
    lost_mm = [
        random_slates(name="stack", heaps=heaps, nailing=nailing, broken_ratio=0.05, joint_mm=5.0).lost_at_head_mm
        for nailing in Nailing
    ]
    assert [0.0, 25.0] == lost_mm
    assert 0.0 == sized_slate("countess").lost_at_head_mm


def test_unknown_names_are_refused_with_those_there_are() -> None:
    with pytest.raises(InputRefused, match="concrete-plain-265x165"):
        plain_tile("no such tile")
    with pytest.raises(InputRefused, match="countess"):
        sized_slate("no such slate")


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("[[tile]", "cannot be read"),
        ("", "are wanted"),
        ("[[slate]]\nname = 'a'", "are wanted"),
        ("[[tile]]\ntitle = 'a'", "no name"),
        ("[[tile]]\nname = 'a'\n[[tile]]\nname = 'a'", "twice"),
    ],
)
def test_damaged_records_are_refused(text: str, message: str) -> None:
    with pytest.raises(TableDamaged, match=message):
        read_records("example", text, kind="tile")
