"""No rule answers for a figure that cannot be: it refuses instead, and names itself."""

from math import isfinite

from gaugerod.basis.errors import NothingToSetOut


def refuse_unreal(*, rule: str, where: str, value: float, unit: str) -> None:
    """Raise NothingToSetOut for a figure that is not a number or has no end.

    >>> refuse_unreal(rule="headlap", where="rear", value=float("nan"), unit="mm")
    Traceback (most recent call last):
    gaugerod.basis.errors.NothingToSetOut: headlap, rear: nan mm is no measurement
    """
    if not isfinite(value):
        raise NothingToSetOut(f"{rule}, {where}: {value:g} {unit} is no measurement")


def refuse_unless_above_nothing(*, rule: str, where: str, value: float, unit: str) -> None:
    """Raise NothingToSetOut for a figure that must be above nothing and is not.

    >>> refuse_unless_above_nothing(rule="gauge", where="rear", value=0.0, unit="mm")
    Traceback (most recent call last):
    gaugerod.basis.errors.NothingToSetOut: gauge, rear: 0 mm is not above nothing
    """
    refuse_unreal(rule=rule, where=where, value=value, unit=unit)
    if value <= 0:
        raise NothingToSetOut(f"{rule}, {where}: {value:g} {unit} is not above nothing")
