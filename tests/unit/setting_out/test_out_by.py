"""What is out, or must be moved, is never said too small: not by rounding, and not as nothing."""

import pytest

from gaugerod.basis.rounding import Division
from gaugerod.setting_out.said import out_by


@pytest.mark.parametrize(
    ("length_mm", "in_mm", "in_sixteenths"),
    [
        (0.01, "0.1 mm", '1/16"'),
        (1.5875, "1.6 mm", '1/16"'),
        (1.5876, "1.6 mm", '1/8"'),
        (10.0, "10 mm", '7/16"'),
        (10.04, "10.1 mm", '7/16"'),
    ],
)
def test_up_to_the_next_tenth_or_sixteenth(length_mm: float, in_mm: str, in_sixteenths: str) -> None:
    assert in_mm == out_by(length_mm, Division.MILLIMETRE)
    assert in_sixteenths == out_by(length_mm, Division.SIXTEENTH)
