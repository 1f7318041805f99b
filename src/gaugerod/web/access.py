"""Whether a passphrase is asked for, and who has given it."""

from collections.abc import Callable
from dataclasses import dataclass, field

from gaugerod.web.gate.hosts import Hosts
from gaugerod.web.gate.session import Session, Sessions
from gaugerod.web.gate.throttle import Throttle


@dataclass(frozen=True, slots=True, kw_only=True)
class Access:
    """The rules of the door.

    ``passphrase_hash``  None: no passphrase is asked for, and only this machine can come in
    ``secure``           are we served over TLS?
    ``clock_s``          seconds since some beginning, going on through restarts
    """

    hosts: Hosts
    sessions: Sessions
    passphrase_hash: str | None
    secure: bool
    clock_s: Callable[[], float]
    throttle: Throttle = field(default_factory=Throttle)

    @property
    def cookie_name(self) -> str:
        """The name of the session cookie; under TLS one that only this very host can set."""
        return "__Host-gaugerod" if self.secure else "gaugerod"

    def lets_in(self, session: Session) -> bool:
        """May this session see the jobs?"""
        return self.passphrase_hash is None or self.sessions.signed_in(session, now_s=self.clock_s())
