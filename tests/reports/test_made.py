"""How many of each garment are made, and for whom, on the papers of a show."""

from __future__ import annotations

from pathlib import Path

from estimator import Estimate, Job, estimate
from estimator.reports.buyers_list.file import write_list
from estimator.reports.fabric_papers import cut_table
from estimator.reports.made import made
from estimator.reports.measure_sheet import measure_tables
from estimator.reports.page import page_text
from estimator.reports.terminal import estimate_text, layout_text
from tests.plans import HEADING, order
from tests.reports.filled_lists import the_list

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "{long}"\n'


def apron(long: str = "30") -> str:
    return HEADING + PANEL.format(long=long)


def chorus(*sizes: tuple[str, int], title: str = "The Millers") -> Estimate:
    """An apron for each wearer, as many as stand beside the name, each of its own length."""
    orders = (
        order(apron(f"{30 + number}"), wearer=who, count=count)
        for number, (who, count) in enumerate(sizes)
    )
    return estimate(Job(tuple(orders), title=title))


SIZES = (("Size 10", 2), ("Size 12", 4), ("Size 14", 4), ("Size 16", 3), ("Size 20", 1))
SAID = "14 × apron: 2 for Size 10, 4 for Size 12, 4 for Size 14, 3 for Size 16, 1 for Size 20."


def test_every_size_of_a_garment_stands_with_its_number() -> None:
    assert made(chorus(*SIZES)) == (SAID,)


def test_wearers_of_one_each_are_named_without_a_number() -> None:
    assert made(chorus(("Ada", 1), ("Bo", 1))) == ("2 × apron: for Ada, Bo.",)


def test_a_garment_for_nobody_in_particular_is_counted() -> None:
    assert made(chorus(("", 3))) == ("3 × apron.",)
    assert made(chorus(("", 3), ("Ada", 1))) == (
        "4 × apron: 3 by the plan's own measures, 1 for Ada.",
    )


def test_plans_without_a_show_have_their_numbers_in_the_title() -> None:
    found = chorus(("Ada", 2), title="")
    assert made(found) == ()
    assert "Shopping list: apron × 2 for Ada" in estimate_text(found)


def test_how_many_are_made_stands_on_the_list_the_page_and_the_cut_list(tmp_path: Path) -> None:
    found = chorus(*SIZES)
    assert SAID in estimate_text(found).replace("\n  ", " ")
    assert SAID in " ".join(layout_text(found).split())
    assert SAID in page_text(found)
    assert SAID in cut_table(found).notes
    write_list(found, tmp_path / "list.xlsx")
    _, sheet = the_list(tmp_path / "list.xlsx")
    assert SAID in [cell.value for row in sheet.iter_rows() for cell in row]


def test_the_measure_sheet_of_a_size_says_how_many_are_made_of_it() -> None:
    counts = [table.notes[1:] for table in measure_tables(chorus(("Size 10", 2), ("Size 12", 1)))]
    each = "how many there are of each piece is for one of them."
    assert counts == [(f"2 are made; {each}",), ()]


def test_the_measure_sheet_of_one_size_names_all_who_wear_it() -> None:
    orders = (order(apron(), wearer="Ada"), order(apron(), wearer="Bo"))
    (table,) = measure_tables(estimate(Job(orders)))
    assert table.notes[1].startswith("2 are made: for Ada, Bo; ")
