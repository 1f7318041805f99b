"""Pitch as people write it: degrees, or rise in run."""

import re
from fractions import Fraction

from gaugerod.basis.errors import PitchUnclear
from gaugerod.geometry.pitch import pitch_from_rise_and_run_deg

_TRY = "Write it like 35°, 35 deg or 8 in 12"
_LONGEST_TEXT_COUNT = 40
_WHOLE_AND_FRACTION = r"[0-9]{1,6}[ -]+[0-9]{1,3}/[0-9]{1,3}|[0-9]{1,6}(?:[.,][0-9]{1,9})?"
_DEGREES = re.compile(r"([0-9]{1,6}(?:[.,][0-9]{1,9})?) *(?:°|deg|degs|degree|degrees)?", re.IGNORECASE | re.ASCII)
_RISE_IN_RUN = re.compile(rf"({_WHOLE_AND_FRACTION}) *(?:in|:) *({_WHOLE_AND_FRACTION})", re.IGNORECASE | re.ASCII)
_FRACTION_SIGNS = {"½": "1/2", "¼": "1/4", "¾": "3/4"}


def read_pitch_deg(text: str) -> float:
    """The pitch a person wrote, in degrees. A number with nothing after it is degrees.

    Scope: above 0° and below 90°. Raises PitchUnclear, with what to write instead.

    >>> read_pitch_deg("35°"), read_pitch_deg("22,5 deg"), round(read_pitch_deg("8 in 12"), 4)
    (35.0, 22.5, 33.6901)
    >>> read_pitch_deg("8/12")
    Traceback (most recent call last):
    gaugerod.basis.errors.PitchUnclear: '8/12' could be rise over run or rise over span; write it like 8 in 12
    """
    tidy = _tidied(text)
    if degrees := _DEGREES.fullmatch(tidy):
        return _a_roof_pitch_deg(float(degrees[1].replace(",", ".")), text=text)
    if ratio := _RISE_IN_RUN.fullmatch(tidy):
        rise, run = _number(ratio[1], text=text), _number(ratio[2], text=text)
        if not (rise > 0 and run > 0):
            raise PitchUnclear(text, f"needs a rise and a run above nothing. {_TRY}")
        # Rise and run in any one unit: only their ratio counts.
        return _a_roof_pitch_deg(pitch_from_rise_and_run_deg(rise_mm=float(rise), run_mm=float(run)), text=text)
    raise PitchUnclear(text, _why_not(tidy))


def _tidied(text: str) -> str:
    if len(text) > _LONGEST_TEXT_COUNT:
        raise PitchUnclear(text[:20] + "…", f"is too long to be a pitch. {_TRY}")
    for sign, words in _FRACTION_SIGNS.items():
        text = text.replace(sign, f" {words}")
    return re.sub(r"\s+", " ", text.replace("º", "°")).strip()


def _number(written: str, *, text: str) -> Fraction:
    *whole, last = re.split(r"[ -]+", written.replace(",", "."))
    if last.endswith("/0"):
        raise PitchUnclear(text, f"divides by nothing. {_TRY}")
    return sum((Fraction(number) for number in whole), Fraction(last))


def _why_not(tidy: str) -> str:
    if re.fullmatch(r"[0-9]+ ?/ ?[0-9]+", tidy):
        rise, run = re.split(r" ?/ ?", tidy)
        return f"could be rise over run or rise over span; write it like {rise} in {run}"
    if tidy.endswith("%"):
        return f"is a slope in per cent; write it like {tidy.removesuffix('%').strip()} in 100"
    if tidy.startswith(("-", "−")):
        return f"is below level; a pitch is measured up from level. {_TRY}"
    return f"cannot be read as a pitch. {_TRY}"


def _a_roof_pitch_deg(pitch_deg: float, *, text: str) -> float:
    if not 0 < pitch_deg < 90:
        raise PitchUnclear(text, "is not the pitch of a roof slope: more than 0° and less than 90°")
    return pitch_deg
