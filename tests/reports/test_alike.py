"""A layout of many copies is told so that a person can read it: what is alike, once."""

from __future__ import annotations

import pytest

from estimator import estimate
from estimator.measure import Unit
from estimator.reports.alike import alike_cuts, cuts_words, rows_alike
from estimator.reports.layout_papers import layout_rows, written_layouts
from estimator.reports.page import page_text
from estimator.written import length
from tests.plans import plan

# panels of 40 by 30 in: each row holds one of them, and a bolt of 6 yd (216 in) seven rows
PLAN = """
[garment]
name = "Lantern chorus"
straightening = "0"
[[fabric]]
name = "calico"
selvedge = "0"
widths = ["45 in"]
layout = "straight rows"
{bolt}
[[piece]]
name = "panel"
quantity = {count}
cut = ["calico"]
sizes = "cut"
width = "40"
length = "30"
"""


def made(count: int, bolt: str = 'bolt = "6 yd"'):
    return estimate(plan(PLAN.format(count=count, bolt=bolt)))


def test_cuts_that_hold_the_same_rows_are_one_table() -> None:
    found = made(30)
    (choice,) = found.fabrics
    assert [len(cut.rows) for cut in choice.chosen.laid.cuts] == [7, 7, 7, 7, 2]
    assert alike_cuts(choice) == ((0, 1, 2, 3), (4,))
    assert [table.title for table, _ in written_layouts(choice, found)] == [
        "calico, 45 in wide, cuts 1 to 4 of 5, all alike",
        "calico, 45 in wide, cut 5 of 5",
    ]


@pytest.mark.parametrize("count", [1, 2, 3, 13, 29])
def test_every_row_of_a_layout_is_told_once(count: int) -> None:
    (choice,) = made(count, bolt="").fabrics
    (cut,) = choice.chosen.laid.cuts
    told = list(rows_alike(cut))
    starts = [one.row.start + one.apart * n for one in told for n in range(one.more + 1)]
    assert starts == [row.start for row in cut.rows]
    assert len(told) == (1 if count >= 3 else count)


def test_rows_that_follow_alike_say_where_the_last_of_them_begins() -> None:
    (choice,) = made(12, bolt="").fabrics
    first, others = layout_rows(choice.chosen, choice.chosen.laid.cuts[0], Unit.IN)
    assert first[:3] == (1, length("30"), "panel")
    assert others[2:4] == (
        "rows 2 to 12 like row 1, each 30 in on from the last; the last of them begins",
        length("330"),
    )


def test_a_row_unlike_the_one_before_is_told_itself() -> None:
    shorter = PLAN[PLAN.index("[[piece]]") :].replace("panel", "half").replace('"30"', '"15"')
    text = PLAN.format(count=6, bolt="") + shorter.format(count=1)
    (choice,) = estimate(plan(text)).fabrics
    (cut,) = choice.chosen.laid.cuts
    assert [(one.number, one.more) for one in rows_alike(cut)] == [(1, 5), (7, 0)]


def test_the_first_cut_of_a_matched_print_is_told_by_itself() -> None:
    found = made(30, bolt='bolt = "6 yd"\nrepeat = "5"')
    (choice,) = found.fabrics
    assert alike_cuts(choice)[0] == (0,)


def test_thousands_of_pieces_are_told_in_a_few_lines() -> None:
    found = made(3_000)
    (choice,) = found.fabrics
    lines = [row for table, _ in written_layouts(choice, found) for row in table.rows]
    assert len(choice.chosen.laid.cuts) == 429
    assert len(lines) <= 6
    assert page_text(found).count("<svg") < 20


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ((2,), "cut 3 of 9"),
        ((0, 1), "cuts 1 and 2 of 9, both alike"),
        ((0, 1, 2), "cuts 1 to 3 of 9, all alike"),
        ((0, 3, 4), "cuts 1, 4 and 5 of 9, all alike"),
    ],
)
def test_cuts_alike_are_named_by_their_numbers(numbers: tuple[int, ...], words: str) -> None:
    assert cuts_words(numbers, 9) == words


def test_one_cut_has_no_number() -> None:
    assert cuts_words((0,), 1) == ""
