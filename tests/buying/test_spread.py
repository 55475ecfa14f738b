"""Fabric folded lengthwise: pairs, halves on the fold, odd pieces, and the open length beside."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, estimate
from estimator.buying.folding import bought_other_way
from estimator.buying.one_width import WidthOption
from estimator.layout import Cloth, Held
from estimator.measure import Length
from estimator.reports.assumptions import assumptions
from estimator.reports.fabric_papers import other_way_text, proof_text
from estimator.written import length
from tests.plans import complaints, plan
from tests.verify_layout import assert_sound

CLOTH = """
[garment]
name = "Prompter's jacket"
unit = "in"
straightening = "0"
[[fabric]]
name = "twill"
widths = ["{width} in"]
selvedge = "0"
laid = "{laid}"
"""
PIECE = """
[[piece]]
name = "{name}"
quantity = {quantity}
cut = "twill"
shape = "{shape}"
sizes = "cut"
width = "{width}"
length = "{long}"
"""


def piece(
    name: str, quantity: int, width: str, long: str, more: str = "", shape: str = "box"
) -> str:
    return PIECE.format(name=name, quantity=quantity, width=width, long=long, shape=shape) + more


def made(*pieces: str, laid: str = "folded", width: str = "60") -> Estimate:
    return estimate(plan(CLOTH.format(laid=laid, width=width) + "".join(pieces)))


def option(found: Estimate) -> WidthOption:
    return found.fabrics[0].chosen


def names_and_holds(found: WidthOption) -> list[tuple[str, int, int, Held]]:
    return [(lot.name, lot.blank.quantity, lot.layers, lot.blank.held) for lot in found.laid.lots]


def test_pieces_go_in_pairs_and_the_back_lies_with_its_half_on_the_fold() -> None:
    # on 30 in to the fold: half the back of 24 in takes 12, the two fronts beside it 14
    found = option(
        made(
            piece("front", 2, "14", "28"),
            piece("back", 1, "12", "28", 'edges.right = "fold"\n'),
        )
    )
    assert names_and_holds(found) == [
        ("front, in pairs", 1, 2, Held.FREE),
        ("back, on the fold", 1, 1, Held.NEAR),
    ]
    assert found.laid.cuts[0].length == length("28").ticks


def test_an_odd_rectangle_is_folded_and_an_odd_box_leaves_one_to_spare() -> None:
    found = option(
        made(
            piece("apron", 1, "30", "20", shape="rectangle"),
            piece("sleeve", 3, "10", "12"),
        )
    )
    assert names_and_holds(found) == [
        ("apron, on the fold", 1, 1, Held.NEAR),
        ("sleeve, in pairs", 1, 2, Held.FREE),
        ("sleeve, a pair with one to spare", 1, 2, Held.FREE),
    ]


def test_panels_wider_than_a_layer_all_lie_on_the_fold() -> None:
    found = option(made(piece("panel", 2, "44", "40", shape="rectangle")))
    assert names_and_holds(found) == [("panel, on the fold", 2, 1, Held.NEAR)]
    assert found.laid.cuts[0].length == length("80").ticks


def test_a_piece_on_the_selvedge_lies_at_the_far_edge_of_both_layers() -> None:
    found = option(made(piece("facing", 2, "8", "40", 'edges.left = "selvedge"\n')))
    assert names_and_holds(found) == [("facing, in pairs", 1, 2, Held.FAR)]


def test_a_shaped_piece_wider_than_a_layer_is_refused_with_what_would_help() -> None:
    text = CLOTH.format(laid="folded", width="60") + piece("hood", 1, "31", "20")
    (found,) = complaints(text)
    assert (
        "'hood' is cut 31 in wide, and the widest 'twill' on offer (60 in), folded, "
        "has 30 in to use; take a fabric with at least 62 in to use, or "
        'lay the fabric open (laid = "open")'
    ) in found


def test_the_folded_length_stands_beside_the_open_one() -> None:
    # open, three sleeves of 20 by 36 lie beside each other; folded, a pair and a pair to spare
    pieces = piece("sleeve", 3, "20", "36")
    (open_choice,) = made(pieces, laid="open").fabrics
    assert open_choice.chosen.buy.bought == length("1 yd")
    assert bought_other_way(open_choice) == length("2 yd")
    assert other_way_text(open_choice) == (
        "folded lengthwise and cut in pairs it takes 2 yd, 1 yd more"
    )
    (folded,) = made(pieces).fabrics
    assert folded.chosen.buy.bought == length("2 yd")
    assert other_way_text(folded) == "laid open in one layer it takes 1 yd, 1 yd less"


def test_a_fabric_too_narrow_to_fold_says_so() -> None:
    (choice,) = made(piece("hood", 1, "31", "20"), laid="open").fabrics
    assert other_way_text(choice) == "folded lengthwise it does not take all the pieces"


def test_the_proof_of_a_folded_layout_is_of_folded_layouts() -> None:
    found = option(made(piece("panel", 2, "20", "36", shape="rectangle")))
    assert proof_text(found) == "no folded layout of these pieces buys less"


sizes = st.tuples(
    st.integers(1, 5), st.integers(2, 30), st.integers(2, 20), st.sampled_from(["box", "rectangle"])
)


@settings(max_examples=60, deadline=None)
@given(st.lists(sizes, min_size=1, max_size=5))
def test_a_folded_layout_can_be_cut_and_cuts_every_piece(asked) -> None:
    pieces = [
        piece(f"piece {n}", q, str(w), str(long), "", s) for n, (q, w, long, s) in enumerate(asked)
    ]
    found = option(made(*pieces))
    (cut,) = found.laid.cuts
    blanks = [lot.blank for lot in found.laid.lots]
    assert_sound(Cloth(found.breadth.of_a_layer.ticks), blanks, cut)
    for number, wanted in enumerate(found.pieces):
        cut_out = sum(
            lot.blank.quantity * lot.layers for lot in found.laid.lots if lot.piece == number
        )
        assert wanted.quantity <= cut_out <= wanted.quantity + 1
    # two layers hold twice the cloth: the fabric bought is never less than the pieces
    area = sum(
        one.quantity * one.width.value.ticks * one.length.value.ticks for one in found.pieces
    )
    assert found.laid.length.ticks * found.usable.ticks >= area


@pytest.mark.parametrize("laid", ["open", "folded"])
def test_the_layout_of_a_garment_may_be_said_once_for_all_its_fabrics(laid: str) -> None:
    text = CLOTH.format(laid=laid, width="60").replace(f'laid = "{laid}"\n', "")
    text = text.replace('straightening = "0"', f'straightening = "0"\nlaid = "{laid}"')
    found = option(estimate(plan(text + piece("sleeve", 2, "10", "12"))))
    assert found.breadth.folded is (laid == "folded")
    assert isinstance(found.needed, Length)


def test_of_gores_of_one_hand_a_pair_gives_but_one() -> None:
    gore = (
        '[[piece]]\nname = "gore"\nquantity = 4\ncut = "twill"\nshape = "taper"\n'
        'slant = "right side"\ntop = "5"\nbottom = "13"\nlength = "30"\n'
    )
    found = option(made(gore, width="45"))
    assert sum(lot.blank.quantity * lot.count * lot.layers for lot in found.laid.lots) == 4
    assert all("one of the other hand to spare" in lot.name for lot in found.laid.lots)


def plaid(repeat: str, *pieces: str, laid: str = "folded", width: str = "60") -> str:
    heading = CLOTH.format(laid=laid, width=width)
    matched = heading.replace('selvedge = "0"', f'selvedge = "0"\nrepeat_across = "{repeat}"')
    return matched + "".join(pieces)


def test_pairs_of_a_folded_plaid_start_on_the_repeat_counted_from_the_fold() -> None:
    # the fold lies at most a quarter of 6 in off the middle: 60 / 2 - 1 1/2 = 28 1/2 double; half
    # the back takes 7 from the fold, so the fronts start at 12 and reach 26
    text = plaid(
        "6",
        piece("front", 2, "14", "28"),
        piece("back", 1, "7", "28", 'edges.right = "fold"\n'),
    )
    found = option(estimate(plan(text)))
    assert found.breadth.of_a_layer == length("28 1/2")
    (cut,) = found.laid.cuts
    assert cut.length == length("28").ticks
    places = {found.laid.lots[place.blank].name: place.across for place in cut.placements}
    assert places == {
        "back, on the fold": 0,
        "front, in pairs": length("12").ticks,
    }


def test_an_odd_panel_of_a_folded_plaid_is_cut_in_a_pair_so_that_it_matches_the_others() -> None:
    # on the fold its middle would lie on the repeat, and the edges of the others do
    panels = piece("panel", 3, "10", "20", shape="rectangle")
    assert [name for name, *_ in names_and_holds(option(estimate(plan(plaid("6", panels)))))] == [
        "panel, in pairs",
        "panel, a pair with one to spare",
    ]
    lone = piece("apron", 1, "10", "20", shape="rectangle")
    (held,) = names_and_holds(option(estimate(plan(plaid("6", lone)))))
    assert held == ("apron, on the fold", 1, 1, Held.NEAR)


def test_a_folded_plaid_that_shrinks_is_matched_by_its_repeat_after_washing() -> None:
    # 54 in shrink to 51.3, and the repeat of 6 in to 5.7: a quarter of it is 1.425
    text = plaid("6", piece("sleeve", 2, "10", "12")).replace("60 in", "54 in")
    text = text.replace("repeat_across", 'shrinkage_across = "5 %"\nrepeat_across')
    assert option(estimate(plan(text))).breadth.of_a_layer == length("24.225 in")


def test_an_edge_on_the_selvedge_of_a_folded_plaid_is_refused_because_they_need_not_meet() -> None:
    text = plaid("6", piece("facing", 2, "8", "40", 'edges.left = "selvedge"\n'))
    (found,) = complaints(text)
    assert (
        "'facing' has an edge on the selvedge, and 'twill' is a plaid laid folded: the fold has to "
        "lie where the plaid is the same on both sides, and there the selvedges need not meet; "
        'lay the fabric open (laid = "open"), or give that edge a seam'
    ) in found
    assert complaints(text.replace('laid = "folded"', 'laid = "open"')) == []


def test_a_panel_that_only_goes_on_a_plaid_folded_in_the_middle_is_refused_with_what_helps() -> (
    None
):
    text = plaid("6", piece("back", 1, "58", "20", shape="rectangle"))
    (found,) = complaints(text)
    assert (
        "'back' is cut 58 in wide, and the widest 'twill' on offer (60 in), folded where its plaid "
        "allows, has 57 in to use; take a fabric with at least 61 in to use, or lay the fabric "
        'open (laid = "open")'
    ) in found
    assert complaints(plaid("6", piece("back", 1, "57", "20", shape="rectangle"))) == []


def test_a_plaid_whose_repeat_is_too_wide_to_be_sure_of_a_fold_is_refused() -> None:
    # lines on which it can be folded lie 60 in apart, and so up to 30 in off the middle
    (found,) = complaints(plaid("120", piece("back", 1, "60", "20", shape="rectangle")))
    assert (
        "its repeat across is so wide that there may be no line on which to fold it; "
        'lay the fabric open (laid = "open")'
    ) in found
    opened = plaid("120", piece("back", 1, "60", "20", shape="rectangle"), laid="open")
    (choice,) = estimate(plan(opened)).fabrics
    assert other_way_text(choice).endswith("it does not take all the pieces")


def test_a_panel_from_selvedge_to_selvedge_is_cut_across_a_folded_plaid_wherever_it_is_folded() -> (
    None
):
    found = option(estimate(plan(plaid("6", piece("back", 1, "60", "20", shape="rectangle")))))
    assert found.laid.cuts[0].length == length("20").ticks


def test_the_list_says_where_a_plaid_is_folded_and_which_plaids_that_suits() -> None:
    (said,) = (
        line
        for line in assumptions(estimate(plan(plaid("6", piece("sleeve", 2, "10", "12")))))
        if line.startswith("twill")
    )
    assert "pieces start on the repeat of 6 in across, counted from the fold" in said
    assert "at most 1 1/2 in off it" in said
    assert "only a plaid that is the same from left and right" in said


def test_the_folded_length_of_a_plaid_stands_beside_the_open_one() -> None:
    # open, backs of 11 start at 0, 15 and 30 on 45 in: one row of 21 in; folded, a pair and a pair
    # to spare start at the fold on 45 / 2 - 5 / 4 = 21 1/4 in, two rows: 42 in
    (choice,) = estimate(
        plan(plaid("5", piece("back", 3, "11", "21"), laid="open", width="45"))
    ).fabrics
    assert other_way_text(choice) == (
        "folded lengthwise where its plaid allows and cut in pairs it takes 1 1/4 yd, 5/8 yd more"
    )


def bar_distance(at: int, repeat: int) -> int:
    """How far a line of the cloth lies from the nearest bar of a plaid folded on a bar."""
    return min(at % repeat, -at % repeat)


@settings(max_examples=60, deadline=None)
@given(st.lists(sizes, min_size=1, max_size=5), st.integers(1, 9))
def test_all_copies_of_a_piece_of_a_folded_plaid_have_the_same_bars_at_their_edges(
    asked, repeat: int
) -> None:
    # The fold is at 0 of the cloth: the upper layer lies on one side of it, the under layer on the
    # other. A plaid that is the same both ways looks alike wherever it is as far from a bar.
    pieces = [
        piece(f"piece {n}", q, str(w), str(long), "", s) for n, (q, w, long, s) in enumerate(asked)
    ]
    text = plaid(str(repeat), *pieces)
    if complaints(text):
        widest = max(w for _, w, _, shape in asked if shape == "box")
        assert widest * 4 > 120 - repeat
        return
    found = option(estimate(plan(text)))
    period = length(str(repeat)).ticks
    seen: dict[int, set[tuple[int, ...]]] = {}
    for place in found.laid.cuts[0].placements:
        lot = found.laid.lots[place.blank]
        low, high = place.across, place.across + place.width
        assert high <= (Fraction(60) / 2 - Fraction(repeat) / 4) * length("1 in").ticks
        copies = [(-high, high)] if lot.half else [(low, high), (-high, -low)]
        for edges in copies:
            phases = sorted(bar_distance(edge, period) for edge in edges)
            seen.setdefault(lot.piece, set()).add(tuple(phases))
    assert all(len(phases) == 1 for phases in seen.values())
