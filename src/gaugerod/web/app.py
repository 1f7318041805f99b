"""The app: every page at its path, behind the door."""

import gzip
from collections.abc import Iterator
from importlib.resources import files

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Route

from gaugerod.basis.errors import StoreUnusable
from gaugerod.web.access import Access
from gaugerod.web.answering import TWIN, Front, View
from gaugerod.web.gate.wire import Door
from gaugerod.web.pages.about.view import about_view, light_view
from gaugerod.web.pages.beneath.view import beneath_view
from gaugerod.web.pages.check_roof.view import check_roof_view
from gaugerod.web.pages.clash.view import clash_view
from gaugerod.web.pages.compare.view import compare_view
from gaugerod.web.pages.covering.view import covering_view
from gaugerod.web.pages.edges.view import edges_view
from gaugerod.web.pages.findings.view import findings_view
from gaugerod.web.pages.history.view import go_back_view, history_view
from gaugerod.web.pages.jobs.view import (
    begin_view,
    bring_in_view,
    copy_view,
    jobs_view,
    keep_all_view,
    keep_one_view,
    put_away_view,
    take_out_view,
)
from gaugerod.web.pages.on_roof.view import on_roof_open_view, on_roof_view, shared_on_roof_view
from gaugerod.web.pages.order.view import order_file_view, order_view
from gaugerod.web.pages.plan.view import plan_view
from gaugerod.web.pages.quotation.view import quotation_view
from gaugerod.web.pages.record.view import accept_view, record_view
from gaugerod.web.pages.setting_out.view import setting_out_view
from gaugerod.web.pages.shared.view import shared_file_view, shared_view
from gaugerod.web.pages.sheets.view import file_view, revoke_view, share_view, sheets_view
from gaugerod.web.pages.sign_in.view import sign_in_view, sign_out_view
from gaugerod.web.pages.site.view import site_view
from gaugerod.web.pages.slope.view import slope_view
from gaugerod.web.pages.slopes.view import slopes_view
from gaugerod.web.pages.test_lay.view import test_lay_view
from gaugerod.web.pages.working.view import working_view
from gaugerod.web.rendering import Pages
from gaugerod.web.services import Services
from gaugerod.wiring import drawing_style

BRING_IN = "/bring-in"

_SHOWN: tuple[tuple[str, View], ...] = (
    ("/jobs/{job}/slopes", slopes_view),
    ("/jobs/{job}/findings", findings_view),
    ("/jobs/{job}/working", working_view),
    ("/jobs/{job}/sheets", sheets_view),
    ("/jobs/{job}/on-roof", on_roof_view),
    ("/jobs/{job}/history", history_view),
    ("/jobs/{job}/compare", compare_view),
)
_FILLED_IN: tuple[tuple[str, View], ...] = (
    ("/about", about_view),
    ("/check-roof", check_roof_view),
    ("/jobs/{job}/check-roof", check_roof_view),
    ("/jobs/{job}/site", site_view),
    ("/jobs/{job}/slopes/{slope}", slope_view),
    ("/jobs/{job}/buildings/{building}", plan_view),
    ("/jobs/{job}/covering", covering_view),
    ("/jobs/{job}/covering/own", test_lay_view),
    ("/jobs/{job}/set-out", setting_out_view),
    ("/jobs/{job}/beneath", beneath_view),
    ("/jobs/{job}/edges", edges_view),
    ("/jobs/{job}/order", order_view),
    ("/jobs/{job}/quotation", quotation_view),
    ("/jobs/{job}/record", record_view),
)
_DONE: tuple[tuple[str, View], ...] = (
    ("/jobs", begin_view),
    (BRING_IN, bring_in_view),
    ("/jobs/{job}/copy", copy_view),
    ("/jobs/{job}/put-away", put_away_view),
    ("/jobs/{job}/take-out", take_out_view),
    ("/jobs/{job}/clash", clash_view),
    ("/jobs/{job}/go-back", go_back_view),
    ("/jobs/{job}/record/accept", accept_view),
    ("/jobs/{job}/share", share_view),
    ("/jobs/{job}/revoke", revoke_view),
)
_FILES: tuple[tuple[str, View], ...] = (
    ("/keep-all", keep_all_view),
    ("/jobs/{job}/keep", keep_one_view),
    ("/jobs/{job}/sheets/{file}", file_view),
    ("/jobs/{job}/order/{file}", order_file_view),
    ("/jobs/{job}/on-roof/open", on_roof_open_view),
)
_ASSETS = {
    "app.css": "text/css",
    "app.js": "text/javascript",
    "htmx.min.js": "text/javascript",
    "outline.js": "text/javascript",
    "icon.svg": "image/svg+xml",
}


def make_app(services: Services, access: Access) -> Starlette:
    """The app over these jobs and behind this door."""
    front = Front(services=services, access=access, pages=Pages())

    async def trouble(request: Request, error: Exception) -> Response:
        return front.trouble(request, error.status_code if isinstance(error, HTTPException) else 500)

    async def unusable(request: Request, error: Exception) -> Response:
        return front.trouble(request, 500, unusable=error if isinstance(error, StoreUnusable) else None)

    return Starlette(
        routes=[*_routes(front), *_assets()],
        middleware=[Middleware(Door, hosts=access.hosts, import_path=BRING_IN)],
        exception_handlers={HTTPException: trouble, StoreUnusable: unusable, Exception: trouble},
    )


def _routes(front: Front) -> Iterator[BaseRoute]:
    """Every page with its JSON twin."""
    yield Route("/", front.page(jobs_view), methods=["GET"])
    yield Route(f"/jobs{TWIN}", front.page(jobs_view), methods=["GET"])
    for path, view in _FILES:
        yield Route(path, front.page(view), methods=["GET"])
    for path, view in _SHOWN:
        yield from _with_twin(path, front, view, ["GET"])
    for path, view in _FILLED_IN:
        yield from _with_twin(path, front, view, ["GET", "POST"])
    for path, view in _DONE:
        yield Route(path, front.page(view), methods=["POST"])
    yield Route("/light", front.page(light_view, open_to_all=True), methods=["POST"])
    yield Route("/sign-in", front.page(sign_in_view(front.access), open_to_all=True), methods=["GET", "POST"])
    yield Route("/sign-out", front.page(sign_out_view), methods=["GET", "POST"])
    yield Route("/shared/{token}/files/{file}", front.page(shared_file_view, open_to_all=True), methods=["GET"])
    yield Route("/shared/{token}/on-roof", front.page(shared_on_roof_view, open_to_all=True), methods=["GET"])
    for path in (f"/shared/{{token}}{TWIN}", "/shared/{token}"):
        yield Route(path, front.page(shared_view, open_to_all=True), methods=["GET"])


def _with_twin(path: str, front: Front, view: View, methods: list[str]) -> Iterator[Route]:
    endpoint = front.page(view)
    yield Route(f"{path}{TWIN}", endpoint, methods=methods)
    yield Route(path, endpoint, methods=methods)


def _assets() -> Iterator[Route]:
    """The files of the pages themselves, read once."""
    folder = files("gaugerod.web").joinpath("asset")
    for name, kind in _ASSETS.items():
        yield _asset(name, folder.joinpath(name).read_bytes(), kind)
    yield _asset("drawing.css", drawing_style().encode(), "text/css")


def _asset(name: str, content: bytes, kind: str) -> Route:
    """Pressed where the browser takes it so. Pages are never: what is typed and the token would stand in one press."""
    pressed = gzip.compress(content, mtime=0)

    async def asset(request: Request) -> Response:
        headers = {"cache-control": "public, max-age=3600", "vary": "accept-encoding"}
        if "gzip" not in request.headers.get("accept-encoding", ""):
            return Response(content, media_type=kind, headers=headers)
        return Response(pressed, media_type=kind, headers={**headers, "content-encoding": "gzip"})

    return Route(f"/asset/{name}", asset, methods=["GET"])
