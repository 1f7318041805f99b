from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.fixing.ask import NailWished
from gaugerod.rules.fixings import SlateHeld
from gaugerod.rules.nails import NailMetal
from tests.scenario.fixed_slopes import fixing_ask
from tests.scenario.laid_slopes import HIPPED, slope

ASK = fixing_ask(slope(HIPPED))


@pytest.mark.parametrize("pitch_deg", [nan, inf, -inf, -1.0, 0.0, 90.1])
def test_a_pitch_that_cannot_be_is_refused(pitch_deg: float) -> None:
    with pytest.raises(InputRefused, match="pitch_deg"):
        replace(ASK, pitch_deg=pitch_deg)


def test_a_wall_is_no_fault() -> None:
    assert 90.0 == replace(ASK, pitch_deg=90.0).pitch_deg


@pytest.mark.parametrize("bad_mm", [nan, inf, -3.0, 0.0])
def test_every_length_that_cannot_be_is_told_at_once(bad_mm: float) -> None:
    with pytest.raises(InputRefused) as refused:
        replace(
            ASK,
            nail=NailWished(metal=NailMetal.COPPER, shank_mm=bad_mm, length_mm=bad_mm),
            thickness_mm=bad_mm,
            hook_wire_mm=bad_mm,
        )
    fields = [fault.field for fault in refused.value.faults]
    assert ["rear.nail_shank", "rear.nail_length", "rear.thickness", "rear.hook_wire"] == fields


@pytest.mark.parametrize("holes", [-1, 5])
def test_nail_holes_are_none_to_four(holes: int) -> None:
    with pytest.raises(InputRefused, match="nail_holes"):
        replace(ASK, nail_holes_count=holes)
    assert [0, 4] == [replace(ASK, nail_holes_count=at).nail_holes_count for at in (0, 4)]


def test_hooks_hold_slates_only() -> None:
    with pytest.raises(InputRefused, match="Hooks hold slates only"):
        replace(ASK, slates_held_by=SlateHeld.HOOKS)
