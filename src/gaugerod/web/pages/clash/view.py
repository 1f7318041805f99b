"""The choice between two changes of the same thing."""

import json
from typing import Any

from gaugerod.adapters.store.merge import Path, Side
from gaugerod.web.asked import Asked
from gaugerod.web.inside import inside
from gaugerod.web.keeping import together
from gaugerod.web.reply import Go, Reply
from gaugerod.web.services import Services

_CHOICE = "choose:"


def clash_view(services: Services, asked: Asked) -> Reply:
    """Save with what was chosen."""
    job = asked.at["job"]
    go_to = inside(asked.form.get("go_to", ""), otherwise=f"/jobs/{job}/set-out")
    mine = _document(asked.form.get("document", ""))
    given = asked.form.get("base_rev", "")
    if mine is None or not (given.isascii() and given.isdigit() and len(given) < 10):
        return Go(to=go_to)
    base = services.store.load(job, int(given))
    return together(services, by=asked.who, base=base, mine=mine, chosen=_chosen(asked), go_to=go_to)


def _chosen(asked: Asked) -> dict[Path, Side]:
    chosen: dict[Path, Side] = {}
    for name, value in asked.form.items():
        if name.startswith(_CHOICE) and value in ("mine", "theirs"):
            try:
                path = json.loads(name.removeprefix(_CHOICE))
            except (ValueError, RecursionError):
                continue
            if isinstance(path, list) and all(isinstance(word, str) for word in path):
                chosen[tuple(path)] = "mine" if value == "mine" else "theirs"
    return chosen


def _document(text: str) -> dict[str, Any] | None:
    try:
        document = json.loads(text)
    except (ValueError, RecursionError):
        return None
    return document if isinstance(document, dict) else None
