"""Laws that every layout keeps, whatever the pieces."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import Effort, Layout, Style, lay_out
from estimator.layout.bounds import lower_bound
from estimator.layout.filled import RowFiller
from estimator.layout.kinds import kinds_of
from estimator.layout.rows import in_order, length_of, rows_layout
from estimator.layout.search import Search
from estimator.layout.shelves import FIRST_FIT, pack
from tests.layout.cuttings import cuttings
from tests.verify_layout import assert_sound

BRIEF = Effort(700)


@given(cuttings())
@settings(max_examples=300, deadline=None)
def test_every_layout_can_be_cut_and_its_bound_is_not_above_it(cutting):
    cloth, blanks = cutting
    assert_sound(cloth, blanks, lay_out(cloth, blanks, effort=BRIEF))


@given(cuttings())
@settings(max_examples=200, deadline=None)
def test_a_layout_never_buys_more_than_plain_first_fit_shelves(cutting):
    cloth, blanks = cutting
    shelves = pack(kinds_of(blanks), cloth, FIRST_FIT)
    plain = length_of(in_order(shelves, cloth.repeat), cloth.repeat)
    laid = lay_out(cloth, blanks, effort=BRIEF)
    assert cloth.buys(laid.length) <= cloth.buys(plain)


@given(cuttings(), st.randoms(use_true_random=False))
@settings(max_examples=200, deadline=None)
def test_the_order_in_which_pieces_are_asked_for_changes_nothing(cutting, chance):
    cloth, blanks = cutting
    order = list(range(len(blanks)))
    chance.shuffle(order)
    shuffled = lay_out(cloth, [blanks[i] for i in order], effort=BRIEF)
    renumbered = renumber(shuffled, order)
    assert renumbered == lay_out(cloth, blanks, effort=BRIEF)


def renumber(layout: Layout, order: list[int]) -> Layout:
    """The layout of shuffled blanks, told with the indexes that they had before."""

    def renamed(placed):
        return replace(placed, blank=order[placed.blank])

    return replace(
        layout,
        placements=tuple(map(renamed, layout.placements)),
        rows=tuple(
            replace(
                row,
                columns=tuple(
                    replace(column, placements=tuple(map(renamed, column.placements)))
                    for column in row.columns
                ),
            )
            for row in layout.rows
        ),
    )


@given(cuttings(), st.sampled_from([0, 300, 1_000]), st.sampled_from([1_000, 3_000]))
@settings(max_examples=100, deadline=None)
def test_a_longer_search_never_buys_more_and_never_proves_less(cutting, less, more):
    cloth, blanks = cutting
    brief = lay_out(cloth, blanks, effort=Effort(less))
    long = lay_out(cloth, blanks, effort=Effort(more))
    assert cloth.buys(long.length) <= cloth.buys(brief.length)
    assert cloth.buys(brief.bound) <= cloth.buys(long.bound)


@given(cuttings())
@settings(max_examples=150, deadline=None)
def test_a_close_layout_is_taken_only_where_it_buys_less_than_the_best_rows_found(cutting):
    cloth, blanks = cutting
    kinds = kinds_of(blanks)
    found = Search(cloth, kinds, 0, BRIEF, rows_only=False).run()
    if found.spots is not None:
        close = max(spot.along + spot.length for spot in found.spots)
        assert cloth.buys(close) < cloth.buys(length_of(found.rows, cloth.repeat))


@given(cuttings())
@settings(max_examples=150, deadline=None)
def test_who_insists_on_rows_gets_rows_and_a_bound_that_holds_for_them(cutting):
    cloth, blanks = cutting
    rows = lay_out(cloth, blanks, effort=BRIEF, rows_only=True)
    assert_sound(cloth, blanks, rows)
    assert rows.style is Style.STRAIGHT_ROWS


@given(cuttings(), st.sampled_from([0.2, 1.0, 3.0]))
@settings(max_examples=200, deadline=None)
def test_rows_filled_by_any_preference_can_be_cut(cutting, leaning):
    cloth, blanks = cutting
    kinds = kinds_of(blanks)
    lies = tuple(
        tuple(
            way
            for way in ((k.width, k.length), (k.length, k.width))[: 2 if k.may_turn else 1]
            if way[0] <= cloth.width
        )
        for k in kinds
    )
    worth = [k.width * k.length + leaning * k.length for k in kinds]
    shelves = RowFiller(kinds, lies, worth, cloth).rows()
    ordered = in_order(shelves, cloth.repeat)
    assert_sound(cloth, blanks, rows_layout(cloth, kinds, blanks, ordered, 0))


@given(cuttings(), cuttings())
@settings(max_examples=200, deadline=None)
def test_the_closed_form_bound_never_falls_when_pieces_are_added(cutting, more):
    cloth, blanks = cutting
    fitting = [blank for blank in more[1] if blank.width <= cloth.width]

    def bound(asked):
        return lower_bound(kinds_of(asked), cloth)

    assert bound(blanks) <= bound(blanks + fitting)
