"""The kept jobs: saving, stale saves, undo, copies, the list, share links."""

import hashlib
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from gaugerod import __version__
from gaugerod.adapters.store.records import Revision, Saved, Stale
from gaugerod.adapters.store.store import JobStore
from gaugerod.basis.errors import InputRefused, NotKept
from tests.scenario.kept_jobs import FIRST, a_job, ticking


@pytest.fixture
def store(tmp_path: Path) -> Iterator[JobStore]:
    with JobStore.open(tmp_path / "data" / "jobs.sqlite", now=ticking()) as opened:
        yield opened


def test_a_job_comes_back_as_it_was_typed_with_who_when_and_under_which_rules(tmp_path: Path) -> None:
    with JobStore.open(tmp_path / "jobs.sqlite", now=lambda: FIRST) as store:
        saved = store.create(a_job(), by="Ann")
    with JobStore.open(tmp_path / "jobs.sqlite") as store:
        assert Revision(
            job=saved.job,
            rev=1,
            at=FIRST,
            by="Ann",
            edition="GB",
            version=__version__,
            title="Yard Cottage",
            draft=False,
            document=a_job(),
        ) == store.load(saved.job)


def test_every_save_is_a_revision(store: JobStore) -> None:
    job = store.create(a_job(), by="Ann").job
    assert Saved(job=job, rev=2) == store.save(job, a_job(pitch="36°"), by="Ben", base_rev=1)
    assert [(1, "Ann"), (2, "Ben")] == [(line.rev, line.by) for line in store.revisions(job)]
    assert ["35°", "36°"] == [store.load(job, rev).document["slope"][0]["pitch"] for rev in (1, 2)]
    assert 2 == store.load(job).rev


def test_a_stale_save_changes_nothing_and_gives_back_what_the_other_saved(store: JobStore) -> None:
    job = store.create(a_job(), by="Ann").job
    store.save(job, a_job(pitch="36°"), by="Ben", base_rev=1)
    outcome = store.save(job, a_job(pitch="37°"), by="Ann", base_rev=1)
    assert Stale(base_rev=1, theirs=store.load(job, 2)) == outcome
    assert 2 == len(store.revisions(job))


@pytest.mark.parametrize("base_rev", [-1, 0, 2, 10**30])
def test_a_base_that_is_not_the_newest_is_stale(store: JobStore, base_rev: int) -> None:
    job = store.create(a_job(), by="Ann").job
    assert isinstance(store.save(job, a_job(), by="Ann", base_rev=base_rev), Stale)


def test_undo_copies_the_old_revision_forward(store: JobStore) -> None:
    job = store.create(a_job(), by="Ann").job
    store.save(job, a_job(pitch="36°"), by="Ben", base_rev=1, draft=True)
    assert Saved(job=job, rev=3) == store.restore(job, 1, by="Cy")
    newest = store.load(job)
    assert (a_job(), "Cy", False) == (newest.document, newest.by, newest.draft)
    assert "36°" == store.load(job, 2).document["slope"][0]["pitch"]


def test_a_copy_is_a_new_job_that_says_so(store: JobStore) -> None:
    job = store.create(a_job(), by="Ann").job
    copy = store.duplicate(job, by="Ben")
    assert copy.job != job
    assert a_job("Yard Cottage (copy)") == store.load(copy.job).document
    assert a_job() == store.load(job).document


@pytest.mark.parametrize("document", [{}, {"job": "Yard"}, {"job": {"title": 3}}, {"job": {"edition": ["GB"]}}])
def test_a_draft_of_any_shape_is_kept_and_copied_as_it_is(store: JobStore, document: dict[str, Any]) -> None:
    saved = store.create(document, by="Ann", draft=True)
    copy = store.duplicate(saved.job, by="Ann")
    for job in (saved.job, copy.job):
        kept = store.load(job)
        assert (document, "", True) == (kept.document, kept.title, kept.draft)


def test_the_list_has_the_newest_title_last_saved_first(store: JobStore) -> None:
    first = store.create(a_job("Yard"), by="Ann").job
    second = store.create(a_job("Long Barn"), by="Ben").job
    assert [second, first] == [line.job for line in store.jobs()]
    store.save(first, a_job("Yard Cottage"), by="Ben", base_rev=1)
    line, _ = store.jobs()
    assert (first, "Yard Cottage", 2, "Ben", "Ann") == (line.job, line.title, line.rev, line.by, line.created_by)
    at_first = FIRST + timedelta(minutes=1)  # the clock was looked at once as the file was made
    assert (at_first, at_first + timedelta(minutes=2)) == (line.created_at, line.at)


def test_a_job_put_away_leaves_the_list_and_comes_back_whole(store: JobStore) -> None:
    job = store.create(a_job(), by="Ann").job
    store.archive(job)
    assert () == store.jobs()
    assert [(job, True)] == [(line.job, line.archived) for line in store.jobs(archived=True)]
    assert Saved(job=job, rev=2) == store.save(job, a_job(), by="Ann", base_rev=1)
    store.unarchive(job)
    assert [(job, 2)] == [(line.job, line.rev) for line in store.jobs()]
    assert () == store.jobs(archived=True)


def test_what_is_not_kept_is_named(store: JobStore) -> None:
    job = store.create(a_job(), by="Ann").job
    for rev in (-1, 0, 2, 10**30):
        with pytest.raises(NotKept, match=f"revision {rev} of job {job}"):
            store.load(job, rev)
        with pytest.raises(NotKept):
            store.restore(job, rev, by="Ann")
    nowhere = "' OR 1=1 --\ud800"
    for call in (
        store.load, store.revisions, store.archive, store.unarchive, store.share, store.revoke, store.export_job,
    ):  # fmt: skip
        with pytest.raises(NotKept, match="There is no job ' OR 1=1 --"):
            call(nowhere)
    with pytest.raises(NotKept):
        store.save(nowhere, a_job(), by="Ann", base_rev=1)
    with pytest.raises(NotKept):
        store.duplicate(nowhere, by="Ann")


@pytest.mark.parametrize("value", [float("nan"), float("inf"), {1, 2}, b"35", (1, 2), {1: "35"}, FIRST])
def test_what_json_cannot_hold_is_refused_and_nothing_saved(store: JobStore, value: object) -> None:
    with pytest.raises(InputRefused, match="Nothing was saved"):
        store.create({"job": {"title": value}}, by="Ann")
    assert () == store.jobs()


def test_a_document_without_end_is_refused(store: JobStore) -> None:
    deep: dict[str, Any] = {}
    for _ in range(100_000):
        deep = {"job": deep}
    with pytest.raises(InputRefused, match="Nothing was saved"):
        store.create(deep, by="Ann")


def test_a_share_link_opens_its_job_until_it_is_revoked(store: JobStore) -> None:
    job, other = (store.create(a_job(), by="Ann").job for _ in range(2))
    tokens = [store.share(job) for _ in range(2)]
    others = store.share(other)
    assert 3 == len({*tokens, others})
    assert all(len(token) >= 43 for token in tokens), "256 bits in base64"
    assert [job, job, other] == [store.shared(token) for token in (*tokens, others)]
    assert 2 == store.revoke(job)
    assert [None, None, other] == [store.shared(token) for token in (*tokens, others)]
    assert 0 == store.revoke(job)


@pytest.mark.parametrize("token", ["", "x", "' OR 1=1 --", "\ud800", "\0", "a" * 100_000])
def test_no_other_token_opens_anything(store: JobStore, token: str) -> None:
    store.share(store.create(a_job(), by="Ann").job)
    assert None is store.shared(token)


def test_the_token_itself_is_nowhere_in_the_file(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    with JobStore.open(path) as store:
        token = store.share(store.create(a_job(), by="Ann").job)
    assert token.encode() not in path.read_bytes()
    assert hashlib.sha256(token.encode()).hexdigest().encode() in path.read_bytes()


def test_a_save_waits_for_the_disk(store: JobStore) -> None:
    with store._file.reading() as connection:
        values = {name: connection.execute(f"PRAGMA {name}").fetchone()[0] for name in
                  ("journal_mode", "synchronous", "foreign_keys", "fullfsync")}  # fmt: skip
    assert {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "fullfsync": 1} == values


def test_job_ids_cannot_be_guessed(store: JobStore) -> None:
    ids = {store.create(a_job(), by="Ann").job for _ in range(20)}
    assert 20 == len(ids)
    assert all(len(job) == 32 and int(job, 16) >= 0 for job in ids)


def test_an_error_in_the_middle_of_a_save_leaves_no_half_of_it(store: JobStore) -> None:
    job = store.create(a_job(), by="Ann").job
    with store._file.writing() as connection:
        connection.execute("CREATE TRIGGER no BEFORE INSERT ON revision BEGIN SELECT RAISE(ABORT, 'no'); END")
    with pytest.raises(sqlite3.IntegrityError):
        store.save(job, a_job(), by="Ann", base_rev=1)
    assert 1 == store.load(job).rev
    with store._file.writing() as connection:
        connection.execute("DROP TRIGGER no")
    assert Saved(job=job, rev=2) == store.save(job, a_job(), by="Ann", base_rev=1)


def test_the_file_is_one_plain_database_when_nobody_has_it_open(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    with JobStore.open(path) as store:
        store.create(a_job(), by="Ann")
    assert ["jobs.sqlite"] == [each.name for each in tmp_path.iterdir()]
    with closing(sqlite3.connect(path)) as connection:
        assert [("ok",)] == connection.execute("PRAGMA integrity_check").fetchall()
