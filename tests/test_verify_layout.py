"""The checker of layouts is checked itself: each fault it knows is made once, and it sees it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from estimator.layout.answer import Column, Layout, Placement, Row, Style
from estimator.layout.question import Blank, Cloth, Held
from tests.verify_layout import as_test_case, assert_sound, faults_in

CLOTH = Cloth(width=100)
BLANKS = [Blank("panel", 40, 70, quantity=2), Blank("pocket", 20, 15, may_turn=True)]

#    0        40       80  100
#  70|--------|--------|
#    | panel  | panel  |---| 15       the pocket is 20 wide, not turned: 80 to 100
#   0|--------|--------|---|
PANELS = (Placement(0, 0, 0, 40, 70), Placement(0, 40, 0, 40, 70))
POCKET = Placement(1, 80, 0, 20, 15)
SOUND = Layout(100, 70, (*PANELS, POCKET), (), 57, Style.CLOSE)
ROW = Row(0, 70, (Column(0, 40, PANELS[:1]), Column(40, 40, PANELS[1:]), Column(80, 20, (POCKET,))))
IN_A_ROW = replace(SOUND, rows=(ROW,), style=Style.STRAIGHT_ROWS)


def moved(layout: Layout, index: int, **changes: object) -> Layout:
    placements = list(layout.placements)
    placements[index] = replace(placements[index], **changes)  # type: ignore[arg-type]
    return replace(layout, placements=tuple(placements))


@pytest.mark.parametrize("layout", [SOUND, IN_A_ROW], ids=["close", "in a row"])
def test_pieces_that_only_touch_are_no_fault(layout):
    assert faults_in(CLOTH, BLANKS, layout) == []


@pytest.mark.parametrize(
    ("index", "changes", "complaint"),
    [
        (0, {"across": -1}, "over the near selvedge"),
        (2, {"across": 81}, "over the far selvedge"),
        (0, {"along": -1}, "before the cut end"),
        (1, {"along": 1}, "past the end of the layout"),
    ],
    ids=["near selvedge", "far selvedge", "cut end", "far end"],
)
def test_a_piece_one_tick_off_each_edge_of_the_cloth_is_seen(index, changes, complaint):
    faults = faults_in(CLOTH, BLANKS, moved(SOUND, index, **changes))
    assert any(complaint in fault for fault in faults)


def test_the_last_two_pieces_one_tick_over_each_other_are_seen():
    faults = faults_in(CLOTH, BLANKS, moved(SOUND, 2, across=79))
    assert [fault for fault in faults if "over blank 0 at 40 across" in fault]


def test_two_pieces_alone_in_one_place_are_seen():
    blanks = [Blank("cuff", 10, 10, quantity=2)]
    layout = Layout(100, 10, (Placement(0, 5, 0, 10, 10),) * 2, (), 1, Style.CLOSE)
    assert any("over blank 0 at 5 across" in fault for fault in faults_in(CLOTH, blanks, layout))


def test_a_small_piece_inside_a_large_one_is_seen():
    faults = faults_in(CLOTH, BLANKS, moved(SOUND, 2, across=10, along=30))
    assert any("over blank 0 at 0 across" in fault for fault in faults)


def test_a_missing_piece_is_seen():
    layout = replace(SOUND, placements=SOUND.placements[1:])
    assert faults_in(CLOTH, BLANKS, layout) == ["panel: wanted 2, placed 1"]


def test_a_piece_cut_twice_is_seen():
    layout = replace(SOUND, placements=(*SOUND.placements, Placement(1, 80, 20, 20, 15)))
    assert faults_in(CLOTH, BLANKS, layout) == ["pocket: wanted 1, placed 2"]


def test_a_piece_that_nobody_asked_for_is_seen():
    layout = replace(SOUND, placements=(*SOUND.placements, Placement(2, 80, 20, 20, 15)))
    assert faults_in(CLOTH, BLANKS, layout) == ["blank 2 was never asked for"]


def test_a_turn_that_the_piece_forbids_is_seen():
    blanks = [BLANKS[0], replace(BLANKS[1], may_turn=False)]
    turned = moved(SOUND, 2, width=15, length=20, turned=True)
    assert faults_in(CLOTH, BLANKS, turned) == []
    assert any("must not be turned" in fault for fault in faults_in(CLOTH, blanks, turned))


def test_a_piece_turned_without_saying_so_is_seen():
    faults = faults_in(CLOTH, BLANKS, moved(SOUND, 2, width=15, length=20))
    assert any("pocket is 20 x 15" in fault for fault in faults)


def test_a_piece_cut_short_is_seen():
    faults = faults_in(CLOTH, BLANKS, moved(SOUND, 1, length=69))
    assert any("panel is 40 x 70" in fault for fault in faults)


def test_a_piece_that_starts_between_repeats_is_seen():
    cloth = Cloth(width=100, repeat=30)
    above = moved(SOUND, 2, along=30)
    between = moved(SOUND, 2, along=29)
    assert faults_in(cloth, BLANKS, above) == []
    assert any(
        "does not start on the repeat" in fault for fault in faults_in(cloth, BLANKS, between)
    )


def test_a_row_that_starts_between_repeats_is_seen():
    layout = replace(IN_A_ROW, rows=(replace(ROW, start=-1),))
    faults = faults_in(Cloth(width=100, repeat=30), BLANKS, layout)
    assert "the row at -1 does not start on the repeat of 30" in faults


def test_a_piece_left_out_of_the_rows_is_seen():
    layout = replace(IN_A_ROW, rows=(replace(ROW, columns=ROW.columns[:2]),))
    assert faults_in(CLOTH, BLANKS, layout) == [
        "the pieces in the rows are not those of the layout"
    ]


def test_a_piece_higher_than_its_row_is_seen():
    layout = replace(IN_A_ROW, rows=(replace(ROW, height=69),))
    assert any("higher than its row" in fault for fault in faults_in(CLOTH, BLANKS, layout))


def test_columns_over_each_other_are_seen():
    wide = replace(ROW.columns[0], width=41)
    layout = replace(IN_A_ROW, rows=(replace(ROW, columns=(wide, *ROW.columns[1:])),))
    assert any("lies over the one before it" in fault for fault in faults_in(CLOTH, BLANKS, layout))


def test_a_piece_wider_than_its_column_is_seen():
    narrow = replace(ROW.columns[0], width=39)
    layout = replace(IN_A_ROW, rows=(replace(ROW, columns=(narrow, *ROW.columns[1:])),))
    assert any("not within its column" in fault for fault in faults_in(CLOTH, BLANKS, layout))


def test_rows_that_run_into_each_other_are_seen():
    pieces = (Placement(0, 0, 0, 40, 70), Placement(0, 40, 69, 40, 70))
    rows = (Row(0, 70, (Column(0, 40, pieces[:1]),)), Row(69, 70, (Column(40, 40, pieces[1:]),)))
    layout = Layout(100, 139, pieces, rows, 1, Style.STRAIGHT_ROWS)
    faults = faults_in(CLOTH, BLANKS[:1], layout)
    assert faults == ["the row at 69 starts before the last one ends at 70"]


def test_a_close_layout_with_rows_is_seen():
    layout = replace(IN_A_ROW, style=Style.CLOSE)
    assert faults_in(CLOTH, BLANKS, layout) == ["a close layout has no rows"]


def test_a_length_that_is_not_that_of_the_last_piece_is_seen():
    assert any(
        "its last piece ends at 70" in fault
        for fault in faults_in(CLOTH, BLANKS, replace(SOUND, length=71))
    )


def test_a_bound_above_the_layout_is_seen():
    assert faults_in(CLOTH, BLANKS, replace(SOUND, bound=71))[0].startswith("the bound 71 is above")


@pytest.mark.parametrize(
    ("held", "across", "well"),
    [
        (Held.NEAR, 0, True),
        (Held.NEAR, 1, False),
        (Held.FAR, 80, True),
        (Held.FAR, 79, False),
        (Held.EITHER, 80, True),
        (Held.EITHER, 0, True),
        (Held.EITHER, 40, False),
    ],
)
def test_a_piece_away_from_the_edge_that_it_uses_is_seen(held, across, well):
    blanks = [Blank("band", 20, 15, held=held)]
    layout = Layout(100, 15, (Placement(0, across, 0, 20, 15),), (), 1, Style.CLOSE)
    assert (faults_in(CLOTH, blanks, layout) == []) is well


def test_a_piece_beside_the_stripe_of_a_plaid_is_seen():
    plaid = Cloth(width=100, repeat_across=8)
    blanks = [Blank("yoke", 20, 15)]
    on, off = (Layout(100, 15, (Placement(0, at, 0, 20, 15),), (), 1, Style.CLOSE) for at in (8, 9))
    assert faults_in(plaid, blanks, on) == []
    assert faults_in(plaid, blanks, off) == [
        "blank 0 at 9 across, 0 along, 20 x 15: off the repeat across of 8"
    ]


def test_a_layout_of_another_width_is_seen():
    assert faults_in(CLOTH, BLANKS, replace(SOUND, width=99))[0].startswith("laid on 99 ticks")


def test_a_faulty_layout_prints_as_a_test_that_fails_and_a_sound_one_as_a_test_that_passes():
    def run(layout):
        scope = {
            "Cloth": Cloth, "Blank": Blank, "Layout": Layout, "Placement": Placement,
            "Row": Row, "Column": Column, "Held": Held, "Style": Style, "faults_in": faults_in,
        }  # fmt: skip
        exec(as_test_case(CLOTH, BLANKS, layout), scope)
        scope["test_this_layout_can_be_cut"]()

    run(IN_A_ROW)
    with pytest.raises(AssertionError):
        run(moved(IN_A_ROW, 2, across=79))
    with pytest.raises(AssertionError, match="def test_this_layout_can_be_cut"):
        assert_sound(CLOTH, BLANKS, moved(IN_A_ROW, 2, across=79))
