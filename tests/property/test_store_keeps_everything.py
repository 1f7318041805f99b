"""Whatever was typed comes back; export and import lose nothing; a merge invents nothing."""

from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.adapters.store.merge import Conflict, merged
from gaugerod.adapters.store.packed import packed, unpacked
from gaugerod.adapters.store.store import JobStore

text = st.text(st.characters(exclude_categories=()), max_size=20)
values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | text,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(text, inner, max_size=4),
    max_leaves=12,
)
tables = st.dictionaries(text, values, max_size=5)
documents = tables | st.fixed_dictionaries({"job": st.fixed_dictionaries({"title": text, "edition": text})})

some = st.sampled_from(
    ["35°", "36°", "4.905 m", {"rise": "8", "run": "12"}, {"rise": "9", "run": "12"}, ["1 m", "2 m"]]
)
slopes = st.lists(
    st.fixed_dictionaries({"name": st.sampled_from("abc")}, optional={"pitch": some, "across": some, "rafters": some}),
    max_size=3,
)
jobs = st.fixed_dictionaries(
    {}, optional={"job": st.dictionaries(st.sampled_from(["title", "edition"]), some), "slope": slopes, "set_out": some}
)


@given(document=documents)
@settings(max_examples=200)
def test_a_document_comes_back_as_it_went_in(document: dict[str, Any]) -> None:
    assert document == unpacked(packed(document))
    assert repr(document) == repr(unpacked(packed(document)))


def _kept_and_exported(typed: list[tuple[dict[str, Any], str]]) -> None:
    with TemporaryDirectory() as folder:
        first, second = (JobStore.open(Path(folder) / name) for name in ("one.sqlite", "two.sqlite"))
        with closing(first), closing(second):
            job = first.create(typed[0][0], by=typed[0][1]).job
            for rev, (document, by) in enumerate(typed[1:], start=1):
                first.save(job, document, by=by, base_rev=rev)
            assert [document for document, _ in typed] == [
                first.load(job, line.rev).document for line in first.revisions(job)
            ]
            exported = first.export_job(job)
            (imported,) = second.import_document(exported, by="Ann")
            assert exported == second.export_job(imported.job)


revisions = st.lists(st.tuples(documents, text), min_size=1, max_size=4)


@given(typed=revisions)
@settings(max_examples=30, deadline=None)
def test_every_revision_is_kept_and_survives_export_and_import(typed: list[tuple[dict[str, Any], str]]) -> None:
    _kept_and_exported(typed)


@pytest.mark.slow
@given(typed=revisions)
@settings(max_examples=1000, deadline=None)
def test_every_revision_is_kept_and_survives_export_and_import_a_thousand_times(
    typed: list[tuple[dict[str, Any], str]],
) -> None:
    _kept_and_exported(typed)


def _merge_holds(base: dict[str, Any], mine: dict[str, Any], theirs: dict[str, Any]) -> None:
    assert mine == merged(base, mine, base).document
    assert theirs == merged(base, base, theirs).document
    assert mine == merged(base, mine, mine).document
    merge, other_way = merged(base, mine, theirs), merged(base, theirs, mine)
    assert {conflict.path for conflict in merge.conflicts} == {conflict.path for conflict in other_way.conflicts}
    assert (merge.document is None) == bool(merge.conflicts)
    if merge.conflicts:
        assert len({conflict.path for conflict in merge.conflicts}) == len(merge.conflicts)
        assert all(_really_differs(conflict) for conflict in merge.conflicts)
        chosen = merged(base, mine, theirs, chosen={conflict.path: "mine" for conflict in merge.conflicts})
        assert () == chosen.conflicts
        assert chosen.document is not None
        together = chosen.document
    else:
        assert merge.document is not None
        together = merge.document
    assert _leaves(together) <= _leaves(mine) | _leaves(theirs)


def _really_differs(conflict: Conflict) -> bool:
    return conflict.mine != conflict.theirs and conflict.base not in (conflict.mine, conflict.theirs)


def _leaves(document: dict[str, Any]) -> set[str]:
    """Every field with its value, a measurement whole."""
    return {
        repr((heading, key, value))
        for heading, table in document.items()
        for part in (table if heading == "slope" else [table])
        for key, value in (part.items() if isinstance(part, dict) and heading != "set_out" else [("", part)])
    }


@given(base=jobs, mine=jobs, theirs=jobs)
@settings(max_examples=150)
def test_a_merge_takes_every_field_from_one_of_the_two(
    base: dict[str, Any], mine: dict[str, Any], theirs: dict[str, Any]
) -> None:
    _merge_holds(base, mine, theirs)


@pytest.mark.slow
@given(base=jobs, mine=jobs, theirs=jobs)
@settings(max_examples=5000)
def test_a_merge_takes_every_field_from_one_of_the_two_in_thousands_of_cases(
    base: dict[str, Any], mine: dict[str, Any], theirs: dict[str, Any]
) -> None:
    _merge_holds(base, mine, theirs)
