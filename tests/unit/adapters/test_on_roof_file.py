"""The page for the roof as a file: whole, small, shut to every network, and true to the setting out."""

import json
import re
from base64 import b64encode
from dataclasses import replace
from datetime import datetime
from hashlib import sha256
from html.parser import HTMLParser
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest

from gaugerod.adapters.on_roof.write import on_roof_policy, write_on_roof_html
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Result
from gaugerod.job.rod_marks import rod_marks
from gaugerod.job.set_out import set_out
from gaugerod.wiring import demo_job, job_from_file

MADE_AT = datetime(2026, 3, 2, 7, 30)  # noqa: DTZ001 - a wall clock, as it is printed
LARGEST_BYTES = 300_000
EXAMPLES = sorted(
    Path(str(files("gaugerod.adapters.job_file").joinpath("examples"))).glob("*.toml"), key=lambda path: path.name
)


def result_of(path: Path) -> Result:
    return set_out(job_from_file(path))


def page_of(result: Result) -> str:
    return write_on_roof_html(result, made_at=MADE_AT)


def data_in(page: str) -> dict[str, Any]:
    found = re.search(r'<script type="application/json" id="data">(.*?)</script>', page, re.DOTALL)
    assert found is not None
    data: dict[str, Any] = json.loads(found[1])
    return data


class Seen(HTMLParser):
    """Every element of a page, and what stands in each script and style."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.inside: dict[str, str] = {}
        self._in = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        self._in = f"{tag} {dict(attrs).get('id') or ''}".strip() if tag in {"script", "style"} else ""

    def handle_data(self, data: str) -> None:
        if self._in:
            self.inside[self._in] = self.inside.get(self._in, "") + data

    def handle_endtag(self, tag: str) -> None:
        self._in = "" if tag in {"script", "style"} else self._in


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_example_makes_one_small_file_that_names_no_other(path: Path) -> None:
    page = page_of(result_of(path))
    assert len(page.encode()) < LARGEST_BYTES
    seen = Seen(page)
    assert [] == [
        name for _, attributes in seen.tags for name in attributes if name in {"src", "href", "action", "style"}
    ]
    assert {"html", "script", "style"} <= {tag for tag, _ in seen.tags}
    assert not {"link", "img", "iframe", "object", "base"} & {tag for tag, _ in seen.tags}
    assert not re.search(
        r"https?:|//[a-z]+\.[a-z]|url\(|@import|fetch\(|XMLHttp|WebSocket|serviceWorker|import\(", page
    )
    assert not [name for _, attributes in seen.tags for name in attributes if name.startswith("on")]


def test_its_policy_lets_only_its_own_script_and_style_run() -> None:
    page = page_of(set_out(demo_job()))
    seen = Seen(page)
    policy = next(attributes["content"] for _, attributes in seen.tags if "http-equiv" in attributes)
    assert on_roof_policy() == policy

    def hashed(text: str) -> str:
        return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"

    assert policy.startswith("default-src 'none'; ")
    assert f"script-src {hashed(seen.inside['script'])}; style-src {hashed(seen.inside['style'])};" in policy
    assert "unsafe" not in policy


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_mark_of_every_rod_is_in_the_data_and_in_the_tables(path: Path) -> None:
    result = result_of(path)
    page = page_of(result)
    shown = data_in(page)["slopes"]
    assert [slope.slope.name for slope in result.slopes] == [slope["name"] for slope in shown]
    for slope, told in zip(result.slopes, shown, strict=True):
        for index, rod in enumerate(told["rods"]):
            marks = rod_marks(slope, index)
            assert [mark.name for mark in marks] == [row["name"] for row in rod["rows"]]
            assert [mark.mark_mm for mark in marks] == pytest.approx([row["mark_mm"] for row in rod["rows"]], abs=1e-6)
            for mark in marks:
                length = (
                    write_length(mark.mark_mm, result.job.show_lengths_in).replace('"', "&quot;").replace("'", "&#x27;")
                )
                assert f"<td>{length}</td>" in page


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_everything_on_marks_and_perps_that_is_not_within_its_rule_is_told(path: Path) -> None:
    result = result_of(path)
    told = {(each["verdict"], each["says"]) for each in data_in(page_of(result))["findings"]}
    above = [each for each in result.findings if each not in result.beneath.findings]
    assert {(each.verdict.value, each.says) for each in above if each.verdict.value != "within"} == told


def test_the_laps_of_double_lap_belong_to_the_course_that_laps() -> None:
    result = result_of(next(path for path in EXAMPLES if path.stem == "plain-tiles"))
    slope, told = result.slopes[0], data_in(page_of(result))["slopes"][0]
    assert slope.double_lap is not None
    rows = told["rods"][0]["rows"]
    assert ["eaves", "1"] == [row["name"] for row in rows if row["lap_mm"] is None]
    assert list(slope.double_lap.rods[0].laps_mm[: len(rows) - 2]) == pytest.approx(
        [row["lap_mm"] for row in rows[2:]], abs=1e-6
    )


def test_the_fingerprint_changes_with_what_is_shown_and_with_nothing_else() -> None:
    job = demo_job()
    first = data_in(page_of(set_out(job)))
    later = data_in(write_on_roof_html(set_out(job), made_at=datetime(2027, 1, 1)))  # noqa: DTZ001
    inches = data_in(page_of(set_out(replace(job, show_lengths_in=LengthUnit.FT_IN))))
    assert first["fingerprint"] == later["fingerprint"]
    assert first["fingerprint"] != inches["fingerprint"]


def test_a_title_cannot_break_out_of_the_page() -> None:
    evil = "</script><script>alert(1)</script> {{script}} <b>&\u2028"
    page = page_of(set_out(replace(demo_job(), title=evil)))
    seen = Seen(page)
    assert 2 == sum(tag == "script" for tag, _ in seen.tags)
    assert not [tag for tag, _ in seen.tags if tag == "b"]
    assert evil == data_in(page)["title"]


def test_random_and_centre_nailed_slates_say_why_they_are_not_set_out_again_here() -> None:
    for stem, word in (("random-slates", "stack"), ("slates", "heads")):
        result = result_of(next(path for path in EXAMPLES if path.stem == stem))
        assert [True] == [word in slope["re_gauge"]["why_not"] for slope in data_in(page_of(result))["slopes"]]


def test_a_slope_of_a_hipped_house_is_told_that_its_neighbours_stay() -> None:
    result = result_of(next(path for path in EXAMPLES if path.stem == "hipped-house"))
    notes = [slope["re_gauge"]["notes"] for slope in data_in(page_of(result))["slopes"]]
    assert all("hips or valleys" in note[0] for note in notes)
