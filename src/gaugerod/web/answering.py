"""From the wire to a page and back: reads what was asked, keeps the door, and sends what the page answers."""

import asyncio
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, assert_never
from urllib.parse import quote, unquote

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, RedirectResponse, Response

from gaugerod.basis.errors import NotKept, StoreUnusable
from gaugerod.web.access import Access
from gaugerod.web.asked import UNNAMED, Asked, Light
from gaugerod.web.gate.session import Session
from gaugerod.web.pages.trouble.context import TroubleContext
from gaugerod.web.rendering import Pages, frame_of, json_of
from gaugerod.web.reply import Go, Reply, Sent, Shown
from gaugerod.web.services import Services

View = Callable[[Services, Asked], Reply]
ANSWER_WITHIN_S = 60.0
_MOST_FIELDS_COUNT = 3_000
_COOKIES_FOR_S = 365 * 24 * 3600
TWIN = ".json"


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """Everything that answering needs."""

    services: Services
    access: Access
    pages: Pages

    def page(self, view: View, *, open_to_all: bool = False) -> Callable[[Request], Any]:
        """The view behind its door."""

        async def answer(request: Request) -> Response:
            session = self.access.sessions.of_cookie(request.cookies.get(self.access.cookie_name))
            known = session if session is not None else self.access.sessions.new()
            if not open_to_all and not self.access.lets_in(known):
                return self._sign_in_first(request)
            asked = await self._asked(request, session)
            try:
                async with asyncio.timeout(ANSWER_WITHIN_S):
                    reply = await run_in_threadpool(view, self.services, asked)
            except NotKept:
                raise HTTPException(404) from None
            except TimeoutError:
                raise HTTPException(503) from None
            return self._response(reply, asked, known, new=session is None)

        return answer

    async def _asked(self, request: Request, session: Session | None) -> Asked:
        form: dict[str, str] = {}
        files: dict[str, bytes] = {}
        posted = request.method == "POST"
        if posted:
            async with request.form(max_fields=_MOST_FIELDS_COUNT, max_files=2) as given:
                for name, value in given.multi_items():
                    if isinstance(value, UploadFile):
                        files[name] = await value.read()
                    else:
                        form[name] = value
            self._refuse_strangers(request, session, token=form.pop("token", "") or request.headers.get("x-token", ""))
        light = request.cookies.get("light", "")
        return Asked(
            path=request.url.path.removesuffix(TWIN),
            at={name: str(value) for name, value in request.path_params.items()},
            query=dict(request.query_params),
            form=form,
            files=files,
            posted=posted,
            as_json=wants_json(request),
            part=request.headers.get("hx-request-type") == "partial",
            who=_who(request),
            light=Light(light) if light in set(Light) else Light.AS_THE_PHONE,
            address="" if request.client is None else request.client.host,
            reached_at=f"{request.url.scheme}://{request.url.netloc}",
        )

    def _refuse_strangers(self, request: Request, session: Session | None, *, token: str) -> None:
        """A post must come from a page of ours: the browser says so where it can, and the token always."""
        if request.headers.get("sec-fetch-site", "same-origin") not in {"same-origin", "none"}:
            raise HTTPException(403)
        if session is None or not self.access.sessions.token_fits(session, token):
            raise HTTPException(403)

    def _sign_in_first(self, request: Request) -> Response:
        if request.method == "POST" or wants_json(request) or "hx-request" in request.headers:
            raise HTTPException(401)
        return RedirectResponse(f"/sign-in?to={quote(request.url.path)}", status_code=303)

    def _response(self, reply: Reply, asked: Asked, session: Session, *, new: bool) -> Response:
        response = self._plain_response(reply, asked, session)
        if isinstance(reply, Go) and reply.signed_in is not None:
            now_s = self.access.clock_s()
            self.access.sessions.end(session, now_s=now_s)
            session = self.access.sessions.new(signed_in_from_s=int(now_s) if reply.signed_in else None)
            new = True
        if new:
            self._set_cookie(response, self.access.cookie_name, self.access.sessions.cookie(session))
        if isinstance(reply, Go):
            for name, value in reply.cookies.items():
                self._set_cookie(response, name, value)
        return response

    def _plain_response(self, reply: Reply, asked: Asked, session: Session) -> Response:
        match reply:
            case Shown():
                return self._shown(reply, asked, session)
            case Go():
                if asked.as_json:
                    return JSONResponse({"done": True, "go_to": reply.to})
                return RedirectResponse(reply.to, status_code=303)
            case Sent():
                place = "inline" if reply.inline else "attachment"
                headers = {"content-disposition": f"{place}; filename*=UTF-8''{quote(reply.name, safe='')}"}
                if reply.policy:
                    headers["content-security-policy"] = reply.policy
                return Response(reply.content, media_type=reply.kind, headers=headers)
            case _ as unreachable:
                assert_never(unreachable)

    def _shown(self, shown: Shown, asked: Asked, session: Session) -> Response:
        token = self.access.sessions.token(session)
        headers = {} if shown.retry_after_count is None else {"retry-after": str(shown.retry_after_count)}
        if asked.as_json:
            return Response(
                json_of(shown, token=token), status_code=shown.status, media_type="application/json", headers=headers
            )
        frame = frame_of(
            shown,
            path=asked.path,
            light=asked.light,
            token=token,
            who=asked.who,
            can_sign_out=self.access.passphrase_hash is not None and self.access.lets_in(session),
        )
        return HTMLResponse(
            self.pages.html(shown, frame, part=asked.part),
            status_code=shown.status,
            headers={**headers, "vary": "accept"},
        )

    def trouble(self, request: Request, status: int, *, unusable: StoreUnusable | None = None) -> Response:
        """A plain page for what cannot be answered; ``unusable`` says what is wrong with the kept jobs."""
        context = TroubleContext.of_status(status)
        if unusable is not None:
            context = TroubleContext(
                status=status, says=f"The kept jobs cannot be used. {unusable.why}", do=unusable.do
            )
        if wants_json(request):
            return JSONResponse({"error": status, "says": context.says, "do": context.do}, status_code=status)
        session = self.access.sessions.of_cookie(request.cookies.get(self.access.cookie_name))
        shown = Shown(page="trouble", title=context.says, context=context, status=status)
        light = request.cookies.get("light", "")
        frame = frame_of(
            shown,
            path="/",
            light=Light(light) if light in set(Light) else Light.AS_THE_PHONE,
            token="" if session is None else self.access.sessions.token(session),
            who="",
            can_sign_out=False,
        )
        part = request.headers.get("hx-request-type") == "partial"
        return HTMLResponse(self.pages.html(shown, frame, part=part), status_code=status)

    def _set_cookie(self, response: Response, name: str, value: str) -> None:
        response.set_cookie(
            name, value, max_age=_COOKIES_FOR_S, path="/", secure=self.access.secure, httponly=True, samesite="strict"
        )


def wants_json(request: Request) -> bool:
    """Is the JSON twin asked for, by the path or by what is accepted?"""
    if request.url.path.endswith(TWIN):
        return True
    accepted = request.headers.get("accept", "")
    return "application/json" in accepted and "text/html" not in accepted


def _who(request: Request) -> str:
    """The name that goes on saves: as kept in its cookie, where letters that cookies cannot hold are spelled out."""
    name = unquote(request.cookies.get("who", ""))[:60].strip()
    return name if name and name.isprintable() else UNNAMED
