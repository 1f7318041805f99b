"""What the typesetter's own fonts can print. Anything else would stop a tagged PDF, so it is shown as □."""

import unicodedata
from bisect import bisect_right

_RANGES = (
    (0x20, 0x7E), (0xA1, 0xAC), (0xAE, 0x24F), (0x391, 0x3A1), (0x3A3, 0x482), (0x48A, 0x4FF), (0x1E00, 0x1EFF),
    (0x2010, 0x2027), (0x2030, 0x2040), (0x2044, 0x2052), (0x2070, 0x2071), (0x2074, 0x208E), (0x20A0, 0x20BF),
    (0x2126, 0x212A), (0x2153, 0x2184), (0x2190, 0x21FF), (0x2200, 0x22FF), (0x2500, 0x25FF), (0x2610, 0x2612),
    (0x2713, 0x2718),
)  # fmt: skip
"""Tried one by one: Latin, Greek and Cyrillic letters, figures, fractions, and the signs a sheet uses."""
_STARTS = tuple(start for start, _ in _RANGES)
CANNOT_PRINT = "□"


def printable(text: str) -> str:
    r"""The text with line ends as spaces, control signs gone, and a □ for each letter the fonts do not hold.

    >>> printable("Bakehouse 🏠 rear\n½ × 屋")
    'Bakehouse □ rear ½ × □'
    """
    kept: list[str] = []
    for sign in unicodedata.normalize("NFC", text):
        if _held(sign):
            kept.append(sign)
        elif sign.isspace():
            kept.append(" ")
        elif unicodedata.category(sign) not in {"Cc", "Cf", "Mn", "Me"}:
            kept.append(CANNOT_PRINT)
    return "".join(kept)


def _held(sign: str) -> bool:
    at = bisect_right(_STARTS, ord(sign)) - 1
    return at >= 0 and ord(sign) <= _RANGES[at][1]
