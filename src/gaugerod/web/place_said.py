"""Where something stands in a job file, in words."""

import re

_PART = re.compile(r"([^.\[\]]+)|\[(\d+)\]")


def place_said(field: str) -> str:
    """The path of a field as one says it: counted from one, without dots and brackets.

    >>> place_said("slope[0].rafters[1].length"), place_said("set_out.eaves_overhang"), place_said("job")
    ('slope 1, rafter 2, length', 'set out, eaves overhang', 'job')
    """
    said: list[str] = []
    for name, index in _PART.findall(field):
        if name or not said:
            said.append(name.replace("_", " ") or f"number {int(index) + 1}")
        else:
            said[-1] = f"{said[-1].removesuffix('s')} {int(index) + 1}"
    return ", ".join(said)
