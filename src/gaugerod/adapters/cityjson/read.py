"""A job file from a measured roof in CityJSON: every plane is a slope by its outline."""

from gaugerod.adapters.cityjson.planes import Plane, faces_up, planes_of, split_at_corners
from gaugerod.adapters.cityjson.slopes import drafted_slope, neighbours_of
from gaugerod.adapters.cityjson.surfaces import BuildingSurfaces, surfaces_in
from gaugerod.adapters.job_draft.draft import DraftSlope, printable_name, slopes_job_text
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.plan_outline import GREATEST_PITCH_DEG, LEAST_PITCH_DEG


def job_text_from_cityjson(content: bytes, *, title: str) -> str:
    """The job file drafted from the roofs in the file. Raises InputRefused with every fault.

    Source: CityJSON 1.1 and 2.0. Scope: LoD 2, coordinates in metres; pitches from 1° to 89°.
    """
    buildings, remarks = surfaces_in(content)
    slopes: list[DraftSlope] = []
    refused: list[Fault] = []
    for building in buildings:
        for slope in _slopes(building, remarks, several=len(buildings) > 1):
            try:
                slopes_job_text([slope], title="one slope", remarks=())
            except InputRefused as faults:
                refused.extend(faults.faults)
                remarks.append(f"{slope.name}: left out. {faults.faults[0]} Measure it by tape.")
            else:
                slopes.append(slope)
    if not slopes:
        nothing = Fault("CityObjects", "no slope that can be used", "a pitched roof", "; ".join(remarks))
        raise InputRefused(refused or [nothing])
    remarks.append("Edges are named from what lies beside them: check every one, and the pitch, on the roof.")
    remarks.append("Outlines end where the survey ends: check the eaves and verges with the tape.")
    return slopes_job_text(slopes, title=printable_name(title, otherwise="measured roof"), remarks=remarks)


def _slopes(building: BuildingSurfaces, remarks: list[str], *, several: bool) -> list[DraftSlope]:
    """The slopes of one building; what was left out goes to the remarks."""
    remarks.append(f"{building.name}: read at LoD {building.level}.")
    surfaces = split_at_corners(building.surfaces)
    up = [surface for surface in surfaces if surface.roof and faces_up(surface)]
    down_count = sum(surface.roof for surface in surfaces) - len(up)
    if down_count:
        remarks.append(f"{building.name}: {down_count} roof surfaces face down or have no area, and are left out.")
    planes = planes_of(up)
    pitched = [plane for plane in planes if _is_slope(plane)]
    if len(pitched) < len(planes):
        remarks.append(f"{building.name}: {len(planes) - len(pitched)} flat or upright roof planes are left out.")
    if len(pitched) < len(up):
        remarks.append(f"{building.name}: {len(up)} roof surfaces lie in {len(planes)} planes.")
    around = neighbours_of(pitched, [surface for surface in surfaces if not surface.roof])
    drafted = [drafted_slope(number, around) for number in range(len(pitched))]
    remarks.extend(f"{building.name}: {each}" for each in drafted if isinstance(each, str))
    slopes = [each for each in drafted if isinstance(each, DraftSlope)]
    return [_of_building(slope, building.name) for slope in slopes] if several else slopes


def _is_slope(plane: Plane) -> bool:
    return len(plane.rings) > 0 and LEAST_PITCH_DEG <= plane.pitch_deg <= GREATEST_PITCH_DEG


def _of_building(slope: DraftSlope, building: str) -> DraftSlope:
    """The slope under a name that no other building's slope has."""
    return DraftSlope(
        name=f"{building[-60:]} {slope.name}",
        pitch_deg=slope.pitch_deg,
        outline_mm=slope.outline_mm,
        edges=slope.edges,
        remarks=slope.remarks,
    )
