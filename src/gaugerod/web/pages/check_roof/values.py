"""A roof file as the flat values of a form, and back. Nothing is read here but where one length ends and the next begins."""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from gaugerod.adapters.job_file.allowed import MOST_NAILED_COUNT, PLACE_ON_THE_ROOF
from gaugerod.adapters.roof_check_file.allowed import MARGIN
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.length_lists import parted_lengths
from gaugerod.web.form import list_of, table_of, typed
from gaugerod.web.pages.covering.records import OWN
from gaugerod.web.pitch_ways import pitch_typed
from gaugerod.wiring import document_of_file

BATTENS, MARGINS = "battens", "margins"
PLAIN = ("title", "name", "exposure", "show_lengths_in", "top", "ridge_cover", "headlap")
BANDS = ("eaves_overhang", "top_batten_from_apex")
FIGURES = ("form", "material", "length", "width", "hanging_length", "headlap_min", "headlap_max", "nailing")
_ROOF = {*PLAIN, *BANDS, "pitch", "finished"}
_ROD = ("at", "rafter", "how", "overhang", "measured")

Values = dict[str, str]


def values_of(document: Mapping[str, Any]) -> Values:
    """What the form shows for this document, which may hold anything."""
    roof, covering = table_of(document, "roof"), table_of(document, "covering")
    values = {key: text for key in PLAIN if (text := written(roof.get(key)))}
    if isinstance(roof.get("finished"), bool):
        values["finished"] = "yes" if roof["finished"] else "no"
    for key in BANDS:
        ends = roof.get(key) if isinstance(roof.get(key), list) else [roof.get(key)]
        values |= {f"{key}[{index}]": written(end) for index, end in enumerate((ends or [])[:2])}
    values |= _pitch_values(roof.get("pitch"))
    from_ = covering.get("from")
    values["covering.from"] = from_ if isinstance(from_, str) else OWN if covering else ""
    values |= {f"covering.{key}": text for key in FIGURES if (text := written(covering.get(key)))}
    for index, rod in enumerate(list_of(document, "rod")[:MOST_NAILED_COUNT]):
        values |= {f"rod[{index}].{key}": text for key, text in _rod_values(rod).items()}
    values["also"] = _also(roof, covering)
    return values


def _also(roof: Mapping[str, Any], covering: Mapping[str, Any]) -> str:
    """What the form does not ask, kept so that it is not lost."""
    rest = {
        "roof": {key: value for key, value in roof.items() if key not in _ROOF},
        "covering": {key: value for key, value in covering.items() if key not in {*FIGURES, "from"}},
        "from": covering.get("from"),
    }
    return json.dumps(rest, ensure_ascii=False, default=str) if rest["roof"] or rest["covering"] else ""


def _pitch_values(pitch: Any) -> Values:  # noqa: ANN401 - a document may hold anything
    if not isinstance(pitch, dict):
        text = written(pitch).removesuffix(" mm")
        return {"pitch_by": "angle", "pitch": text}
    way = "rafter" if "rafter" in pitch else "rise"
    return {"pitch_by": way, **{f"pitch.{key}": written(pitch.get(key)) for key in (way, "run")}}


def _rod_values(rod: Any) -> Values:  # noqa: ANN401
    table = rod if isinstance(rod, dict) else {}
    how = MARGINS if "margins" in table or "overhang" in table else BATTENS
    listed = list_of(table, "margins" if how == MARGINS else "marks")
    return {
        **{key: written(table.get(key)) for key in ("at", "rafter", "overhang")},
        "how": how,
        "measured": "\n".join(
            written(length).removesuffix(" mm") if _is_whole(length) else written(length) for length in listed
        ),
    }


def _is_whole(value: Any) -> bool:  # noqa: ANN401
    """A whole number needs no unit behind it: it is in mm."""
    return isinstance(value, int) or (isinstance(value, float) and value.is_integer())


def written(value: Any) -> str:  # noqa: ANN401
    """A value as a person would write it: words as they are, a number in mm.

    >>> written("4.905 m"), written(347), written(98.5), written(None)
    ('4.905 m', '347 mm', '98.5 mm', '')
    """
    match value:
        case str():
            return value
        case bool() | None | list() | dict():
            return ""
        case int() | float():
            return f"{value} mm" if isinstance(value, int) else f"{value:.10g} mm"
        case _:
            return str(value)


def document_of(values: Mapping[str, str]) -> tuple[dict[str, Any], tuple[Fault, ...]]:
    """The roof file of what was typed, and every list in which one length cannot be told from the next."""
    also = _also_of(values)
    roof = {**table_of(also, "roof"), **{key: text for key in PLAIN if (text := typed(values, key)) is not None}}
    if (pitch := pitch_typed(values)) is not None:
        roof["pitch"] = pitch
    if values.get("finished") in {"yes", "no"}:
        roof["finished"] = values["finished"] == "yes"
    for key in BANDS:
        ends = [text for index in (0, 1) if (text := typed(values, f"{key}[{index}]")) is not None]
        if ends:
            roof[key] = ends[0] if len(ends) == 1 else ends
    rods, faults = list[dict[str, Any]](), list[Fault]()
    for row in rods_typed(values):
        rod, unclear = _rod_of(row, index=len(rods))
        rods.append(rod)
        faults += unclear
    covering = _covering_of(values, also)
    return {"roof": roof, **({"covering": covering} if covering else {}), "rod": rods}, tuple(faults)


def _also_of(values: Mapping[str, str]) -> dict[str, Any]:
    """What the form brought along; what is no such thing was not written by this page."""
    text = values.get("also", "")
    if not text.startswith("{"):
        return {}
    try:
        return document_of_file(text.encode("utf-8", errors="replace"))
    except InputRefused:
        return {}


def _covering_of(values: Mapping[str, str], also: Mapping[str, Any]) -> dict[str, Any]:
    """Figures that are shown are used; those not shown belong to the covering they came with."""
    chosen = values.get("covering.from", "")
    same = also.get("from") == (None if chosen == OWN else chosen)
    table = table_of(also, "covering") if same else {}
    table |= {key: text for key in FIGURES if (text := typed(values, f"covering.{key}")) is not None}
    if chosen == OWN and not table:
        return {"title": "Own tile"}
    return table if chosen in {"", OWN} else {"from": chosen, **table}


def rods_typed(values: Mapping[str, str]) -> Iterator[Values]:
    """Every place with anything typed in it, in its order."""
    for index in range(MOST_NAILED_COUNT):
        row = {key: values.get(f"rod[{index}].{key}", "") for key in _ROD}
        if any(row[key].strip() for key in ("at", "rafter", "overhang", "measured")):
            yield row


def _rod_of(row: Values, *, index: int) -> tuple[dict[str, Any], list[Fault]]:
    rod: dict[str, Any] = {key: text for key in ("at", "rafter") if (text := typed(row, key)) is not None}
    by_margins = row["how"] == MARGINS
    key = "margins" if by_margins else "marks"
    if by_margins and (overhang := typed(row, "overhang")) is not None:
        rod["overhang"] = overhang
    listed = parted_lengths(row["measured"], greatest_mm=(MARGIN if by_margins else PLACE_ON_THE_ROOF).greatest_mm)
    if listed.texts:
        rod[key] = list(listed.texts)
    what = "visible margins" if by_margins else "marks of battens"
    faults = [
        Fault(f"rod[{index}].{key}", _short(each.text), f"{what}, each clear of the next", f"It {each.reason}.")
        for each in listed.unclear
    ]
    return rod, faults


def _short(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:40]}…"
