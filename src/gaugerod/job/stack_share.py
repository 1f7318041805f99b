"""One stack of random slates on several slopes: each is planned with its share, so that no slate is promised twice."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import floor

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.coverings.double_lap import Heap, RandomSlates
from gaugerod.job.model import Job, Slope

_SOURCE = Citation("one stack is shared between slopes by eaves × rafter", Basis.HOUSE)


@dataclass(frozen=True, slots=True, kw_only=True)
class StackShares:
    """The job as each slope is planned, by the slope's name, and what is said of the sharing."""

    jobs: dict[str, Job]
    findings: tuple[Finding, ...]


def stack_shares(job: Job, slopes: Sequence[Slope]) -> StackShares:
    """Every slope's part of the stack; any other covering, or a lone slope, is left as it is."""
    stack = job.covering
    if not isinstance(stack, RandomSlates) or len(slopes) < 2:
        return StackShares(jobs={slope.name: job for slope in slopes}, findings=())
    sizes_mm2 = [slope.taped.eaves_mm * max(length_mm for _, length_mm in slope.taped.rafters) for slope in slopes]
    ratios = [size_mm2 / sum(sizes_mm2) for size_mm2 in sizes_mm2]
    jobs = {
        slope.name: replace(job, covering=replace(stack, heaps=tuple(_share(heap, ratio) for heap in stack.heaps)))
        for slope, ratio in zip(slopes, ratios, strict=True)
    }
    shares = ", ".join(f"{slope.name} {ratio:.1%}" for slope, ratio in zip(slopes, ratios, strict=True))
    told = not_covered(
        rule="stack shared",
        where="stack",
        proposed=None,
        unit="ratio",
        citation=_SOURCE,
        says=f"One stack serves {len(slopes)} slopes, so every heap is shared between them by size: {shares}. Carry up no more "
        "than its share to each. Where another sharing suits the roof better, write each slope as a job of its own with its "
        "own heaps.",
    )
    return StackShares(jobs=jobs, findings=(told,))


def _share(heap: Heap, ratio: float) -> Heap:
    """That part of the heap, slates counted down to whole ones."""
    return replace(
        heap,
        slates_count=None if heap.slates_count is None else floor(heap.slates_count * ratio),
        run_mm=None if heap.run_mm is None else heap.run_mm * ratio,
    )
