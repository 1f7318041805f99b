"""What was typed, checked; or every fault of it; or why there is no answer."""

from collections.abc import Mapping
from dataclasses import dataclass

from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.errors import Fault, GaugerodError, InputRefused
from gaugerod.job.roof_checked import RoofToCheck, checked_roof
from gaugerod.web.pages.check_roof.values import document_of
from gaugerod.wiring import roof_from_document


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """The check; or every fault of what was typed; or the reason why there is no answer."""

    roof: RoofToCheck | None = None
    check: RoofCheck | None = None
    faults: tuple[Fault, ...] = ()
    why: str = ""


def checked(values: Mapping[str, str]) -> Checked:
    """Check what was typed. Where one length of a list cannot be told from the next, that list has no other fault."""
    document, unclear = document_of(values)
    lists = {fault.field for fault in unclear}
    try:
        roof = roof_from_document(document)
        if unclear:
            return Checked(faults=unclear)
        return Checked(roof=roof, check=checked_roof(roof))
    except InputRefused as refused:
        others = (fault for fault in refused.faults if not any(fault.field.startswith(f"{each}[") for each in lists))
        return Checked(faults=(*unclear, *others))
    except GaugerodError as error:
        return Checked(why=f"{str(error)[:1].upper()}{str(error)[1:]}")
