"""The pages of the order and of the quotation: counted, compared, priced, and the prices kept nowhere."""

import csv
import html
import io
import json
import re
from typing import Any

import pytest

from gaugerod.job.set_out import set_out
from gaugerod.wiring import job_from_document
from tests.scenario.app_browser import Browser


def path(browser: Browser) -> str:
    return f"/jobs/{browser.job}/order"


def looked_at(browser: Browser, form: dict[str, str]) -> dict[str, Any]:
    found: dict[str, Any] = browser.post(f"{path(browser)}.json", {"rev": "1", **form}).json()
    return found


def line(answer: dict[str, Any], item: str) -> dict[str, Any]:
    return next(each for part in answer["answered"]["lines"] for each in part["lines"] if each["item"] == item)


def filled_list(browser: Browser, *, price: str = "1.50", leave_out: str = "") -> bytes:
    blank = browser.get(f"{path(browser)}/price-list-to-fill-in.csv").text
    rows = list(csv.reader(io.StringIO(blank)))
    for row in rows[1:]:
        row[3] = "" if row[1] == leave_out else price
    out = io.StringIO(newline="")
    csv.writer(out, lineterminator="\n").writerows(rows)
    return out.getvalue().encode()


def quoted(browser: Browser, content: bytes, **more: str) -> Any:  # noqa: ANN401 - as the client answers
    return browser.post(f"/jobs/{browser.job}/quotation", more, files={"file": ("prices.csv", content, "text/csv")})


def test_every_line_of_the_take_off_is_shown_with_what_to_order(browser: Browser) -> None:
    answer = browser.get(f"{path(browser)}.json").json()
    taken = set_out(job_from_document(browser.document())).take_off
    assert taken is not None
    shown = [each["item"] for part in answer["answered"]["lines"] for each in part["lines"]]
    assert [each.measured.item for each in taken.lines] == shown
    tile = line(answer, "tile")
    ordered = taken.line("tile")
    assert ordered is not None
    assert f"{ordered.order:g}" == dict(tile["numbers"])["to order"]
    assert any("breakage" in says for says in tile["says"])
    assert "flat" in dict(answer["answered"]["compared"]["lines"][0]["numbers"])


def test_allowances_and_packs_change_the_order_while_they_are_typed(browser: Browser) -> None:
    none = looked_at(browser, {"order.breakage": "0"})
    much = looked_at(browser, {"order.breakage": "50"})
    few, many = (int(dict(line(each, "tile")["numbers"])["to order"]) for each in (none, much))
    assert few < many
    packed = looked_at(browser, {"order.pack[0].item": "tile", "order.pack[0].size": "100", "order.pack[0].pallet": ""})
    assert "of 100" in dict(line(packed, "tile")["numbers"])["in packs"]
    assert 1 == len(browser.store.revisions(browser.job))


def test_what_is_saved_stands_in_the_job_and_comes_back(browser: Browser) -> None:
    page = browser.get(path(browser)).text
    form = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', page))
    before = browser.document()
    assert 303 == browser.post(path(browser), {**form, "rev": "1", "do": "save"}).status_code
    assert before == browser.document()
    typed = {**form, "order.money.tax": "8,875 %", "order.pack[2].item": "batten-3600", "order.pack[2].size": "10",
             "rev": "2", "do": "save"}  # fmt: skip
    browser.post(path(browser), typed)
    assert "8,875 %" == browser.document()["order"]["money"]["tax"]
    assert {"item": "batten-3600", "size": 10} == browser.document()["order"]["pack"][2]


def test_nothing_said_of_the_order_leaves_no_table_behind(browser: Browser) -> None:
    document = {key: value for key, value in browser.document().items() if key != "order"}
    browser.store.save(browser.job, document, by="test", base_rev=1)
    browser.post(path(browser), {"order.breakage": "", "order.money.tax": "", "rev": "2", "do": "save"})
    assert document == browser.document()


@pytest.mark.parametrize(
    ("name", "text"),
    [("order.breakage", "51"), ("order.breakage", "nan"), ("order.breakage", "-1"), ("order.flat_waste", "inf"),
     ("order.money.places", "5"), ("order.money.tax", "101"), ("order.pack[0].size", "0"), ("order.pack[0].item", "A b")],
)  # fmt: skip
def test_a_fault_is_said_beside_its_field_and_saves_nothing(browser: Browser, name: str, text: str) -> None:
    form = {"order.pack[0].item": "tile", "order.pack[0].size": "42", name: text, "rev": "1"}
    answer = looked_at(browser, form)
    assert 1 == len(answer["to_say"])
    assert answer["to_say"][0]["field_id"]
    assert answer["answered"] is not None
    assert 422 == browser.post(path(browser), {**form, "do": "save"}).status_code
    assert 1 == len(browser.store.revisions(browser.job))


def test_the_files_of_the_order_can_be_saved(browser: Browser) -> None:
    downloads = browser.get(f"{path(browser)}.json").json()["downloads"]
    assert {"CSV", "JSON", "PDF"} <= {each["kind"] for each in downloads}
    for each in downloads:
        answer = browser.get(each["href"])
        assert (200, "attachment") == (answer.status_code, answer.headers["content-disposition"].partition(";")[0])
        assert answer.content
    assert 404 == browser.get(f"{path(browser)}/quotation.pdf").status_code, "there are no prices"
    assert 404 == browser.get(f"{path(browser)}/other.csv").status_code


def test_the_list_to_fill_in_names_every_item_and_all_work(browser: Browser) -> None:
    rows = list(csv.DictReader(io.StringIO(browser.get(f"{path(browser)}/price-list-to-fill-in.csv").text)))
    assert {"item", "work"} == {row["kind"] for row in rows}
    assert {"tile", "ridge-unit", "lay-covering"} <= {row["item"] for row in rows}
    assert {""} == {row["price"] for row in rows}


def test_a_list_of_prices_is_answered_with_the_quotation_and_kept_nowhere(browser: Browser) -> None:
    before = browser.store.export_all()
    page = quoted(browser, filled_list(browser))
    assert 200 == page.status_code
    assert "Labour" in page.text
    assert "NOT in the total" not in page.text
    assert before == browser.store.export_all()
    assert "1.50" not in browser.get(f"/jobs/{browser.job}/quotation").text


def test_what_has_no_price_is_named_before_the_total(browser: Browser) -> None:
    page = quoted(browser, filled_list(browser, leave_out="ridge-unit")).text
    assert "1 thing NOT in the total" in page
    assert page.index("NOT in the total") < page.index("<h2>Total</h2>")


def test_every_file_with_prices_is_made_from_the_list_that_travels_with_the_page(browser: Browser) -> None:
    page = quoted(browser, filled_list(browser, price="2.25")).text
    found = re.search(r'<textarea name="prices" hidden>\n(.*?)</textarea>', page, re.DOTALL)
    assert found is not None
    prices = html.unescape(found[1])
    names = re.findall(r'name="send" value="([^"]+)"', page)
    assert {"order.csv", "order.json", "order.pdf", "quotation.pdf"} <= set(names)
    for name in names:
        sent = browser.post(f"/jobs/{browser.job}/quotation", {"prices": prices, "send": name})
        assert (200, name) == (sent.status_code, sent.headers["content-disposition"].rpartition("''")[2])
        if name == "order.json":
            assert json.loads(sent.content)["quotation"]
    missing = browser.post(f"/jobs/{browser.job}/quotation", {"prices": prices, "send": "../job.toml"})
    assert 404 == missing.status_code


@pytest.mark.parametrize(
    "content",
    [b"", b"\xff\xfe\x00", b"kind,item\nitem,tile\n", b"kind,item,unit,price\nitem,tile,pieces,1\xe2\x82\xac\n",
     b"kind,item,unit,price\nitem,tile,pieces,-1\n", b"kind,item,unit,price\nitem,tile,pieces,nan\n",
     b'kind,item,unit,price\nitem,"<script>alert(1)</script>",,1\n'],
)  # fmt: skip
def test_a_list_that_cannot_be_read_is_refused_with_its_faults(browser: Browser, content: bytes) -> None:
    page = quoted(browser, content)
    assert 422 == page.status_code
    assert "The list cannot be used yet" in page.text
    assert "<script>alert" not in page.text


def test_a_list_with_many_faults_is_not_told_to_its_end(browser: Browser) -> None:
    page = quoted(browser, b"kind,item,unit,price\n" + b"".join(b"item,i%d,pieces,x\n" % n for n in range(100))).text
    assert "And 80 more" in page


def test_a_job_that_is_not_set_out_has_no_order_and_says_what_is_to_do(browser: Browser) -> None:
    empty = browser.store.create({"job": {"edition": "GB"}}, by="test", draft=True).job
    assert "Still to do" in browser.get(f"/jobs/{empty}/order").text
    assert "Still to do" in browser.get(f"/jobs/{empty}/quotation").text
    assert 404 == browser.get(f"/jobs/{empty}/order/order.csv").status_code
    sent = browser.post(f"/jobs/{empty}/quotation", files={"file": ("p.csv", b"kind,item,unit,price\n", "text/csv")})
    assert 200 == sent.status_code
