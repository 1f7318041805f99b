"""Only what the typesetter's own fonts hold reaches it."""

import pytest

from gaugerod.adapters.pdf.printable import printable


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Bakehouse", "Bakehouse"),
        ("14′ 6½″ × 3", "14′ 6½″ × 3"),
        ("☐ ● ▲ ◇ ≥ ≤ …", "☐ ● ▲ ◇ ≥ ≤ …"),
        ("Żółć Ωμέγα Крыша", "Żółć Ωμέγα Крыша"),
        ("🏠", "□"),
        ("屋根", "□□"),
        ("a\tb\nc\u00a0d\u2028e", "a b c d e"),
        ("a\x00\x07\u202e\u200bb", "ab"),
        ("e\u0301", "é"),
        ("x\u0489", "x"),
    ],
)
def test_a_letter_no_font_holds_is_shown_as_a_box(text: str, expected: str) -> None:
    assert expected == printable(text)
