"""The cautions that go with every setting out. They are the usual ones; the site's own rules come first."""

CAUTIONS = (
    "Height: no work on the slope without guard rails or another way to stop a fall. Inspect the scaffold before use.",
    "Fragile surfaces: rooflights, old cement sheets and rotten boards do not hold a person. Treat all as fragile.",
    "Dust: cutting tile or slate frees silica. Cut wet or with extraction, and wear a fitted mask.",
    "Asbestos: slates, sheets, undercloak and soffits of older buildings may hold it. Have them surveyed before work.",
    "Lifting: plan the lifts, share the load, use a hoist. Do not carry more up a ladder than leaves a hand free.",
    "Weather: stop for wind, ice, lightning or wet slopes. Tie down what is loose before leaving.",
    "Live cables: look for overhead lines and service drops before the scaffold, hoist or battens go near them.",
    "Loading: spread stacks over both slopes and near supports; never stand a pallet on a roof.",
    (
        "This setting out does not replace the maker's instructions, the local code, or a licensed designer. "
        "Where they ask for more, they win."
    ),
)
"""Source: common practice; read beside the local safety authority's guidance for roof work."""
