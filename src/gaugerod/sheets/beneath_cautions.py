"""The cautions beside each sheet of what lies beneath the covering, where a person is about to act."""

BATTEN_CAUTIONS = (
    (
        "Height: guard rails or another way to stop a fall, before the first batten. Battens are no ladder: stand only where "
        "one lies on a rafter, never between rafters or on an end that runs past its support."
    ),
    "Lifting: pass long battens up between two people or hoist them, in small bundles tied at both ends; not in wind.",
    (
        "Sawing: on the ground, in the open, with mask and eye guard; the dust of treated timber harms. Gloves for splinters; burn "
        "no offcuts."
    ),
    "Bundles lie over rafters, spread out; never on underlay between them.",
)
UNDERLAY_CAUTIONS = (
    (
        "Underlay does not hold a person. Never stand, kneel or lean on it between rafters; work from battens over rafters, "
        "crawling boards or the scaffold."
    ),
    (
        "Weather and wind: lay only what can be battened down at once. Stop when wind lifts the sheet, and in rain, frost or ice: "
        "wet sheet is slippery."
    ),
    "Lifting: a roll is heavy and awkward; two people or a hoist, and chock it so that it cannot roll off.",
    "Cover it soon: sunlight ages it. Its maker says how long it may lie open.",
)
FIXING_CAUTIONS = (
    "Height: reach, do not lean out, at verges and eaves; guard rails first.",
    "Dust: drilling or cutting tile or slate frees silica. Wet or with extraction, masked, on the ground or the scaffold.",
    "Eyes: guards when driving nails and breaking holes; nobody below while units are handled.",
    "Nails left lying and clips dropped cut hands, feet and underlay: gather them before the next course.",
)
LOAD_CAUTIONS = (
    "Load both slopes alike, in small stacks over rafters; never a pallet on the roof.",
    "More mass than before, or much less, changes the frame: a licensed designer looks at it before work starts.",
)
LAST_CAUTION = (
    "The maker's instructions, the local code and a licensed designer come before this sheet. The setting-out sheet has the other "
    "cautions of the job."
)
"""Source: common practice; read beside the local safety authority's guidance for roof work."""
