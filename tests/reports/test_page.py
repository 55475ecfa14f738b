"""The page, parsed as a browser parses it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal
from itertools import pairwise
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib
import pytest

from estimator import Estimate, GarmentOrder, Job, Refused, estimate
from estimator.files import estimate_files
from estimator.reports.page import page_text
from estimator.reports.pictures.files import all_pictures
from estimator.reports.saving import save_page
from estimator.reports.shopping_list import sections
from estimator.shops import Shops
from tests.plans import catalog, plan
from tests.reports.harbour_dress import DRESS
from tests.shipped_plans import ALL, DEMOS, SHOPS, stem

NS = "{http://www.w3.org/1999/xhtml}"
SVG = "{http://www.w3.org/2000/svg}"

ELASTIC = """[[elastic]]
name = "cuff elastic"
measure = "8"
quantity = 2
price = "0.55 per yd"
"""
TWO_WIDTHS = (
    DRESS.replace('colour = "sea green"\n', "")
    .replace('"8.49 per yd" }', '"8.49 per yd" }, { width = "60 in", price = "9.90 per yd" }')
    .replace(ELASTIC, "")
)


def parsed(text: str) -> Element:
    """The page as a tree; a fault in its syntax is an error."""
    tree: Element = html5lib.HTMLParser(strict=True).parse(text)
    return tree


def page_of(found: Estimate) -> Element:
    return parsed(page_text(found))


def all_of(root: Element, *tags: str) -> list[Element]:
    return [one for one in root.iter() if one.tag in {f"{NS}{tag}" for tag in tags}]


def text_of(one: Element) -> str:
    return " ".join("".join(one.itertext()).split())


def by_id(root: Element, name: str) -> Element:
    (one,) = (one for one in root.iter() if one.get("id") == name)
    return one


def demo(path: Path) -> Estimate:
    return estimate_files([path], SHOPS)


@pytest.fixture(scope="module")
def page() -> Element:
    return page_of(estimate(plan(TWO_WIDTHS)))


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_the_page_of_a_shipped_plan_is_sound_html_and_every_id_is_there_once(path: Path) -> None:
    root = page_of(demo(path))
    ids = [one.get("id") for one in root.iter() if one.get("id")]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("path", DEMOS, ids=stem)
def test_the_total_and_the_sums_of_the_parts_are_those_of_the_estimate(path: Path) -> None:
    found = demo(path)
    root = page_of(found)
    assert Decimal(text_of(by_id(root, "total"))) == found.cost
    sums = [row for row in all_of(root, "tr") if row.get("class") == "together"]
    assert sum(Decimal(text_of(row[-1])) for row in sums) == found.cost
    costs = [
        Decimal(text_of(one))
        for row in all_of(root, "tr")
        if row.get("class") == "line"
        for one in row[-1]
        if one.get("class") == "amount"
    ]
    assert sum(costs) == found.cost


def test_what_a_shop_charges_has_a_row_so_that_the_sums_make_the_total() -> None:
    hook = '[garment]\nname = "Apron"\n[[notion]]\nname = "hook"\nbuy = "hook"\nquantity = 2\n'
    shop = catalog(
        [{"item": "hook", "kind": "notion"}],
        [{"item": "hook", "shop": "Weir Lane", "put_up": "each", "price": "0.50",
          "currency": "USD"}],
    )  # fmt: skip
    charged = Shops({"Weir Lane": Decimal("4")})
    found = estimate(Job((GarmentOrder(plan(hook)),), shop, shops=charged))
    root = page_of(found)
    sums = [row for row in all_of(root, "tr") if row.get("class") == "together"]
    assert [text_of(cell) for cell in sums[-1]] == ["Weir Lane: visit or delivery", "4.00"]
    assert sum(Decimal(text_of(row[-1])) for row in sums) == Decimal("5.00")
    assert text_of(by_id(root, "total")) == "5.00"


def test_nothing_of_the_page_is_fetched_from_anywhere(page: Element) -> None:
    text = page_text(estimate(plan(TWO_WIDTHS)))
    named = set(re.findall(r"https?://[^\s\"'<>]*", text))
    assert named == {"http://www.w3.org/2000/svg"}, "the name of the standard, which is not fetched"
    assert not re.search(r"url\(|@import|srcset|\bfetch\(|XMLHttpRequest", text)
    for one in page.iter():
        assert one.get("src") is None
        assert (one.get("href") or "#").startswith("#")
    (policy,) = (one for one in all_of(page, "meta") if one.get("http-equiv"))
    assert (policy.get("content") or "").startswith("default-src 'none'")


def test_every_link_leads_to_a_part_of_the_page(page: Element) -> None:
    ids = {one.get("id") for one in page.iter()}
    links = [one.get("href") or "" for one in all_of(page, "a")]
    assert len(links) >= 6
    assert {link.removeprefix("#") for link in links} <= ids


def test_headings_go_down_one_step_at_a_time(page: Element) -> None:
    levels = [int(one.tag[-1]) for one in all_of(page, "h1", "h2", "h3", "h4")]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_the_page_has_its_landmarks_and_each_of_them_a_name(page: Element) -> None:
    assert [len(all_of(page, tag)) for tag in ("header", "nav", "main", "footer")] == [1] * 4
    ids = {one.get("id"): text_of(one) for one in page.iter() if one.get("id")}
    names = [ids[one.get("aria-labelledby")] for one in all_of(page, "section")]
    assert all(names)
    assert len(names) == len(set(names))
    assert page.get("lang") == "en"


def test_every_table_has_a_caption_and_heads_with_their_scope(page: Element) -> None:
    tables = all_of(page, "table")
    assert len(tables) > 8
    for table in tables:
        assert text_of(table[0])
        assert table[0].tag == f"{NS}caption"
    for head in all_of(page, "th"):
        assert head.get("scope") in {"col", "row", "rowgroup"}
        assert text_of(head)


def test_each_line_has_a_box_to_tick_that_is_named_and_remembered_by_its_key() -> None:
    found = estimate(plan(TWO_WIDTHS))
    page = page_of(found)
    labels = {one.get("for"): text_of(one) for one in all_of(page, "label")}
    boxes = all_of(page, "input")
    assert [box.get("data-key") for box in boxes] == [one.key for one in found.purchases]
    assert [labels[box.get("id")] for box in boxes] == [one.title for one in found.purchases]


def test_the_working_of_each_line_is_folded_below_it(page: Element) -> None:
    rows = [row for row in all_of(page, "tr") if row.get("class") in ("line", "more")]
    for line, more in zip(rows[::2], rows[1::2], strict=True):
        (folded,) = all_of(more, "details")
        assert folded.get("open") is None
        label = text_of(all_of(line, "label")[0])
        assert text_of(folded[0]) == f"Working of {label}"
        assert re.search(r"buy [\d /]+", text_of(folded))


def test_a_line_without_a_price_has_room_to_write_one(page: Element) -> None:
    (line,) = (
        row
        for row in all_of(page, "tr")
        if row.get("class") == "line" and "fusible" in text_of(row[1])
    )
    assert text_of(line[-1]) == "no price"
    assert [one.get("class") for one in line[-1]] == ["blank", "unseen"]


def test_each_layout_each_trim_and_each_choice_of_widths_is_drawn_with_a_title() -> None:
    found = estimate(plan(TWO_WIDTHS))
    drawn = list(page_of(found).iter(f"{SVG}svg"))
    titles = [one.title for one in all_pictures(found)]
    assert [text_of(one[0]) for one in drawn] == titles
    assert {"braid", "lawn: widths compared"} <= set(titles)
    for one in drawn:
        assert one.get("role") == "img"
        assert one[0].tag == f"{SVG}title"


def test_the_cut_list_has_every_piece_with_its_cut_size(page: Element) -> None:
    said = [text_of(row) for row in all_of(page, "tr")]
    # 19 1/4 + 2 x 5/8 by 31 + 2 x 5/8
    assert "lawn panel 3 20 1/2 in 32 1/4 in 19 1/4 in 31 in" in said


def test_a_line_tells_what_may_be_bought_instead(page: Element) -> None:
    # 3 panels and the band on 60 in cloth
    (other,) = (line.instead for one in sections(estimate(plan(TWO_WIDTHS))) for line in one.lines
                if line.item == "lawn")  # fmt: skip
    assert other[0].startswith("60 in: ")
    said = [text_of(one) for one in all_of(page, "p") if "Instead:" in text_of(one)]
    assert said[0] == f"Instead: {'; '.join(other)}"


def test_no_line_ends_within_a_size(page: Element) -> None:
    said = "".join(page.itertext())
    assert "19\N{NO-BREAK SPACE}1/4\N{NO-BREAK SPACE}in" in said
    told = [text for one in all_of(page, "p", "li", "th", "td", "bdi", "span")
            for text in one.itertext()]  # fmt: skip
    assert [text for text in told if re.search(r"\d \d+/\d|\d (in|yd)\b", text)] == []


def section_of(root: Element, name: str) -> Element:
    (one,) = (one for one in all_of(root, "section") if one.get("aria-labelledby") == name)
    return one


def test_the_page_says_what_is_to_be_done_before_sewing() -> None:
    found = estimate(
        plan(TWO_WIDTHS.replace('name = "lawn"', 'name = "lawn"\nfibres = "cotton"', 1))
    )
    assert any("cotton" in line or "wash" in line for line in found.advice)
    said = [text_of(one) for one in all_of(section_of(page_of(found), "before"), "li")]
    assert said == [" ".join(line.split()) for line in found.advice]


def test_the_measure_sheet_is_a_part_of_the_page_with_room_to_write_in(page: Element) -> None:
    sheet = section_of(page, "measured")
    panel = next(row for row in all_of(sheet, "tr") if text_of(row[0]) == "panel")
    assert panel[0].get("scope") == "row"
    assert [text_of(cell) for cell in panel] == [
        "panel", "3", "lawn", "19 1/4 in", "31 in", "a rectangle", "", "",
    ]  # fmt: skip
    assert [text_of(one) for one in all_of(sheet, "th")][6:8] == [
        "Seen, measured or guessed", "Remarks",
    ]  # fmt: skip


def test_the_measure_sheet_of_one_garment_lies_open_and_those_of_several_are_folded() -> None:
    other = TWO_WIDTHS.replace("harbour dress", "quay dress").replace('"31"', '"28"')
    for texts, opened in ((TWO_WIDTHS,), {""}), ((TWO_WIDTHS, other), {None}):
        found = estimate(Job(tuple(GarmentOrder(plan(text)) for text in texts)))
        sheets = all_of(section_of(page_of(found), "measured"), "summary")
        titles = [text_of(one) for one in sheets if "Measure sheet" in text_of(one)]
        folds = all_of(section_of(page_of(found), "measured"), "details")
        assert len(titles) == len(texts)
        assert {one.get("open") for one in folds} == opened


def test_a_page_without_anything_to_say_before_sewing_has_no_such_part(page: Element) -> None:
    assert "Before sewing" not in text_of(page)


def strings(root: Element) -> Iterator[str]:
    for one in root.iter():
        yield from one.attrib.values()
        yield one.text or ""
        yield one.tail or ""


HOSTILE = {
    "a formula": "=1+1",
    "markup": "<b>bold</b>",
    "a script": "</title></script><script>alert(1)</script>",
    "an end of a comment": "--><img src=x onerror=alert(1)>",
    "a template": "{{ 7 * 7 }}{% raw %}",
    "quotation marks": "a' onclick='x",
    "two hundred characters": "x" + "ruffle" * 31,
    "emoji": "🧵 ribbon 👗",
    "right to left": "כנף שמאל",
    "a turning mark": "left\u202eright",
    "line breaks": "over\ntwo\r\nlines",
    "a control character": "bell\u0007",
}


@pytest.mark.parametrize("name", HOSTILE.values(), ids=HOSTILE)
def test_whatever_things_are_called_comes_out_as_harmless_text(name: str) -> None:
    written = "".join(f"\\u{ord(char):04x}" if ord(char) < 65536 else char for char in name)
    plain = page_of(estimate(plan(TWO_WIDTHS)))
    text = TWO_WIDTHS
    for old in ("harbour dress", "lawn", "panel", "braid", "button"):
        text = text.replace(f'"{old}', f'"{written}{old}')
    root = page_of(estimate(plan(text)))
    assert [one.tag for one in all_of(root, "b", "script", "img")] == [f"{NS}script"]
    assert {key for one in root.iter() for key in one.attrib} == {
        key for one in plain.iter() for key in one.attrib
    }
    expected = " ".join(name.replace("\u202e", " ").replace("\u0007", " ").split())
    assert text_of(all_of(root, "h1")[0]).startswith(expected)
    assert text_of(all_of(root, "label")[0]).startswith(expected)
    for said in strings(root):
        assert "\u202e" not in said
        assert "\u0007" not in said


def test_an_estimate_with_nothing_to_buy_makes_a_page_that_says_so() -> None:
    root = page_of(estimate(plan('[garment]\nname = "nothing yet"')))
    assert "There is nothing to buy." in text_of(root)
    assert all_of(root, "input") == []


def test_the_same_plan_gives_the_same_page() -> None:
    assert page_text(estimate(plan(TWO_WIDTHS))) == page_text(estimate(plan(TWO_WIDTHS)))


def test_a_page_is_written_over_an_older_one_of_ours(tmp_path: Path) -> None:
    file = tmp_path / "list.html"
    save_page(page_text(estimate(plan(TWO_WIDTHS))), file)
    save_page(page_text(estimate(plan(TWO_WIDTHS.replace("harbour", "market")))), file)
    assert "market dress" in file.read_text(encoding="utf-8")


@pytest.mark.parametrize("text", ["", "<!DOCTYPE html><p>a letter</p>"])
def test_a_page_is_never_written_over_what_is_not_ours(text: str, tmp_path: Path) -> None:
    file = tmp_path / "list.html"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(Refused, match=r"is no page of ours"):
        save_page(page_text(estimate(plan(TWO_WIDTHS))), file)
    assert file.read_text(encoding="utf-8") == text


@pytest.mark.parametrize("name", ["list.xlsx", "list", "page.txt"])
def test_a_page_has_the_name_of_a_page(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match=r"let it end in \.html"):
        save_page("", tmp_path / name)
