"""Who calls must say what they want, and take the answer, in good time: a line held open keeps others out."""

import asyncio

import h11
from uvicorn.protocols.http.h11_impl import H11Protocol

HEAD_WITHIN_S = 10.0
"""From the first word of a request to the end of its head (house limit)."""
TAKEN_WITHIN_S = 120.0
"""From the end of an answer until it is taken, by a phone at the edge of the network too (house limit)."""


class PromptProtocol(H11Protocol):
    """The server's own way of speaking, with a limit to waiting: it has one between requests, but none within a head."""

    _late: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]  # as the server has it
        """Someone calls."""
        super().connection_made(transport)
        self._watch()

    def data_received(self, data: bytes) -> None:
        """Something is said."""
        super().data_received(data)
        self._watch()

    def connection_lost(self, exc: Exception | None) -> None:
        """The line is down."""
        self._stop_watching()
        super().connection_lost(exc)

    def timeout_keep_alive_handler(self) -> None:
        """Hang up; what was not taken by then is dropped a while later."""
        super().timeout_keep_alive_handler()
        self.loop.call_later(TAKEN_WITHIN_S, self.transport.abort)

    def _watch(self) -> None:
        if self.conn.their_state is not h11.IDLE:
            self._stop_watching()
        elif self._late is None:
            self._late = self.loop.call_later(HEAD_WITHIN_S, self.timeout_keep_alive_handler)

    def _stop_watching(self) -> None:
        if self._late is not None:
            self._late.cancel()
            self._late = None
