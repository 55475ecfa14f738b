"""Papers in the tongue of measure that is asked for, whatever the plan is written in."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from estimator import Estimate, GarmentOrder, Job, Refused, estimate
from estimator.files import estimate_files
from estimator.measure import Unit, Units
from estimator.reports.as_json import estimate_json
from estimator.reports.page import page_text
from estimator.reports.shopping_list import sections
from estimator.reports.terminal import estimate_text, layout_text, working_text
from tests.plans import HEADING, bought, cut_sizes, plan
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


def panel(width: str, more: str = "") -> str:
    return (
        f'{HEADING}[[piece]]\nname = "panel"\ncut = "print"\nwidth = "{width}"\nlength = "25"\n'
        f"{more}"
    )


def test_what_no_thread_sews_is_told_in_the_units_asked_for() -> None:
    # no seam is told, so both sides and both ends count by halves: 20 + 25 = 45 in are 1.143 m
    thread = '[[thread]]\nname = "blue"\nsews = "hems"\nsold = [{ put_up = "spool of 100 yd" }]\n'
    for units, told in ((None, "1 1/4 yd of seams"), (Units.METRIC, "1.15 m of seams")):
        granted = " ".join(read_in(units, panel("20", thread)).granted)
        assert f"no thread is named for {told}" in granted


def test_the_cloth_for_bias_strips_is_cut_and_told_in_the_units_asked_for() -> None:
    strip = (
        f'{HEADING}[[piece]]\nname = "strip"\ncut = "print"\nmade = "bias strip"\nwidth = "2"\n'
        'length = "60"\n'
    )
    for units, wide, unit in ((None, "2 in", Unit.IN), (Units.METRIC, "5.1 cm", Unit.CM)):
        (cloth,) = read_in(units, strip).fabrics[0].chosen.pieces
        assert f"cut into bias strips {wide} wide" in cloth.note
        assert cloth.width.value.ticks % unit.length.ticks == 0
        assert cloth.length.value.ticks % unit.length.ticks == 0


TRIM = '[[trim]]\nname = "lace"\nends = "raw"\nrows = 3\nrow_spacing = "{}"\nalong = "panel: {}"\n'
ROUNDED = 'edges = { neck = { length = "10", curve = "rounded 1", finish = "raw" } }\n'
TAPER = panel("20").replace('width = "20"', 'shape = "taper"\ntop = "10"\nbottom = "20"')


@pytest.mark.parametrize(
    ("text", "imperial", "metric"),
    [
        # 50 in and two seams of 5/8 in are 51 1/4 in, 130.175 cm
        (panel("50"), "is cut 51 1/4 in wide", "is cut 130.2 cm wide"),
        # rows at 0, 15 and 30 in: the last is 76.2 cm inside the edge of a piece of 63.5 cm
        (
            TAPER + TRIM.format("15", "bottom"),
            "a row 30 in inside 'panel: bottom' lies beyond the piece, which is 25 in long",
            "a row 76.2 cm inside 'panel: bottom' lies beyond the piece, which is 63.5 cm long",
        ),
        # 10 in - 2 pi x 2 in leave nothing
        (
            panel("20", ROUNDED + TRIM.format("2", "neck")),
            "a row 2 in inside 'panel: neck' lies beyond the middle of its curve",
            "a row 5.1 cm inside 'panel: neck' lies beyond the middle of its curve",
        ),
    ],
)
def test_complaints_are_worded_in_the_units_asked_for(
    text: str, imperial: str, metric: str
) -> None:
    for units, told in ((None, imperial), (Units.IMPERIAL, imperial), (Units.METRIC, metric)):
        with pytest.raises(Refused) as refused:
            read_in(units, text)
        assert told in str(refused.value)


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
