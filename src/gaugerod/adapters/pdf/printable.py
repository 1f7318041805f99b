"""What the typesetter's own fonts can print. Anything else would stop a tagged PDF, so it is shown as □."""

import re
import unicodedata

_RANGES = (
    (0x20, 0x7E), (0xA1, 0xAC), (0xAE, 0x24F), (0x391, 0x3A1), (0x3A3, 0x482), (0x48A, 0x4FF), (0x1E00, 0x1EFF),
    (0x2010, 0x2027), (0x202F, 0x2040), (0x2044, 0x2052), (0x2070, 0x2071), (0x2074, 0x208E), (0x20A0, 0x20BF),
    (0x2126, 0x212A), (0x2153, 0x2184), (0x2190, 0x21FF), (0x2200, 0x22FF), (0x2500, 0x25FF), (0x2610, 0x2612),
    (0x2713, 0x2718),
)  # fmt: skip
"""Tried one by one: Latin, Greek and Cyrillic letters, figures, fractions, and the signs a sheet uses."""
_NOT_HELD = re.compile(
    "[^{}]".format("".join(f"{re.escape(chr(start))}-{re.escape(chr(end))}" for start, end in _RANGES))
)
CANNOT_PRINT = "□"


def printable(text: str) -> str:
    r"""The text with line ends as spaces, control signs gone, and a □ for each letter the fonts do not hold.

    >>> printable("Bakehouse 🏠 rear\n½ × 屋")
    'Bakehouse □ rear ½ × □'
    """
    return _NOT_HELD.sub(_instead, unicodedata.normalize("NFC", text))


def _instead(found: re.Match[str]) -> str:
    """What stands for a sign the fonts do not hold."""
    sign = found[0]
    if sign.isspace():
        return " "
    return "" if unicodedata.category(sign) in {"Cc", "Cf", "Mn", "Me"} else CANNOT_PRINT
