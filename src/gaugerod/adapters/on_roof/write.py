"""Writes the page: its words, style, script and data in one file that asks nothing of any network."""

import html
import json
import re
from base64 import b64encode
from datetime import datetime
from hashlib import sha256
from importlib.resources import files

from gaugerod.adapters.on_roof.page_data import page_data
from gaugerod.adapters.on_roof.plain_tables import plain_tables
from gaugerod.job.result import Result

_SCRIPTS = ("exact.js", "lengths.js", "re_gauge.js", "rods.js", "kept.js", "phone.js", "page.js", "again.js")
"""In the order they build on one another."""


def write_on_roof_html(result: Result, *, made_at: datetime) -> str:
    """The page as one HTML file. It keeps its own strict policy: only the style and script that are in it may run.

    Scope: a phone's or laptop's browser, opened from the file itself; without a script it shows the marks as tables.
    """
    parts = {
        "title": html.escape(result.job.title),
        "policy": on_roof_policy(),
        "style": _style(),
        "script": _script(),
        "data": json_in_html(page_data(result, made_at=made_at)),
        "tables": plain_tables(result),
    }
    return re.sub(r"\{\{(\w+)\}\}", lambda place: parts[place[1]], _asset("page.html"))


def on_roof_policy() -> str:
    """The content security policy of the page, the same for every job: nothing is loaded from anywhere."""
    return (
        f"default-src 'none'; script-src '{_hash(_script())}'; style-src '{_hash(_style())}'; "
        "base-uri 'none'; form-action 'none'"
    )


def json_in_html(document: object) -> str:
    r"""JSON that can stand inside a script element: no mark in it can end the element or begin another.

    >>> json_in_html({"title": "</script><b>&"})
    '{"title":"\\u003c/script\\u003e\\u003cb\\u003e\\u0026"}'
    """
    text = json.dumps(document, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return re.sub(r"[<>&\u2028\u2029]", lambda mark: f"\\u{ord(mark[0]):04x}", text)


def _style() -> str:
    return _asset("page.css")


def _script() -> str:
    return "\n".join(_asset(name) for name in _SCRIPTS)


def _asset(name: str) -> str:
    return files("gaugerod.adapters.on_roof").joinpath(name).read_text(encoding="utf-8")


def _hash(text: str) -> str:
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode()}"
