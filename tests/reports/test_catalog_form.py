"""A catalog as a spreadsheet to fill in: the same catalog, and a word on every column."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator import Refused
from estimator.readers.catalogs import read_catalog
from estimator.reports.catalog_form import COLUMNS, catalog_as_workbook
from tests.shipped_plans import SHOPS

ITEMS = "item,name,kind,repeat\nfrieze,=1+1 <b>,trim,1/2 in\nloden,Loden,fabric,\n"
OFFERS = (
    "item,shop,width,put_up,price,per,currency\n"
    'frieze,"Weir, Lane",,card of 3 yd,2.40,,EUR\n'
    'loden,Weir Lane,140 cm,,"12,90",m,EUR\n'
)


def folder(tmp_path: Path, items: str = ITEMS, shops: str = "") -> Path:
    (tmp_path / "items.csv").write_text(items, encoding="utf-8")
    (tmp_path / "offers.csv").write_text(OFFERS, encoding="utf-8")
    if shops:
        (tmp_path / "shops.csv").write_text(shops, encoding="utf-8")
    return tmp_path


def as_file(catalog: Path, path: Path) -> Path:
    path.write_bytes(catalog_as_workbook(catalog))
    return path


def test_the_demo_catalog_is_the_same_as_a_workbook_and_from_that_again(tmp_path: Path) -> None:
    book = as_file(SHOPS, tmp_path / "shop.xlsx")
    again = as_file(book, tmp_path / "again.xlsx")
    assert read_catalog(book) == read_catalog(SHOPS)
    assert again.read_bytes() == book.read_bytes()


def test_names_prices_and_fractions_come_through_as_they_are(tmp_path: Path) -> None:
    own = folder(tmp_path, shops="name,charge,note\nWeir Lane,3.5,\n")
    book = as_file(own, tmp_path / "shop.xlsx")
    assert read_catalog(book) == read_catalog(own)
    sheets = load_workbook(book)
    heads = [cell.value for cell in sheets["items"][1]]
    row = dict(zip(heads, sheets["items"][2], strict=True))
    assert (row["name"].value, row["name"].data_type) == ("=1+1 <b>", "s")
    assert (row["repeat"].value, row["repeat"].number_format) == ("1/2 in", "@")
    prices = {cell.value for cell in sheets["offers"]["L"]}
    assert 2.4 in prices  # a number, to reckon with


def test_every_column_that_a_catalog_may_have_is_there_and_says_what_belongs_in_it(
    tmp_path: Path,
) -> None:
    sheets = load_workbook(as_file(folder(tmp_path), tmp_path / "shop.xlsx"))
    for (model, told), name in zip(COLUMNS.items(), ("items", "offers", "shops"), strict=True):
        assert list(told) == list(model.model_fields)
        assert [cell.value for cell in sheets[name][1]] == list(told)
        checks = sheets[name].data_validations.dataValidation
        assert [one.promptTitle for one in checks] == list(told)
        for one, words in zip(checks, told.values(), strict=True):
            assert words.meaning in one.prompt
            assert len(one.prompt) <= 255
            assert len(one.formula1 or "") <= 255


@pytest.mark.parametrize("items", [ITEMS.replace("trim", "trimm"), ITEMS.replace("kind", "kint")])
def test_a_catalog_with_something_wrong_is_refused(items: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match="did you mean"):
        catalog_as_workbook(folder(tmp_path, items))
