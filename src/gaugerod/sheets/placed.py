"""A drawing laid on its paper."""

from dataclasses import dataclass

from gaugerod.sheets.drawing import Drawing, Paper


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A drawing with the paper it goes on."""

    drawing: Drawing
    paper: Paper

    @property
    def scale_said(self) -> str:
        """The scale as a caption says it."""
        return "full size" if self.paper.scale_ratio == 1 else f"1:{self.paper.scale_ratio:g}"
