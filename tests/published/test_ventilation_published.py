"""Ventilation openings against what was read in print. Each case names its source; none was computed here."""

from dataclasses import replace

import pytest

from gaugerod.coverings.underlay import Resistance
from gaugerod.rules.ventilation import BuildingSize, Ceiling, Insulated, VentConditions, openings_needed
from gaugerod.standards.edition import Edition
from gaugerod.substrate.ventilation.openings import VentedEdge, VentilationAsk, ventilate

COLD = VentConditions(
    pitch_deg=30.0, underlay=Resistance.HIGH, air_permeable=False, insulated=Insulated.AT_CEILING, ceiling=Ceiling.NORMAL,
    building=BuildingSize.DWELLING, covering_air_open=True, span_mm=8000.0, mono=False, through_flow=True,
)  # fmt: skip
LOW = replace(COLD, underlay=Resistance.LOW)
SEALED = replace(LOW, ceiling=Ceiling.WELL_SEALED)


def slots_mm(conditions: VentConditions) -> tuple[float | None, float | None]:
    needed = openings_needed(where="roof", conditions=conditions, edition=Edition.GB)
    low, high = needed.eaves, needed.high
    return None if low is None else low.value, None if high is None else high.value


# BS 5250 as summarised in UK ventilation guides: eaves, high level.
PRINTED = [
    ("cold, high resistance, 15 to 35 degrees, under 10 m span: 10 mm", COLD, (10.0, None)),
    ("35 degrees and over: 10 mm and 5 mm at the ridge", replace(COLD, pitch_deg=35.0), (10.0, 5.0)),
    ("10 m span and over: 10 mm and 5 mm at the ridge", replace(COLD, span_mm=10000.0), (10.0, 5.0)),
    ("15 degrees and less: 25 mm", replace(COLD, pitch_deg=15.0), (25.0, None)),
    ("mono-pitch: 10 mm and 5 mm at the top edge", replace(COLD, mono=True), (10.0, 5.0)),
    ("warm, vented void: 25 mm and 5 mm", replace(COLD, insulated=Insulated.ALONG_SLOPE), (25.0, 5.0)),
    ("low resistance, normal ceiling: 7 mm", LOW, (7.0, None)),
    ("low resistance, well-sealed ceiling: 3 mm", SEALED, (3.0, None)),
    ("larger building, well-sealed ceiling: 5 mm", replace(SEALED, building=BuildingSize.LARGER), (5.0, None)),
    # NHBC 7.2 as quoted in two guides: low resistance, not air-permeable, no flow from eaves to eaves.
    ("no flow from eaves to eaves: 5 mm at high level", replace(LOW, through_flow=False), (7.0, 5.0)),
    ("air-permeable: not asked for", replace(LOW, through_flow=False, air_permeable=True), (7.0, None)),
]  # fmt: skip


@pytest.mark.parametrize(
    ("conditions", "printed_mm"), [(c, p) for _, c, p in PRINTED], ids=[name for name, _, _ in PRINTED]
)
def test_the_openings_are_the_printed_ones(
    conditions: VentConditions, printed_mm: tuple[float | None, float | None]
) -> None:
    assert printed_mm == slots_mm(conditions)


def test_5_mm_at_the_ridge_may_stand_for_3_mm_at_the_eaves() -> None:
    """Source: BS 5250 as summarised in a supplier-hosted ventilation guide: dwelling, well-sealed ceiling."""
    needed = openings_needed(where="roof", conditions=SEALED, edition=Edition.GB)
    assert needed.instead_high is not None
    assert 5.0 == needed.instead_high.value


def test_a_warm_roof_keeps_50_mm_clear() -> None:
    """Source: the same guides: 50 mm clear path above the insulation."""
    needed = openings_needed(
        where="roof", conditions=replace(COLD, insulated=Insulated.ALONG_SLOPE), edition=Edition.GB
    )
    assert needed.clear_void is not None
    assert 50.0 == needed.clear_void.value


@pytest.mark.parametrize(
    ("conditions", "low_mm2", "high_mm2"),
    [
        # Arithmetic of the guides: 10 mm over 10 m of eaves is 100000 mm2, 25 mm is 250000, 5 mm at the ridge is 50000.
        (COLD, 100_000.0, 0.0),
        (replace(COLD, pitch_deg=15.0, mono=True), 250_000.0, 50_000.0),
    ],
)  # fmt: skip
def test_the_areas_are_the_printed_ones(conditions: VentConditions, low_mm2: float, high_mm2: float) -> None:
    edge = VentedEdge(name="front", length_mm=10_000.0)
    roof = ventilate(
        VentilationAsk(where="roof", eaves=(edge,), tops=(edge,), conditions=conditions, edition=Edition.GB)
    )
    assert (low_mm2, high_mm2) == (roof.low_total_mm2, roof.high_total_mm2)
