"""The outermost door: names, headers, and how much and how long a request may be."""

import asyncio

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from gaugerod.web.gate.hosts import Hosts

LARGEST_BODY_BYTES = 300_000
"""A job file is at most 250 000 bytes; a form with a job in it has little more (house limit)."""
LARGEST_IMPORT_BYTES = 50_000_000
"""Everything of a busy firm, brought over from another machine (house limit)."""
BODY_WITHIN_S = 20.0

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}


class Door:
    """Lets a request in when it names us, and is neither too much nor too slow; sends every answer off with its headers."""

    def __init__(self, app: ASGIApp, *, hosts: Hosts, import_path: str) -> None:
        self.app = app
        self.hosts = hosts
        self.import_path = import_path

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return

        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers.setdefault(name, value)
                headers.setdefault("cache-control", "no-store")
            await send(message)

        if not self.hosts.allow(Headers(scope=scope).get("host", "")):
            refusal = PlainTextResponse("This address does not belong to this program.\n", status_code=421)
            await refusal(scope, receive, send_with_headers)
            return
        most_bytes = LARGEST_IMPORT_BYTES if scope["path"] == self.import_path else LARGEST_BODY_BYTES
        await self.app(scope, _measured(receive, most_bytes=most_bytes), send_with_headers)


def _measured(receive: Receive, *, most_bytes: int) -> Receive:
    """Reads on until the body is too large or takes too long."""
    read_bytes = 0
    until_s = asyncio.get_running_loop().time() + BODY_WITHIN_S
    whole = False

    async def receive_measured() -> Message:
        nonlocal read_bytes, whole
        if whole:
            return await receive()
        try:
            async with asyncio.timeout_at(until_s):
                message = await receive()
        except TimeoutError:
            raise HTTPException(408) from None
        read_bytes += len(message.get("body", b""))
        if read_bytes > most_bytes:
            raise HTTPException(413)
        whole = not message.get("more_body", False)
        return message

    return receive_measured
