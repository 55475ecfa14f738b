"""Straight rows on examples small enough to be drawn."""

from __future__ import annotations

from estimator.layout import Blank, Cloth, Effort, Held, lay_out
from estimator.layout.kinds import kinds_of
from estimator.layout.row_search import RowSearch
from estimator.layout.rows import cuts_of, in_order, length_of
from estimator.layout.shelves import Piece, Shelf, Stack
from tests.verify_layout import assert_sound


def rows_length(cloth, blanks):
    return length_of(RowSearch(cloth, kinds_of(blanks)).best, cloth.repeat)


def test_small_pieces_are_stacked_beside_tall_ones():
    #   |  panel   | cuff |     4 cuffs of 17 stand in the row of 70 beside the panel, 2 to spare
    cloth = Cloth(width=60)
    blanks = [Blank("panel", 41, 70), Blank("cuff", 19, 17, quantity=4)]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert_sound(cloth, blanks, layout)
    assert layout.length == 70
    assert [len(column.placements) for column in layout.rows[0].columns] == [1, 4]


def test_the_repeat_is_charged_between_rows_and_not_after_the_last():
    # rows of 25 and 31 on a repeat of 10: 25 then 31 is 30 + 31 = 61; 31 then 25 would be 65
    cloth = Cloth(width=50, repeat=10)
    blanks = [Blank("sleeve", 50, 31), Blank("yoke", 50, 25)]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert_sound(cloth, blanks, layout)
    assert layout.length == 61
    assert [row.height for row in layout.rows] == [25, 31]


def test_matched_pieces_in_a_column_start_on_the_repeat_too():
    # three cuffs of 17 would end at 51 in a row of 52, on a repeat of 20 only two of them do
    cloth = Cloth(width=60, repeat=20)
    blanks = [Blank("panel", 41, 52), Blank("cuff", 19, 17, quantity=3)]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert_sound(cloth, blanks, layout)
    assert {placed.along % 20 for placed in layout.placements} == {0}


def test_a_piece_is_turned_where_that_saves_a_row():
    cloth = Cloth(width=60)
    fixed = [Blank("panel", 40, 70), Blank("band", 70, 20, may_turn=True)]
    layout = lay_out(cloth, fixed)
    assert_sound(cloth, fixed, layout)
    assert layout.length == 70
    assert layout.placements[1].turned


def test_rows_come_highest_first_and_columns_from_the_near_selvedge():
    cloth = Cloth(width=50)
    blanks = [Blank("strap", 10, 20), Blank("panel", 45, 60), Blank("yoke", 30, 25)]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert [row.height for row in layout.rows] == [60, 25]
    assert [column.across for column in layout.rows[1].columns] == [0, 30]


def test_cuts_are_counted_as_a_person_makes_them():
    #   row cut 1; after a 1; after b and c 1; between b and c, above c, beside the narrower c: 3
    a, b, c = Piece(70, 40, 0), Piece(30, 20, 1), Piece(25, 18, 2)
    shelf = Shelf(70, (Stack(40, (a,)), Stack(20, (b, c))))
    assert cuts_of([shelf], Cloth(100)) == 6
    assert cuts_of([shelf], Cloth(60)) == 5


def test_without_a_repeat_the_order_of_rows_costs_nothing():
    shelves = [Shelf(h, (Stack(10, (Piece(h, 10, 0),)),)) for h in (30, 50, 20)]
    assert length_of(in_order(shelves, 0), 0) == 100


def test_rows_alone_are_as_long_as_the_layout_says():
    cloth = Cloth(width=50, repeat=10)
    blanks = [Blank("sleeve", 50, 31), Blank("yoke", 50, 25)]
    assert rows_length(cloth, blanks) == 61


def test_a_row_is_filled_with_the_widths_that_fill_it_and_not_with_the_widest_first():
    #  beside the panel of 40 there are 60: 30 + 30 fills it, the widest first (35) leaves 25 open
    cloth = Cloth(width=100)
    blanks = [
        Blank("panel", 40, 50),
        Blank("back", 35, 49),
        Blank("sleeve", 30, 48, quantity=2),
        Blank("skirt", 65, 49),
    ]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert_sound(cloth, blanks, layout)
    assert layout.length == 99 == layout.bound


def test_three_thousand_pieces_of_one_kind_are_laid_as_the_rows_they_make():
    blanks = [Blank("flag", 30, 20, quantity=3_000)]
    layout = lay_out(Cloth(width=100), blanks, effort=Effort(1_000))
    assert layout.length == 1_000 * 20 == layout.bound


def test_pieces_on_the_selvedge_take_both_edges_of_a_row_before_another_is_opened():
    cloth = Cloth(width=60)
    blanks = [Blank("band", 8, 70, quantity=4, held=Held.EITHER), Blank("panel", 40, 70, 2)]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert_sound(cloth, blanks, layout)
    assert layout.length == 140
    assert len(layout.rows) == 2


def test_a_piece_on_the_fold_lies_at_the_far_edge_with_the_others_beside_it():
    cloth = Cloth(width=30)
    blanks = [Blank("front, on the fold", 12, 40, held=Held.FAR), Blank("sleeve", 18, 40)]
    layout = lay_out(cloth, blanks)
    assert {(one.blank, one.across) for one in layout.placements} == {(0, 18), (1, 0)}
    assert layout.length == layout.bound == 40


def test_on_a_plaid_the_piece_that_overhangs_its_last_stripe_goes_last():
    #   repeat across 10: the yoke of 21 first would start its neighbour at 30, and 30 + 15 > 41;
    #   the facing of 15 first starts the yoke at 20, and it ends with the cloth
    cloth = Cloth(width=41, repeat_across=10)
    blanks = [Blank("yoke", 21, 30), Blank("facing", 15, 30)]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert_sound(cloth, blanks, layout)
    assert layout.length == 30
    assert [one.across for one in layout.placements] == [0, 20]


def test_of_rows_that_buy_the_same_those_with_fewer_cuts_are_taken():
    # in eighths of a yard both orders buy the same; side by side there is one row to cut
    cloth = Cloth(width=50, buys=lambda length: -(-length // 40))
    blanks = [Blank("band", 10, 20, 2), Blank("collar", 20, 12)]
    layout = lay_out(cloth, blanks, rows_only=True)
    assert len(layout.rows) == 1
