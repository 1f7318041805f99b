"""The whole job, from document to result, beside parts of itself and a plain calculation."""

from collections.abc import Iterator
from importlib.resources import files
from time import perf_counter

from benchmarks.plain_house import PLAIN_HOUSE
from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.model import Job
from gaugerod.job.set_out import set_out

ROUNDS = 7


def rows() -> Iterator[tuple[str, str, str]]:
    """Each example's best time over several rounds, against the smallest of them."""
    jobs = {name: _job(name) for name in ("demo", "plain-tiles", "slates", "random-slates", "hipped-house")}
    best_ms = {name: min(_once_ms(job) for _ in range(ROUNDS)) for name, job in jobs.items()}
    base_ms = best_ms["demo"]
    for name, taken_ms in best_ms.items():
        yield f"set out {name}", f"{taken_ms / base_ms:.2f}×", f"{taken_ms:.1f} ms; the demo is 1"
    plain = _big_plain_tiled_house()
    taken_ms = min(_once_ms(plain) for _ in range(ROUNDS))
    units = sum(slope.laid.laying.whole_count for slope in set_out(plain).slopes if slope.laid)
    yield "a hipped house of 200 m² in plain tiles", f"{taken_ms:.0f} ms", f"aim 60 ms; {units} whole tiles"


def _job(name: str) -> Job:
    return read_job_text(files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_bytes())


def _once_ms(job: Job) -> float:
    start = perf_counter()
    set_out(job)
    return (perf_counter() - start) * 1e3


def _big_plain_tiled_house() -> Job:
    return read_job_text(PLAIN_HOUSE.encode())


if __name__ == "__main__":
    for name, figure, note in rows():
        print(name, figure, note)
