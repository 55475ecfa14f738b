"""Tapers head to tail in slanted rows, and that their true outlines do not lie over one another."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, estimate
from estimator.buying.fabric_widths import WidthOption
from estimator.buying.lots import outline_area
from estimator.reports.fabric_papers import layout_table
from estimator.written import length
from tests.plans import bought, plan

Point = tuple[Fraction, Fraction]

CLOTH = """
[garment]
name = "gored skirt"
straightening = "0"
selvedge = "0"
seam_allowance = "0"
[[fabric]]
name = "twill"
widths = ["{width} in"]
{more}
[[piece]]
name = "gore"
quantity = {quantity}
cut = "twill"
shape = "taper"
top = "{top}"
bottom = "{bottom}"
length = "{long}"
"""


def gores(width: int, quantity: int, top: int, bottom: int, long: int, more: str = "") -> Estimate:
    return estimate(
        plan(
            CLOTH.format(
                width=width, quantity=quantity, top=top, bottom=bottom, long=long, more=more
            )
        )
    )


def outlines(option: WidthOption) -> list[list[Point]]:
    """The corners of every gore as it is chalked: each second one of a lot on its head."""
    found = []
    for place in option.layout.placements:
        lot = option.laid.lots[place.blank]
        piece = option.pieces[lot.piece]
        narrow = piece.width.value if piece.narrow is None else piece.narrow
        step = Fraction((piece.width.value + narrow).ticks, 2)
        wide, slim = piece.width.value.ticks, narrow.ticks
        for number in range(lot.count):
            middle = place.across + Fraction(wide, 2) + number * step
            near, far = (slim, wide) if number % 2 == 0 else (wide, slim)
            low, high = Fraction(place.along), Fraction(place.along + place.length)
            found.append(
                [
                    (middle - Fraction(near, 2), low),
                    (middle + Fraction(near, 2), low),
                    (middle + Fraction(far, 2), high),
                    (middle - Fraction(far, 2), high),
                ]
            )
    return found


def overlap(one: list[Point], other: list[Point]) -> bool:
    """Two convex outlines lie over one another unless a line along some edge parts them."""
    for corners in (one, other):
        for (x, y), (u, v) in zip(corners, corners[1:] + corners[:1], strict=True):
            normal = (v - y, x - u)
            if normal == (0, 0):
                continue
            reach = [[a * normal[0] + b * normal[1] for a, b in shape] for shape in (one, other)]
            if max(reach[0]) <= min(reach[1]) or max(reach[1]) <= min(reach[0]):
                return False
    return True


def test_five_gores_of_6_and_12_go_across_48_head_to_tail() -> None:
    # 5 x (6 + 12) / 2 + (12 - 6) / 2 = 48, where boxes of 12 take only four
    (choice,) = gores(48, 5, 6, 12, 30).fabrics
    assert [lot.count for lot in choice.chosen.laid.lots] == [5]
    assert choice.chosen.layout.length == length("30").ticks


def test_on_a_fabric_with_nap_no_gore_stands_on_its_head() -> None:
    (choice,) = gores(48, 5, 6, 12, 30, 'nap = "yes"').fabrics
    assert choice.chosen.layout.length == length("60").ticks


def test_head_to_tail_is_only_taken_where_it_buys_less() -> None:
    (choice,) = gores(48, 4, 6, 12, 30).fabrics
    assert [lot.count for lot in choice.chosen.laid.lots] == [1]


def test_a_taper_reports_the_waste_of_its_outline() -> None:
    # two gores of (6 + 12) / 2 x 30 in 48 x 31 1/2 (seven eighths of a yard)
    found = gores(48, 2, 6, 12, 30)
    assert found.fabrics[0].chosen.waste == 1 - Fraction(2 * 9 * 30 * 2, 48 * 63)
    assert bought(found, "twill").buy.bought == length("7/8 yd")


def test_the_checker_of_outlines_sees_gores_that_lie_over_one_another() -> None:
    gore = [(Fraction(3), Fraction(0)), (Fraction(9), Fraction(0)), (Fraction(12), Fraction(30)),
            (Fraction(0), Fraction(30))]  # fmt: skip
    beside = [(x + 12, y) for x, y in gore]
    assert not overlap(gore, beside)
    assert overlap(gore, [(x + 11, y) for x, y in gore])
    on_its_head = [(x + 9, 30 - y) for x, y in gore]
    assert not overlap(gore, on_its_head)
    assert overlap(gore, [(x - 1, y) for x, y in on_its_head])


@settings(max_examples=40)
@given(
    st.integers(30, 60),
    st.integers(1, 14),
    st.integers(1, 20),
    st.integers(1, 20),
    st.integers(5, 40),
)
def test_gores_lie_beside_one_another_and_never_take_more_than_their_boxes(
    width: int, quantity: int, top: int, bottom: int, long: int
) -> None:
    chosen = gores(width, quantity, top, bottom, long).fabrics[0].chosen
    shapes = outlines(chosen)
    assert len(shapes) == quantity
    assert not any(overlap(one, other) for one, other in combinations(shapes, 2))
    edge = length(f"{width} in").ticks
    assert all(0 <= x <= edge and 0 <= y <= chosen.layout.length for one in shapes for x, y in one)
    boxed = CLOTH.replace('"taper"', '"box"').replace(
        'top = "{top}"\nbottom = "{bottom}"', 'width = "{wide}"'
    )
    text = boxed.format(width=width, quantity=quantity, wide=max(top, bottom), long=long, more="")
    boxes = estimate(plan(text)).fabrics[0].chosen
    assert chosen.buy.amount <= boxes.buy.amount
    assert chosen.layout.bound <= chosen.layout.length


@settings(max_examples=40)
@given(st.integers(2, 14), st.integers(1, 20), st.integers(1, 20), st.integers(5, 40))
def test_gores_that_lie_head_to_tail_are_bounded_by_their_outlines_at_every_width(
    quantity: int, top: int, bottom: int, long: int
) -> None:
    widths = CLOTH.replace('["{width} in"]', '["31 in", "36 in", "45 in", "52 in", "60 in"]')
    text = widths.format(quantity=quantity, top=top, bottom=bottom, long=long, more="")
    for option in estimate(plan(text)).fabrics[0].options:
        layout = option.layout
        assert layout.bound <= layout.length
        assert layout.width == option.usable.ticks
        if option.laid.slanted:
            area = sum(outline_area(piece) * piece.quantity for piece in option.pieces)
            longest = length(str(long)).ticks
            assert layout.bound == max(longest, -(-area // layout.width))


def test_a_taper_tells_its_narrow_end_and_how_far_each_lies_from_the_last() -> None:
    found = gores(48, 5, 6, 12, 30)
    (lot,) = found.fabrics[0].chosen.laid.lots
    assert lot.apart == length("9")
    (piece,) = found.fabrics[0].chosen.pieces
    assert "cut 6 in at its narrow end" in piece.note
    rows = layout_table(found.fabrics[0], found).rows
    assert rows[0][2] == "gore, 5 head to tail, each 9 in on from the last"
