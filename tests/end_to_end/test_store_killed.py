"""A save acknowledged is a save kept: writers killed at any moment, editors all at once, a disk that takes no more."""

import random
import signal
import sqlite3
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from gaugerod.adapters.store.store import JobStore
from tests.end_to_end.edit_together import edit
from tests.end_to_end.keep_saving import content_of

ROOT = Path(__file__).parents[2]
pytestmark = pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="kill -9 is of POSIX")


def started(module: str, *words: object) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", f"tests.end_to_end.{module}", *map(str, words)],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


@contextmanager
def writer(path: Path, *, pages: int) -> Iterator[subprocess.Popen[str]]:
    process = started("keep_saving", path, pages)
    try:
        yield process
    finally:
        process.kill()
        process.wait()
        for pipe in (process.stdout, process.stderr):
            assert pipe is not None
            pipe.close()


def acknowledged_before_the_kill(path: Path, *, pages: int, after_s: float, at_once: bool) -> list[tuple[str, int]]:
    """Start a writer, kill it, and give what it had acknowledged. ``at_once``: also before its first save."""
    with writer(path, pages=pages) as process:
        assert process.stdout is not None
        first = "" if at_once else process.stdout.readline()
        time.sleep(after_s)
        process.kill()
        process.wait()
        said = (first + process.stdout.read()).splitlines(keepends=True)
        assert process.stderr is not None
        assert "" == process.stderr.read()
    return [(job, int(rev)) for job, rev in (line.split() for line in said if line.endswith("\n"))]


def every_one_is_there(path: Path, acknowledged: list[tuple[str, int]]) -> None:
    with JobStore.open(path) as store:
        for job, rev in acknowledged:
            document = store.load(job, rev).document
            assert document == ({"job": {"title": "kept"}} if rev == 1 else {"content": content_of(job, rev)})
        for line in store.jobs():
            assert [*range(1, line.rev + 1)] == [each.rev for each in store.revisions(line.job)]
    with closing(sqlite3.connect(path)) as connection:
        assert [("ok",)] == connection.execute("PRAGMA integrity_check").fetchall()


def kill_often(path: Path, *, times: int, seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311 - no secret, the same at each run
    acknowledged: list[tuple[str, int]] = []
    for number in range(times):
        new = acknowledged_before_the_kill(
            path, pages=chance.choice([1, 5, 1000]), after_s=chance.uniform(0, 0.12), at_once=number % 5 == 0
        )
        every_one_is_there(path, new)  # the file opens again each time, as it is
        acknowledged.extend(new)
    assert len(acknowledged) > times
    every_one_is_there(path, acknowledged)


def test_every_acknowledged_revision_survives_kills(tmp_path: Path) -> None:
    kill_often(tmp_path / "jobs.sqlite", times=15, seed=1)


@pytest.mark.slow
def test_every_acknowledged_revision_survives_a_hundred_kills(tmp_path: Path) -> None:
    kill_often(tmp_path / "jobs.sqlite", times=100, seed=2)


def test_a_kill_while_the_file_is_being_made_leaves_one_that_opens(tmp_path: Path) -> None:
    chance = random.Random(3)  # noqa: S311 - no secret, the same at each run
    for number in range(8):
        path = tmp_path / f"{number}.sqlite"
        process = started("keep_saving", path, 1000)
        while not path.exists():
            time.sleep(0.0005)
        time.sleep(chance.uniform(0, 0.006))
        process.kill()
        process.communicate()
        with JobStore.open(path) as store:
            store.create({}, by="Ann")


def test_editors_in_many_programs_lose_no_edit_and_no_number_is_given_twice(tmp_path: Path) -> None:
    path, times = tmp_path / "jobs.sqlite", 15
    with JobStore.open(path) as store:
        job = store.create({"job": {}}, by="Ann").job
        editors = [started("edit_together", path, job, f"editor {number}", times) for number in range(4)]
        ends = [editor.communicate(timeout=120) for editor in editors]
        assert [""] * 4 == [errors for _, errors in ends]
        made = sorted(int(rev) for out, _ in ends for rev in out.split())
        assert [*range(2, 4 * times + 2)] == made
        assert {f"editor {number}": times for number in range(4)} == store.load(job).document["job"]


def test_editors_in_many_threads_lose_no_edit_and_no_number_is_given_twice(tmp_path: Path) -> None:
    path, times = tmp_path / "jobs.sqlite", 10
    with JobStore.open(path) as store, JobStore.open(path) as another, ThreadPoolExecutor(8) as pool:
        job = store.create({"job": {}}, by="Ann").job
        runs = [pool.submit(edit, (store, another)[number % 2], job, f"editor {number}", times) for number in range(8)]
        made = sorted(rev for run in runs for rev in run.result())
        assert [*range(2, 8 * times + 2)] == made
        assert {f"editor {number}": times for number in range(8)} == store.load(job).document["job"]


def test_many_programs_may_make_the_file_at_the_same_moment(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    writers = [started("keep_saving", path, 1000) for _ in range(6)]
    for process in writers:
        assert process.stdout is not None
        assert process.stdout.readline(), process.stderr and process.stderr.read()
    for process in writers:
        process.kill()
        process.communicate()
    with JobStore.open(path) as store:
        assert len(store.jobs()) >= 6


def test_a_backup_while_others_save_is_whole_and_of_one_moment(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    with writer(path, pages=20) as process, ThreadPoolExecutor(1) as reader:
        assert process.stdout is not None
        assert process.stdout.readline()
        rest = reader.submit(process.stdout.read)
        with JobStore.open(path) as store:
            for number in range(5):
                done = store.backup(tmp_path / f"copy-{number}.sqlite")
                with JobStore.open(done.path) as copy:
                    lines = copy.jobs()
                    assert done.jobs_count == len(lines)
                    assert done.revisions_count == sum(line.rev for line in lines)
                    assert all(copy.load(line.job).rev == line.rev for line in lines)
        process.kill()
        assert rest.result()


TAKES_NO_MORE = """
import resource, sys
from pathlib import Path
from gaugerod.adapters.store.store import JobStore
from gaugerod.basis.errors import StoreUnusable
store = JobStore.open(Path(sys.argv[1]))
job = store.create({"job": {"title": "kept"}}, by="Ann").job
resource.setrlimit(resource.RLIMIT_FSIZE, (150_000, resource.RLIM_INFINITY))
kept = 1
try:
    while True:
        store.save(job, {"content": __import__("os").urandom(9_000).hex()}, by="Ann", base_rev=kept)
        kept += 1
except StoreUnusable as told:
    print(told.why)
print(job, kept, store.load(job).rev)
"""


def test_a_disk_that_takes_no_more_is_told_and_every_save_before_is_kept(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    done = subprocess.run(
        [sys.executable, "-c", TAKES_NO_MORE, str(path)], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert "" == done.stderr
    why, kept = done.stdout.splitlines()
    assert "nothing was saved" in why
    job, told, read = kept.split()
    assert told == read
    assert int(told) > 1
    with JobStore.open(path) as store:
        assert int(told) == store.load(job).rev
        assert int(told) == len(store.revisions(job))
