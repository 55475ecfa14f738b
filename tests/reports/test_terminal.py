"""Papers as plain text: they fit a terminal, and say what the spreadsheet says."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator import Estimate, estimate
from estimator.measure import Unit
from estimator.reports.cells import WHOLE, sold_format
from estimator.reports.tables import Sold, price_text
from estimator.reports.terminal import estimate_text, layout_text, widths_text, working_text
from estimator.reports.working_lines import cut_workings
from tests.plans import HEADING, catalog, plan

WORDY = """
[garment]
name = "Promenade mantle of the second act"
currency = "USD"
note = "The clasp opens with one hand."
[[fabric]]
name = "heavy worsted gabardine in a broken twill with a raised face and a plain back"
widths = [{ width = "60 in", price = "112.345 per yd" }]
[[fabric]]
name = "lining"
role = "lining"
widths = ["150 cm"]
[[piece]]
name = "upper left panel with the watch pocket and its flap cut in one"
quantity = 3
cut = ["heavy worsted gabardine in a broken twill with a raised face and a plain back", "lining"]
width = "20"
length = "31"
note = "cut the flap with the face inwards, and mark the pocket before anything else is sewn"
"""


@pytest.fixture(scope="module")
def mantle() -> Estimate:
    return estimate(plan(WORDY))


@pytest.mark.parametrize("paper", [estimate_text, layout_text, widths_text, working_text])
def test_every_paper_fits_a_hundred_columns_however_wordy_the_plan(
    paper: object, mantle: Estimate
) -> None:
    assert callable(paper)
    assert max(map(len, paper(mantle).splitlines())) <= 100


def test_a_shop_with_a_long_name_does_not_widen_the_list() -> None:
    name = (
        "The Corner Cupboard of Everything that Can Be Sewn, Late Widow Tallowfield and Daughters"
    )
    shop = catalog(
        [{"item": "braid", "kind": "trim"}, {"item": "cord", "kind": "trim"}],
        [
            {"item": "braid", "shop": name, "price": "1.10", "per": "yd", "currency": "USD"},
            {"item": "cord", "shop": "Weir Lane", "price": "0.90", "per": "yd", "currency": "USD"},
        ],
    )
    trims = "".join(f'[[trim]]\nname = "{one}"\nbuy = "{one}"\nlength = "40"\n'
                    for one in ("braid", "cord"))  # fmt: skip
    text = estimate_text(estimate(plan(f'[garment]\nname = "apron"\n{trims}'), shop))
    assert "THE CORNER CUPBOARD OF" in text
    assert max(map(len, text.splitlines())) <= 100


def test_the_note_of_the_garment_stands_under_the_title(mantle: Estimate) -> None:
    lines = estimate_text(mantle).splitlines()
    assert lines[3] == "The clasp opens with one hand."


def test_a_price_multiplies_out_as_it_is_shown(mantle: Estimate) -> None:
    # 3 panels of 21 1/4 x 32 1/4: two side by side in 59 in usable, so two rows, 64 1/2 in; with
    # two ends straightened 66 1/2 in, sold by eighths: 1 7/8 yd, and 1.875 x 112.345 = 210.646875
    assert "112.345" in estimate_text(mantle)
    assert "buy 1 7/8 yd at 112.345 USD per yd = 210.65" in working_text(mantle)


@pytest.mark.parametrize(
    ("price", "currency", "text"),
    [
        ("8.5", "USD", "8.50"),
        ("8", "USD", "8.00"),
        ("1.234", "USD", "1.234"),
        ("1.230", "", "1.23"),
        ("0.0005", "EUR", "0.0005"),
        ("1290", "JPY", "1290"),
        ("1290.50", "JPY", "1290.5"),
        ("2.5", "KWD", "2.500"),
    ],
)
def test_a_price_has_the_decimals_of_its_currency_or_as_many_as_it_needs(
    price: str, currency: str, text: str
) -> None:
    # ISO 4217: the yen has no minor unit, the Kuwaiti dinar a thousandth
    assert price_text(Decimal(price), currency) == text


@pytest.mark.parametrize(
    ("amount", "unit", "text", "form"),
    [
        ("73/8", Unit.YD, "9 1/8", "# ?/?"),
        ("73/16", Unit.YD, "4 9/16", "# ?/??"),
        ("9.1", Unit.YD, "9.10", "0.00"),
        ("9.121", Unit.YD, "9.13", "0.00"),
        ("1.201", Unit.M, "1.21", "0.00"),
        ("99", Unit.M, "99.00", "0.00"),
        ("149", Unit.M, "149", WHOLE),
        ("149.5", Unit.M, "149.50", "0.00"),
    ],
)
def test_a_quantity_reads_alike_in_the_terminal_and_in_the_sheet(
    amount: str, unit: Unit, text: str, form: str
) -> None:
    sold = Sold(Fraction(amount), unit.symbol)
    assert (sold.text, sold_format(sold)) == (text, form)
    whole = sum(map(Fraction, text.split()))
    assert sold.shown == whole >= sold.amount


def test_a_piece_that_is_cut_alike_from_two_fabrics_is_worked_once(mantle: Estimate) -> None:
    titles = [one.title for one in cut_workings(mantle)]
    assert len(titles) == 2
    assert all("gabardine" in title and ", lining, cut " in title for title in titles)


def test_a_working_says_about_of_a_figure_between_the_marks_of_the_tape() -> None:
    trim = '[[trim]]\nname = "tape"\nlength = "10"\nwaste = "5 %"\n'
    piece = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "9"\n'
    said = working_text(estimate(plan(HEADING + piece + trim)), "tape")
    # 10 1/2 with its ends; x 1.05 is 11.025
    assert "= 10 1/2 in" in said
    assert "= about 11 in" in said
