"""What a line of the list is for, and what is said of the whole list."""

from __future__ import annotations

import pytest

from estimator import Estimate, Job, estimate
from estimator.reports.fabric_papers import widths_table
from estimator.reports.layout_papers import written_layouts
from estimator.reports.shopping_list import notes_of, sections, totals
from estimator.reports.uses import named
from estimator.reports.working_lines import workings
from tests.plans import HEADING, catalog, order, plan

PIECE = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'
TAPE = '[[trim]]\nname = "{0}"\nbuy = "tape"\nlength = "20"\n'
PRICED = '[[notion]]\nname = "hook"\nprice = "5.00 each"\n'
BARE = '[[notion]]\nname = "{0}"\n'
EMPTY = '[garment]\nname = "apron"\ncurrency = "USD"\n'


def two_garments() -> Estimate:
    """An apron and a smock from prints of their own: the smock's is 44 in wide."""
    smock = (HEADING + PIECE).replace('"apron"', '"smock"').replace("45 in", "44 in")
    return estimate(Job((order(HEADING + PIECE), order(smock))))


def notes(found: Estimate) -> list[str]:
    return [line.note for section in sections(found) for line in section.lines]


def test_lines_of_several_garments_say_whose_they_are() -> None:
    said = notes(two_garments())
    assert [text.split(";")[0] for text in said] == ["for apron", "for smock"]


def test_a_line_of_one_garment_does_not_repeat_its_own_title() -> None:
    assert not any("for " in text for text in notes(estimate(plan(HEADING + PIECE))))


def test_tables_of_several_garments_are_told_apart_by_their_titles() -> None:
    found = two_garments()
    assert [next(written_layouts(one, found))[0].title for one in found.fabrics] == [
        "print for apron, 45 in wide",
        "print for smock, 44 in wide",
    ]
    assert len({widths_table(one, found).title for one in found.fabrics}) == 2
    assert len({one.title for one in workings(found)}) == 2


def test_a_garment_is_named_once_before_all_that_it_uses() -> None:
    shop = catalog(
        [{"item": "tape", "name": "Tape", "kind": "trim"}],
        [{"item": "tape", "price": "0.40", "per": "yd", "currency": "USD"}],
    )
    item = TAPE.format("hem tape") + TAPE.format("tie")
    smock = (EMPTY + item).replace('"apron"', '"smock"')
    found = estimate(Job((order(EMPTY + item), order(smock)), shop))
    assert notes(found) == ["for apron: hem tape, tie, smock: hem tape, tie"]


def test_of_many_uses_four_are_named_and_the_others_counted() -> None:
    assert named([f"t{number}" for number in range(40)]) == "t0, t1, t2, t3 and 36 more"
    assert named(["hem", "cuff", "neck", "belt"]) == "hem, cuff, neck, belt"


@pytest.mark.parametrize(
    ("notions", "said"),
    [
        ("", "There is nothing to buy."),
        (PRICED, "Total 5.00 USD for 1 item."),
        (PRICED + PRICED.replace("hook", "eye"), "Total 10.00 USD for 2 items."),
        (PRICED + BARE.format("bead"), "Total 5.00 USD for 1 of 2 items; 1 has no price."),
        (
            PRICED + BARE.format("bead") + BARE.format("shell"),
            "Total 5.00 USD for 1 of 3 items; 2 have no price.",
        ),
        (BARE.format("bead"), "The one item has no price."),
        (BARE.format("bead") + BARE.format("shell"), "None of the 2 items has a price."),
    ],
)
def test_the_sum_is_said_in_plain_words_however_many_things_there_are(
    notions: str, said: str
) -> None:
    assert totals(estimate(plan(EMPTY + notions))) == (said,)


def test_notes_of_several_garments_name_them_and_those_of_one_do_not() -> None:
    noted = EMPTY.replace("currency", 'note = "Wash first."\ncurrency')
    assert notes_of(estimate(plan(noted))) == ("Wash first.",)
    both = estimate(Job((order(noted), order(EMPTY))))
    assert notes_of(both) == ("apron: Wash first.",)
