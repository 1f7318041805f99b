"""Weigh one slope: covering, battens and underlay on each m² and in all, held against what was there before."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import assert_never

from gaugerod.basis.citation import Citation, common_practice, house
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.working import Step
from gaugerod.coverings.underlay import Resistance
from gaugerod.rules.recovering import recovering
from gaugerod.standards.roof_masses import LoadFigure, MassBand, TypicalMass, load_figure, typical_mass
from gaugerod.substrate.load.ask import LoadAsk, OldRoof
from gaugerod.substrate.load.covering_mass import covering_mass

GRAVITY_M_PER_S2 = 9.81
_TOGETHER = house("masses added, least to least and greatest to greatest")
_LOADING_OUT = common_practice("loading out: both slopes alike, small stacks, spread over the rafters")
_LOADING_OUT_SAYS = (
    "Load both slopes evenly, in small stacks from the eaves to the ridge; spread each over the rafters, and never stand a pallet "
    "on the roof. No published figure was found for how much: ask whoever designed the frame."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One layer of the roof: its mass on the slope, and how it was come by."""

    name: str
    mass: MassBand
    formula: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """The answer. ``total`` None: nothing is known of the covering's mass, and a finding says so."""

    where: str
    area_mm2: float
    parts: tuple[Part, ...]
    total: MassBand | None
    old: MassBand | None
    findings: tuple[Finding, ...]
    says: tuple[str, ...]
    working: Step

    @property
    def least_kn_m2(self) -> float | None:
        """The least load on the slope."""
        return None if self.total is None else self.total.least_kg_m2 * GRAVITY_M_PER_S2 / 1000

    @property
    def greatest_kn_m2(self) -> float | None:
        """The greatest load on the slope."""
        return None if self.total is None else self.total.greatest_kg_m2 * GRAVITY_M_PER_S2 / 1000

    @property
    def least_kg(self) -> float | None:
        """The least mass of the whole slope."""
        return None if self.total is None else self.total.least_kg_m2 * self.area_mm2 / 1e6

    @property
    def greatest_kg(self) -> float | None:
        """The greatest mass of the whole slope."""
        return None if self.total is None else self.total.greatest_kg_m2 * self.area_mm2 / 1e6


def weigh(ask: LoadAsk) -> Load:
    """The mass of one slope, part by part, and the change when it is re-covered.

    >>> from gaugerod.coverings.double_lap_catalogue import plain_tile
    >>> from gaugerod.standards.edition import Edition
    >>> from gaugerod.substrate.load.ask import Timber
    >>> from dataclasses import replace
    >>> tile = replace(plain_tile("clay-plain-265x165"), mass_kg=1.1)
    >>> load = weigh(LoadAsk(where="rear", covering=tile, area_mm2=24e6, gauge_mm=100.0, cover_mm=165.0, edition=Edition.GB))
    >>> [(part.name, round(part.mass.least_kg_m2, 1)) for part in load.parts], round(load.least_kg)
    ([('covering', 66.7), ('battens and underlay', 3.0)], 1672)
    """
    covering = _covering(ask)
    below = tuple(_below(ask))
    parts = below if covering is None else (covering, *below)
    total = None if covering is None else _sum([part.mass for part in parts])
    old = None if ask.old is None else _old(ask.old, below)
    return Load(
        where=ask.where,
        area_mm2=ask.area_mm2,
        parts=parts,
        total=total,
        old=old,
        findings=tuple(_findings(ask, total, old)),
        says=tuple(_says(ask, total)),
        working=_working(ask, parts, total),
    )


def _covering(ask: LoadAsk) -> Part | None:
    if ask.stated is not None:
        return Part(name="covering", mass=ask.stated, formula="as given")
    found = covering_mass(ask.covering, gauge_mm=ask.gauge_mm, cover_mm=ask.cover_mm, edition=ask.edition)
    return None if found is None else Part(name="covering", mass=found[0], formula=found[1])


def _below(ask: LoadAsk) -> Iterator[Part]:
    """Battens and underlay; both together as typical where either is not known."""
    if not ask.timbers or ask.underlay is None:
        mass = typical_mass(ask.edition, TypicalMass.BATTENS_AND_UNDERLAY)
        yield Part(name="battens and underlay", mass=mass, formula="typical, both together")
        return
    density = load_figure(ask.edition, LoadFigure.BATTEN_DENSITY)
    for timber in ask.timbers:
        volume_m3 = timber.width_mm * timber.depth_mm * timber.length_mm / 1e9
        mass_kg_m2 = volume_m3 * density.value / (ask.area_mm2 / 1e6)
        mass = MassBand(least_kg_m2=mass_kg_m2, greatest_kg_m2=mass_kg_m2, citation=density.citation)
        yield Part(name=timber.name, mass=mass, formula="width × depth × length × density / area")
    record, laid = ask.underlay.record, ask.underlay.laid_area_mm2 / ask.area_mm2
    if record.mass_kg_m2 is not None:
        layer = MassBand(least_kg_m2=record.mass_kg_m2, greatest_kg_m2=record.mass_kg_m2, citation=record.citation)
    else:
        layer = typical_mass(ask.edition, _typical_underlay(record.resistance))
    mass = MassBand(
        least_kg_m2=layer.least_kg_m2 * laid, greatest_kg_m2=layer.greatest_kg_m2 * laid, citation=layer.citation
    )
    yield Part(name="underlay", mass=mass, formula="mass of one layer × area as laid / area")


def _typical_underlay(resistance: Resistance) -> TypicalMass:
    match resistance:
        case Resistance.LOW:
            return TypicalMass.UNDERLAY_LOW_RESISTANCE
        case Resistance.HIGH:
            return TypicalMass.UNDERLAY_HIGH_RESISTANCE
        case _ as unreachable:
            assert_never(unreachable)


def _sum(masses: Sequence[MassBand], citation: Citation = _TOGETHER) -> MassBand:
    return MassBand(
        least_kg_m2=sum(mass.least_kg_m2 for mass in masses),
        greatest_kg_m2=sum(mass.greatest_kg_m2 for mass in masses),
        citation=citation,
    )


def _old(old: OldRoof, below: Sequence[Part]) -> MassBand:
    under = [part.mass for part in below] if old.below is None else [old.below]
    return _sum([old.covering, *under], old.covering.citation)


def _findings(ask: LoadAsk, total: MassBand | None, old: MassBand | None) -> Iterator[Finding]:
    if total is None:
        yield not_covered(
            rule="mass of the covering",
            where=ask.where,
            proposed=None,
            unit="kg/m2",
            citation=house("no record or table gives the mass of this covering"),
            says="Nothing gives the mass of this covering. Weigh the units of one m² as laid, and give it.",
        )
    elif old is not None:
        yield from recovering(
            where=ask.where,
            new=total,
            old=old,
            warn=ask.warn or load_figure(ask.edition, LoadFigure.RECOVER_WARN),
            significant=ask.significant or load_figure(ask.edition, LoadFigure.RECOVER_SIGNIFICANT),
        )
    yield not_covered(
        rule="loading out", where=ask.where, proposed=None, unit="kg", citation=_LOADING_OUT, says=_LOADING_OUT_SAYS
    )


def _says(ask: LoadAsk, total: MassBand | None) -> Iterator[str]:
    if total is not None:
        least_kg, greatest_kg = (mass * ask.area_mm2 / 1e6 for mass in (total.least_kg_m2, total.greatest_kg_m2))
        alike = total.least_kg_m2 == total.greatest_kg_m2
        each = f"{total.greatest_kg_m2:.0f}" if alike else f"{total.least_kg_m2:.0f} to {total.greatest_kg_m2:.0f}"
        whole = f"{greatest_kg:.0f}" if alike else f"{least_kg:.0f} to {greatest_kg:.0f}"
        yield f"On the slope {each} kg on each m², {whole} kg in all, covering, battens and underlay."
    yield _LOADING_OUT_SAYS


def _working(ask: LoadAsk, parts: Sequence[Part], total: MassBand | None) -> Step:
    return Step(
        name=f"load of {ask.where}",
        formula="covering + battens + underlay, the greatest of each",
        inputs={"area (m²)": ask.area_mm2 / 1e6, "gauge (mm)": ask.gauge_mm},
        value="not known" if total is None else total.greatest_kg_m2,
        unit="kg/m2",
        citation=_TOGETHER,
        parts=tuple(
            Step(
                name=part.name,
                formula=part.formula,
                inputs={"least (kg/m²)": part.mass.least_kg_m2, "greatest (kg/m²)": part.mass.greatest_kg_m2},
                value=part.mass.greatest_kg_m2,
                unit="kg/m2",
                citation=part.mass.citation,
            )
            for part in parts
        ),
    )
