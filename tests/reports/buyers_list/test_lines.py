"""The lines of the list: their figures, their order, and what of them changed since the last."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from openpyxl.worksheet.worksheet import Worksheet

from estimator import Estimate
from estimator.measure import Length
from estimator.reports.buyers_list.columns import LETTER_OF
from estimator.reports.buyers_list.file import write_list
from tests.reports.filled_lists import (
    CLOAK,
    LONGER,
    at,
    cloak,
    fill_in,
    sum_row,
    texts,
    the_list,
    value_at,
    written,
)
from tests.reports.harbour_dress import DRESS

ITEMS = ["lawn", "fusible", "braid", "cuff elastic", "button"]


def test_each_thing_to_buy_is_a_line_with_the_figures_of_the_estimate(
    dress: Estimate, sheet: Worksheet
) -> None:
    assert [line.title for line in dress.purchases] == ITEMS
    for line in dress.purchases:
        assert Fraction(str(at(sheet, line.title, "Buy").value)) == line.buy.sold_units
        assert at(sheet, line.title, "Unit").value == line.buy.unit
        assert at(sheet, line.title, "Key").value == line.key
        price = at(sheet, line.title, "Price").value
        assert (None if price is None else Decimal(str(price))) == line.buy.offer.price


def test_needed_is_never_shown_below_what_is_needed_and_never_above_what_is_bought(
    dress: Estimate, sheet: Worksheet
) -> None:
    for line in dress.purchases:
        if isinstance(line.needed, Length):
            shown = Fraction(str(at(sheet, line.title, "Needed").value))
            unit = line.buy.offer.sold_by.length
            assert line.needed / unit <= shown <= line.buy.sold_units


def test_lines_stand_in_the_order_in_which_a_shop_is_walked_and_sort_back_into_it(
    sheet: Worksheet,
) -> None:
    parts = [str(at(sheet, item, "Part of the shop").value) for item in ITEMS]
    assert parts == sorted(parts)
    assert parts == ["1 Fabrics", "2 Linings and interfacings", "3 Trims", "4 Elastics",
                     "5 Notions"]  # fmt: skip
    assert sheet.auto_filter.ref == f"A3:{LETTER_OF['Key']}{sum_row(sheet, '1 Fabrics') - 1}"


def test_yards_are_numbers_shown_as_fractions_and_metres_have_two_decimals(
    sheet: Worksheet,
) -> None:
    assert at(sheet, "lawn", "Buy").number_format in ("# ?/?", "0")
    assert at(sheet, "fusible", "Buy").number_format == "# ?/?"
    assert at(sheet, "button", "Buy").number_format == "0"
    assert isinstance(at(sheet, "lawn", "Buy").value, int | float)


def test_what_may_be_bought_instead_stands_beside_the_line(tmp_path: Path) -> None:
    text = DRESS.replace(
        'widths = [{ width = "44 in", price = "8.49 per yd" }]',
        'price = "8.49 per yd"\nwidths = ["44 in", "66 in"]',
    )
    sheet = the_list(written(text, tmp_path))[1]
    assert str(at(sheet, "lawn", "Instead").value).startswith("66 in: ")
    assert at(sheet, "lawn", "Width").value == "44 in"


def test_a_price_finer_than_a_cent_is_shown_with_all_its_decimals(tmp_path: Path) -> None:
    # The format shows two decimals, and up to four more where the price has them.
    cell = at(the_list(written(DRESS.replace("8.49", "1.234"), tmp_path))[1], "lawn", "Price")
    assert (cell.value, cell.number_format) == (1.234, "#,##0.00####")


def test_no_needed_length_is_too_long_for_its_column(tmp_path: Path) -> None:
    # 60 rows take 97 1/8 yd, so that 70 take more than 100
    text = DRESS.replace('name = "button"', 'name = "cone"').replace("quantity = 7", "quantity = 1")
    text = text.replace(
        'price = "1.13 per yd"', 'rows = 70\nsold = [{ put_up = "reel of 500 yd" }]'
    )
    sheet = the_list(written(text, tmp_path))[1]
    cell = at(sheet, "braid", "Needed")
    assert isinstance(cell.value, int)
    assert cell.value > 100
    assert cell.number_format == '0 "yd"'


SINCE = "Since the last list"


def test_what_changed_is_marked_as_more_less_new_and_no_longer_needed(path: Path) -> None:
    text = LONGER.replace("quantity = 2\nprice", "quantity = 1\nprice").replace("braid", "cord")
    write_list(cloak(text), path)
    # wool: before and after in yards, each cut from three panels of 44 + 1 1/4 and of 53 + 1 1/4 in
    found = {line.title: line.buy.sold_units for line in cloak(text).purchases}
    before = {line.title: line.buy.sold_units for line in cloak().purchases}
    more = found["wool"] - before["wool"]
    assert value_at(path, "wool", SINCE) in (f"{more} yd more", f"{more // 1} {more % 1} yd more")
    assert value_at(path, "clasp", SINCE) == "1 less"
    assert value_at(path, "cord", SINCE) == "new"
    assert value_at(path, "braid", SINCE) == "no longer needed"
    assert value_at(path, "braid", "Buy") == 0


def test_marks_of_change_stay_until_something_changes_again(path: Path) -> None:
    write_list(cloak(LONGER), path)
    marked = value_at(path, "wool", SINCE)
    assert str(marked).endswith("more")
    once = path.read_bytes()
    write_list(cloak(LONGER), path)
    assert path.read_bytes() == once
    write_list(cloak(), path)
    assert value_at(path, "wool", SINCE) == str(marked).replace("more", "less")


def test_what_was_ticked_keeps_the_quantity_and_price_at_which_it_was_bought(path: Path) -> None:
    bought = value_at(path, "wool", "Buy")
    fill_in(path, {("wool", "Got it"): "☑"})
    write_list(cloak(LONGER.replace("12.90", "13.10").replace("14.20", "14.40")), path)
    assert value_at(path, "wool", "Actual quantity") == bought
    assert value_at(path, "wool", "Actual price") in (12.9, 14.2)
    assert value_at(path, "wool", "Got it") == "☑"


def test_a_line_that_is_no_longer_needed_stays_as_long_as_somebody_wrote_on_it(path: Path) -> None:
    fill_in(path, {("braid", "Got it"): "☑"})
    spent = value_at(path, "braid", "Buy")
    bare = CLOAK.replace('[[trim]]\nname = "braid"\nalong = "panel: bottom"\n', "").replace(
        'price = "1.13 per yd"\n', ""
    )
    for length in ("44", "53", "50"):
        write_list(cloak(bare.replace('"44"', f'"{length}"')), path)
        assert value_at(path, "braid", "Got it") == "☑"
        assert value_at(path, "braid", "Actual quantity") == spent
    fill_in(path, {("braid", "Got it"): "☐", ("braid", "Actual quantity"): None})
    write_list(cloak(bare), path)
    assert "braid" not in texts(path)
