"""What the page of cautions and settings shows."""

from dataclasses import dataclass

from gaugerod.web.form import Choice, Field


@dataclass(frozen=True, slots=True, kw_only=True)
class AboutContext:
    """The cautions, the settings of this browser, and the version."""

    cautions: tuple[str, ...]
    version: str
    who: Field
    lights: tuple[Choice, ...]
    light: str
