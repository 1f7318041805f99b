"""What is asked of each part of what lies beneath, in the words of the form."""

from gaugerod.adapters.job_file.beneath_fields import BATTEN_STOCK
from gaugerod.web.questions import YES_NO_UNKNOWN, YES_OR_NOT, Kind, More, PartQuestions, Question, chosen

_BATTENS = PartQuestions(
    key="battens",
    title="Battens",
    says="Joints on the rafters, what to buy, how to saw it.",
    first=(
        Question(key="stock", label="Lengths you can buy", kind=Kind.LENGTHS, allowed=BATTEN_STOCK,
                 hint="with a comma and a blank between: 3.6 m, 4.8 m. Left empty: the usual ones"),
    ),
    more=(
        More(
            title="Saw, nails and counter-battens",
            questions=(
                Question(key="kerf", label="The saw takes", hint="at each cut"),
                Question(key="gun_nails", label="Nailed with a gun", kind=Kind.YES_NO, choices=YES_OR_NOT),
                Question(key="close_joints", label="Joints on neighbouring battens", kind=Kind.CHOICE,
                         hint="Gauges of 200 mm and less: sources differ, apart is the safer.",
                         choices=chosen("as usual: apart", apart="apart", together="together")),
                Question(key="counter_battens.width", label="Counter-battens, width", hint="across the rafter"),
                Question(key="counter_battens.depth", label="Counter-battens, depth", hint="how far they lift the batten"),
            ),
        ),
    ),
)  # fmt: skip
_UNDERLAY = PartQuestions(
    key="underlay",
    title="Underlay",
    says="Runs and laps, what is done where a lap falls between battens, and the rolls.",
    first=(
        Question(key="resistance", label="Resistance to vapour", kind=Kind.CHOICE, hint="as the label says",
                 choices=chosen("choose", low="low: it breathes", high="high: felt, plain film")),
        Question(key="lies_on", label="It lies on", kind=Kind.CHOICE,
                 choices=chosen("choose", rafters="open rafters", boards="boards", rigid_insulation="rigid insulation")),
        Question(key="ridge_vented", label="Dry, ventilated ridge", kind=Kind.YES_NO, choices=YES_OR_NOT,
                 hint="Then the underlay stops short of it."),
        Question(key="eaves_carrier", label="Eaves tray reaches up", hint="from the outer face of the fascia"),
    ),
    more=(
        More(
            title="Roll, laps and strips",
            questions=(
                Question(key="title", label="What to call it", kind=Kind.WORDS),
                Question(key="roll_width", label="Roll, width", hint="left empty: 1 m"),
                Question(key="roll_length", label="Roll, length", hint="left empty: 50 m"),
                Question(key="lap", label="Lap its maker asks for", hint="where it is more than the rule's"),
                Question(key="between_battens", label="A lap between battens", kind=Kind.CHOICE,
                         choices=chosen("as usual: widen it", widen="widen it to the next batten",
                                         extra_batten="an extra batten on it", tape="tape it")),
                Question(key="valley_strip", label="Valley strip, width", hint="laid first, under the runs"),
                Question(key="rafter_width", label="Rafter, width", hint="side laps reach its far edge"),
                Question(key="mass", label="Mass, kg/m²", kind=Kind.NUMBER, hint="of one layer"),
            ),
        ),
        More(
            title="Wind and vapour",
            says="The label says which uplift the underlay resists at which gauge. Without it and the site, no rule can answer.",
            rows_key="rating",
            rows=(
                Question(key="resists", label="Resists, Pa", kind=Kind.NUMBER),
                Question(key="gauge", label="At a gauge of"),
                Question(key="laps_held", label="Only with every lap held", kind=Kind.YES_NO,
                         choices=chosen("choose", yes="yes", no="no")),
            ),
            questions=(
                Question(key="wind_zone", label="Wind zone, 1 to 5", kind=Kind.NUMBER, hint="from the map of zones"),
                Question(key="altitude", label="Site above the sea", hint="in metres: 120 m"),
                Question(key="ridge_height", label="Ridge above the ground"),
                Question(key="on_hill_or_cliff", label="On or near a hill or cliff", kind=Kind.YES_NO, choices=YES_NO_UNKNOWN),
                Question(key="ceiling_sealed", label="Ceiling well sealed", kind=Kind.YES_NO, choices=YES_NO_UNKNOWN),
                Question(key="vapour_resistance", label="Vapour, MN·s/g", kind=Kind.NUMBER, hint="as the label gives it"),
                Question(key="air_permeability", label="Air, m³/(m²·h)", kind=Kind.NUMBER,
                         hint="at 50 Pa; left empty: none passes"),
            ),
        ),
    ),
)  # fmt: skip
_VENTILATION = PartQuestions(
    key="ventilation",
    title="Openings for air",
    says="At the eaves and up at the ridge. They depend on the underlay.",
    first=(
        Question(key="insulated", label="Insulation lies", kind=Kind.CHOICE,
                 choices=chosen("choose", at_ceiling="at the ceiling", along_slope="along the slope")),
        Question(key="span", label="Eaves to eaves", hint="on plan; left empty: taken as wide"),
    ),
    more=(
        More(
            title="Ceiling and building",
            questions=(
                Question(key="ceiling", label="Ceiling", kind=Kind.CHOICE,
                         choices=chosen("as usual: normal", normal="normal", well_sealed="well sealed")),
                Question(key="building", label="The roof is over", kind=Kind.CHOICE,
                         choices=chosen("as usual: a dwelling", dwelling="a dwelling", larger="a larger building")),
                Question(key="through_flow", label="Air from eaves to eaves", kind=Kind.YES_NO, choices=YES_OR_NOT,
                         hint="Can it pass right through?"),
            ),
        ),
    ),
)  # fmt: skip
_FIXINGS = PartQuestions(
    key="fixings",
    title="Nails and clips",
    says="The least by rule for every unit. The maker's fixing specification goes before it.",
    first=(
        Question(key="nail_metal", label="Nails of", kind=Kind.CHOICE,
                 choices=chosen("choose", aluminium="aluminium", copper="copper", silicon_bronze="silicon bronze",
                                 stainless_steel="stainless steel")),
        Question(key="nail_holes", label="Nail holes of one unit", kind=Kind.NUMBER),
        Question(key="thickness", label="Thickness under the nail", hint="of the unit, where its nail goes through"),
    ),
    more=(
        More(
            title="Size of the nails, and hooks",
            questions=(
                Question(key="nail_shank", label="Nail, thickness", hint="left empty: the least by rule"),
                Question(key="nail_length", label="Nail, length", hint="left empty: the least by rule"),
                Question(key="slates_by", label="Slates are held by", kind=Kind.CHOICE,
                         choices=chosen("as usual: nails", nails="nails", hooks="hooks")),
                Question(key="hook_wire", label="Hook, thickness of the wire"),
            ),
        ),
    ),
)  # fmt: skip
_LOAD = PartQuestions(
    key="load",
    title="Mass on the slope",
    says="What the roof weighs, held against what it weighed before.",
    first=(
        Question(key="covering", label="New covering, kg/m²", kind=Kind.NUMBER,
                 hint="as laid; left empty: reckoned from one unit, or typical"),
        Question(key="old.least", label="Old covering, kg/m²", kind=Kind.NUMBER,
                 hint="the least it may be; left empty: a new roof"),
    ),
    more=(
        More(
            title="More of the old roof, and when to ask",
            questions=(
                Question(key="old.title", label="What the old covering is", kind=Kind.WORDS),
                Question(key="old.greatest", label="The most it may be, kg/m²", kind=Kind.NUMBER, hint="left empty: the same"),
                Question(key="old.below", label="Old battens and underlay, kg/m²", kind=Kind.NUMBER,
                         hint="left empty: as heavy as the new"),
                Question(key="warn", label="Ask from a change of, %", kind=Kind.NUMBER),
                Question(key="significant", label="Check the frame from, %", kind=Kind.NUMBER, hint="gain in mass"),
            ),
        ),
    ),
)  # fmt: skip
PARTS = (_BATTENS, _UNDERLAY, _VENTILATION, _FIXINGS, _LOAD)
