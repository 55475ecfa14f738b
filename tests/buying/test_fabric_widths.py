"""A fabric at each width on offer, and the choice between them."""

from decimal import Decimal

import pytest

from estimator import Catalog, Estimate, GarmentOrder, Job, estimate
from estimator.layout import Style
from estimator.reports.assumptions import assumptions
from estimator.reports.layout_papers import written_layouts
from estimator.written import length
from tests.plans import bought, catalog, complaints, order, plan

HEADING = """
[garment]
name = "apron"
currency = "USD"
seam_allowance = 0
straightening = 0
selvedge = 0
[[fabric]]
name = "print"
"""
# Two panels of 22 in lie beside one another in 45 in and three not; in 66 in three do.
PANELS = '[[piece]]\nname = "panel"\nquantity = 3\ncut = "print"\nwidth = "22"\nlength = "27"\n'


def at(widths: str, pieces: str = PANELS) -> Estimate:
    return estimate(plan(f"{HEADING}widths = [{widths}]\n{pieces}"))


def priced(narrow: str, wide: str) -> str:
    return (
        f'{{ width = "45 in", price = "{narrow} per yd" }}, '
        f'{{ width = "66 in", price = "{wide} per yd" }}'
    )


def test_three_panels_take_two_rows_at_45_in_and_one_at_66_in() -> None:
    (choice,) = at('"45 in", "66 in"').fabrics
    assert [one.needed for one in choice.options] == [length("54"), length("27")]


def test_the_cheapest_width_is_neither_the_cheapest_yard_nor_always_the_shortest() -> None:
    # 45 in: 1 1/2 yd; 66 in: 3/4 yd. At 4 and 9 a yard: 6.00 or 6.75; at 4 and 7: 6.00 or 5.25.
    narrow = at(priced("4", "9"))
    assert (bought(narrow, "print").width, narrow.cost) == (length("45 in"), Decimal("6.00"))
    wide = at(priced("4", "7"))
    assert (bought(wide, "print").width, wide.cost) == (length("66 in"), Decimal("5.25"))
    assert wide.fabrics[0].reason == "cheapest of 2 widths"


def test_where_a_price_lacks_the_shortest_is_bought_and_the_list_says_so() -> None:
    found = at('{ width = "45 in", price = "1 per yd" }, "66 in"')
    assert bought(found, "print").width == length("66 in")
    assert found.fabrics[0].reason == (
        "shortest of 2 widths; prices lack, so the cheapest is not known"
    )
    assert found.unpriced == 1


def test_a_width_fixed_by_the_plan_is_bought_though_another_is_cheaper() -> None:
    text = f'{HEADING}widths = [{priced("4", "7")}]\nwidth = "45 in"\n{PANELS}'
    found = estimate(plan(text)).fabrics[0]
    assert found.chosen.width == length("45 in")
    assert found.reason == "width fixed by the plan"


def test_a_width_too_narrow_for_a_piece_is_left_out() -> None:
    (choice,) = at('"20 in", "45 in"').fabrics
    assert [one.width for one in choice.unfit] == [length("20 in")]
    assert choice.reason == "the only width that takes the pieces"


def test_a_piece_wider_than_every_width_says_what_would_take_it() -> None:
    (found,) = complaints(f'{HEADING}widths = ["18 in", "20 in"]\n{PANELS}')
    assert found.startswith("apron.toml, line 11 (piece 'panel'): ")
    assert "'panel' is cut 22 in wide, and the widest 'print'" in found
    assert "(20 in) has 20 in to use; take a fabric with at least 22 in to use" in found


def test_every_piece_that_is_too_wide_is_complained_of() -> None:
    back = PANELS.replace("panel", "back").replace("22", "31")
    found = complaints(f'{HEADING}widths = ["20 in"]\n{PANELS}{back}')
    assert [one.split(":")[0] for one in found] == [
        "apron.toml, line 11 (piece 'panel')",
        "apron.toml, line 17 (piece 'back')",
    ]


def test_a_piece_as_wide_as_the_fabric_fits() -> None:
    assert at('"22 in"').fabrics[0].chosen.needed == length("81")


def test_a_piece_of_either_grain_turns_to_fit() -> None:
    # 27 in across are too wide for 20 in; turned, they are 18 in across and 27 in long.
    lying = PANELS.replace('"22"', '"27"').replace('length = "27"', 'length = "18"')
    found = at('"20 in"', lying + 'grain = "either"\n')
    assert found.fabrics[0].chosen.needed == length("81")


def test_the_width_is_narrower_by_what_the_fabric_shrinks_across() -> None:
    # Two panels of 22 in want 44 in; 45 in at 3 % leave 43.65 in.
    found = estimate(plan(f'{HEADING}widths = ["45 in"]\nshrinkage_across = "3 %"\n{PANELS}'))
    assert found.fabrics[0].chosen.needed == length("81")


def test_rows_of_a_matched_print_start_on_its_repeat() -> None:
    # Two rows of 27 in on a 10 in repeat: the second starts at 30, and none is charged after it.
    found = estimate(plan(f'{HEADING}widths = ["45 in"]\nrepeat = "10"\n{PANELS}'))
    assert found.fabrics[0].chosen.needed == length("57")


def test_waste_is_the_share_of_the_cloth_that_is_in_no_piece() -> None:
    # 66 in wide, 27 in long, bought 3/4 yd: all of it is in panels.
    assert at('"66 in"').fabrics[0].chosen.waste == 0
    # 45 in wide, 54 in bought, three panels of 22 x 27.
    assert float(at('"45 in"').fabrics[0].chosen.waste) == pytest.approx(
        1 - 3 * 22 * 27 / (45 * 54)
    )


def test_no_layout_buys_less_than_the_proof_says() -> None:
    option = at('"45 in"').fabrics[0].chosen
    assert option.least <= option.buy.bought


def lawn() -> Catalog:
    return catalog(
        [{"item": "lawn", "kind": "fabric"}],
        [{"item": "lawn", "width": "45 in", "price": "8", "per": "yd", "currency": "USD"}],
    )


def garment(name: str, more: str = "", quantity: int = 1) -> GarmentOrder:
    heading = HEADING.replace('"apron"', f'"{name}"') + f'buy = "lawn"\n{more}'
    return order(heading + PANELS.replace("quantity = 3", f"quantity = {quantity}"))


def test_two_garments_of_one_cloth_are_laid_out_and_rounded_together() -> None:
    # Alone each takes 27 in, 3/4 yd; beside one another in 45 in both do.
    found = estimate(Job((garment("apron"), garment("dress")), lawn()))
    (line,) = found.purchases
    assert line.buy.bought == length("3/4 yd")
    assert [source.garment for source in line.sources] == ["apron", "dress"]


def test_one_cloth_on_unequal_terms_is_two_lines_with_keys_of_their_own() -> None:
    washed = garment("dress", 'shrinkage = "5 %"\n')
    found = estimate(Job((garment("apron"), washed), lawn()))
    assert len({line.key for line in found.purchases}) == 2


def test_the_count_of_an_order_and_the_copies_of_a_plan_multiply() -> None:
    found = estimate(Job((GarmentOrder(garment("apron").plan, count=4),), lawn()))
    assert found.fabrics[0].chosen.pieces[0].quantity == 4


def test_a_key_names_item_colour_and_name_and_never_the_place_on_the_list() -> None:
    found = estimate(Job((garment("apron", 'colour = "sky"\n'),), lawn()))
    assert found.purchases[0].key == "lawn / sky / print"


# Four pieces of 7 by 5 round a hole of 2 by 2 (a pinwheel): 12 by 12, where rows need 14.
PINWHEEL = """
[garment]
name = "patch"
straightening = "0"
selvedge = "0"
seam_allowance = "0"
[[fabric]]
name = "felt"
widths = ["12 in"]
step = "1/16 yd"
{more}
[[piece]]
name = "patch"
quantity = 4
cut = "felt"
width = "7"
length = "5"
grain = "either"
"""


def test_a_close_layout_is_taken_where_it_buys_less_unless_rows_are_insisted_on() -> None:
    close = estimate(plan(PINWHEEL.format(more=""))).fabrics[0].chosen
    assert (close.laid.cuts[0].style, close.buy.bought) == (Style.CLOSE, length("3/8 yd"))
    wish = 'layout = "straight rows"'
    rows = estimate(plan(PINWHEEL.format(more=wish))).fabrics[0].chosen
    assert rows.laid.cuts[0].style is Style.STRAIGHT_ROWS
    assert rows.buy.bought > length("3/8 yd")


BOLTS = """
[garment]
name = "Backdrop"
unit = "in"
straightening = "1"
[[fabric]]
name = "canvas"
widths = [{ width = "60 in", bolt = "BOLT" }]
price = "6.00 per yd"
selvedge = "0"
[[piece]]
name = "cloth"
quantity = 5
cut = "canvas"
sizes = "cut"
width = "40"
length = "70"
"""


def bolts(bolt: str, more: str = "") -> str:
    text = BOLTS.replace('unit = "in"', 'unit = "in"\ncurrency = "USD"')
    return text.replace("BOLT", bolt) + more


def test_a_layout_longer_than_any_bolt_is_cut_in_several_lengths() -> None:
    # each cloth takes 70 in; a bolt of 6 yd takes 216 - 2 in of layout, three cloths: 212 in, and
    # 142 in for the other two; 212 in is 5 8/9 yd, up to 6, and 142 in is 3 17/18, up to 4
    (choice,) = estimate(plan(bolts("6 yd"))).fabrics
    assert [cut.length for cut in choice.chosen.laid.cuts] == [
        3 * length("70").ticks,
        2 * length("70").ticks,
    ]
    assert choice.chosen.buy.bought == length("10 yd")
    assert choice.chosen.needed == length("212") + length("142")
    assert "cut in 6 yd and 4 yd" in choice.purchase.notes
    assert choice.chosen.buy.steps[-1].label == "all cuts together"


def test_every_cut_has_its_ends_straightened_in_the_least_that_can_be_bought() -> None:
    # 350 in of layout and four ends are 354 in: 9 5/6 yd, up to 9 7/8
    (choice,) = estimate(plan(bolts("6 yd"))).fabrics
    assert choice.chosen.least == length("9 7/8 yd")


def test_a_long_enough_bolt_changes_nothing() -> None:
    (choice,) = estimate(plan(bolts("40 yd"))).fabrics
    assert len(choice.chosen.laid.cuts) == 1
    assert choice.chosen.buy.bought == length("9 7/8 yd")


def test_a_piece_longer_than_any_bolt_is_refused() -> None:
    (found,) = complaints(bolts("2 yd").replace('length = "70"', 'length = "71"'))
    assert (
        "'cloth' lies 71 in along the fabric and takes 73 in of it with straightened ends, and no "
        "bolt is longer than 72 in; take a longer bolt, or cut the piece in parts with a seam"
    ) in found


def matched(bolt: str, repeat: str, **other: str) -> str:
    text = bolts(bolt).replace('selvedge = "0"', f'selvedge = "0"\nrepeat = "{repeat}"')
    for key, value in other.items():
        text = text.replace(f"{key} = 5", f"{key} = {value}")
    return text


def test_each_further_cut_of_a_matched_print_has_a_repeat_more_to_be_trimmed() -> None:
    # Cloths of 70 in start at 0, 72 and 144 on a repeat of 24; 214 in is just what a bolt of 6 yd
    # takes. The second cut holds two, 142 in, and may have to be trimmed by 24: 142 + 24 + 2 ends
    # is 168 in, 4 2/3 yd, up to 4 3/4; the first is 216 in, 6 yd.
    (choice,) = estimate(plan(matched("6 yd", "24"))).fabrics
    assert [cut.length for cut in choice.chosen.laid.cuts] == [
        length("214").ticks,
        length("142").ticks,
    ]
    assert choice.chosen.needed == length("216") + length("168")
    assert choice.chosen.buy.bought == length("10 3/4 yd")
    assert "cut in 6 yd and 4 3/4 yd" in choice.purchase.notes


def test_the_least_bought_in_several_cuts_of_a_matched_print_has_their_repeats_too() -> None:
    # 5 x 70 in are 350; the first cut takes 214, the second 190 after its repeat of 24: so two
    # cuts, with four ends and one repeat: 378 in, 10 1/2 yd
    (choice,) = estimate(plan(matched("6 yd", "24"))).fabrics
    assert choice.chosen.least == length("10 1/2 yd")


def test_a_repeat_longer_than_the_bolt_is_refused_where_a_second_cut_is_needed() -> None:
    (found,) = complaints(matched("3 yd", "4 yd"))
    assert (
        "'cloth' is to start on the repeat of 144 in, and these pieces take more than one bolt of "
        "108 in: a further bolt may begin anywhere in the repeat, and need not hold the piece from "
        "its next start on; take a longer bolt; or, where the shop cuts from the motif, leave bolt "
        "out"
    ) in found


def test_a_repeat_longer_than_the_bolt_does_no_harm_to_what_goes_on_one() -> None:
    (choice,) = estimate(plan(matched("3 yd", "4 yd", quantity="1"))).fabrics
    assert [cut.length for cut in choice.chosen.laid.cuts] == [length("70").ticks]
    assert choice.chosen.needed == length("72")


def test_a_wider_fabric_on_which_one_bolt_is_enough_is_bought_where_a_narrower_is_refused() -> None:
    text = matched("3 yd", "4 yd", quantity="2")
    text = text.replace("widths = [", 'widths = [{ width = "90 in", bolt = "3 yd" }, ')
    (choice,) = estimate(plan(text)).fabrics
    assert choice.chosen.width == length("90 in")
    assert [one.width for one in choice.unfit] == [length("60 in")]


def test_the_written_layout_says_where_a_further_cut_is_trimmed() -> None:
    found = estimate(plan(matched("6 yd", "24")))
    first, second = (table.notes for table, _ in written_layouts(found.fabrics[0], found))
    trimmed = "Then trim it to the place of the repeat at which cut 1 begins."
    assert trimmed in second
    assert trimmed not in first
    assert any("each cut after the first has 24 in more" in line for line in assumptions(found))


def test_a_piece_too_wide_to_lie_upright_and_too_long_for_the_bolt_when_turned_is_refused() -> None:
    # 62 in wide on 60 in, so it would have to lie turned, 62 in along a bolt of 1 yd
    text = (
        bolts("1 yd")
        .replace('width = "40"', 'width = "62"')
        .replace('length = "70"', 'length = "30"')
    )
    (found,) = complaints(text + 'grain = "either"\n')
    told = "lies 62 in along the fabric and takes 64 in of it with straightened ends"
    assert told in found
    assert "no bolt is longer than 36 in" in found


def test_cuts_are_listed_as_they_are_spoken_and_many_are_counted() -> None:
    (choice,) = estimate(plan(bolts("4 yd"))).fabrics
    assert "cut in 4 yd, 4 yd and 2 yd" in choice.purchase.notes
    many = bolts("4 yd").replace("quantity = 5", "quantity = 21")
    (choice,) = estimate(plan(many)).fabrics
    assert "cut in 11 lengths, 10 of 4 yd and 1 of 2 yd" in choice.purchase.notes


def test_the_working_of_several_cuts_tells_which_cut_it_is_and_works_equal_ones_once() -> None:
    (choice,) = estimate(plan(bolts("4 yd"))).fabrics
    steps = choice.chosen.buy.steps
    assert [step.label for step in steps if step.label.startswith("length of")] == [
        "length of the cutting layout, cuts 1 and 2",
        "length of the cutting layout, cut 3",
    ]
    assert [step.result for step in steps if step.label == "cuts alike"] == [length("8 yd")]
    assert steps[-1].result == choice.chosen.buy.bought == length("10 yd")
