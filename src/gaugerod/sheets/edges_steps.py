"""How each kind of edge is made, in steps: a sentence once, with the edges it is said of where not all of a kind say it."""

from collections.abc import Iterator, Sequence

from gaugerod.edges.answer import MadeEdge
from gaugerod.sheets.sheet import Block, Heading, Steps


def steps_by_kind(edges: Sequence[MadeEdge]) -> Iterator[Block]:
    """The steps of every edge that is made, gathered by kind and by how it is made."""
    alike: dict[tuple[str, str], list[MadeEdge]] = {}
    for edge in edges:
        if edge.made:
            alike.setdefault((_kind(edge), edge.made), []).append(edge)
    for (kind, made), same in alike.items():
        yield Heading(text=f"{kind}: {made}", kept_mm=20.0)
        yield Steps(lines=tuple(_told(same)))


def _kind(edge: MadeEdge) -> str:
    """What it is called over its steps."""
    if edge.line is None:
        return "Opening"
    return edge.line.kind.value.replace("-", " ").capitalize()


def _told(edges: Sequence[MadeEdge]) -> Iterator[str]:
    """Every sentence in its order; one that differs from edge to edge stands where the first edge has it.

    Edges of a kind say the same things in the same order, each with its own figures.
    """
    names = [edge.name for edge in edges]
    for line in _in_order([edge.says for edge in edges]):
        whose = [edge.name for edge in edges if line in edge.says]
        yield line if whose == names else f"{'; '.join(whose)}: {line}"


def _in_order(told: Sequence[tuple[str, ...]]) -> list[str]:
    """All sentences once. Each is put after the one before it in its own edge's steps."""
    merged: list[str] = []
    for says in told:
        at = 0
        for line in says:
            if line in merged:
                at = merged.index(line) + 1
                continue
            merged.insert(_past_own(merged, says, at), line)
            at = merged.index(line) + 1
    return merged


def _past_own(merged: Sequence[str], says: Sequence[str], at: int) -> int:
    """Past sentences that other edges say in this place, up to the next that this edge says too."""
    while at < len(merged) and merged[at] not in says:
        at += 1
    return at
