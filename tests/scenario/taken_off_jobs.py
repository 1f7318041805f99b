"""Whole jobs of one or two slopes, given as a document, and what they take."""

from typing import Any

from gaugerod.adapters.job_file.read import read_job_document
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.job.take_off_ask import take_off_ask
from gaugerod.take_off.answer import TakeOff
from gaugerod.take_off.ask import TakeOffAsk
from gaugerod.take_off.take_off import take_off

COVERINGS = ("flat-interlocking-420x330", "clay-plain-265x165", "slate-500x250", "countess")


def slope(name: str, *, across_mm: float, rafter_mm: float, **more: Any) -> dict[str, Any]:  # noqa: ANN401
    """A slope between two verges."""
    return {
        "name": name, "pitch": "40°", "across": across_mm, "rafters": [rafter_mm], "left": "verge", "right": "verge",
        "bottom": "eaves", "top": "ridge", "rafter_spacing": 400, **more,
    }  # fmt: skip


def result_of(covering: str, *slopes: dict[str, Any], **tables: Any) -> Result:  # noqa: ANN401
    """The job of these slopes, set out."""
    document = {
        "job": {"title": "Byre", "exposure": "moderate"},
        "covering": {"from": covering},
        "slope": list(slopes),
        "set_out": {"ridge_cover": 150},
        **tables,
    }
    return set_out(read_job_document(document))


def ask_of(result: Result) -> TakeOffAsk:
    """What its take-off is measured from."""
    return take_off_ask(
        result.job,
        slopes=result.slopes,
        not_set_out=result.not_set_out,
        offcuts=result.offcuts,
        under=result.beneath,
        edges=result.edges,
    )


def taken(result: Result) -> TakeOff:
    """Its take-off."""
    return take_off(ask_of(result))


def nets(answer: TakeOff) -> dict[str, float]:
    """What was measured, by item."""
    return {line.measured.item: line.measured.net for line in answer.lines}


def house_of(
    covering: str,
    *,
    wide_mm: int,
    deep_mm: int,
    wing_mm: tuple[int, int],
    mirrored: bool = False,
    **tables: Any,  # noqa: ANN401
) -> Result:
    """A house on an L, set out: hipped but for the gable of its wing, which stands at the west end, or mirrored at the east."""
    across, out = wing_mm
    outline = [(0, 0), (wide_mm, 0), (wide_mm, deep_mm), (across, deep_mm), (across, deep_mm + out), (0, deep_mm + out)]
    pitches = ["40°", "40°", "40°", "40°", "gable", "40°"]
    if mirrored:
        outline = [(wide_mm - x, y) for x, y in reversed(outline)]
        # The wall from one corner to the next comes before the corner it came after.
        pitches = [*pitches[-2::-1], pitches[-1]]
    building = {
        "name": "house",
        "outline": [list(point) for point in outline],
        "pitch": pitches,
        "overhang": 300,
        "verge_overhang": 50,
        "rafter_spacing": 400,
    }
    document = {
        "job": {"title": "House", "exposure": "moderate"},
        "covering": {"from": covering},
        "building": [building],
        "set_out": {"ridge_cover": 150},
        **tables,
    }
    return set_out(read_job_document(document))
