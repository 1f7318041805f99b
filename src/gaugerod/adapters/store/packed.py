"""Documents as they lie on the disk: JSON, pressed, and proved to come back as they went in."""

import json
import zlib
from datetime import UTC, datetime

from gaugerod.adapters.store.records import Document
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.standards.edition import Edition


def packed(document: Document) -> bytes:
    """The document as bytes. Raises InputRefused for what JSON cannot hold: then it would not come back as it was typed."""
    try:
        text = json.dumps(document, allow_nan=False, separators=(",", ":"))
        comes_back = json.loads(text) == document
    except (TypeError, ValueError, RecursionError) as error:
        raise _refused(f"something JSON cannot hold ({error})") from None
    if not comes_back:
        raise _refused("something JSON would change")
    return zlib.compress(text.encode("ascii"))


def unpacked(content: bytes) -> Document:
    """The document in the bytes. Raises ValueError or zlib.error when they are damaged: they carry their own checksum."""
    document: Document = json.loads(zlib.decompress(content))
    return document


def title_of(document: Document) -> str:
    """The job's title for the list; empty while none can be read."""
    return _stated(document, "title", left_out="")


def edition_of(document: Document) -> str:
    """The edition asked for; left out, the door takes the British one."""
    return _stated(document, "edition", left_out=Edition.GB.value)


def storable(text: str) -> str:
    """The text with half characters replaced: any other text SQLite keeps as it is. The document itself loses nothing."""
    return text.encode("utf-8", errors="replace").decode("utf-8")


def written_time(at: datetime) -> str:
    """The moment in UTC, to the microsecond, so that times sort as text."""
    return at.astimezone(UTC).isoformat(timespec="microseconds")


def _stated(document: Document, key: str, *, left_out: str) -> str:
    table = document.get("job")
    value = table.get(key, left_out) if isinstance(table, dict) else left_out
    return storable(value) if isinstance(value, str) else ""


def _refused(given: str) -> InputRefused:
    allowed = "tables, lists, text, numbers, true and false"
    return InputRefused([Fault("file", given, allowed, "Nothing was saved. Write such values as text, in quotes.")])
