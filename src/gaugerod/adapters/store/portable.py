"""Jobs as one JSON document that any store takes in: each revision sealed, so that a changed length is noticed."""

import json
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from typing import Any

from gaugerod import __version__
from gaugerod.adapters.store.packed import packed, written_time
from gaugerod.adapters.store.records import Document, Revision
from gaugerod.basis.errors import Fault, InputRefused

FORMAT = "gaugerod jobs"
FORMAT_VERSION = 1
_AGAIN = "Export it again."


@dataclass(frozen=True, slots=True, kw_only=True)
class PortableJob:
    """A job with all its revisions, first to last, apart from any store."""

    archived: bool
    revisions: tuple[Revision, ...]


def is_portable(document: Document) -> bool:
    """Is this an export, and not a job file?"""
    return "format" in document


def portable_document(jobs: Iterable[PortableJob]) -> Document:
    """The jobs as JSON. Ids stay behind: they are of one store only."""
    return {
        "format": FORMAT,
        "format_version": FORMAT_VERSION,
        "version": __version__,
        "jobs": [
            {"archived": job.archived, "revisions": [_sealed(revision) for revision in job.revisions]} for job in jobs
        ],
    }


def read_portable(document: object) -> tuple[PortableJob, ...]:
    """The jobs in an export; their revisions carry no job id yet. Raises InputRefused with every fault."""
    faults = list(_document_faults(document))
    if faults or not isinstance(document, dict):
        raise InputRefused(faults)
    return tuple(
        PortableJob(archived=job["archived"], revisions=tuple(_revision(each) for each in job["revisions"]))
        for job in document["jobs"]
    )


def _sealed(revision: Revision) -> Document:
    record: Document = {
        "rev": revision.rev,
        "at": written_time(revision.at),
        "by": revision.by,
        "edition": revision.edition,
        "version": revision.version,
        "title": revision.title,
        "draft": revision.draft,
        "document": revision.document,
    }
    return {**record, "sha256": _seal(record)}


def _seal(record: Document) -> str:
    """Over everything but the seal itself, keys in order, so that only a changed value breaks it."""
    unsealed = {key: value for key, value in record.items() if key != "sha256"}
    return sha256(json.dumps(unsealed, sort_keys=True, separators=(",", ":")).encode("ascii")).hexdigest()


def _revision(record: Document) -> Revision:
    fields = {key: value for key, value in record.items() if key != "sha256"}
    return Revision(**{**fields, "job": "", "at": datetime.fromisoformat(record["at"])})


def _document_faults(document: object) -> Iterator[Fault]:
    if not isinstance(document, dict) or document.get("format") != FORMAT:
        yield Fault("format", _shown(document), f"{FORMAT!r}", "This is no export. Choose the file that export wrote.")
        return
    if document.get("format_version") != FORMAT_VERSION:
        given = _shown(document.get("format_version"))
        yield Fault(
            "format_version", given, str(FORMAT_VERSION), "Take it in with the gaugerod that wrote it, or newer."
        )
        return
    jobs = document.get("jobs")
    if not isinstance(jobs, list):
        yield Fault("jobs", _shown(jobs), "a list of jobs", f"The file is damaged. {_AGAIN}")
        return
    for index, job in enumerate(jobs):
        yield from _job_faults(job, f"jobs[{index}]")


def _job_faults(job: object, path: str) -> Iterator[Fault]:
    if not isinstance(job, dict):
        yield Fault(path, _shown(job), "a job", f"The file is damaged. {_AGAIN}")
        return
    if not isinstance(job.get("archived"), bool):
        yield Fault(f"{path}.archived", _shown(job.get("archived")), "true or false", f"The file is damaged. {_AGAIN}")
    revisions = job.get("revisions")
    if not isinstance(revisions, list) or not revisions:
        yield Fault(f"{path}.revisions", _shown(revisions), "one revision or more", f"The file is damaged. {_AGAIN}")
        return
    for number, revision in enumerate(revisions, start=1):
        yield from _revision_faults(revision, f"{path}.revisions[{number - 1}]", number=number)


def _is_time(value: Any) -> bool:  # noqa: ANN401 - an export can hold anything
    try:
        return datetime.fromisoformat(value).utcoffset() is not None
    except (TypeError, ValueError):
        return False


def _is_text(value: object) -> bool:
    return isinstance(value, str)


_FIELDS: dict[str, tuple[Callable[[object], bool], str]] = {
    "at": (_is_time, "a time with its zone"),
    "by": (_is_text, "text"),
    "edition": (_is_text, "text"),
    "version": (_is_text, "text"),
    "title": (_is_text, "text"),
    "draft": (lambda value: isinstance(value, bool), "true or false"),
    "document": (lambda value: isinstance(value, dict), "the job document"),
}


def _revision_faults(record: object, path: str, *, number: int) -> Iterator[Fault]:
    if not isinstance(record, dict):
        yield Fault(path, _shown(record), "a revision", f"The file is damaged. {_AGAIN}")
        return
    faults = []
    if record.get("rev") != number:
        faults.append(Fault(f"{path}.rev", _shown(record.get("rev")), str(number), f"Revisions are missing. {_AGAIN}"))
    for key, (is_right, allowed) in _FIELDS.items():
        if not is_right(record.get(key)):
            faults.append(Fault(f"{path}.{key}", _shown(record.get(key)), allowed, f"The file is damaged. {_AGAIN}"))
    yield from faults or _seal_faults(record, path)


def _seal_faults(record: Document, path: str) -> Iterator[Fault]:
    unknown = sorted(set(record) - {"rev", "sha256", *_FIELDS})
    if unknown:
        yield Fault(f"{path}.{unknown[0]}", "a field", "none of that name", f"The file was changed. {_AGAIN}")
        return
    try:
        packed(record["document"])
    except InputRefused as refused:
        yield Fault(
            f"{path}.document", refused.faults[0].given, refused.faults[0].allowed, f"The file is damaged. {_AGAIN}"
        )
        return
    if record.get("sha256") != _seal(record):
        allowed = "the revision as it was exported"
        do = f"Something in it was changed since: do not trust its lengths. {_AGAIN}"
        yield Fault(f"{path}.sha256", _shown(record.get("sha256")), allowed, do)


def _shown(value: object) -> str:
    match value:
        case None:
            return "nothing"
        case dict():
            return "a table"
        case list():
            return "a list"
        case _:
            return str(value)[:60].encode("utf-8", errors="backslashreplace").decode("utf-8")
