"""Fabric folded lengthwise: pairs, halves on the fold, odd pieces, and the open length beside."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, estimate
from estimator.buying.folding import bought_other_way
from estimator.buying.one_width import WidthOption
from estimator.layout import Cloth, Held
from estimator.measure import Length
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


def test_a_plaid_is_not_said_to_take_less_folded() -> None:
    text = CLOTH.format(laid="open", width="45").replace(
        'selvedge = "0"', 'selvedge = "0"\nrepeat_across = "5"'
    )
    (choice,) = estimate(plan(text + piece("back", 3, "11", "21"))).fabrics
    assert other_way_text(choice) == ""
