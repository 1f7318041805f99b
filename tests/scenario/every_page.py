"""Every page of the app, each with something on it to look at."""

from collections.abc import Mapping
from importlib.resources import files
from typing import Any

from gaugerod.adapters.store.store import JobStore
from gaugerod.web.job_answer import BENEATH
from gaugerod.wiring import document_of_file

_EXAMPLES = files("gaugerod.adapters.job_file").joinpath("examples")
_NO_PAGES = (".json", "/keep", "/keep-all", "/sheets/{file}", "/order/{file}", "/files/{file}")


def every_page(routes: tuple[str, ...], store: JobStore) -> dict[str, str]:
    """Name and path of every page, and of those that look different with another job in them."""
    demo = store.jobs()[-1].job
    hipped = _made(store, document_of_file(_EXAMPLES.joinpath("hipped-house.toml").read_bytes()))
    bare = _made(store, _bare(store.load(demo).document))
    empty = _made(store, {"job": {"edition": "GB"}}, draft=True)
    outside = _made(store, _outside(store.load(demo).document))
    away = store.duplicate(demo, by="a hand").job
    store.archive(away)
    parts = {"job": demo, "slope": "1", "building": "1", "token": store.share(demo)}
    pages = {route: _filled(route, parts) for route in routes if route != "/jobs/{job}/buildings/{building}"}
    pages = {
        route: path
        for route, path in pages.items()
        if not route.endswith(_NO_PAGES) and not route.startswith("/asset/") and "." not in route
    }
    return pages | {
        "put away": "/?put-away=yes",
        "nothing there": "/nowhere",
        "every unit": f"/jobs/{demo}/set-out?units=yes",
        "hipped, slopes": f"/jobs/{hipped}/slopes",
        "hipped, building": f"/jobs/{hipped}/buildings/1",
        "hipped, set out": f"/jobs/{hipped}/set-out",
        "hipped, beneath": f"/jobs/{hipped}/beneath?slope=house+3",
        "hipped, edges": f"/jobs/{hipped}/edges",
        "hipped, order": f"/jobs/{hipped}/order",
        "nothing said of the edges": f"/jobs/{bare}/edges",
        "nothing asked beneath": f"/jobs/{bare}/beneath",
        "empty, beneath": f"/jobs/{empty}/beneath",
        "empty, edges": f"/jobs/{empty}/edges",
        "empty, order": f"/jobs/{empty}/order",
        "empty, quotation": f"/jobs/{empty}/quotation",
        "empty, record": f"/jobs/{empty}/record",
        "empty, slopes": f"/jobs/{empty}/slopes",
        "empty, slope": f"/jobs/{empty}/slopes/new",
        "empty, building": f"/jobs/{empty}/buildings/new",
        "empty, covering": f"/jobs/{empty}/covering",
        "empty, set out": f"/jobs/{empty}/set-out",
        "empty, sheets": f"/jobs/{empty}/sheets",
        "outside, slope": f"/jobs/{outside}/slopes/1",
        "outside, set out": f"/jobs/{outside}/set-out",
        "outside, beneath": f"/jobs/{outside}/beneath",
        "outside, order": f"/jobs/{outside}/order",
        "outside, record": f"/jobs/{outside}/record",
        "outside, findings": f"/jobs/{outside}/findings",
    }


def _filled(route: str, parts: Mapping[str, str]) -> str:
    for name, part in parts.items():
        route = route.replace(f"{{{name}}}", part)
    return route


def _made(store: JobStore, document: dict[str, Any], *, draft: bool = False) -> str:
    return store.create(document, by="a hand", draft=draft).job


def _bare(document: dict[str, Any]) -> dict[str, Any]:
    """Without what lies beneath, and without a word of edges, order and record."""
    return {key: value for key, value in document.items() if key not in {*BENEATH, "edges", "order", "record"}}


def _outside(document: dict[str, Any]) -> dict[str, Any]:
    """Too flat for its tile, and a tape that contradicts itself."""
    slope = {**document["slope"][0], "pitch": 19, "rafters": ["3.2 m", "3.26 m"]}
    return {**document, "job": {**document["job"], "title": "Barn, too flat"}, "slope": [slope]}
