"""The file of the kept jobs: where it is, earlier versions, damage, a full disk, no rights."""

import os
import sqlite3
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path
from threading import Barrier

import pytest

from gaugerod.adapters.store import file as store_file
from gaugerod.adapters.store import migrations
from gaugerod.adapters.store.migrations import NEWEST, STEPS
from gaugerod.adapters.store.place import data_folder
from gaugerod.adapters.store.records import Saved
from gaugerod.adapters.store.store import JobStore
from gaugerod.basis.errors import StoreUnusable
from tests.scenario.kept_jobs import a_job, write_version_1, write_version_2

HOME = Path("/home/ann")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "jobs.sqlite"


def tables(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return sorted(str(sql) for (sql,) in connection.execute("SELECT sql FROM sqlite_master WHERE sql NOT NULL"))


def all_bytes(folder: Path) -> dict[str, bytes]:
    """Every file but SQLite's scratch index of the log, which holds nothing of its own."""
    return {each.name: each.read_bytes() for each in folder.iterdir() if not each.name.endswith("-shm")}


@pytest.mark.parametrize(
    ("platform", "environment", "expected"),
    [
        ("linux", {}, HOME / ".local/share/gaugerod"),
        ("linux", {"XDG_DATA_HOME": "/srv/ann"}, Path("/srv/ann/gaugerod")),
        ("linux", {"XDG_DATA_HOME": "not/absolute"}, HOME / ".local/share/gaugerod"),
        ("linux", {"XDG_DATA_HOME": ""}, HOME / ".local/share/gaugerod"),
        ("darwin", {}, HOME / "Library/Application Support/gaugerod"),
        ("win32", {"LOCALAPPDATA": "/app/local"}, Path("/app/local/gaugerod")),
        ("win32", {}, HOME / "AppData/Local/gaugerod"),
        ("linux", {"GAUGEROD_DATA": "/van", "XDG_DATA_HOME": "/srv/ann"}, Path("/van")),
        ("win32", {"GAUGEROD_DATA": ""}, HOME / "AppData/Local/gaugerod"),
    ],
)
def test_the_folder_follows_the_platform(platform: str, environment: dict[str, str], expected: Path) -> None:
    assert expected == data_folder(given=None, environment=environment, platform=platform, home=HOME)


def test_the_folder_asked_for_goes_before_all() -> None:
    environment = {"GAUGEROD_DATA": "/van"}
    assert Path("shed") == data_folder(given="shed", environment=environment, platform="linux", home=HOME)


def test_version_1_is_brought_up_to_date_and_keeps_everything(path: Path) -> None:
    write_version_1(path)
    with JobStore.open(path) as store:
        assert [("a1", "Yard Cottage", 2)] == [(line.job, line.title, line.rev) for line in store.jobs()]
        assert ["b2"] == [line.job for line in store.jobs(archived=True)]
        assert [a_job("Yard"), a_job("Yard Cottage")] == [store.load("a1", rev).document for rev in (1, 2)]
        assert not any(line.draft for line in store.revisions("a1"))
        assert "a1" == store.shared(store.share("a1"))
        assert Saved(job="a1", rev=3) == store.save("a1", a_job(), by="Ann", base_rev=2, draft=True)


def test_version_2_is_brought_up_to_date_and_its_share_links_still_open(path: Path) -> None:
    write_version_2(path)
    with JobStore.open(path) as store:
        assert "a1" == store.shared("old-token")
        assert a_job("Yard") == store.load("a1", 1).document
        assert 1 == store.revoke("a1")


def test_every_way_leads_to_the_same_tables(tmp_path: Path) -> None:
    new, one, two = (tmp_path / f"{name}.sqlite" for name in ("new", "one", "two"))
    write_version_1(one)
    write_version_2(two)
    for path in (new, one, two):
        JobStore.open(path).close()
    assert tables(new) == tables(one) == tables(two)
    assert 3 == NEWEST


def test_a_step_that_fails_leaves_the_file_at_its_version(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_version_1(path)
    before = tables(path)
    monkeypatch.setattr(migrations, "STEPS", (*STEPS[:2], ("ALTER TABLE no_such_table ADD COLUMN x",)))
    with pytest.raises(sqlite3.OperationalError):
        JobStore.open(path)
    assert before == tables(path)
    monkeypatch.undo()
    with JobStore.open(path) as store:
        assert a_job("Yard Cottage") == store.load("a1").document


def test_a_newer_file_is_refused_and_left_alone(path: Path) -> None:
    JobStore.open(path).close()
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("INSERT INTO schema_version VALUES (?, 'later')", (NEWEST + 1,))
    before = path.read_bytes()
    with pytest.raises(StoreUnusable, match=r"newer gaugerod.*Install the newer gaugerod"):
        JobStore.open(path)
    assert before == path.read_bytes()


def test_a_database_of_another_program_is_refused_and_left_alone(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("CREATE TABLE job (id)")
    before = path.read_bytes()
    with pytest.raises(StoreUnusable, match="another program"):
        JobStore.open(path)
    assert before == path.read_bytes()


def test_what_is_no_database_is_refused_and_left_alone(path: Path) -> None:
    path.write_text("Roofing notes, not a database at all. " * 100, "utf-8")
    before = all_bytes(path.parent)
    with pytest.raises(StoreUnusable, match=r"damaged.*left as it is.*last backup"):
        JobStore.open(path)
    assert before == all_bytes(path.parent)


@pytest.mark.parametrize("in_log", [False, True], ids=["closed", "killed with saves in the log"])
def test_a_damaged_file_is_refused_and_left_alone(tmp_path: Path, *, in_log: bool) -> None:
    source = tmp_path / "source" / "jobs.sqlite"
    store = JobStore.open(source)
    with store._file.reading() as connection:
        connection.execute("PRAGMA wal_autocheckpoint = 10")
    for number in range(60):
        store.create({"job": {"title": os.urandom(400).hex()}, "number": number}, by="Ann")
    if not in_log:
        store.close()
    folder = tmp_path / "found"
    folder.mkdir()
    for each in source.parent.iterdir():
        if not each.name.endswith("-shm"):
            (folder / each.name).write_bytes(each.read_bytes())
    store.close()
    path = folder / "jobs.sqlite"
    assert in_log == (folder / "jobs.sqlite-wal").exists()
    size = path.stat().st_size
    with path.open("rb+") as file:
        for at in range(4096, size, 4096):
            file.seek(at)
            file.write(b"\xff" * 64)
    before = all_bytes(folder)
    with pytest.raises(StoreUnusable, match="damaged"):
        JobStore.open(path)
    assert before == {name: content for name, content in all_bytes(folder).items() if name in before}


def test_a_damaged_document_is_told_and_the_other_revisions_are_still_there(path: Path) -> None:
    with JobStore.open(path) as store:
        job = store.create(a_job(), by="Ann").job
        store.save(job, a_job("Second"), by="Ann", base_rev=1)
        with store._file.writing() as connection:
            content = connection.execute("SELECT document FROM revision WHERE rev = 1").fetchone()[0]
            spoilt = content[:30] + bytes([content[30] ^ 1]) + content[31:]
            connection.execute("UPDATE revision SET document = ? WHERE rev = 1", (spoilt,))
        with pytest.raises(StoreUnusable, match=f"damaged .revision 1 of job {job}"):
            store.load(job, 1)
        with pytest.raises(StoreUnusable, match="revision 1"):
            store.restore(job, 1, by="Ann")
        assert a_job("Second") == store.load(job).document


@pytest.mark.parametrize("empty", [False, True], ids=["gone", "empty"])
def test_a_log_without_its_file_is_not_thrown_away(path: Path, *, empty: bool) -> None:
    log = path.with_name("jobs.sqlite-wal")
    log.write_bytes(b"the newest saves")
    if empty:
        path.touch()
    with pytest.raises(StoreUnusable, match="newest saves"):
        JobStore.open(path)
    assert b"the newest saves" == log.read_bytes()


def test_a_save_cut_off_in_an_old_file_is_undone_and_the_rest_kept(tmp_path: Path) -> None:
    """A crash of version 1 in the middle of writing: half of it is in the file, and a journal says how to undo it."""
    source, found = tmp_path / "jobs.sqlite", tmp_path / "found"
    found.mkdir()
    write_version_1(source)
    with closing(sqlite3.connect(source, isolation_level=None)) as connection:
        connection.execute("PRAGMA cache_size = 1")
        connection.execute("BEGIN IMMEDIATE")
        connection.execute("UPDATE job SET rev = 100")
        connection.execute("UPDATE revision SET document = randomblob(100000)")
        for each in tmp_path.glob("jobs.sqlite*"):
            (found / each.name).write_bytes(each.read_bytes())
        connection.execute("ROLLBACK")
    assert {"jobs.sqlite", "jobs.sqlite-journal"} == {each.name for each in found.iterdir()}
    with JobStore.open(found / "jobs.sqlite") as store:
        assert (2, a_job("Yard Cottage")) == (store.load("a1").rev, store.load("a1").document)


def test_many_may_make_the_file_at_the_same_moment(tmp_path: Path) -> None:
    together = Barrier(8)

    def make(path: Path) -> None:
        together.wait()
        with JobStore.open(path) as store:
            store.create(a_job(), by="Ann")

    with ThreadPoolExecutor(8) as pool:
        for number in range(15):
            path = tmp_path / f"{number}.sqlite"
            for made in [pool.submit(make, path) for _ in range(8)]:
                made.result()
            with JobStore.open(path) as store:
                assert 8 == len(store.jobs())


def test_an_empty_file_is_a_new_store(path: Path) -> None:
    path.touch()
    with JobStore.open(path) as store:
        assert () == store.jobs()


def test_a_full_disk_refuses_the_save_and_loses_nothing(path: Path) -> None:
    with JobStore.open(path) as store:
        job = store.create(a_job(), by="Ann").job
        with store._file.reading() as connection:
            (pages,) = connection.execute("PRAGMA page_count").fetchone()
            connection.execute(f"PRAGMA max_page_count = {pages}")
        large = {**a_job(), "note": os.urandom(50_000).hex()}
        with pytest.raises(StoreUnusable, match="disk is full; nothing was saved"):
            store.save(job, large, by="Ann", base_rev=1)
        assert a_job() == store.load(job).document
        with store._file.reading() as connection:
            connection.execute("PRAGMA max_page_count = 1000000")
        assert Saved(job=job, rev=2) == store.save(job, large, by="Ann", base_rev=1)


def test_a_file_that_may_not_be_written_is_told_and_can_be_read(path: Path) -> None:
    with JobStore.open(path) as store:
        job = store.create(a_job(), by="Ann").job
        with store._file.reading() as connection:
            connection.execute(
                "PRAGMA query_only = ON"
            )  # as a file without rights answers; tests may run as one who has all
        with pytest.raises(StoreUnusable, match="may not be written"):
            store.save(job, a_job(), by="Ann", base_rev=1)
        assert a_job() == store.load(job).document


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="rights do not bind this user")
def test_a_file_without_rights_is_told(path: Path) -> None:
    JobStore.open(path).close()
    path.chmod(0o400)
    with pytest.raises(StoreUnusable, match="may not be written"), JobStore.open(path) as store:
        store.create(a_job(), by="Ann")


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(StoreUnusable, match="--data"):
        JobStore.open(tmp_path / "file" / "jobs.sqlite")
    with pytest.raises(StoreUnusable, match="a folder"):
        JobStore.open(tmp_path)


def test_another_program_that_never_ends_its_save_is_told(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(store_file, "BUSY_S", 0.05)
    with JobStore.open(path) as store, closing(sqlite3.connect(path, isolation_level=None)) as other:
        job = store.create(a_job(), by="Ann").job
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StoreUnusable, match="nothing was saved"):
            store.save(job, a_job(), by="Ann", base_rev=1)
        assert 1 == store.load(job).rev, "reading does not wait"
        other.execute("ROLLBACK")
        assert Saved(job=job, rev=2) == store.save(job, a_job(), by="Ann", base_rev=1)


@pytest.fixture
def store(path: Path) -> Iterator[JobStore]:
    with JobStore.open(path) as opened:
        yield opened


def test_a_backup_is_one_whole_file_with_everything_in_it(store: JobStore, tmp_path: Path) -> None:
    job = store.create(a_job(), by="Ann").job
    store.save(job, a_job("Second"), by="Ann", base_rev=1)
    token = store.share(job)
    done = store.backup(tmp_path / "safe" / "copy.sqlite")
    assert (1, 2) == (done.jobs_count, done.revisions_count)
    assert ["copy.sqlite"] == [each.name for each in (tmp_path / "safe").iterdir()]
    store.save(job, a_job("Third"), by="Ann", base_rev=2)
    with JobStore.open(done.path) as copy:
        assert "Second" == copy.load(job).title
        assert job == copy.shared(token)
        assert store.revisions(job)[:2] == copy.revisions(job)


@pytest.mark.skipif(os.name != "posix", reason="rights as POSIX has them")
def test_the_files_are_for_their_owner_only(store: JobStore, path: Path, tmp_path: Path) -> None:
    store.create(a_job(), by="Ann")
    copy = store.backup(tmp_path / "safe" / "copy.sqlite").path
    assert {0o600} == {each.stat().st_mode & 0o777 for each in (*path.parent.glob("jobs.sqlite*"), copy)}
    assert 0o700 == copy.parent.stat().st_mode & 0o777


def test_a_backup_never_writes_over_anything(store: JobStore, path: Path, tmp_path: Path) -> None:
    other = tmp_path / "letter.txt"
    other.write_text("Dear Sir", "utf-8")
    for to in (other, path):
        with pytest.raises(StoreUnusable, match="already"):
            store.backup(to)
    assert "Dear Sir" == other.read_text("utf-8")
    with pytest.raises(StoreUnusable, match="--to"):
        store.backup(other / "copy.sqlite")


def test_a_backup_that_fails_leaves_nothing_half_done(store: JobStore, path: Path, tmp_path: Path) -> None:
    store.create(a_job(), by="Ann")
    store.close()
    with path.open("rb+") as file:
        file.seek(4096)
        file.write(b"\xff" * 4096 * 2)
    with pytest.raises(StoreUnusable, match="damaged"):
        store.backup(tmp_path / "safe" / "copy.sqlite")
    assert [] == list((tmp_path / "safe").iterdir())
