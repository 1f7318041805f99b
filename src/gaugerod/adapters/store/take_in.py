"""Taking a file into the store: an export with its history, or a job file as a new job."""

from pathlib import Path

from gaugerod.adapters.job_draft.json_text import json_table
from gaugerod.adapters.job_file.read import read_job_document
from gaugerod.adapters.job_file.text import document_in_text
from gaugerod.adapters.store.packed import title_of
from gaugerod.adapters.store.portable import FORMAT
from gaugerod.adapters.store.records import Document, Imported
from gaugerod.adapters.store.store import JobStore
from gaugerod.basis.errors import Fault, InputRefused

_HEAD_BYTES = 200
"""An export names its format in its first line or two, so that even a broken one is known for what it is."""


def take_in_file(store: JobStore, path: Path, *, by: str) -> tuple[Imported, ...]:
    """Take in the file. Raises InputRefused with every fault, and then nothing was taken in."""
    try:
        content = path.read_bytes()
    except OSError as error:
        allowed, do = "an export or a job file that can be read", f"It cannot be opened: {error.strerror}."
        raise InputRefused([Fault("file", str(path), allowed, do)]) from None
    if FORMAT.encode() in content[:_HEAD_BYTES]:
        return store.import_document(json_table(content, what="an export of kept jobs"), by=by)
    document = document_in_text(content, as_json=path.suffix.lower() == ".json")
    draft = is_draft(document)
    saved = store.create(document, by=by, draft=draft)
    return (Imported(job=saved.job, title=title_of(document), draft=draft, revisions_count=1),)


def is_draft(document: Document) -> bool:
    """Does the document not pass the door yet? It can be kept and mended, not set out."""
    try:
        read_job_document(document)
    except InputRefused:
        return True
    return False
