"""How the roof is to be looked after: what the one who takes it over must know before anyone goes near it."""

CARE = (
    (
        "Who may walk on it: nobody but roofers, from crawling boards or roof ladders hooked over the ridge, with a way to stop a "
        "fall. Tiles and slates break underfoot, and a broken one lets water in where nobody sees it."
    ),
    (
        "Fragile: rooflights, old cement sheets, lead and underlay between rafters hold no one. Whoever sends a person up says "
        "so to them first."
    ),
    "Look it over from the ground each year and after a storm: slipped, cracked or missing units, open mortar, lifted lead.",
    "Clear gutters and valleys each autumn; a blocked one sends water up under the laps. Clear moss by hand, never by water jet.",
    "Keep openings for air open. Insulation pushed into the eaves, paint and foam shut them, and the timbers rot.",
    (
        "Nothing is fixed to the roof, cut through it or stood on it without asking: panels, aerials and lights change the load, "
        "the uplift and the fixings."
    ),
    "Lead run-off and lead dust poison: no drinking water is gathered from lead; whoever mends it wears gloves and washes.",
    "Asbestos, live cables, nests and bats: ask before work starts.",
    "A few units of the same batch are kept dry for repairs: lay by as many as are left over.",
)
"""Source: common practice; the maker's own care instructions come first."""
STANDS_FOR = (
    "This record says what was set out, by which rule, and what was measured. It does not stand in for the maker's instructions, "
    "the local code or a licensed designer; where they ask for more, they win."
)
AS_LAID = (
    "Its figures are those to lay by. That the roof was laid to them is for whoever signs to say; a roof is checked as built by "
    "measuring it again."
)
