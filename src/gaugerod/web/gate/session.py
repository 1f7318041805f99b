"""Sessions: a cookie that carries its own seal, and the token that every post must bring along.

The cookie says who it was given to (at random), until when it is signed in, and the seal of both. Nothing is kept here
but what was signed out before its time.
"""

import hmac
import secrets
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path

from gaugerod.web.gate.passphrase import write_private

SIGNED_IN_FOR_S = 30 * 24 * 3600
"""A month on a phone that its owner keeps (house limit)."""
_KEY_FILE = "session.key"
_KEY_BYTES = 32


@dataclass(frozen=True, slots=True)
class Session:
    """One browser. ``until_s`` is when it stops being signed in, in seconds of the clock; 0: it is not."""

    id: str
    until_s: int = 0


@dataclass(slots=True)
class Sessions:
    """Gives out sessions and knows its own. ``key`` seals them; a new key or passphrase ends them all."""

    key: bytes
    _ended: dict[str, int] = field(default_factory=dict)

    def new(self, *, signed_in_from_s: int | None = None) -> Session:
        """A session nobody had before; signed in from then on, or not at all."""
        until_s = 0 if signed_in_from_s is None else signed_in_from_s + SIGNED_IN_FOR_S
        return Session(secrets.token_urlsafe(18), until_s)

    def cookie(self, session: Session) -> str:
        """What the browser keeps."""
        return f"{session.id}.{session.until_s}.{self._seal('session', session.id, session.until_s)}"

    def of_cookie(self, cookie: str | None) -> Session | None:
        """The session of a cookie; None when its seal is not ours."""
        match (cookie or "").split("."):
            case [id_, until, seal] if until.isascii() and until.isdigit() and len(until) <= 12:
                session = Session(id_, int(until))
                if _same(seal, self._seal("session", session.id, session.until_s)):
                    return session
        return None

    def signed_in(self, session: Session, *, now_s: float) -> bool:
        """Is it signed in now?"""
        return session.until_s > now_s and session.id not in self._ended

    def end(self, session: Session, *, now_s: float) -> None:
        """Sign it out, wherever copies of its cookie may be."""
        self._ended = {id_: until_s for id_, until_s in self._ended.items() if until_s > now_s}
        if session.until_s > now_s:
            self._ended[session.id] = session.until_s

    def token(self, session: Session) -> str:
        """What every post of this session must bring along."""
        return self._seal("post", session.id, session.until_s)

    def token_fits(self, session: Session, token: str) -> bool:
        """Is it the token of this session?"""
        return _same(token, self.token(session))

    def _seal(self, use: str, id_: str, until_s: int) -> str:
        return hmac.new(self.key, f"{use}:{id_}:{until_s}".encode(), sha256).hexdigest()


def _same(given: str, ours: str) -> bool:
    return hmac.compare_digest(given.encode(), ours.encode())


def kept_key(folder: Path, *, passphrase_hash: str | None) -> bytes:
    """The key of this data folder, made at the first start. It changes with the passphrase, which so signs everyone out."""
    path = folder / _KEY_FILE
    if not path.is_file() or path.stat().st_size != _KEY_BYTES:
        write_private(path, secrets.token_bytes(_KEY_BYTES))
    return hmac.new(path.read_bytes(), (passphrase_hash or "").encode(), sha256).digest()
