"""A job of our own, set out by hand with plain division, so that sheets can be tested apart from the engine."""

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Basis, Citation, common_practice, house
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.basis.lengths import LengthUnit
from gaugerod.basis.rounding import Division, nearest_count
from gaugerod.basis.working import Step
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile
from gaugerod.geometry.taped_slope import SlopeShape, TapedSlope
from gaugerod.job.model import BottomKind, Job, Slope, TopKind, Wishes
from gaugerod.job.result import Result, SlopeResult
from gaugerod.setting_out.across import Across, EndPiece, Fit, PerpLine, SideKind
from gaugerod.setting_out.courses import Alternative, Courses, OpeningCourses, Rod, Segment, Strategy
from gaugerod.setting_out.stations import Opening
from gaugerod.standards.edition import Edition, Exposure

PUBLISHED = Citation(source="An invented code of practice, table 4", basis=Basis.PUBLISHED)
TILE = SingleLapTile(
    name="flat-interlocking-420x330",
    title="Flat interlocking tile 420 × 330",
    form=Form.FLAT,
    material=Material.CONCRETE,
    length_mm=420.0,
    width_mm=330.0,
    hanging_length_mm=397.0,
    cover_closed_mm=296.0,
    cover_open_mm=302.0,
    headlap_min_mm=75.0,
    headlap_max_mm=None,
    pitch_min_deg=22.5,
    mass_kg=4.9,
    half_unit=True,
    bonds=(Bond.BROKEN, Bond.STRAIGHT),
    citation=house("an example record"),
)
ROOFLIGHT = Opening(name="rooflight", from_left_mm=2400.0, up_slope_mm=1600.0, width_mm=780.0, height_mm=1180.0)
CHIMNEY = Opening(name="chimney", from_left_mm=8150.0, up_slope_mm=5200.0, width_mm=900.0, height_mm=650.0)


def rod_by_hand(*, at_mm: float, length_mm: float, division: Division, overhang_mm: float = 50.0) -> Rod:
    """Equal gauges from 397 − 50 up to 40 below the apex, the fewest that keep 345 or less."""
    first_mm, last_mm = TILE.length_mm - 23.0 - overhang_mm, length_mm - 40.0
    gauges = int(-(-(last_mm - first_mm) // 345.0))
    gauge_mm = (last_mm - first_mm) / gauges
    exact_mm = tuple(first_mm + index * gauge_mm for index in range(gauges + 1))
    step_mm = float(division.step_mm)
    return Rod(
        at_mm=at_mm,
        length_mm=length_mm,
        gauge_mm=gauge_mm,
        marks_mm=tuple(nearest_count(mark, division) * step_mm for mark in exact_mm),
        exact_mm=exact_mm,
        overhang_mm=overhang_mm,
        below_apex_mm=40.0,
    )


def courses_by_hand(
    *, stations: tuple[tuple[float, float], ...], openings: tuple[Opening, ...], unit: LengthUnit
) -> Courses:
    """Courses at every station, with a segment alternative at each opening."""
    division = Division.SIXTEENTH if unit is LengthUnit.FT_IN else Division.MILLIMETRE
    rods = tuple(rod_by_hand(at_mm=at_mm, length_mm=length_mm, division=division) for at_mm, length_mm in stations)
    gauge_mm = max(rod.gauge_mm for rod in rods)
    fanned = len({rod.length_mm for rod in rods}) > 1
    return Courses(
        strategy=Strategy.FANNED if fanned else Strategy.EQUAL,
        why="Each rod has its own equal gauge, so the lines fan out evenly and the top batten is parallel to the ridge."
        if fanned
        else "Equal gauges fit at every station.",
        count=len(rods[0].marks_mm),
        gauge_min_mm=None,
        gauge_max_mm=345.0,
        headlap_mm=420.0 - gauge_mm,
        overhang_mm=50.0,
        rods=rods,
        taper_per_course_mm=rods[-1].gauge_mm - rods[0].gauge_mm,
        top_course_cut_mm=None,
        openings=tuple(
            OpeningCourses(
                name=opening.name,
                sill_course=4,
                sill_head_mm=148.0,
                head_course=8,
                head_tail_mm=112.0,
                says=f"The sill of the {opening.name} falls 148 mm above the head of course 4.",
                segments=(
                    Segment(name="eaves to sill", from_mm=347.0, to_mm=1600.0, count=4, gauge_mm=313.25, inside=True),
                    Segment(name="sill to head", from_mm=1600.0, to_mm=2780.0, count=3, gauge_mm=393.3, inside=False),
                ),
                segments_say="Setting out afresh from the sill needs a gauge of 393.3 mm, over the greatest.",
            )
            for opening in openings
        ),
        findings=(),
        alternatives=(
            Alternative(
                rank=1,
                change="Two gauges in blocks: 7 of 332 mm and 6 of 345 mm",
                by_mm=3.0,
                costs="A change of gauge that shows from the ground in low light.",
                keeps_limits=True,
                gauges=13,
                gauge_mm=345.0,
            ),
            Alternative(
                rank=2,
                change="Cut the top course by 60 mm",
                by_mm=60.0,
                costs="Every top unit is cut; the nibs go and each must be fixed.",
                keeps_limits=False,
                gauges=13,
                gauge_mm=345.0,
            ),
        ),
        working=Step(name="courses", formula="", inputs={}, value=float(len(rods[0].marks_mm)), unit=""),
    )


def across_by_hand(*, eaves_mm: float) -> Across:
    """Perps at every third unit from a left overhang of 45."""
    cover_mm = 300.0
    units = round((eaves_mm + 90.0) / cover_mm)
    marks = tuple(-45.0 + cover_mm * count for count in range(3, units, 3))
    return Across(
        units_count=units,
        bond=Bond.BROKEN,
        cover_mm=cover_mm,
        left_overhang_mm=45.0,
        right_overhang_mm=45.0,
        perps_every_count=3,
        perp_lines=(
            PerpLine(
                line="eaves",
                first_mm=250.0,
                cover_mm=cover_mm,
                left_reach_mm=45.0,
                right_reach_mm=45.0,
                marks_mm=marks,
                exact_mm=marks,
            ),
            PerpLine(
                line="top",
                first_mm=250.0,
                cover_mm=cover_mm + 0.4,
                left_reach_mm=45.0,
                right_reach_mm=45.0,
                marks_mm=tuple(mark + 4.0 for mark in marks),
                exact_mm=tuple(mark + 4.0 for mark in marks),
            ),
        ),
        pieces=(
            EndPiece(at="left", bond_row=0, fit=Fit.WHOLE, cover_mm=300.0, width_mm=330.0),
            EndPiece(at="left", bond_row=1, fit=Fit.HALF, cover_mm=150.0, width_mm=180.0),
            EndPiece(at="right", bond_row=0, fit=Fit.CUT, cover_mm=212.0, width_mm=242.0),
        ),
        least_piece_mm=212.0,
        fanned=False,
        why="Cover 300 mm, the middle of the shunt, ends on a whole unit at the left and a cut of 212 mm at the right.",
        findings=(),
        alternatives=(),
        working=Step(name="across", formula="", inputs={}, value=float(units), unit=""),
    )


def findings_by_hand(*, where: str, outside: bool) -> tuple[Finding, ...]:
    """One of each verdict; the lap short when something is to be outside."""
    return (
        Finding(
            rule="headlap",
            where=where,
            proposed=74.6 if outside else 76.2,
            limit=75.0,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=PUBLISHED,
            says="The lap is short by 0.4 mm: rain driven up the slope can reach the head. Add a course."
            if outside
            else "The lap is kept on every rod.",
        ),
        Finding(
            rule="pitch",
            where=where,
            proposed=35.0,
            limit=22.5,
            unit="deg",
            sense=Sense.AT_LEAST,
            citation=Citation(source="An invented code of practice, table 1", basis=Basis.MEMORY),
            says="Well above the least pitch of this tile.",
        ),
        not_covered(
            rule="ridge cover",
            where=where,
            proposed=None,
            unit="mm",
            citation=common_practice("the ridge unit laps the top course by its headlap"),
            says="How far the ridge unit reaches down the slope is not known. Measure it and enter it.",
        ),
    )


def result_by_hand(
    *,
    title: str = "Bakehouse, rear slope",
    unit: LengthUnit = LengthUnit.MM,
    eaves_mm: float = 7460.0,
    stations: tuple[tuple[float, float], ...] = ((0.0, 4905.0), (7460.0, 4918.0)),
    openings: tuple[Opening, ...] = (ROOFLIGHT,),
    outside: bool = False,
    lean_mm: float = 12.0,
    name: str = "rear",
) -> Result:
    """A whole result of one slope."""
    slope = Slope(
        name=name,
        pitch_deg=35.0,
        taped=TapedSlope(eaves_mm=eaves_mm, rafters=stations),
        left=SideKind.VERGE,
        right=SideKind.VERGE,
        bottom=BottomKind.EAVES,
        top=TopKind.RIDGE,
        rafter_spacing_mm=400.0,
        openings=openings,
    )
    band = Band(45.0, 55.0, common_practice("covers the gutter's centre"))
    courses = courses_by_hand(stations=stations, openings=openings, unit=unit)
    findings = findings_by_hand(where=name, outside=outside)
    done = SlopeResult(
        slope=slope,
        shape=SlopeShape(
            outline_mm=(
                (0.0, 0.0),
                (eaves_mm, 0.0),
                (eaves_mm + lean_mm, stations[-1][1]),
                (lean_mm, stations[0][1]),
            ),
            out_of_square_mm=lean_mm,
            out_of_parallel_mm=stations[-1][1] - stations[0][1],
            area_mm2=eaves_mm * (stations[0][1] + stations[-1][1]) / 2,
            findings=(),
        ),
        courses=courses,
        across=across_by_hand(eaves_mm=eaves_mm),
        findings=findings,
        method=(
            f"Mark the first batten {courses.rods[0].marks_mm[0]:.0f} mm up from the outer face of the fascia.",
            "Hold the rod to the fascia at each station and mark every batten from it, never from the batten below.",
            "Strike a line through the marks and check the first and the top one against the tape.",
        ),
        laid=None,
    )
    return Result(
        job=Job(
            title=title,
            edition=Edition.GB,
            exposure=Exposure.MODERATE,
            show_lengths_in=unit,
            covering=TILE,
            slopes=(slope,),
            wishes=Wishes(eaves_overhang=band),
        ),
        slopes=(done,),
        findings=findings,
        alternatives=tuple((name, alternative) for alternative in courses.alternatives),
        not_set_out=(),
        roofs=(),
        offcuts=None,
        version="0.1.0",
        cautions=(
            "Work at height: scaffold with edge protection before anyone goes on the slope.",
            "Cutting concrete or clay makes silica dust: cut wet or with extraction, and wear a fitted mask.",
        ),
        working=Step(
            name=title,
            formula="",
            inputs={},
            value=1.0,
            unit="slopes",
            parts=(
                Step(
                    name="rear slope",
                    formula="",
                    inputs={},
                    value="set out",
                    unit="",
                    parts=(
                        Step(
                            name="greatest gauge",
                            formula="length − headlap",
                            inputs={"length (mm)": 420.0, "headlap (mm)": 75.0},
                            value=345.0,
                            unit="mm",
                            citation=PUBLISHED,
                        ),
                        Step(
                            name="gauges",
                            formula="(top batten − first batten) / greatest gauge, up to a whole number",
                            inputs={"top batten (mm)": 4865.0, "first batten (mm)": 347.0},
                            value=14.0,
                            unit="",
                        ),
                    ),
                ),
            ),
        ),
    )
