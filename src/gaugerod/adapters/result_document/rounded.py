"""Numbers as the documents write them."""

from collections.abc import Iterable, Sequence


def fine(number: float) -> float:
    """To a ten-thousandth, so that the same roof always gives the same text."""
    return round(number, 4) + 0.0


def fine_points(points: Iterable[Sequence[float]]) -> list[list[float]]:
    """Corners, each as a list of its lengths."""
    return [[fine(part) for part in point] for point in points]
