"""The stash before the shop: used where it saves money, the smallest remnant that serves first."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, GarmentOrder, Job, estimate
from estimator.buying.laying import cloth_of_width
from estimator.measure import ZERO, Length
from estimator.reports.remnant_papers import remnant_layouts
from estimator.stash import InHand, Stash
from estimator.written import length
from tests.plans import bought, plan
from tests.verify_layout import assert_sound

CLOTH = """
[garment]
name = "Apron"
unit = "in"
currency = "USD"
[[fabric]]
name = "check"
price = "6 per yd"
widths = ["45 in"]
selvedge = "1/2"
"""


def stash(*rows: dict[str, str]) -> Stash:
    return Stash({n: InHand.model_validate(row) for n, row in enumerate(rows, start=2)})


def with_stash(text: str, *rows: dict[str, str], heading: str = CLOTH) -> Estimate:
    return estimate(Job((GarmentOrder(plan(heading + text)),), stash=stash(*rows)))


def panel(width: str, long: str, quantity: int = 1) -> str:
    """A piece whose sizes are cut sizes."""
    return (
        f'[[piece]]\nname = "panel {width} {long}"\nquantity = {quantity}\ncut = "check"\n'
        f'sizes = "cut"\nwidth = "{width}"\nlength = "{long}"\n'
    )


def check(long: str, **more: str) -> dict[str, str]:
    return {"item": "check", "width": "45 in", "length": long, **more}


def taken(found: Estimate) -> list[tuple[int, Length | int, Length | int]]:
    return [
        (one.single.row, one.amount, one.left) for line in found.purchases for one in line.taken
    ]


@pytest.mark.parametrize(
    ("said", "enough"),
    [
        ("", True),  # 24 + 17 = 41 in beside each other, in 45 less two selvedges
        ('widths = [{ width = "45 in", usable = "40 in" }]', False),
        ('widths = ["45 in", { width = "60 in", usable = "40 in" }]', True),
    ],
)
def test_a_remnant_has_no_more_usable_width_than_new_cloth_as_wide(said: str, enough: bool) -> None:
    heading = CLOTH.replace('widths = ["45 in"]', said or 'widths = ["45 in"]')
    found = with_stash(
        panel("24", "50") + panel("17", "50"), check("54 in", washed="yes"), heading=heading
    )
    assert (not found.purchases[0].buy.bought) is enough


def test_a_fabric_wholly_from_the_stash_leaves_nothing_to_buy() -> None:
    # 20 in of piece and an inch straightened at each end: 22 of 36 in, 14 are left
    found = with_stash(panel("40", "20"), check("1 yd"))
    line = bought(found, "check")
    assert (line.buy.sold_units, line.buy.cost, line.buy.offer.shop) == (0, Decimal(0), "")
    assert taken(found) == [(2, length("22 in"), length("14 in"))]
    assert found.cost == 0


def test_a_remnant_an_inch_short_of_its_straightened_ends_is_no_use() -> None:
    found = with_stash(panel("40", "20"), check("21 3/4 in"))
    assert taken(found) == []
    assert bought(found, "check").buy.cost == Decimal("3.75")  # 22 in: 5/8 yd at 6.00


@pytest.mark.parametrize(("washed", "used"), [("yes", True), ("no", False)])
def test_a_washed_remnant_does_not_shrink_again(washed: str, used: bool) -> None:
    # 22 in are needed after washing: at 10 % that takes 24 4/9 in of unwashed cloth
    shrinks = CLOTH + 'shrinkage = "10 %"\n'
    found = with_stash(panel("40", "20"), check("23 in", washed=washed), heading=shrinks)
    assert bool(taken(found)) is used


def test_the_small_remnant_serves_and_the_long_one_stays_whole() -> None:
    found = with_stash(panel("40", "10"), check("3 yd"), check("14 in"))
    assert taken(found) == [(3, length("12 in"), length("2 in"))]


def test_a_remnant_that_saves_nothing_stays_whole() -> None:
    # the pocket lies beside the panel on the cloth that is bought anyway
    found = with_stash(panel("30", "30") + panel("6", "6"), check("10 in"))
    assert taken(found) == []


def test_the_rest_is_bought_and_the_remnant_holds_the_largest_pieces_that_go_on_it() -> None:
    found = with_stash(panel("40", "20", 2) + panel("40", "6"), check("23 in"))
    (choice,) = found.fabrics
    assert [(p.name, p.quantity) for p in choice.chosen.stash[0].pieces] == [("panel 40 20", 1)]
    assert sorted((p.name, p.quantity) for p in choice.chosen.pieces) == [
        ("panel 40 20", 1),
        ("panel 40 6", 1),
    ]
    assert bought(found, "check").buy.bought == length("7/8 yd")  # 20 + 6 + 2 = 28 in


def test_a_large_show_is_cut_from_every_remnant_that_holds_a_piece() -> None:
    # two panels on each of ten remnants: of 400 in rows of two, ten rows of 20 in are saved
    text = panel("20", "20", 400)
    found = with_stash(text, check("24 in", count="10"))
    assert len(taken(found)) == 10
    saved = with_stash(text).fabrics[0].chosen.needed - found.fabrics[0].chosen.needed
    assert saved == length("200 in")


def test_cloth_of_another_colour_is_left_alone() -> None:
    found = with_stash(panel("40", "20"), check("1 yd", colour="green"))
    assert taken(found) == []


pieces = st.lists(
    st.tuples(st.integers(3, 44), st.integers(3, 50), st.integers(1, 3)),
    min_size=1,
    max_size=4,
    unique_by=lambda one: one[:2],
)
remnants = st.lists(st.tuples(st.integers(6, 60), st.integers(4, 70)), max_size=4)


@settings(max_examples=60, deadline=None)
@given(pieces, remnants)
def test_using_the_stash_never_costs_more_and_every_piece_is_cut_once(
    asked: list[tuple[int, int, int]], in_hand: list[tuple[int, int]]
) -> None:
    text = "".join(panel(str(width), str(long), count) for width, long, count in asked)
    rows = [check(f"{long} in", width=f"{width} in") for width, long in in_hand]
    plain, found = with_stash(text), with_stash(text, *rows)
    assert found.cost <= plain.cost
    assert not taken(found) or found.cost < plain.cost
    (choice,) = found.fabrics
    cut = sum(piece.quantity for piece in choice.chosen.all_pieces)
    assert cut == sum(count for _, _, count in asked)
    rows_used = [row for row, _, _ in taken(found)]
    assert len(rows_used) == len(set(rows_used))
    for one in choice.chosen.stash:
        assert one.taken.amount > ZERO <= one.taken.left
        (layout,) = one.laid.cuts
        cloth = cloth_of_width(choice.need.terms, one.breadth)
        assert_sound(cloth, [lot.blank for lot in one.laid.lots], layout)


TRIM = """
[garment]
name = "Apron"
unit = "in"
currency = "USD"
trim_waste = "0 %"
[[trim]]
name = "braid"
length = "{length}"
quantity = {quantity}
ends = "raw"
{sold}
"""
CARDS = 'sold = [{ put_up = "card of 3 yd", price = "2.40 each" }]'


def test_a_part_spool_holds_whole_runs_before_a_card_is_bought() -> None:
    # three runs of 40 in: a card of 108 in holds two; 45 in hand hold the third
    text = TRIM.format(length="40", quantity=3, sold=CARDS)
    found = with_stash(text, {"item": "braid", "length": "45 in"}, heading="")
    assert bought(found, "braid").buy.bought == 1
    assert taken(found) == [(2, length("40 in"), length("5 in"))]
    assert found.cost == Decimal("2.40")


def test_a_length_that_saves_no_card_stays_on_its_spool() -> None:
    text = TRIM.format(length="30", quantity=3, sold=CARDS)
    found = with_stash(text, {"item": "braid", "length": "45 in"}, heading="")
    assert taken(found) == []


def test_two_short_lengths_are_never_joined_for_a_long_run() -> None:
    text = TRIM.format(length="40", quantity=1, sold='price = "1 per yd"')
    rows = [{"item": "braid", "length": "30 in"}, {"item": "braid", "length": "30 in"}]
    assert taken(with_stash(text, *rows, heading="")) == []


BUTTONS = """
[garment]
name = "Apron"
unit = "in"
currency = "USD"
[[notion]]
name = "button"
quantity = {quantity}
{sold}
"""


def test_buttons_in_hand_are_taken_from_those_that_are_bought() -> None:
    text = BUTTONS.format(quantity=10, sold='price = "0.50 each"')
    found = with_stash(text, {"item": "button", "count": "4"}, heading="")
    assert bought(found, "button").buy.bought == 6
    assert taken(found) == [(2, 4, 0)]
    assert found.cost == Decimal("3.00")


def test_only_so_many_buttons_are_taken_as_save_a_pack() -> None:
    # 14 take three packs of 6; with two in hand two packs do, and more in hand save no further one
    text = BUTTONS.format(quantity=14, sold='sold = [{ put_up = "pack of 6", price = "3 each" }]')
    found = with_stash(text, {"item": "button", "count": "5"}, heading="")
    assert taken(found) == [(2, 2, 3)]
    assert bought(found, "button").buy.bought == 2


@given(st.integers(1, 30), st.lists(st.integers(1, 12), max_size=3), st.booleans())
def test_notions_in_hand_never_cost_more(quantity: int, counts: list[int], packs: bool) -> None:
    sold = 'sold = [{ put_up = "pack of 6", price = "3 each" }]' if packs else 'price = "1 each"'
    text = BUTTONS.format(quantity=quantity, sold=sold)
    rows = [{"item": "button", "count": str(count)} for count in counts]
    assert with_stash(text, *rows, heading="").cost <= with_stash(text, heading="").cost


HEMMED = """
[[piece]]
name = "panel"
cut = "check"
width = "40"
length = "20"
edges = { top = "raw", left = "raw", right = "raw", bottom = "rolled hem" }
[[thread]]
name = "blue"
waste = 0
sold = [{ put_up = "spool of 40 in", price = "3 each" }]
"""


def test_full_spools_in_hand_stand_for_as_many_that_are_bought() -> None:
    # a hem of 40 in takes 100 in of thread: three spools of 40 in, one of them in hand
    assert bought(with_stash(HEMMED), "blue").buy.bought == 3
    rows = [{"item": "blue", "length": "40 in"}, {"item": "blue", "length": "9 in"}]
    found = with_stash(HEMMED, *rows)
    line = bought(found, "blue")
    assert (line.buy.bought, line.buy.cost) == (2, Decimal(6))
    assert taken(found) == [(2, length("40 in"), ZERO)]


def test_thread_wholly_in_hand_is_not_bought() -> None:
    found = with_stash(HEMMED, {"item": "blue", "count": "50"})
    assert bought(found, "blue").buy.cost == 0
    assert taken(found) == [(2, 3, 47)]


def test_nothing_is_to_be_had_instead_of_thread_that_is_wholly_in_hand() -> None:
    large = '{ put_up = "spool of 90 in", price = "7 each" }'
    both = HEMMED.replace("sold = [", f"sold = [{large}, ")
    assert bought(with_stash(both), "blue").others
    assert bought(with_stash(both, {"item": "blue", "length": "110 in"}), "blue").others == ()


def test_a_part_spool_in_hand_is_used_up_before_a_spool_is_bought() -> None:
    # of the 100 in 25 are on a part spool: 75 in are on two spools of 40 in, and not on three
    found = with_stash(HEMMED, {"item": "blue", "length": "25 in"})
    assert bought(found, "blue").buy.cost == Decimal(6)
    assert taken(found) == [(2, length("25 in"), ZERO)]
    steps = bought(found, "blue").buy.steps
    assert [step.result for step in steps[-2:]] == [length("75"), 2]


def test_the_shorter_part_spool_is_used_up_first_and_none_is_begun_in_vain() -> None:
    # 45 in are used up, and 55 of the 60 in; the 30 in would save no spool
    rows = [{"item": "blue", "length": f"{long} in"} for long in (60, 30, 45)]
    found = with_stash(HEMMED, *rows)
    assert bought(found, "blue").buy.cost == 0
    assert taken(found) == [(4, length("45"), ZERO), (2, length("55"), length("5"))]


def test_each_looper_takes_a_part_cone_of_its_own() -> None:
    # an overedge of 40 in in three threads takes 14 x 40 = 560 in: a needle a fifth, and each
    # looper two fifths, 224 in. One cone of 300 in hand serves one looper; two are bought.
    serged = HEMMED.replace("rolled hem", "serged").replace("spool of 40 in", "cone of 250 in")
    found = with_stash(serged, {"item": "blue", "length": "300 in"})
    assert bought(found, "blue").buy.bought == 2
    ((row, used, left),) = taken(found)
    assert row == 2
    assert used + left == length("300")


@pytest.mark.parametrize("left_on_it", ["140 in", "200 in"])
def test_a_part_cone_that_would_fill_a_needle_is_not_wasted_on_a_looper(left_on_it: str) -> None:
    # of the 560 in the needle takes 4 x 560 / 20 = 112 in and each looper 224 in, which no part
    # cone here holds: the needle's thread is on it, and a cone is bought for each looper
    serged = HEMMED.replace("rolled hem", "serged").replace("spool of 40 in", "cone of 250 in")
    found = with_stash(serged, {"item": "blue", "length": left_on_it})
    assert bought(found, "blue").buy.bought == 2
    assert taken(found) == [(2, length("112 in"), length(left_on_it) - length("112 in"))]


MATCHED = CLOTH.replace('selvedge = "1/2"', 'selvedge = "1/2"\nrepeat = "10"')


def test_a_remnant_of_a_matched_print_that_takes_all_begins_anywhere() -> None:
    # 20 in and two ends of 1 in are 22 in: just what there is
    found = with_stash(panel("40", "20"), check("22 in"), heading=MATCHED)
    assert taken(found) == [(2, length("22 in"), ZERO)]


def test_a_remnant_beside_new_cloth_of_a_matched_print_is_trimmed_to_match_it() -> None:
    # up to a repeat of 10 in more: 32 in are taken for a panel of 20, and 31 in are too few for it
    pieces = panel("40", "20", 2)
    found = with_stash(pieces, check("33 in"), heading=MATCHED)
    assert taken(found) == [(2, length("32 in"), length("1 in"))]
    notes = [note for table, _ in remnant_layouts(found.fabrics[0], found) for note in table.notes]
    assert any("trim it to the place of the repeat" in note for note in notes)
    assert taken(with_stash(pieces, check("31 in"), heading=MATCHED)) == []


def test_a_remnant_of_a_plaid_beside_new_cloth_loses_a_repeat_across() -> None:
    # 44 in between the selvedges, less 5 in: a panel of 39 goes on it, one of 40 does not
    plaid = CLOTH.replace('selvedge = "1/2"', 'selvedge = "1/2"\nrepeat_across = "5"')
    assert taken(with_stash(panel("39", "20", 2), check("24 in"), heading=plaid)) != []
    assert taken(with_stash(panel("40", "20", 2), check("24 in"), heading=plaid)) == []


def test_pairs_of_a_folded_plaid_are_not_cut_from_a_remnant_that_is_laid_open() -> None:
    folded = CLOTH.replace('selvedge = "1/2"', 'laid = "folded"\nrepeat_across = "5"')
    assert taken(with_stash(panel("9", "20", 2), check("3 yd"), heading=folded)) == []
    assert taken(with_stash(panel("9", "20", 2), check("3 yd"), heading=CLOTH)) != []
