"""What the page of the passphrase shows."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class SignInContext:
    """Where to go after, and what was wrong."""

    to: str
    wrong: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOutContext:
    """Nothing but the question."""
