"""The cautions beside an order: what is bought is lifted, stacked, cut and carried by someone."""

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
    "Live cables: look up before a hoist, a crane or long battens go near.",
)
"""Source: common practice; read beside the local safety authority's guidance for roof work."""
ORDER_LAST_CAUTION = (
    "Before ordering, hold this list against what the makers say: their instructions, the local code and a licensed designer come "
    "first."
)
