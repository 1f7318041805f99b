"""What stands in each opening of the slopes: asked here, kept with its slope."""

from collections.abc import Iterator, Mapping
from typing import Any

from gaugerod.edges.wished import OpeningMade
from gaugerod.sheets.slope_labels import opening_letter
from gaugerod.web.form import Choice, Field, list_of, typed, with_keys

OPENING_MADE = (
    Choice(value="", label="not said"),
    Choice(value=OpeningMade.CHIMNEY.value, label="a chimney, dressed in lead"),
    Choice(value=OpeningMade.KIT.value, label="a window with its own kit"),
)


def openings_asked(document: Mapping[str, Any]) -> tuple[Field, ...]:
    """A question for each opening of each slope."""
    return tuple(
        Field(
            name=_name(at, number),
            label=_called(slope, at, opening, number),
            value=made if isinstance(made := opening.get("made"), str) else "",
            choices=OPENING_MADE,
        )
        for at, slope, number, opening in _openings(document)
    )


def with_openings(document: Mapping[str, Any], form: Mapping[str, str]) -> dict[str, Any]:
    """The document with what was said of its openings; those that were not asked stay as they were."""
    asked = {(at, number) for at, _, number, _ in _openings(document) if _name(at, number) in form}
    if not asked:
        return dict(document)
    slopes = list_of(document, "slope")
    for at, slope in enumerate(slopes):
        if isinstance(slope, dict) and any(of == at for of, _ in asked):
            rows = [
                with_keys(opening, {"made": typed(form, _name(at, number))}) if (at, number) in asked else opening
                for number, opening in enumerate(list_of(slope, "opening"))
            ]
            slopes[at] = {**slope, "opening": rows}
    return {**document, "slope": slopes}


def _openings(document: Mapping[str, Any]) -> Iterator[tuple[int, dict[str, Any], int, dict[str, Any]]]:
    for at, slope in enumerate(list_of(document, "slope")):
        if isinstance(slope, dict):
            for number, opening in enumerate(list_of(slope, "opening")):
                if isinstance(opening, dict):
                    yield at, slope, number, opening


def _name(at: int, number: int) -> str:
    return f"slope[{at}].opening[{number}].made"


def _called(slope: Mapping[str, Any], at: int, opening: Mapping[str, Any], number: int) -> str:
    return f"{_words(slope.get('name'), f'slope {at + 1}')}, {_words(opening.get('name'), f'opening {opening_letter(number)}')}"


def _words(value: object, otherwise: str) -> str:
    return value if isinstance(value, str) and value.strip() else otherwise
