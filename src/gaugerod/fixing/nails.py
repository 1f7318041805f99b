"""The nail of one slope: its least size from what it passes, and the mass of all of them."""

from dataclasses import dataclass

from gaugerod.basis.citation import Citation, house
from gaugerod.coverings.double_lap import Nailing, RandomSlates, SizedSlate
from gaugerod.fixing.ask import FixingAsk
from gaugerod.rules.nails import Nailed, NailMetal, least_nail_mm, least_shank, nail_density, nail_mass_kg

PASSES_CITATION = house(
    "a nail near the head passes one thickness; one at the middle of a slate passes two at most, for the slate stands off "
    "its batten by the head of the slate below"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class NailChosen:
    """The nail to drive. ``length_mm``, ``each_kg`` and ``total_kg``: None while the unit's thickness is not known.

    ``passes_mm`` what it goes through before the batten. ``mass_citation`` is that of the metal's density.
    """

    metal: NailMetal
    shank_mm: float
    length_mm: float | None
    passes_mm: float | None
    count: int
    each_kg: float | None
    total_kg: float | None
    mass_citation: Citation

    @property
    def penetration_mm(self) -> float | None:
        """How far it reaches into the batten; None while that is not known."""
        return None if self.length_mm is None or self.passes_mm is None else self.length_mm - self.passes_mm

    def __str__(self) -> str:
        """In words: metal, length × shank."""
        size = f"{self.shank_mm:g} mm shank" if self.length_mm is None else f"{self.length_mm:g} × {self.shank_mm:g} mm"
        return f"{self.metal.value.replace('-', ' ')} clout nail, {size}"


def nailed_of(ask: FixingAsk) -> Nailed:
    """What the nails go through."""
    return Nailed.SLATE if ask.is_slate else Nailed.TILE


def nail_chosen(ask: FixingAsk, *, count: int) -> NailChosen | None:
    """The nail as wished, or the least by rule; None where none is driven. Lengths go up to the next 5 mm."""
    if count == 0:
        return None
    passes_mm = _passes_mm(ask)
    shank_mm = ask.nail.shank_mm or least_shank(nailed=nailed_of(ask), edition=ask.edition).value
    length_mm = ask.nail.length_mm
    if length_mm is None and passes_mm is not None:
        length_mm = least_nail_mm(passes_mm=passes_mm, edition=ask.edition)
    each_kg = None
    if length_mm is not None:
        each_kg = nail_mass_kg(metal=ask.nail.metal, shank_mm=shank_mm, length_mm=length_mm, edition=ask.edition)
    return NailChosen(
        metal=ask.nail.metal,
        shank_mm=shank_mm,
        length_mm=length_mm,
        passes_mm=passes_mm,
        count=count,
        each_kg=each_kg,
        total_kg=None if each_kg is None else each_kg * count,
        mass_citation=nail_density(metal=ask.nail.metal, edition=ask.edition).citation,
    )


def _passes_mm(ask: FixingAsk) -> float | None:
    covering, thick_mm = ask.covering, ask.thickness_mm
    if thick_mm is None and isinstance(covering, SizedSlate):
        thick_mm = covering.thickness_mm
    if thick_mm is None:
        return None
    centre = isinstance(covering, SizedSlate | RandomSlates) and covering.nailing is Nailing.CENTRE
    return 2 * thick_mm if centre else thick_mm
