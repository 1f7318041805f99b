"""What a page answers: something to show, somewhere to go, or a file."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class JobHead:
    """The job a page belongs to, as its head shows it."""

    id: str
    title: str
    rev: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A page: its folder, its title, what is in it, and the job it belongs to.

    ``context`` is a frozen dataclass; the page and its JSON twin show the same.
    """

    page: str
    title: str
    context: object
    job: JobHead | None = None
    status: int = 200
    retry_after_count: int | None = None
    """Seconds to wait before asking again; None: no need."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Go:
    """Done; the answer stands at another page."""

    to: str
    cookies: Mapping[str, str] = field(default_factory=dict)
    """Cookies to set, without secrets: who, and which light."""
    signed_in: bool | None = None
    """Start a signed-in session, or end it; None: leave the session as it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """A file."""

    content: bytes
    kind: str
    name: str
    inline: bool = False
    """Shown in the browser rather than kept as a file."""
    policy: str = ""
    """For a page that brings its own content security policy; empty: that of every other page."""


Reply = Shown | Go | Sent
