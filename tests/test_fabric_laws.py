"""Laws of fabric as it is: folded, with selvedges used, plaid, in bolts that end somewhere."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Length, estimate
from estimator.faults import Refused
from estimator.layout import Cloth
from estimator.measure import whole_ticks
from estimator.written import length
from tests.plans import plan
from tests.test_estimate_laws import Drawn, Spelling, in_centimetres, in_inches, without_words
from tests.test_estimate_laws import plans as plain_plans
from tests.verify_layout import assert_sound


@dataclass(frozen=True)
class OnFabric:
    """A drawn plan, and how its fabric is laid; hundredths of an inch, the bolt in eighths."""

    drawn: Drawn
    laid: str
    across: int
    bolt: int
    selvedge: bool
    fold: bool

    def text(self, spell: Spelling = in_inches, unit: str = "in") -> str:
        text = self.drawn.text(spell, unit)
        more = f'laid = "{self.laid}"\n'
        if self.across:
            more += f"repeat_across = {spell(self.across)}\n"
        if self.bolt:
            more += f'bolt = "{self.bolt}/8 yd"\n'
        text = text.replace('step = "1/8 yd"\n', f'step = "1/8 yd"\n{more}', 1)
        edges = [
            f'{side} = "{finish}", '
            for wanted, side, finish in (
                (self.selvedge, "left", "selvedge"),
                (self.fold, "right", "fold"),
            )
            if wanted and self.drawn.pieces[0][3] == "lengthwise"
        ]
        return text.replace("edges = { bottom", f"edges = {{ {''.join(edges)}bottom", 1)


large = st.tuples(
    st.integers(900, 2600), st.integers(2000, 4000), st.integers(1, 3), st.just("lengthwise")
)
many_large = st.lists(large, min_size=2, max_size=4).map(tuple)
large_plans = st.builds(
    lambda drawn, pieces: replace(drawn, pieces=pieces), plain_plans, many_large
)
fabrics = st.builds(
    OnFabric,
    drawn=plain_plans | large_plans,
    laid=st.sampled_from(["open", "folded"]),
    across=st.sampled_from([0, 0, 430]),
    bolt=st.sampled_from([0, 12, 14, 30]),
    selvedge=st.booleans(),
    fold=st.just(False),
) | st.builds(
    OnFabric,
    drawn=plain_plans,
    laid=st.sampled_from(["open", "folded"]),
    across=st.sampled_from([0, 430]),
    bolt=st.just(0),
    selvedge=st.just(False),
    fold=st.just(True),
)


@settings(max_examples=60)
@given(fabrics)
def test_every_piece_lies_on_the_fabric_bought_however_it_is_laid(asked: OnFabric) -> None:
    try:
        found = estimate(plan(asked.text()))
    except Refused:
        return  # a piece longer than the bolt, or wider than a layer: told elsewhere
    drawn = asked.drawn
    left = Fraction(100 - drawn.shrinkage, 100)
    for option in found.fabrics[0].options:
        cloth = Cloth(
            option.breadth.of_a_layer.ticks,
            _shrunk(drawn.repeat, 100 - drawn.shrinkage),
            repeat_across=_shrunk(asked.across, 100 - drawn.across),
        )
        lots, counted = option.laid.lots, Counter()
        if asked.laid == "folded":  # the nearest line to fold a plaid on is a quarter repeat away
            assert cloth.width <= Fraction(option.usable.ticks, 2) - Fraction(
                cloth.repeat_across, 4
            )
        trimmed = [cloth.repeat if number else 0 for number in range(len(option.laid.cuts))]
        for cut, lost in zip(option.laid.cuts, trimmed, strict=True):
            here = Counter(place.blank for place in cut.placements)
            counted += here
            blanks = [replace(lot.blank, quantity=here[number]) for number, lot in enumerate(lots)]
            assert_sound(cloth, blanks, cut)
            if asked.bolt:
                assert option.needed.ticks > 0
                ends = length("2 in").ticks
                sold = (cut.length + lost + ends) / left * (1 + Fraction(drawn.waste, 100))
                assert sold <= length(f"{asked.bolt}/8 yd").ticks
        for number, piece in enumerate(option.pieces):
            own = [(n, lot) for n, lot in enumerate(lots) if lot.piece == number]
            cut_out = sum(counted[n] * lot.layers * lot.count for n, lot in own)
            assert piece.quantity <= cut_out <= piece.quantity + (asked.laid == "folded")
            for _, lot in own:
                whole = lot.blank.width * (2 if lot.half else 1)
                on_selvedge = option.breadth.selvedge.ticks * len(piece.selvedges)
                assert whole + on_selvedge >= piece.width.value.ticks - lot.half
        assert isinstance(option.buy.bought, Length)
        laid = sum(cut.length + length("2 in").ticks for cut in option.laid.cuts) + sum(trimmed)
        assert option.buy.bought.ticks * left >= laid * (1 + Fraction(drawn.waste, 100))
        assert option.least <= option.buy.bought


def _shrunk(hundredths: int, per_cent: int) -> int:
    return whole_ticks(Fraction(length(f"{hundredths / 100} in").ticks * per_cent, 100)).ticks


@settings(max_examples=30)
@given(fabrics)
def test_inches_and_centimetres_lay_the_same_fabric_the_same_way(asked: OnFabric) -> None:
    try:
        imperial = estimate(plan(asked.text()))
    except Refused:
        return
    metric = estimate(plan(asked.text(in_centimetres, "cm")))
    assert without_words(metric) == without_words(imperial)


@settings(max_examples=30)
@given(fabrics)
def test_wider_fabric_never_needs_more_length_however_it_is_laid(asked: OnFabric) -> None:
    try:
        options = estimate(plan(asked.text())).fabrics[0].options
    except Refused:
        return
    bought = [option.buy.bought for option in sorted(options, key=lambda one: one.usable)]
    assert bought == sorted(bought, reverse=True)
