"""One building read by itself, while the rest of its job may not be written yet."""

from typing import Any

from pydantic import ValidationError

from gaugerod.adapters.job_file.all_faults import faults_of
from gaugerod.adapters.job_file.building_table import BuildingTable
from gaugerod.adapters.job_file.outline_contradictions import building_contradictions
from gaugerod.basis.errors import InputRefused
from gaugerod.job.model import Building


def read_building(table: dict[str, Any]) -> Building:
    """The building in one ``[[building]]`` table. Raises InputRefused with every fault, fields counted from the table."""
    contradicting = list(building_contradictions(table))
    try:
        checked = BuildingTable.model_validate(table)
    except ValidationError as error:
        raise InputRefused([*faults_of(error, model=BuildingTable, document=table), *contradicting]) from None
    if contradicting:
        raise InputRefused(contradicting)
    return building_of(checked)


def building_of(table: BuildingTable) -> Building:
    """The building as the engine takes it. Scope: a table without faults."""
    return Building(
        name=table.name,
        plan=table.plan(),
        rafter_spacing_mm=table.rafter_spacing,
        cheeks=table.cheeks.value,
    )
