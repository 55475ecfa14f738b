"""Papers in the tongue of measure that is asked for, whatever the plan is written in."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from estimator import Estimate, GarmentOrder, Job, estimate
from estimator.files import estimate_files
from estimator.measure import Unit, Units
from estimator.reports.as_json import estimate_json
from estimator.reports.page import page_text
from estimator.reports.shopping_list import sections
from estimator.reports.terminal import estimate_text, layout_text, working_text
from tests.plans import bought, cut_sizes, plan
from tests.shipped_plans import ROOT

INCHES = """
[garment]
name = "quay apron"
currency = "USD"
[[fabric]]
name = "check"
widths = ["45 in"]
[[fabric]]
name = "print"
widths = [{ width = "44 in", price = "8.40 per yd" }]
[[piece]]
name = "skirt"
cut = ["check", "print"]
width = "20 1/4"
length = "30"
"""
METRIC = INCHES.replace('"USD"', '"USD"\nunit = "cm"').replace("20 1/4", "51.4")
METRIC = METRIC.replace("45 in", "115 cm").replace("44 in", "112 cm").replace("per yd", "per m")


def read_in(units: Units | None, text: str = INCHES) -> Estimate:
    return estimate(Job((replace(GarmentOrder(plan(text)), units=units),)))


def test_a_plan_in_inches_is_cut_chalked_and_worked_in_centimetres_where_metric_is_asked() -> None:
    found = read_in(Units.METRIC)
    for paper in (layout_text(found), working_text(found)):
        assert " cm" in paper
    # 20 1/4 in + 2 x 5/8 in = 21 1/2 in = 54.61 cm, up to the next millimetre
    assert "54.7" in layout_text(found)
    assert {size[0].ticks % Unit.MM.length.ticks for size in cut_sizes(found).values()} == {0}


def test_a_plan_in_centimetres_reads_in_inches_where_imperial_is_asked() -> None:
    found = read_in(Units.IMPERIAL, METRIC)
    # 51.4 cm + 2 x 1.5 cm = 54.4 cm = 21.42 in, up to the next sixteenth
    assert "21 7/16 in" in layout_text(found)


def test_what_a_plan_offers_without_a_price_is_bought_by_the_units_asked_for() -> None:
    line = bought(read_in(Units.METRIC), "check")
    assert line.buy.unit == "m"
    assert (line.buy.sold_units * 10).denominator == 1
    assert bought(read_in(None), "check").buy.unit == "yd"


def test_what_has_its_price_by_the_yard_is_bought_by_the_yard_and_told_in_metres_too() -> None:
    found = read_in(Units.METRIC)
    line = next(one for part in sections(found) for one in part.lines if one.item == "print")
    assert line.buy.unit == "yd"
    assert line.needed.unit == "m"
    yards = bought(found, "print").buy.sold_units
    # 1 yd = 0.9144 m, up to the next centimetre
    metres = -(-yards * Fraction(9144, 100) // 1) / 100
    assert f"{line.buy.text} yd are {float(metres):.2f} m" in line.note
    assert line.width == "111.8 cm (44 in)"
    assert "yd are" not in next(
        one.note for part in sections(read_in(None)) for one in part.lines if one.item == "print"
    )


def test_the_mark_that_a_plan_states_holds_in_any_units() -> None:
    text = INCHES.replace('currency = "USD"', 'currency = "USD"\nmark = "1/4"')
    # 20 1/4 + 1 1/4 = 21 1/2; 30 + 1 1/4 = 31 1/4: both stand on the quarter inch
    assert cut_sizes(read_in(Units.METRIC, text)) == cut_sizes(read_in(None, text))


@pytest.mark.parametrize("units", Units)
def test_a_plan_already_in_the_units_asked_for_reads_as_it_did(units: Units) -> None:
    text = METRIC if units is Units.METRIC else INCHES
    for paper in (layout_text, working_text):
        assert paper(read_in(units, text)) == paper(read_in(None, text))


@pytest.mark.parametrize("units", Units)
def test_the_demo_says_no_tape_length_in_the_other_tongue(units: Units) -> None:
    demo = ROOT / "catalog_demo"
    found = estimate_files([demo / "market_dress.toml"], demo, units=units)
    other = " in" if units is Units.METRIC else " cm"
    texts = [
        piece[side]["text"]
        for fabric in estimate_json(found)["fabrics"]
        for width in fabric["widths"]
        for piece in width["pieces"]
        for side in ("cut_width", "cut_length")
    ]
    assert texts
    assert not [text for text in texts if text.endswith(other)]


def test_asking_for_units_changes_nothing_of_what_a_priced_plan_costs(tmp_path: Path) -> None:
    # the mark stated, sizes are the same exact lengths in either tongue
    text = INCHES.replace('"45 in"', '{ width = "45 in", price = "5 per yd" }')
    text = text.replace('currency = "USD"', 'currency = "USD"\nmark = "1/16"')
    file = tmp_path / "apron.toml"
    file.write_text(text, encoding="utf-8")
    costs = {estimate_files([file], units=units).cost for units in (None, *Units)}
    assert len(costs) == 1
    assert "Total" in estimate_text(estimate_files([file], units=Units.METRIC))


def test_the_page_and_its_pictures_read_in_the_units_asked_for_and_name_the_colour() -> None:
    page = page_text(
        read_in(Units.METRIC, INCHES.replace('"print"\n', '"print"\ncolour = "rust"\n', 1))
    )
    assert "rust" in page
    assert "111.8 cm (44 in)" in page.replace("\N{NO-BREAK SPACE}", " ")
