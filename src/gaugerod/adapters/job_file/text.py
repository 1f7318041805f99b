"""From the bytes of a job file to its document: TOML or JSON, of a size and depth that a job can have."""

import json
import re
import tomllib
from collections import Counter
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from gaugerod.adapters.job_file.refusing import shown
from gaugerod.basis.errors import Fault, InputRefused

LARGEST_BYTES = 250_000
"""A hundred times a usual job. What is larger is no job file (house limit)."""
DEEPEST_COUNT = 10
"""A job is five deep: slope, its number, rafters, their number, at (house limit)."""
MOST_DOTS_COUNT = 1_000
"""More dots in one line would be a key without end, which takes the reader of TOML hours (house limit)."""


def document_in_file(path: Path) -> dict[str, Any]:
    """The document in a file. Raises InputRefused."""
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_BYTES + 1)
    except OSError as error:
        raise _refused(str(path), "a job file that can be read", f"It cannot be opened: {error.strerror}.") from None
    return document_in_text(content, as_json=path.suffix.lower() == ".json")


def document_in_text(content: bytes, *, as_json: bool = False) -> dict[str, Any]:
    """The document in bytes: JSON when it says so or begins with a brace, otherwise TOML. Raises InputRefused."""
    if len(content) > LARGEST_BYTES:
        raise _refused(f"more than {LARGEST_BYTES} bytes", f"up to {LARGEST_BYTES} bytes", "This is no job file.")
    text = _text(content)
    document = _from_json(text) if as_json or text.lstrip().startswith("{") else _from_toml(text)
    if not isinstance(document, dict):
        raise _refused(shown(document), "tables: job, covering, slope", "Write it as the reference shows.")
    if _too_deep(document):
        raise _refused("tables inside tables inside tables", f"at most {DEEPEST_COUNT} deep", "This is no job file.")
    return document


def _text(content: bytes) -> str:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        do = "A picture, a PDF or a backup is no job file: choose another. A job you wrote: save it as plain text, UTF-8."
        raise _refused("bytes that are no text", "text in UTF-8", do) from None
    if not text.strip():
        raise _refused("nothing", "a job", "The file is empty. Start from the example in the reference.")
    return text


def _from_toml(text: str) -> object:
    if any(line.count(".") > MOST_DOTS_COUNT for line in text.splitlines()):
        raise _refused("a line full of dots", f"up to {MOST_DOTS_COUNT} in a line", "This is no job file.")
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _refused(shown(str(error)), "TOML", f"{_where(str(error))} {_likeliest(str(error))}") from None
    except (RecursionError, ValueError) as error:
        raise _refused(shown(str(error)), "TOML", "This is no job file.") from None


def _where(message: str) -> str:
    line = re.search(r"at line (\d+)", message)
    return f"Mend line {line[1]}." if line else "Mend the end of the file: something is left open."


def _likeliest(message: str) -> str:
    if "overwrite" in message or "twice" in message or "already" in message:
        return "A key or table stands there a second time."
    return "Lengths with a unit go in quotes."


def _from_json(text: str) -> object:
    try:
        return json.loads(text, object_pairs_hook=_each_key_once)
    except json.JSONDecodeError as error:
        raise _refused(shown(error.msg), "JSON", f"Mend line {error.lineno}, column {error.colno}.") from None
    except (RecursionError, ValueError) as error:
        raise _refused(shown(str(error)), "JSON", "This is no job file.") from None


def _each_key_once(pairs: list[tuple[str, object]]) -> dict[str, object]:
    table = dict(pairs)
    if len(table) < len(pairs):
        twice = next(key for key, times in Counter(key for key, _ in pairs).items() if times > 1)
        raise _refused(f"the key {shown(twice)} twice in one table", "each key once", "Take one of them out.")
    return table


def _too_deep(document: object) -> bool:
    """Is anything deeper than a job can be? Looked at level by level, so that no depth can harm."""
    level: list[object] = [document]
    for _ in range(DEEPEST_COUNT):
        level = [part for whole in level for part in _parts(whole)]
    return bool(level)


def _parts(whole: object) -> Iterable[object]:
    if isinstance(whole, dict):
        return whole.values()
    return whole if isinstance(whole, list) else ()


def _refused(given: str, allowed: str, do: str) -> InputRefused:
    return InputRefused([Fault("file", given, allowed, do)])
