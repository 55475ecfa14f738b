"""A show's own stash, shops and budget, as its file and the command line state them."""

from __future__ import annotations

import warnings
from decimal import Decimal
from pathlib import Path

import pytest
from pycel import ExcelCompiler
from typer.testing import CliRunner

from estimator import Estimate, Refused, estimate_files
from estimator.cli import app
from estimator.reports.budget_papers import account
from estimator.reports.buyers_list.columns import LETTER_OF, LIST_SHEET
from estimator.reports.buyers_list.file import write_list
from estimator.reports.page import page_text
from estimator.reports.shopping_list import notes_of
from estimator.reports.terminal import estimate_text
from tests.reports.filled_lists import sum_row, the_list

SHOW = """
[show]
name = "Harvest"
catalog = "."
stash = "stash.csv"
ceiling = "30"
tax = "10 %"
[[shop]]
name = "Weir"
charge = "3"
[[garment]]
plan = "apron.toml"
"""
PLAN = """
[garment]
name = "Apron"
unit = "in"
[[notion]]
name = "bone"
buy = "bone"
quantity = 10
[[notion]]
name = "brass"
buy = "brass"
quantity = 10
"""
ITEMS = "item,name,kind\nbone,Bone button,notion\nbrass,Brass button,notion\n"
OFFERS = """item,shop,put_up,price,currency
bone,Quay,each,1.00,USD
bone,Weir,each,0.90,USD
brass,Quay,each,1.00,USD
brass,Weir,each,1.20,USD
"""
FILES = {
    "play.show.toml": SHOW,
    "apron.toml": PLAN,
    "items.csv": ITEMS,
    "offers.csv": OFFERS,
    "stash.csv": "item,count,place\nbone,4,tin\n",
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name, text in FILES.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path


def estimated(folder: Path, **options: bool | Path) -> Estimate:
    return estimate_files([folder / "play.show.toml"], **options)  # type: ignore[arg-type]


def rewrite(folder: Path, name: str, old: str, new: str) -> None:
    text = (folder / name).read_text(encoding="utf-8")
    assert old in text
    (folder / name).write_text(text.replace(old, new), encoding="utf-8")


def told(folder: Path) -> list[str]:
    try:
        estimated(folder)
    except Refused as refused:
        return [str(fault).replace(f"{folder}/", "") for fault in refused.faults]
    return []


def test_a_show_has_its_stash_shops_and_budget(folder: Path) -> None:
    # six bones and ten brass at Quay: 16.00; Weir would save 0.60 on the bones and take 3.00
    found = estimated(folder)
    assert [(one.shop, one.charge) for one in found.visits] == [("Quay", Decimal(0))]
    assert found.total == Decimal("16.00")
    assert found.job.funds.budget == Decimal(30)


def two_shows(folder: Path, second: str) -> list[Path]:
    """Beside the show another one in a folder of its own."""
    there = folder / "winter"
    there.mkdir()
    for name in FILES:
        (there / name).write_text((folder / name).read_text(encoding="utf-8"), encoding="utf-8")
    (there / "play.show.toml").write_text(second, encoding="utf-8")
    return [folder / "play.show.toml", there / "play.show.toml"]


OF_THE_SAME_HOUSE = SHOW.replace('"."', '".."').replace('"stash.csv"', '"../stash.csv"')


@pytest.mark.parametrize(
    ("what", "old", "new"), [("catalog", '".."', '"."'), ("stash", '"../stash.csv"', '"stash.csv"')]
)
def test_shows_with_several_catalogs_or_stashes_are_asked_for_one(
    folder: Path, what: str, old: str, new: str
) -> None:
    shows = two_shows(folder, OF_THE_SAME_HOUSE.replace(old, new))
    with pytest.raises(Refused) as refused:
        estimate_files(shows)
    (found,) = refused.value.faults
    assert f"several files as {what}: " in found.wrong
    assert found.where.startswith(f"{shows[1]}, line ")
    assert f"--{what}" in found.right


def test_shows_that_name_one_catalog_are_planned_together_without_their_budgets(
    folder: Path,
) -> None:
    shows = two_shows(folder, OF_THE_SAME_HOUSE)
    found = estimate_files(shows)
    assert found.job.funds.budget is None
    assert any("its budget, tax and contingency is left out" in one for one in found.remarks)
    assert not any("is left out" in one for one in estimate_files(shows[:1]).remarks)


def test_a_charge_of_the_catalogs_own_table_gives_way_to_that_of_the_show(folder: Path) -> None:
    table = "name,charge\nQuay,9\nWeir,0\n"
    (folder / "shops.csv").write_text(table, encoding="utf-8")
    # at Quay 16 + 9 = 25; at Weir 5.40 + 12 + 3 = 20.40
    assert estimated(folder).total == Decimal("20.40")


def test_the_command_line_names_another_stash_and_asks_for_the_fewest_shops(folder: Path) -> None:
    (folder / "other.csv").write_text("item,count\nbrass,10\n", encoding="utf-8")
    found = estimated(folder, stash=folder / "other.csv", fewest_shops=True)
    # ten bones alone: 10.00 at Quay, 9.00 + 3.00 at Weir
    assert (found.total, len(found.visits)) == (Decimal("10.00"), 1)


@pytest.mark.parametrize(
    ("file", "old", "new", "complaint"),
    [
        ("play.show.toml", 'name = "Weir"', 'name = "Wier"',
         "nothing is on offer at 'Wier'; did you mean 'Weir'?"),
        ("play.show.toml", 'charge = "3"', 'charge = "three"', "play.show.toml, line 10"),
        ("play.show.toml", "[[shop]]", "[shop]", "one table where a list is meant"),
        ("play.show.toml", "stash.csv", "stock.csv", "stock.csv: does not exist"),
        ("play.show.toml", 'tax = "10 %"', 'tax = "10"', "play.show.toml, line 7"),
        ("play.show.toml", 'tax = "10 %"', 'shops = "few"', "did you mean 'fewest'?"),
        ("stash.csv", "bone,4", "bone,four", "stash.csv, row 2, column count"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_told_with_its_place(
    folder: Path, file: str, old: str, new: str, complaint: str
) -> None:
    rewrite(folder, file, old, new)
    lines = told(folder)
    assert any(complaint in line for line in lines), lines


def test_a_shop_that_sells_nothing_is_refused_in_the_catalogs_table(folder: Path) -> None:
    (folder / "shops.csv").write_text("name,charge\nQuai,9\n", encoding="utf-8")
    assert "shops.csv, row 2, column name: nothing is on offer at 'Quai'" in told(folder)[0]


def test_the_list_is_by_shop_and_says_what_is_left_of_the_budget(folder: Path) -> None:
    rewrite(folder, "play.show.toml", 'charge = "3"', 'charge = "0.10"')
    said = CliRunner().invoke(app, ["show", str(folder / "play.show.toml")]).output
    assert said.index("QUAY") < said.index("WEIR")
    assert "0.10 of it for going to Weir" in said
    # 5.40 + 10.00 + 0.10, and 1.54 of tax on the goods: 17.04 of 30
    left = next(line for line in said.splitlines() if line.startswith("Left"))
    assert left.split() == ["Left", "12.96"]


def test_a_row_of_the_stash_that_nobody_knows_is_looked_at(folder: Path) -> None:
    rewrite(folder, "stash.csv", "bone,4", "bonne,4")
    (remark,) = estimated(folder).remarks
    assert remark.endswith("no catalog and no plan here has 'bonne'; did you mean 'bone'?")


@pytest.mark.parametrize(
    ("colour", "told"),
    [
        ("", ["row 3: it has no colour, and 'bone' is asked for in 'ivory'"]),
        ("ivroy", ["row 3: 'bone' is not asked for in 'ivroy'; did you mean 'ivory'?"]),
        ("black", []),  # of another show
        ("Ivory", []),
    ],
)
def test_a_row_of_the_stash_in_a_colour_that_serves_nothing_is_looked_at(
    folder: Path, colour: str, told: list[str]
) -> None:
    rewrite(folder, "apron.toml", 'buy = "bone"', 'buy = "bone"\ncolour = "ivory"')
    row = f"item,count,place,colour\nbone,1,tin,ivory\nbone,4,tin,{colour}\n"
    (folder / "stash.csv").write_text(row, encoding="utf-8")
    remarks = estimated(folder).remarks
    assert [one.removeprefix(f"{folder / 'stash.csv'}, ") for one in remarks] == told


@pytest.mark.parametrize(
    "table",
    [
        '[[thread]]\nname = "silk twist"\nsold = [{ put_up = "spool of 9 yd" }]\n',
        '[[lacing]]\nname = "silk twist"\nlength = "12"\npairs = 6\ngap = "1"\n',
        '[[boning]]\nname = "silk twist"\nlength = "9"\n',
        '[[loops]]\nname = "silk twist"\nbuttons = "pearl"\n'
        '[[notion]]\nname = "pearl"\nsize = "1/2"\n',
        '[[elastic]]\nname = "silk twist"\nmeasure = "20"\n',
    ],
)
def test_a_row_of_what_any_table_of_a_plan_buys_is_known(folder: Path, table: str) -> None:
    row = ("stash.csv", "bone,4,tin\n", "bone,4,tin\nSilk twist,1,tin\n")
    rewrite(folder, *row)
    assert "'Silk twist'" in estimated(folder).remarks[0]
    with (folder / "apron.toml").open("a", encoding="utf-8") as plan:
        plan.write(table)
    assert estimated(folder).remarks == ()


def test_book_out_tells_what_it_did(folder: Path) -> None:
    words = ["book-out", str(folder / "play.show.toml"), "--on", "2026-11-26"]
    said = CliRunner().invoke(app, words)
    assert said.output == (
        "Booked out for Harvest: 1 row changed, 0 rows added.\n"
        "The stash as it was is kept as stash-2026-11-26-before-harvest.csv.\n"
    )
    assert (folder / "stash.csv").read_text(encoding="utf-8") == "item,count,place\n"


def test_a_formula_engine_comes_to_the_total_with_charges_and_what_is_spent(folder: Path) -> None:
    rewrite(folder, "play.show.toml", 'tax = "10 %"', 'tax = "10 %"\nspent = "5"\nshops = "least"')
    rewrite(
        folder, "play.show.toml", 'name = "Weir"\ncharge = "3"', 'name = "Weir"\ncharge = "0.50"'
    )
    found = estimated(folder)
    bill = account(found)
    assert bill is not None
    assert found.charges == Decimal("0.50")
    path = folder / "list.xlsx"
    write_list(found, path)
    sheet = the_list(path)[1]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        engine = ExcelCompiler(str(path))

    def result(name: str) -> Decimal:
        cell = f"'{LIST_SHEET}'!{LETTER_OF['Cost']}{sum_row(sheet, name)}"
        return Decimal(str(engine.evaluate(cell))).quantize(Decimal("0.01"))

    # bones 6 x 0.90 and brass 10 x 1.00 are 15.40, 0.50 for going to Weir, 10 % of 15.40 as tax
    assert result("total") == found.total == Decimal("15.90")
    assert result("tax") == bill.tax == Decimal("1.54")
    assert result("in all") == bill.in_all == Decimal("17.44")
    assert result("left") == bill.left == Decimal("7.56")


def test_what_was_paid_at_a_shop_that_is_no_longer_gone_to_stays_on_the_list(folder: Path) -> None:
    rewrite(folder, "play.show.toml", 'charge = "3"', 'charge = "0.50"')
    path = folder / "list.xlsx"
    write_list(estimated(folder), path)
    book, sheet = the_list(path)
    paid = f"{LETTER_OF['Paid']}{sum_row(sheet, 'charge  Weir')}"
    sheet[paid] = 0.75
    book.save(path)
    rewrite(folder, "play.show.toml", 'charge = "0.50"', 'charge = "9"')
    write_list(estimated(folder), path)
    sheet = the_list(path)[1]
    row = sum_row(sheet, "charge  Weir")
    assert sheet[f"{LETTER_OF['Item']}{row}"].value == "Weir: visit or delivery, no longer needed"
    assert sheet[f"{LETTER_OF['Paid']}{row}"].value == 0.75
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        engine = ExcelCompiler(str(path))
    total = f"'{LIST_SHEET}'!{LETTER_OF['Paid']}{sum_row(sheet, 'total')}"
    assert engine.evaluate(total) == pytest.approx(0.75)


def test_the_page_tells_what_comes_from_the_stash_and_what_the_budget_leaves(folder: Path) -> None:
    text = page_text(estimated(folder))
    assert "From the stash" in text
    assert "The budget" in text
    assert "What would save most" in text


def test_a_fabric_wholly_from_the_stash_is_in_every_paper(folder: Path) -> None:
    cloth = """
[[fabric]]
name = "check"
widths = ["45 in", "60 in"]
price = "6 per yd"
[[piece]]
name = "bib"
cut = "check"
width = "10"
length = "12"
"""
    (folder / "apron.toml").write_text(PLAN + cloth, encoding="utf-8")
    row = "item,count,place,width,length\nbone,4,tin,,\ncheck,1,shelf,45 in,1 yd\n"
    (folder / "stash.csv").write_text(row, encoding="utf-8")
    found = estimated(folder)
    assert not found.fabrics[0].chosen.buy.bought
    assert "remnant from shelf" in page_text(found)
    write_list(found, folder / "list.xlsx")
    book = the_list(folder / "list.xlsx")[0]
    cells = [str(cell.value) for cell in book["Measure sheet"]["A"]]
    assert "bib" in cells
    assert "check, remnant from shelf" in [str(cell.value) for cell in book["Layout"]["A"]]


NOTE = "Dress parade on Friday: bone first."


def test_the_note_of_a_show_stands_on_every_paper(folder: Path) -> None:
    rewrite(folder, "play.show.toml", 'name = "Harvest"', f'name = "Harvest"\nnote = "{NOTE}"')
    found = estimated(folder)
    assert NOTE in estimate_text(found)
    assert NOTE in page_text(found)
    write_list(found, folder / "list.xlsx")
    _, sheet = the_list(folder / "list.xlsx")
    cells = [cell.value for row in sheet.iter_rows() for cell in row]
    assert NOTE in cells


def test_the_notes_of_two_shows_name_their_shows(folder: Path) -> None:
    rewrite(folder, "play.show.toml", 'name = "Harvest"', f'name = "Harvest"\nnote = "{NOTE}"')
    second = (folder / "play.show.toml").read_text(encoding="utf-8").replace("Harvest", "Masque")
    (folder / "masque.show.toml").write_text(second, encoding="utf-8")
    shows = [folder / "play.show.toml", folder / "masque.show.toml"]
    assert notes_of(estimate_files(shows)) == (f"Harvest: {NOTE}", f"Masque: {NOTE}")
