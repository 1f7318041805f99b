"""Places to go back to: only inside this program."""

import re

_PLACE = re.compile(r"/(?:[A-Za-z0-9_.~-]+/?)*")


def inside(place: str, *, otherwise: str) -> str:
    """The place when it is a plain path of ours, otherwise the other.

    >>> inside("/jobs/a1/set-out", otherwise="/"), inside("//elsewhere.example/", otherwise="/"), inside("https:x", otherwise="/")
    ('/jobs/a1/set-out', '/', '/')
    """
    return place if len(place) < 300 and _PLACE.fullmatch(place) else otherwise
