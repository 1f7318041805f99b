"""What a page is asked, as plain data: no page sees the wire."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

UNNAMED = "someone"
"""Who saved, where the browser was given no name."""
THE_PROGRAM = "gaugerod"
"""Who saved the example that stands in the list at the very first start."""


class Light(StrEnum):
    """Which theme a person wants: as the phone has it, or always daylight, or always night."""

    AS_THE_PHONE = "auto"
    DAY = "day"
    NIGHT = "night"


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One request.

    ``path``      the page's own path, without ``.json``
    ``at``        the parts of the path that have a name: job, slope
    ``query``, ``form``  what was given; the last value of each name, as typed
    ``files``     files given, by the name of their field
    ``posted``    is something to be done, or only shown?
    ``as_json``   is the JSON twin wanted?
    ``part``      is only the answer wanted, to be put into a page that stands?
    ``who``       the name that goes on every save
    ``address``   where the request comes from
    ``reached_at``  what the person's browser calls this machine, with its port
    """

    path: str
    at: Mapping[str, str] = field(default_factory=dict)
    query: Mapping[str, str] = field(default_factory=dict)
    form: Mapping[str, str] = field(default_factory=dict)
    files: Mapping[str, bytes] = field(default_factory=dict)
    posted: bool = False
    as_json: bool = False
    part: bool = False
    who: str = UNNAMED
    light: Light = Light.AS_THE_PHONE
    address: str = ""
    reached_at: str = ""
