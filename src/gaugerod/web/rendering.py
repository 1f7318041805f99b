"""From what a page shows to HTML, or to its JSON twin."""

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, fields, is_dataclass
from datetime import datetime
from enum import Enum
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from gaugerod.job.cautions import CAUTIONS
from gaugerod.web.asked import Light
from gaugerod.web.reply import JobHead, Shown
from gaugerod.web.steps import Step, steps_of

PART_BLOCK = "answer"
"""The part of every page that is redrawn while a person types."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """What stands around every page: its title, the job and its steps, the light, and the token for posts."""

    title: str
    page: str
    path: str
    job: JobHead | None
    steps: tuple[Step, ...]
    light: Light
    token: str
    who: str
    can_sign_out: bool
    disclaimer: str = CAUTIONS[-1]


class Pages:
    """The templates. Everything put into them is escaped, unless it is markup that our own writers made."""

    def __init__(self) -> None:
        self._templates = Environment(
            loader=FileSystemLoader(Path(__file__).parent), autoescape=True, undefined=StrictUndefined,
            trim_blocks=True, lstrip_blocks=True, auto_reload=False,
        )  # fmt: skip
        self._templates.globals["parts"] = self._templates.get_template("parts.html").module

    def html(self, shown: Shown, frame: Frame, *, part: bool) -> str:
        """The whole page; or only its answer, for a page that stands already."""
        template = self._templates.get_template(f"pages/{shown.page}/page.html")
        variables = {field.name: getattr(shown.context, field.name) for field in fields(_checked(shown.context))}
        variables["frame"] = frame
        if not part or PART_BLOCK not in template.blocks:
            return template.render(variables)
        return "".join(template.blocks[PART_BLOCK](template.new_context(variables)))


def frame_of(shown: Shown, *, path: str, light: Light, token: str, who: str, can_sign_out: bool) -> Frame:
    """The frame of a page."""
    return Frame(
        title=shown.title,
        page=shown.page,
        path=path,
        job=shown.job,
        steps=() if shown.job is None else steps_of(shown.job.id, here=shown.page),
        light=light,
        token=token,
        who=who,
        can_sign_out=can_sign_out,
    )


def json_of(shown: Shown, *, token: str) -> str:
    """The JSON twin: the same context, with the job and the token that a post must bring along."""
    twin: dict[str, Any] = {"page": shown.page, "title": shown.title, "token": token}
    if shown.job is not None:
        twin["job"] = asdict(shown.job)
    twin.update(asdict(_checked(shown.context)))
    return json.dumps(twin, ensure_ascii=False, allow_nan=False, default=_plain)


def _checked(context: object) -> Any:  # noqa: ANN401 - the contexts of pages have nothing in common but being dataclasses
    if not is_dataclass(context):
        raise TypeError(f"the context of a page is a dataclass, not {type(context).__name__}")
    return context


def _plain(value: object) -> object:
    match value:
        case datetime():
            return value.isoformat()
        case Enum():
            return value.value
        case Markup():
            return str(value)
        case Mapping():
            return dict(value)
        case frozenset():
            return sorted(value)
        case _:
            raise TypeError(f"{type(value).__name__} has no place in a context")
