"""The passphrase: only its hash is kept, in the data folder, for its owner's eyes."""

import os
from pathlib import Path

from argon2 import PasswordHasher
from argon2.exceptions import Argon2Error, InvalidHashError

LEAST_LETTERS_COUNT = 10
"""Shorter ones can be guessed even with the waits between tries (house limit)."""
MOST_LETTERS_COUNT = 500
_FILE = "passphrase.argon2"


class PassphraseUnfit(ValueError):  # noqa: N818 - named for what it is, as all of ours
    """The passphrase is too short or too long; says so."""


def keep_passphrase(passphrase: str, *, folder: Path) -> None:
    """Keep the hash in the data folder. Raises PassphraseUnfit."""
    if not LEAST_LETTERS_COUNT <= len(passphrase) <= MOST_LETTERS_COUNT:
        raise PassphraseUnfit(
            f"a passphrase has {LEAST_LETTERS_COUNT} to {MOST_LETTERS_COUNT} letters; a few words do well"
        )
    write_private(folder / _FILE, PasswordHasher().hash(passphrase).encode())


def kept_hash(folder: Path) -> str | None:
    """The hash in the data folder; None when none was ever kept."""
    path = folder / _FILE
    return path.read_text("utf-8").strip() if path.is_file() else None


def fits(passphrase: str, *, kept: str) -> bool:
    """Is this the passphrase?"""
    if len(passphrase) > MOST_LETTERS_COUNT:
        return False
    try:
        return PasswordHasher().verify(kept, passphrase)
    except (Argon2Error, InvalidHashError):
        return False


def write_private(path: Path, content: bytes) -> None:
    """Write a file that only its owner may read."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "wb") as file:
        file.write(content)
