"""The cautions beside an order, and beside a quotation: what is bought is lifted, stacked, cut and carried by someone."""

ORDER_CAUTIONS = (
    "Lifting: share the load and use a hoist; a pallet is set down by a machine, on firm level ground.",
    (
        "Loading out: both slopes alike, small stacks over the rafters, from the eaves up; never a pallet on the roof. Whoever "
        "designed the frame and the scaffold says how much they take."
    ),
    (
        "Lead: it is heavy and it poisons. Gloves; wash before eating, drinking or smoking; no work clothes taken home. Heat or "
        "burn it only in the open, out of its fumes."
    ),
    "Dust: cutting tile, slate or mortar frees silica. Wet or with extraction, and a fitted mask.",
    (
        "Asbestos: old slates, sheets, undercloak and soffits may hold it. Have them surveyed before anything is taken off "
        "or carted away."
    ),
    "Height: nothing is handed up or thrown down past people; guard rails before the first load.",
    "Fragile surfaces: rooflights, old sheets and underlay bear neither a person nor a load set down on them.",
    "Weather: nothing is hoisted or loaded out in wind, frost or ice; what waits up there is tied down.",
    "Live cables: look up before a hoist, a crane or long battens go near.",
)
"""Source: common practice; read beside the local safety authority's guidance for roof work."""
QUOTATION_CAUTIONS = (
    (
        "Before work begins: old slates, sheets, undercloak and soffits surveyed for asbestos; cables at the roof made dead or "
        "shrouded by those who own them; the scaffold and the frame said to bear the loads by those who designed them."
    ),
    "Height and fragile surfaces: nobody goes up without guard rails, nor onto a rooflight, an old sheet or bare underlay.",
    (
        "Below: keep clear of hoist, scaffold and chute; windows stay shut while tile, slate or mortar is cut, for the dust "
        "holds silica."
    ),
    "Weather: work stops in wind, rain, frost and ice, and what is open is covered first.",
)
"""Source: common practice, as above."""
ORDER_LAST_CAUTION = (
    "Before ordering, hold this list against what the makers say: their instructions, the local code and a licensed designer come "
    "first."
)
