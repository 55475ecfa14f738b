"""Joined strips and bands: how many widths, how many joins, and the ring as it is really sewn."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import estimate
from estimator.measure import ZERO, Length, Unit, tape_text, total
from estimator.needs.makeup import sewn_lengths
from estimator.needs.selvedges import Breadth
from estimator.written import length
from tests.plans import HEADING, by, complaints, cut_sizes, in_print, order, plan

# The print is 45 in wide, all of it to be used; a join takes 2 x 5/8 in.


def frill(sizes: str, more: str = "") -> str:
    return (
        f'[[piece]]\nname = "frill"\ncut = "print"\nmade = "joined strip"\nlength = "6 3/8"\n'
        f"{sizes}\n{more}"
    )


def skirt(width: str, quantity: int = 1) -> str:
    return (
        f'[[piece]]\nname = "skirt"\ncut = "print"\nwidth = "{width}"\nlength = "20"\n'
        f"quantity = {quantity}\n"
    )


def panels(text: str) -> list[tuple[int, str, str]]:
    """Of a frill: how many, across and along, in inches."""
    return [
        (piece.quantity, inches(piece.width.value), inches(piece.length.value))
        for piece in in_print(text).fabrics[0].chosen.pieces
        if piece.name.startswith("frill")
    ]


def inches(size: Length) -> str:
    return tape_text(size, Unit.IN)


def sewn(text: str, width: str = "45 in") -> Length:
    """The finished ring of the frill."""
    return sewn_lengths(order(HEADING + text), {"print": Breadth(length(width), ZERO)}).sewn[
        "frill"
    ]


def test_three_whole_widths_in_a_ring_lose_three_joins() -> None:
    # Common practice: three widths of 45 1/2 in between joins make 136 1/2 in.
    # They are cut 46 3/4 in wide.
    assert sewn(frill("widths = 3"), "46 3/4 in") == length("136 1/2 in")


def test_whole_widths_in_an_open_strip_lose_a_join_fewer_and_two_ends() -> None:
    # 3 x 45 - 2 x 1 1/4 - 2 x 3/8.
    ends = 'joined = "open"\nedges = { left = "seam 3/8", right = "seam 3/8" }'
    assert sewn(frill("widths = 3", ends)) == length("131 3/4 in")


def test_whole_widths_are_cut_the_whole_usable_width() -> None:
    # 6 3/8 in deep, 5/8 in at the top and a rolled hem of 2 x 1/8 in.
    hem = 'edges.bottom = "rolled hem"'
    assert panels(frill("widths = 3", hem)) == [(3, "45 in", "7 1/4 in")]


def test_a_ring_that_one_width_holds_is_cut_in_one() -> None:
    # 43 3/4 + 1 1/4 = 45 in, the whole width and no tick less.
    assert panels(frill('ring = "43 3/4"')) == [(1, "45 in", "7 5/8 in")]


def test_a_ring_a_hair_longer_than_one_width_takes_two() -> None:
    # 43 7/8 + 2 x 1 1/4 - 45 = 1 3/8 in.
    whole, part = panels(frill('ring = "43 7/8"'))
    assert (whole[:2], part[:2]) == ((1, "45 in"), (1, "1 3/8 in"))


def test_a_ring_of_its_own_length_takes_whole_widths_and_a_part() -> None:
    # 100 + 3 x 1 1/4 - 2 x 45 = 13 3/4 in.
    whole, part = panels(frill('ring = "100"'))
    assert (whole[:2], part[:2]) == ((2, "45 in"), (1, "13 3/4 in"))


def test_an_open_strip_has_one_join_fewer_than_widths() -> None:
    # 100 + 2 x 1 1/4 + 2 x 1/4 - 2 x 45 = 13 in.
    ends = 'joined = "open"\nedges = { left = "turned under", right = "turned under" }'
    assert panels(frill('ring = "100"', ends))[1] == (1, "13 in", "7 5/8 in")


def test_a_frill_is_gathered_onto_its_edge_by_fullness() -> None:
    # 4 x 20 1/4 = 81 in, twice as full 162 in; 162 + 4 x 1 1/4 - 3 x 45 = 32 in.
    text = skirt("20 1/4", 4) + frill('onto = "skirt: bottom"\nfullness = 2')
    assert sewn(text) == length("162 in")
    assert panels(text) == [(3, "45 in", "7 5/8 in"), (1, "32 in", "7 5/8 in")]


def test_a_frill_onto_some_of_the_pieces_follows_only_those() -> None:
    text = skirt("20 1/4", 4) + frill('onto = "3 x skirt: bottom"\nfullness = 1.5')
    assert sewn(text) == length("91 1/8 in")


@pytest.mark.parametrize(
    ("fullness", "last"),
    [
        # 41 1/2 in times fullness, and a join for each width; less the whole widths before.
        ("1.5", "19 3/4 in"),  # 62 1/4 + 2 x 1 1/4 - 45
        ("2", "40 1/2 in"),  # 83 + 2 x 1 1/4 - 45
        ("3", "38 1/4 in"),  # 124 1/2 + 3 x 1 1/4 - 90
    ],
)
def test_fullness_multiplies_the_finished_run_and_no_allowance(fullness: str, last: str) -> None:
    # 1.5 light, 2 usual, 3 full: common practice.
    text = skirt("41 1/2") + frill(f'onto = "skirt: bottom"\nfullness = {fullness}')
    assert panels(text)[-1] == (1, last, "7 5/8 in")


def tiers() -> str:
    return (
        '[[piece]]\nname = "first"\ncut = "print"\nmade = "joined strip"\nlength = "9"\n'
        "widths = 2\n"
        '[[piece]]\nname = "second"\ncut = "print"\nmade = "joined strip"\nlength = "9 1/2"\n'
        'onto = "first: bottom"\nfullness = 1.5\n'
        '[[piece]]\nname = "third"\ncut = "print"\nmade = "joined strip"\nlength = "10 1/4"\n'
        'onto = "second: bottom"\nfullness = 1.5\n'
    )


def test_tiers_chain_from_the_ring_as_it_is_sewn() -> None:
    # Two widths less their joins are 87 1/2 in, not 90; then 131 1/4 and 196 7/8 in.
    rings = sewn_lengths(order(HEADING + tiers()), {"print": Breadth(length("45 in"), ZERO)}).sewn
    assert rings == {
        "first": length("87 1/2"), "second": length("131 1/4"), "third": length("196 7/8")
    }  # fmt: skip


def test_tiers_may_stand_in_the_plan_in_any_order() -> None:
    first, second, third = ("[[piece]]" + one for one in tiers().split("[[piece]]")[1:])
    upside_down = estimate(plan(HEADING + third + second + first))
    assert cut_sizes(upside_down) == cut_sizes(in_print(tiers()))


def test_tiers_that_hang_on_one_another_in_a_circle_are_refused() -> None:
    circle = tiers().replace("widths = 2\n", 'onto = "third: bottom"\n')
    (found,) = complaints(HEADING + circle)
    assert "pieces take their lengths from one another in a circle" in found
    assert "give one of them a ring or a length of its own" in found


def test_a_wider_fabric_makes_a_longer_ring_of_whole_widths() -> None:
    # The trim round two widths: 2 x 43 3/4 in or 2 x 58 3/4 in, and two ends of 1/4 in.
    text = frill("widths = 2") + '[[trim]]\nname = "braid"\nalong = "frill: bottom"\nwaste = 0\n'
    for width, run in (("45 in", "88"), ("60 in", "118")):
        found = estimate(plan(HEADING.replace("45 in", width) + text))
        assert found.purchases[-1].needed == length(run)


def test_a_band_takes_its_length_from_the_edge_it_is_sewn_onto() -> None:
    band = (
        '[[piece]]\nname = "waistband"\ncut = "print"\nmade = "folded band"\nwidth = "1 1/2"\n'
        'onto = "2 x skirt: top"\n'
    )
    found = in_print(skirt("14 1/8", 2) + band)
    # 28 1/4 + 1 1/4 long, 2 x 1 1/2 + 1 1/4 wide.
    assert cut_sizes(found)["waistband"] == by("4 1/4", "29 1/2")


def test_a_facing_takes_its_length_from_a_named_edge() -> None:
    text = skirt("14").replace("quantity", 'edges.neckline = { length = "11 3/8" }\nquantity')
    facing = (
        '[[piece]]\nname = "facing"\ncut = "print"\nmade = "facing"\nwidth = "2 1/8"\n'
        'onto = "skirt: neckline"\n'
    )
    assert cut_sizes(in_print(text + facing))["facing"] == by("3", "12 5/8")


def test_strips_of_interfacing_lose_nothing_in_joins() -> None:
    # Cut to the finished size, 100 in are two widths and 10 in.
    text = frill('ring = "100"').replace(
        'cut = "print"', 'cut = { fabric = "print", cut_to = "finished size" }'
    )
    assert panels(text) == [(2, "45 in", "6 3/8 in"), (1, "10 in", "6 3/8 in")]


def test_two_sleeves_have_each_their_own_frill() -> None:
    text = skirt("11", 2) + frill('onto = "1 x skirt: bottom"\nfullness = 2', "quantity = 2")
    assert panels(text) == [(2, "23 1/4 in", "7 5/8 in")]


def test_a_fabric_narrower_than_a_join_is_refused() -> None:
    (found,) = complaints(HEADING.replace("45 in", "1 1/4 in") + frill('ring = "30"'))
    assert "a join takes up all of the fabric's width; use a wider fabric" in found
    (found,) = complaints(HEADING.replace("45 in", "1 1/4 in") + frill("widths = 3"))
    assert "the joins take up all of the width; use a wider fabric" in found


@given(ring=st.integers(1, 4000), width=st.integers(30, 480), opened=st.booleans())
def test_widths_joined_make_the_ring_and_one_fewer_would_not(
    ring: int, width: int, opened: bool
) -> None:
    joined = "open" if opened else "in the round"
    text = frill(f'ring = "{ring}/8 in"', f'joined = "{joined}"')
    # In the round n joins; open n - 1 joins and two ends of 5/8 in, which is the same.
    found = estimate(plan(HEADING.replace("45 in", f"{width}/8 in") + text))
    pieces = found.fabrics[0].chosen.pieces
    count = sum(piece.quantity for piece in pieces)
    across = total(piece.width.value * piece.quantity for piece in pieces)
    finished, join = length(f"{ring}/8 in"), length("1 1/4 in")
    assert finished <= across - join * count < finished + length("1/16 in")
    assert all(piece.width.value <= length(f"{width}/8 in") for piece in pieces)
    assert count == 1 or (length(f"{width}/8 in") - join) * (count - 1) < finished
