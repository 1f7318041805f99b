"""Share links: a token opens one job for reading until it is revoked. Only its SHA-256 is kept, so a stolen file opens none."""

import secrets
import sqlite3
from datetime import datetime
from hashlib import sha256

from gaugerod.adapters.store.packed import storable, written_time

_TOKEN_BYTES = 32
"""256 random bits: beyond guessing, however many tries."""


def share_job(connection: sqlite3.Connection, job: str, *, now: datetime) -> str:
    """A new token for the job."""
    token = secrets.token_urlsafe(_TOKEN_BYTES)
    connection.execute(
        "INSERT INTO share (token_sha256, job, created_at) VALUES (?, ?, ?)", (_seal(token), job, written_time(now))
    )
    return token


def shared_job(connection: sqlite3.Connection, token: str) -> str | None:
    """The job the token opens; None for one unknown or revoked."""
    row = connection.execute(
        "SELECT job FROM share WHERE token_sha256 = ? AND revoked_at IS NULL", (_seal(token),)
    ).fetchone()
    return None if row is None else str(row["job"])


def revoke_shares(connection: sqlite3.Connection, job: str, *, now: datetime) -> int:
    """Revoke every live token of the job; gives how many there were."""
    return connection.execute(
        "UPDATE share SET revoked_at = ? WHERE job = ? AND revoked_at IS NULL", (written_time(now), job)
    ).rowcount


def _seal(token: str) -> str:
    return sha256(storable(token).encode()).hexdigest()
