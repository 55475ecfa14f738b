"""Every complaint about a catalog names its table, row and column, and what would be right."""

import csv
import io
import re
from datetime import datetime
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from estimator import Refused, read_catalog
from estimator.catalog import Kind
from estimator.measure import Unit
from estimator.written import length

ITEMS = """\
item,name,kind,colour,repeat,shrinkage_length,nap
sky-lawn,Sky lawn,fabric,sky,,5 %,no
wave-lace,Wave lace,trim,white,1 3/4 in,,
horn-button,Horn button,notion,brown,,,
"""
OFFERS = """\
item,shop,width,usable,length,put_up,step,minimum,from_quantity,price,per,currency
sky-lawn,Quay Cloth,44 in,,,,1/8 yd,1/2 yd,,8.50,yd,USD
sky-lawn,Quay Cloth,1.5 m,,,,,,,9.90,m,USD
wave-lace,Quay Cloth,,,,card of 3 yd,,,2,4.25,,USD
horn-button,Quay Cloth,,,,pack of 6,,,,2.40,,USD
"""


def shop(folder: Path, items: str = ITEMS, offers: str = OFFERS) -> Path:
    (folder / "items.csv").write_text(items, encoding="utf-8")
    (folder / "offers.csv").write_text(offers, encoding="utf-8")
    return folder


def complaints(folder: Path, items: str = ITEMS, offers: str = OFFERS) -> list[str]:
    with pytest.raises(Refused) as refused:
        read_catalog(shop(folder, items, offers))
    return [str(fault).removeprefix(f"{folder}/") for fault in refused.value.faults]


def test_both_tables_make_a_catalog(tmp_path: Path) -> None:
    catalog = read_catalog(shop(tmp_path))
    assert list(catalog.items) == ["sky-lawn", "wave-lace", "horn-button"]
    lawn = catalog.items["sky-lawn"]
    assert (lawn.kind, lawn.shrinkage_length) == (Kind.FABRIC, Fraction(1, 20))
    assert catalog.items["wave-lace"].repeat == length("1 3/4 in")
    assert catalog.currency == "USD"
    by_yard, by_metre = catalog.offers["sky-lawn"]
    assert (by_yard.selling_step, by_yard.minimum) == (length("1/8 yd"), length("1/2 yd"))
    assert (by_metre.sold_by, by_metre.selling_step) == (Unit.M, length("0.1 m"))
    (cards,) = catalog.offers["wave-lace"]
    assert (cards.put_up.holds, cards.put_up.text) == (length("3 yd"), "card of 3 yd")
    assert (cards.from_quantity, cards.price) == (2, Decimal("4.25"))


def test_lace_is_offered_each_where_its_length_is_said(tmp_path: Path) -> None:
    each = OFFERS.replace(",,,,card of 3 yd,", ",,,4 yd,each,")
    (lace,) = read_catalog(shop(tmp_path, offers=each)).offers["wave-lace"]
    assert (lace.put_up.text, lace.length) == ("each", length("4 yd"))


@pytest.mark.parametrize("mark", [";", "\t"])
def test_a_table_parted_by_semicolons_or_tabs_is_read_as_well(tmp_path: Path, mark: str) -> None:
    parted = shop(tmp_path, ITEMS.replace(",", mark), OFFERS.replace(",", mark))
    assert len(read_catalog(parted).offers["sky-lawn"]) == 2


def test_a_heading_may_have_capitals_and_spaces_and_rows_may_be_empty(tmp_path: Path) -> None:
    items = ITEMS.replace("item,name", " Item , NAME") + ",,,,,,\n\n"
    assert len(read_catalog(shop(tmp_path, items)).items) == 3


def test_text_with_a_comma_in_quotes_stays_one_cell(tmp_path: Path) -> None:
    items = ITEMS.replace("Sky lawn", '"Lawn, sky"')
    assert read_catalog(shop(tmp_path, items)).items["sky-lawn"].name == "Lawn, sky"


@pytest.mark.parametrize(
    ("old", "new", "complaint"),
    [
        ("44 in", "44", "row 2, column width: width: '44' has no unit; "
         "write the unit, as in 3 yd or 25 mm"),
        ("44 in", "44 kg", "row 2, column width: width: 'kg' in '44 kg' measures mass, "
         "not a length; use in, ft, yd, mm, cm, m or ligne"),
        ("1/8 yd", "08-Jan", "row 2, column step: '08-Jan' is a date; a spreadsheet makes one of "
         "a fraction such as 1/8; format the cell as text and write 1/8 again"),
        ("8.50", "8.50 dollars", "row 2, column price: price: '8.50 dollars' is not an amount of "
         "money; write it like 8.50"),
        (",yd,USD", ",,USD", "row 2: the price says not for what length; "
         "fill in per, with yd or m"),
        (",yd,USD", ",bolt,USD", "row 2, column per: per: 'bolt' is not what cloth is priced by; "
         "write yd or m"),
        (",yd,USD", ",yd,dollar", "row 2, column currency: currency: 'dollar' is not a currency; "
         "write its ISO 4217 code, as in USD"),
        (",yd,USD", ",yd,", "row 2: the price has no currency; fill in currency, as in USD"),
        ("9.90,m,USD", "9.90,m,EUR", "row 3: prices are in EUR here and in USD in row 2; "
         "use one currency in a catalog"),
        ("1.5 m,,", "1.5 m,1.6 m,", "row 3: the usable width is more than the width; "
         "write the smaller as usable"),
        ("card of 3 yd", "card", "row 4, column put_up: put_up: 'card' is not a put-up; write by "
         "the length, each, pack of 6, card of 3 yd or spool of 25 m"),
        ("card of 3 yd", "card of 0 yd", "row 4, column put_up: put_up: 'card of 0 yd' holds "
         "nothing; write by the length, each, pack of 6, card of 3 yd or spool of 25 m"),
        ("card of 3 yd,,,2", "card of 3 yd,,,2 yd", "row 4: from_quantity is not counted as the "
         "offer is; write a length where the shop cuts to length, a number of packs elsewhere"),
        ("pack of 6,,", "pack of 6,1/8 yd,", "row 5: per, step, minimum and bolt are for what is "
         "cut to length, not 'pack'; leave them empty"),
        ("horn-button,Q", "horn-buton,Q", "row 5: there is no item 'horn-buton' in items.csv; "
         "did you mean 'horn-button'?"),
        ("2.40,,USD", "2.40,,USD,more", "row 5: the row has more cells than the heading; "
         "put text with commas in quotes"),
    ],
)  # fmt: skip
def test_a_bad_cell_of_the_offers_is_told_with_row_column_and_remedy(
    tmp_path: Path, old: str, new: str, complaint: str
) -> None:
    assert OFFERS.count(old) == 1
    assert complaints(tmp_path, offers=OFFERS.replace(old, new)) == [f"offers.csv, {complaint}"]


@pytest.mark.parametrize(
    ("old", "new", "complaint"),
    [
        (",trim,", ",trimm,", "row 3, column kind: kind: 'trimm' is not a kind of item; "
         "did you mean 'trim'?"),
        ("5 %", "0.05", "row 2, column shrinkage_length: shrinkage_length: '0.05' is not a share; "
         'write a percentage, as in "5 %"'),
        ("5 %", "100 %", "row 2, column shrinkage_length: shrinkage_length: a share of 100 % or "
         "more leaves nothing; write less than 100 %"),
        ("5 %,no", "5 %,some", "row 2, column nap: nap: 'some' is neither yes nor no; "
         "write yes or no"),
        ("1 3/4 in", "0 in", "row 3, column repeat: repeat: the length is zero; "
         "write a length of more than zero"),
        ("Wave lace", "", "row 3, column name: 'name' is missing; add name"),
        ("horn-button,Horn", "wave-lace,Horn", "row 4: the item 'wave-lace' stands here twice; "
         "give each item its own name in the column item"),
        ("colour", "coulour", "row 1, column 4: there is no column 'coulour' in this table; "
         "did you mean 'colour'?"),
        ("kind,colour", "colour,colour", "row 1: the column 'kind' is missing; add a column kind"),
    ],
)  # fmt: skip
def test_a_bad_cell_of_the_items_is_told_with_row_column_and_remedy(
    tmp_path: Path, old: str, new: str, complaint: str
) -> None:
    assert ITEMS.count(old) == 1
    assert complaints(tmp_path, ITEMS.replace(old, new))[0] == f"items.csv, {complaint}"


@pytest.mark.parametrize(
    ("old", "new", "complaint"),
    [
        (",44 in,", ",,", "row 2, column width: 'sky-lawn' is a fabric, and this offer has no "
         "width; fill in width"),
        ("44 in,,,,1/8 yd,1/2 yd,,8.50,yd,", "44 in,,,each,,,,8.50,,", "row 2, column put_up: "
         "'sky-lawn' is a fabric, and is cut to length; leave put_up empty"),
        ("card of 3 yd", "card of 3", "row 4, column put_up: 'wave-lace' is a trim, and "
         "'card of 3' does not say how long it is; fill in length, leave put_up empty, or "
         "write it like card of 3 yd"),
        ("pack of 6,,,,2.40,", ",,,,2.40,yd", "row 5, column put_up: 'horn-button' is a notion, "
         "and is not cut to length; write each or pack of 6"),
    ],
    ids=["no width", "a bolt", "a count of lace", "buttons by the yard"],
)  # fmt: skip
def test_an_offer_that_does_not_suit_its_kind_of_item_is_told_with_its_row(
    tmp_path: Path, old: str, new: str, complaint: str
) -> None:
    assert OFFERS.count(old) == 1
    assert complaints(tmp_path, offers=OFFERS.replace(old, new)) == [f"offers.csv, {complaint}"]


@pytest.mark.parametrize(
    "items",
    [
        ITEMS.replace("5 %,no", "5 %,perhaps"),
        ITEMS.replace("sky,,5 %", "04-Mar,04-Mar,5 %"),
        ITEMS.replace("5 %,no", "5 %,no,more"),
    ],
    ids=["no yes and no no", "a date", "a cell too many"],
)
def test_the_offers_of_an_item_that_cannot_be_read_are_not_blamed(
    tmp_path: Path, items: str
) -> None:
    assert items != ITEMS
    assert [one.split(":")[0].split(", column")[0] for one in complaints(tmp_path, items)] == [
        "items.csv, row 2"
    ]


def test_a_folder_whose_name_no_disk_holds_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match=r"cannot be read \(File name too long\); name the folder"):
        read_catalog(tmp_path / ("x" * 300))


def test_a_column_that_stands_twice_is_refused(tmp_path: Path) -> None:
    assert complaints(tmp_path, ITEMS.replace("repeat", "colour")) == [
        "items.csv, row 1: the column 'colour' stands here twice; keep one of them"
    ]


def test_complaints_about_several_rows_come_together(tmp_path: Path) -> None:
    offers = OFFERS.replace("44 in", "44").replace("card of 3 yd", "card").replace("2.40", "two")
    rows = [one.split(",")[1] for one in complaints(tmp_path, offers=offers)]
    assert rows == [" row 2", " row 4", " row 5"]


@pytest.mark.parametrize("lost", ["items.csv", "offers.csv"])
def test_a_missing_table_is_named(tmp_path: Path, lost: str) -> None:
    shop(tmp_path)
    (tmp_path / lost).unlink()
    with pytest.raises(Refused, match=f"{lost}: does not exist; check the name and the folder"):
        read_catalog(tmp_path)


def test_a_catalog_is_a_folder(tmp_path: Path) -> None:
    file = shop(tmp_path) / "items.csv"
    with pytest.raises(
        Refused, match=r"is not a folder; name the folder that holds items\.csv and"
    ):
        read_catalog(file)
    with pytest.raises(Refused, match=r"does not exist; name the folder that holds items\.csv and"):
        read_catalog(tmp_path / "nowhere")


@pytest.mark.parametrize(
    ("wrong", "told"),
    [(b"", "row 1: the column 'item' is missing"), (b"\xff\xfe\x00", "is not a text file in UTF-8"),
     (b'item,name,kind\nlawn,"Lawn,fabric\n', "")],
    ids=["empty", "not text", "a quote left open"],
)  # fmt: skip
def test_what_is_no_table_is_refused_without_a_traceback(
    tmp_path: Path, wrong: bytes, told: str
) -> None:
    (shop(tmp_path) / "items.csv").write_bytes(wrong)
    with pytest.raises(Refused) as refused:
        read_catalog(tmp_path)
    assert told in str(refused.value)


def test_a_cell_larger_than_any_table_holds_is_refused(tmp_path: Path) -> None:
    huge = ITEMS.replace("Sky lawn", "x" * 200_000)
    assert complaints(tmp_path, huge)[0].startswith("items.csv")


def workbook(path: Path, items: str = ITEMS, offers: str = OFFERS) -> Path:
    """The same tables as the two sheets of a workbook, numbers typed as numbers."""
    book = Workbook()
    for title, table in (("Items", items), ("Offers", offers)):
        sheet = book.create_sheet(title)
        for row in csv.reader(io.StringIO(table)):
            sheet.append([float(cell) if re.fullmatch(r"\d+\.\d+", cell) else cell for cell in row])
    book.save(path)
    return path


def test_a_workbook_of_both_tables_is_the_same_catalog(tmp_path: Path) -> None:
    assert read_catalog(workbook(tmp_path / "shop.xlsx")) == read_catalog(shop(tmp_path))


@pytest.mark.parametrize(
    ("at", "value", "complaint"),
    [
        (("Offers", "C2"), "44", "sheet Offers, cell C2: width: '44' has no unit"),
        (("Offers", "G2"), datetime(2026, 8, 1), "sheet Offers, cell G2: '2026-08-01' is a date; a "
         "spreadsheet makes one of a fraction such as 1/8"),
        (("Offers", "J2"), "=4*2", "sheet Offers, cell J2: the cell holds a formula; write its "
         "result as a plain value"),
        (("Offers", "A3"), "sky-laun", "sheet Offers, row 3: there is no item 'sky-laun' in the "
         "sheet Items; did you mean 'sky-lawn'?"),
        (("Items", "D1"), "color", "sheet Items, cell D1: there is no column 'color' in this "
         "table"),
    ],
)  # fmt: skip
def test_a_complaint_about_a_workbook_names_sheet_and_cell(
    tmp_path: Path, at: tuple[str, str], value: object, complaint: str
) -> None:
    path = workbook(tmp_path / "shop.xlsx")
    book = load_workbook(path)
    book[at[0]][at[1]] = value
    book.save(path)
    with pytest.raises(Refused) as refused:
        read_catalog(path)
    (fault,) = refused.value.faults
    assert str(fault).startswith(f"{path}, {complaint}")


def test_a_percentage_typed_as_one_is_a_share(tmp_path: Path) -> None:
    path = workbook(tmp_path / "shop.xlsx")
    book = load_workbook(path)
    book["Items"]["F2"] = 0.125
    book["Items"]["F2"].number_format = "0.0%"
    book.save(path)
    assert read_catalog(path).items["sky-lawn"].shrinkage_length == Fraction(1, 8)


def test_a_workbook_without_both_sheets_is_no_catalog(tmp_path: Path) -> None:
    path = workbook(tmp_path / "shop.xlsx")
    book = load_workbook(path)
    del book["Offers"]
    book.save(path)
    with pytest.raises(Refused, match="has no sheet offers; name its two sheets items and offers"):
        read_catalog(path)
