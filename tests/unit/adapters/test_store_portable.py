"""Export and import: everything comes along, nothing is written over, damage is refused with every fault."""

import copy
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from gaugerod.adapters.store.store import JobStore
from gaugerod.adapters.store.take_in import take_in_file
from gaugerod.basis.errors import InputRefused
from tests.scenario.kept_jobs import a_job, ticking


@pytest.fixture
def store(tmp_path: Path) -> Iterator[JobStore]:
    with JobStore.open(tmp_path / "jobs.sqlite", now=ticking()) as opened:
        job = opened.create(a_job("Yard"), by="Ann").job
        opened.save(job, {"job": {"title": "Yard ½ done\ud800"}}, by="Ben\0 \ud800", base_rev=1, draft=True)
        opened.archive(opened.create(a_job("Long Barn"), by="Ann").job)
        yield opened


@pytest.fixture
def other(tmp_path: Path) -> Iterator[JobStore]:
    with JobStore.open(tmp_path / "other.sqlite") as opened:
        yield opened


def through_text(document: dict[str, Any]) -> dict[str, Any]:
    read: dict[str, Any] = json.loads(json.dumps(document))
    return read


def test_everything_comes_along_to_another_store(store: JobStore, other: JobStore) -> None:
    exported = through_text(store.export_all())
    imported = other.import_document(exported, by="Cy")
    assert [("Yard ½ done?", True, 2), ("Long Barn", False, 1)] == [
        (each.title, each.draft, each.revisions_count) for each in imported
    ]
    assert exported == through_text(other.export_all())
    assert {"Cy"} == {line.created_by for archived in (False, True) for line in other.jobs(archived=archived)}
    assert ["Long Barn"] == [line.title for line in other.jobs(archived=True)]


def test_one_job_alone_comes_along_whole(store: JobStore, other: JobStore) -> None:
    (line,) = store.jobs()
    (imported,) = other.import_document(store.export_job(line.job), by="Cy")
    assert store.export_job(line.job) == other.export_job(imported.job)
    assert [1, 2] == [each.rev for each in other.revisions(imported.job)]
    assert {"job": {"title": "Yard ½ done\ud800"}} == other.load(imported.job).document


def test_import_gives_new_ids_and_touches_nothing_kept(store: JobStore) -> None:
    (before,) = store.jobs()
    exported = store.export_job(before.job)
    (imported,) = store.import_document(exported, by="Cy")
    assert imported.job != before.job
    assert {before.job, imported.job} == {line.job for line in store.jobs()}
    assert exported == store.export_job(before.job)


def test_nothing_to_export_is_an_export_with_nothing(other: JobStore) -> None:
    exported = other.export_all()
    assert [] == exported["jobs"]
    assert () == other.import_document(exported, by="Cy")


def test_share_links_and_ids_stay_behind(store: JobStore) -> None:
    (line,) = store.jobs()
    token = store.share(line.job)
    text = json.dumps(store.export_all())
    assert token not in text
    assert line.job not in text


def _first(document: dict[str, Any]) -> dict[str, Any]:
    revision: dict[str, Any] = document["jobs"][0]["revisions"][0]
    return revision


DAMAGE: list[tuple[Callable[[dict[str, Any]], object], list[str]]] = [
    (lambda all_: all_.pop("format"), ["format"]),
    (lambda all_: all_.update(format_version=2), ["format_version"]),
    (lambda all_: all_.update(jobs={}), ["jobs"]),
    (lambda all_: all_["jobs"].insert(0, 7), ["jobs[0]"]),
    (lambda all_: all_["jobs"][1].update(archived="no", revisions=[]), ["jobs[1].archived", "jobs[1].revisions"]),
    (lambda all_: all_["jobs"][0]["revisions"].pop(0), ["jobs[0].revisions[0].rev"]),
    (lambda all_: all_["jobs"][0]["revisions"].append(None), ["jobs[0].revisions[2]"]),
    (lambda all_: _first(all_).update(by=1, at="2026-03-02T07:30", draft=0), [
        f"jobs[0].revisions[0].{key}" for key in ("at", "by", "draft")
    ]),
    (lambda all_: _first(all_).pop("document"), ["jobs[0].revisions[0].document"]),
    (lambda all_: _first(all_).update(remark="mine"), ["jobs[0].revisions[0].remark"]),
    (lambda all_: _first(all_).pop("sha256"), ["jobs[0].revisions[0].sha256"]),
    (lambda all_: _first(all_)["document"]["slope"][0].update(across="7.640 m"), ["jobs[0].revisions[0].sha256"]),
    (lambda all_: _first(all_)["document"].update(pitch=float("nan")), ["jobs[0].revisions[0].document"]),
]  # fmt: skip


@pytest.mark.parametrize(("damage", "fields"), DAMAGE, ids=[fields[0] for _, fields in DAMAGE])
def test_a_damaged_export_is_refused_with_every_fault_and_nothing_taken_in(
    store: JobStore, other: JobStore, damage: Callable[[dict[str, Any]], object], fields: list[str]
) -> None:
    exported = copy.deepcopy(store.export_all())
    damage(exported)
    with pytest.raises(InputRefused) as refused:
        other.import_document(exported, by="Cy")
    assert fields == [fault.field for fault in refused.value.faults]
    assert () == other.jobs() + other.jobs(archived=True)


def test_faults_of_several_jobs_are_told_together(store: JobStore, other: JobStore) -> None:
    exported = store.export_all()
    for job in exported["jobs"]:
        job["revisions"][0]["title"] = "another"
    with pytest.raises(InputRefused) as refused:
        other.import_document(exported, by="Cy")
    assert ["jobs[0].revisions[0].sha256", "jobs[1].revisions[0].sha256"] == [
        fault.field for fault in refused.value.faults
    ]


def test_the_order_of_keys_breaks_no_seal(store: JobStore, other: JobStore) -> None:
    sorted_keys = json.loads(json.dumps(store.export_all(), sort_keys=True))
    assert 2 == len(other.import_document(sorted_keys, by="Cy"))


def test_a_job_file_becomes_a_new_job(other: JobStore, tmp_path: Path) -> None:
    path = tmp_path / "yard.json"
    path.write_text(json.dumps(a_job()), "utf-8")
    (imported,) = take_in_file(other, path, by="Cy")
    kept = other.load(imported.job)
    assert (a_job(), "Cy", False) == (kept.document, kept.by, kept.draft)


def test_a_job_file_that_does_not_pass_yet_is_kept_as_a_draft(other: JobStore, tmp_path: Path) -> None:
    path = tmp_path / "yard.toml"
    path.write_text('[job]\ntitle = "Yard"\n', "utf-8")
    (imported,) = take_in_file(other, path, by="Cy")
    assert ("Yard", True) == (imported.title, imported.draft)
    assert other.load(imported.job).draft


def test_an_export_taken_in_from_its_file_is_known_as_one_even_when_broken_off(
    store: JobStore, other: JobStore, tmp_path: Path
) -> None:
    path = tmp_path / "jobs.json"
    text = json.dumps(store.export_all(), indent=1)
    path.write_text(text, "utf-8")
    assert 2 == len(take_in_file(other, path, by="Cy"))
    path.write_text(text[:-100], "utf-8")
    with pytest.raises(InputRefused, match="an export of kept jobs"):
        take_in_file(other, path, by="Cy")
    with pytest.raises(InputRefused, match="cannot be opened"):
        take_in_file(other, tmp_path / "none.json", by="Cy")
