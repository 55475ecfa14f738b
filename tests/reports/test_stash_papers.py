"""What comes from where, on every paper: the list, the cut list, the layouts, the working, JSON."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator import Estimate, GarmentOrder, Job, estimate
from estimator.measure import Unit
from estimator.reports.as_json import estimate_json
from estimator.reports.buyers_list.file import write_list
from estimator.reports.page import page_text
from estimator.reports.pictures.files import all_pictures
from estimator.reports.pictures.svg import svg_text
from estimator.reports.pictures.trim_pictures import trim_pictures
from estimator.reports.remnant_papers import remnant_layouts
from estimator.reports.shopping_list import sections, totals
from estimator.reports.stash_papers import amount_text, stash_table
from estimator.reports.terminal import estimate_text, layout_text, working_text
from estimator.reports.workbook import workbook_of
from estimator.stash import InHand, Stash
from estimator.written import length
from tests.plans import catalog, order, plan
from tests.reports.filled_lists import value_at
from tests.reports.pictures.drawn import pieces, read, written

TEXT = """
[garment]
name = "Apron"
unit = "in"
currency = "USD"
[[fabric]]
name = "check"
price = "6 per yd"
widths = ["45 in"]
[[piece]]
name = "skirt"
quantity = {quantity}
cut = "check"
sizes = "cut"
width = "40"
length = "20"
"""


def with_remnant(quantity: int, remnants: int = 1) -> Estimate:
    row = InHand.model_validate(
        {
            "item": "check",
            "width": "45 in",
            "length": "1 yd",
            "place": "chest 1",
            "count": str(remnants),
        }
    )
    job = Job((GarmentOrder(plan(TEXT.format(quantity=quantity))),), stash=Stash({2: row}))
    return estimate(job)


def test_a_fabric_wholly_from_the_stash_says_nothing_to_buy_on_every_paper() -> None:
    found = with_remnant(1)
    (section,) = sections(found)
    (line,) = section.lines
    assert line.note.startswith("nothing to buy: all of it comes from the stash: 22 in (chest 1)")
    assert line.shop == ""
    assert totals(found) == ("There is nothing to buy: all of it comes from the stash.",)
    assert "check: nothing to buy: all of it comes from the stash." in estimate_text(found)
    assert "check, remnant from chest 1" in layout_text(found)
    working = working_text(found)
    assert "nothing to buy: all of it comes from the stash" in working
    assert "cut 22 in off it; 14 in is left" in working


def test_each_remnant_is_drawn_before_the_new_cloth_with_its_own_edges() -> None:
    found = with_remnant(3)
    pictures = list(all_pictures(found))
    assert [(one.stem, one.title) for one in pictures] == [
        ("layout-1-remnant-1-1", "check, remnant from chest 1"),
        ("layout-1-1-1", "check"),
    ]
    remnant, bolt = (read(svg_text(one)) for one in pictures)
    said = {one.text for one in written(remnant)}
    assert len(pieces(remnant)) == 1  # 22 in and both ends off a yard: one skirt of 20 in
    assert "edge" in said  # it may have lost its selvedges
    assert "selvedge" not in said
    assert len(pieces(bolt)) == 2
    assert "selvedge" in {one.text for one in written(bolt)}


def test_the_picture_of_a_remnant_stands_with_its_table_on_page_and_sheet() -> None:
    found = with_remnant(1)
    assert page_text(found).count("<svg ") == 1
    assert len(workbook_of(found)["Layout"]._images) == 1


def test_two_remnants_from_one_chest_have_titles_of_their_own() -> None:
    found = with_remnant(2, remnants=2)
    titles = [
        table.title for choice in found.fabrics for table, _ in remnant_layouts(choice, found)
    ]
    assert titles == [f"check, remnant from chest 1, {one} of 2" for one in (1, 2)]
    assert [one.title for one in all_pictures(found)] == titles


def test_the_cut_list_tells_the_pieces_of_the_remnant_from_those_of_the_bolt() -> None:
    text = layout_text(with_remnant(3))
    assert "check, remnant from chest 1" in text
    assert "Cut 22 in off it; 14 in is left." in text
    assert "check, 45 in wide" in text


def test_the_table_says_what_to_take_where_and_what_is_left() -> None:
    table = stash_table(with_remnant(3))
    assert table is not None
    assert table.rows == (
        ("22 in", "check", "45 in wide, 36 in long", "chest 1", "skirt", "14 in"),
    )
    assert stash_table(estimate(plan(TEXT.format(quantity=3)))) is None


@pytest.mark.parametrize(
    ("amount", "unit", "told"),
    [
        # 4 yd are 144 in; 36 in are a yard; nobody counts thirteen metres in centimetres
        ("159 1/2 in", Unit.IN, "4 yd 15 1/2 in"),
        ("60 in", Unit.IN, "60 in"),
        ("10 yd", Unit.IN, "10 yd"),
        ("1396.8 cm", Unit.CM, "13.968 m"),
        ("299 cm", Unit.CM, "299 cm"),
    ],
)
def test_a_long_length_in_hand_is_told_in_yards_or_metres(
    amount: str, unit: Unit, told: str
) -> None:
    assert amount_text(length(amount), unit) == told


def test_what_comes_from_the_stash_is_marked_only_once_some_of_it_is_to_be_bought(
    tmp_path: Path,
) -> None:
    path = tmp_path / "list.xlsx"
    for _ in range(2):
        write_list(with_remnant(1), path)
        assert value_at(path, "check", "Since the last list") is None
    write_list(with_remnant(3), path)
    # 2 x 20 in and both ends of 1 in: 42 in, 1 1/4 yd
    assert value_at(path, "check", "Since the last list") == "1 1/4 yd more"


def test_the_workbook_has_a_sheet_for_the_shelves_before_the_shop() -> None:
    book = workbook_of(with_remnant(3))
    assert book.sheetnames[:2] == ["Shopping list", "Stash"]
    cells = [cell.value for row in book["Stash"].iter_rows() for cell in row]
    assert "chest 1" in cells
    assert "Stash" not in workbook_of(estimate(plan(TEXT.format(quantity=3)))).sheetnames


def test_another_program_reads_what_is_taken_and_where_it_lies() -> None:
    found = estimate_json(with_remnant(3))
    (line,) = found["shopping_list"]
    assert line["from_stash"][0]["place"] == "chest 1"
    assert line["from_stash"][0]["take"]["text"] == "22 in"
    (remnant,) = found["fabrics"][0]["widths"][0]["from_remnants"]
    assert [piece["quantity"] for piece in remnant["pieces"]] == [1]
    assert len(remnant["places"]) == 1


BRAID = """
[garment]
name = "{name}"
unit = "in"
currency = "USD"
[[trim]]
name = "{trim}"
buy = "braid"
length = "{long}"
quantity = {quantity}
ends = "raw"
"""


def braided() -> Estimate:
    """A coat for Kit with four runs of 20 in, a cap with one of 10 in, and 55 in of braid."""
    shop = catalog(
        [{"item": "braid", "name": "Braid", "kind": "trim"}],
        [{"item": "braid", "price": "1.00", "per": "yd", "currency": "USD"}],
    )
    coat = BRAID.format(name="coat", trim="cuff braid", long="20", quantity=4)
    cap = BRAID.format(name="cap", trim="band", long="10", quantity=1)
    tin = InHand.model_validate({"item": "braid", "length": "55 in", "place": "tin"})
    return estimate(Job((order(coat, wearer="Kit"), order(cap)), shop, stash=Stash({2: tin})))


def test_the_table_says_which_runs_of_whom_are_cut_from_a_length_in_hand() -> None:
    # 20 + 20 + 10 of 55 in; the other two are bought
    table = stash_table(braided())
    assert table is not None
    assert table.rows == (
        (
            "50 in",
            "Braid",
            "55 in long",
            "tin",
            "coat (Kit): 2 × cuff braid; cap: 1 × band",
            "5 in",
        ),
    )


def test_the_table_names_the_garment_and_wearer_of_each_piece_on_a_remnant() -> None:
    row = InHand.model_validate({"item": "check", "width": "45 in", "length": "2 yd"})
    ivy, june = (
        order(TEXT.format(quantity=number), wearer=who) for number, who in ((1, "Ivy"), (2, "June"))
    )
    table = stash_table(estimate(Job((ivy, june), stash=Stash({2: row}))))
    assert table is not None
    assert [one[4] for one in table.rows] == ["Apron (Ivy): 1 × skirt; Apron (June): 2 × skirt"]


def test_of_many_garments_on_one_remnant_the_first_four_are_named() -> None:
    row = InHand.model_validate({"item": "check", "width": "45 in", "length": "5 yd"})
    names = ("Ada", "Bo", "Cy", "Di", "Ed", "Flo")
    six = tuple(order(TEXT.format(quantity=1), wearer=who) for who in names)
    table = stash_table(estimate(Job(six, stash=Stash({2: row}))))
    assert table is not None
    (told,) = (one[4] for one in table.rows)
    assert told == (
        "Apron (Ada): skirt; Apron (Bo): skirt; Apron (Cy): skirt; Apron (Di): skirt; "
        "for 2 more garments as well"
    )


def test_the_working_tells_the_runs_that_are_in_hand_from_those_that_are_bought() -> None:
    working = " ".join(working_text(braided(), "braid").split())
    assert "cut from the stash, worked apart = 3 of 5 runs" in working
    assert "Braid, 55 in from tin coat (Kit): cuff braid 2 × 20 in = 40 in" in working
    assert "cap: band = 10 in all runs together = 50 in" in working
    assert "cut 50 in off it; 5 in is left" in working


def test_the_runs_on_a_length_in_hand_are_drawn_before_those_that_are_bought() -> None:
    (picture,) = trim_pictures(braided())
    in_hand, bought = picture.description.split("; ")
    assert in_hand == (
        "1 × 55 in from tin, 5 in left: "
        "coat (Kit): cuff braid, 20 in, coat (Kit): cuff braid, 20 in, cap: band, 10 in"
    )
    assert bought.count("coat (Kit): cuff braid, 20 in") == 2
    runs = [title for title, _ in pieces(read(svg_text(picture)))]
    assert len(runs) == 5


def test_a_trim_wholly_from_the_stash_is_drawn_too() -> None:
    text = BRAID.replace('buy = "braid"', "").format(
        name="coat", trim="cuff braid", long="20", quantity=2
    )
    tin = InHand.model_validate({"item": "cuff braid", "length": "1 yd 4 in"})
    found = estimate(Job((order(text),), stash=Stash({2: tin})))
    (picture,) = trim_pictures(found)
    assert picture.description == (
        "1 × 40 in from the stash, row 2, nothing left: cuff braid, 20 in, cuff braid, 20 in."
    )
