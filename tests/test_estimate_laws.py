"""Laws of the whole: never short, inches as centimetres, garments cut together."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, Job, Length, estimate
from estimator.layout import Blank, Cloth
from estimator.measure import whole_ticks
from estimator.written import length
from tests.plans import order, plan
from tests.verify_layout import faults_in

Spelling = Callable[[int], str]
"""How a plan spells a length given in hundredths of an inch."""


def in_inches(hundredths: int) -> str:
    return f'"{hundredths / 100:.2f}"'


def in_centimetres(hundredths: int) -> str:
    whole, rest = divmod(hundredths * 254, 10_000)
    return f'"{whole}.{rest:04d}"'


@dataclass(frozen=True)
class Drawn:
    """A plan as it was drawn: all lengths in hundredths of an inch."""

    pieces: tuple[tuple[int, int, int, str], ...]
    seam: int
    shrinkage: int
    across: int
    waste: int
    repeat: int
    nap: str
    quantity: int = 1
    copies: int = 1

    def text(self, spell: Spelling = in_inches, unit: str = "in") -> str:
        garment = f"""
[garment]
name = "drawn"
unit = "{unit}"
currency = "USD"
copies = {self.copies}
mark = {spell(5)}
seam_allowance = {spell(self.seam)}
turn_under = {spell(25)}
overlap = {spell(50)}
elastic_overlap = {spell(50)}
straightening = {spell(100)}
selvedge = {spell(45)}
[[fabric]]
name = "print"
widths = ["45 in", {{ width = "60 in", price = "9 per yd" }}]
price = "7 per yd"
step = "1/8 yd"
shrinkage = "{self.shrinkage} %"
shrinkage_across = "{self.across} %"
waste = "{self.waste} %"
nap = "{self.nap}"
"""
        repeat = f"repeat = {spell(self.repeat)}\n" if self.repeat else ""
        pieces = "".join(
            f'[[piece]]\nname = "p{number}"\ncut = "print"\nquantity = {quantity * self.quantity}\n'
            f'width = {spell(width)}\nlength = {spell(long)}\ngrain = "{grain}"\n'
            f"edges = {{ bottom = {self._hem(spell)} }}\n"
            for number, (width, long, quantity, grain) in enumerate(self.pieces)
        )
        lace = (
            '[[trim]]\nname = "lace"\nprice = "2 per yd"\nstep = "1/4 yd"\nalong = "p0: bottom"\n'
            f'repeat = {spell(175)}\njoined = "in the round"\n'
            f'[[elastic]]\nname = "waist"\nprice = "1 per yd"\nstep = "1/4 yd"\n'
            f"measure = {spell(2815)}\n"
        )
        return garment + repeat + pieces + lace

    def _hem(self, spell: Spelling) -> str:
        return f'"hem {spell(125).strip(chr(34))}"'


sizes = st.tuples(
    st.integers(200, 3500), st.integers(200, 4000), st.integers(1, 3),
    st.sampled_from(["lengthwise", "crosswise", "either"]),
)  # fmt: skip
plans = st.builds(
    Drawn,
    pieces=st.lists(sizes, min_size=1, max_size=4).map(tuple),
    seam=st.sampled_from([0, 38, 63]),
    shrinkage=st.sampled_from([0, 3, 7]),
    across=st.sampled_from([0, 2]),
    waste=st.sampled_from([0, 5]),
    repeat=st.sampled_from([0, 0, 650]),
    nap=st.sampled_from(["yes", "no"]),
)


@settings(max_examples=25)
@given(plans)
def test_no_fabric_is_bought_short_and_every_piece_lies_on_it(drawn: Drawn) -> None:
    found = estimate(plan(drawn.text()))
    left = Fraction(100 - drawn.shrinkage, 100)
    for option in found.fabrics[0].options:
        nominal = option.width - length("0.90 in")
        assert option.usable.ticks <= nominal.ticks * Fraction(100 - drawn.across, 100)
        repeat = whole_ticks(length(f"{drawn.repeat / 100} in").ticks * left).ticks
        blanks = [
            Blank(piece.name, piece.width.value.ticks, piece.length.value.ticks, piece.quantity,
                  piece.may_turn)
            for piece in option.pieces
        ]  # fmt: skip
        assert faults_in(Cloth(option.usable.ticks, repeat), blanks, option.laid.cuts[0]) == []
        assert isinstance(option.buy.bought, Length)
        on_the_roll = (option.laid.cuts[0].length + length("2 in").ticks) * (
            1 + Fraction(drawn.waste, 100)
        )
        assert option.buy.bought.ticks * left >= on_the_roll
        assert option.buy.bought.ticks % length("1/8 yd").ticks == 0
        assert option.least <= option.buy.bought


@settings(max_examples=25)
@given(plans)
def test_a_cut_piece_is_never_smaller_than_it_finishes(drawn: Drawn) -> None:
    for piece in estimate(plan(drawn.text())).fabrics[0].chosen.pieces:
        assert piece.width.value >= piece.finished[0]
        assert piece.length.value >= piece.finished[1]
        assert piece.width.value.ticks % length("0.05 in").ticks == 0


@settings(max_examples=15)
@given(plans)
def test_the_cheapest_width_on_offer_is_bought(drawn: Drawn) -> None:
    choice = estimate(plan(drawn.text())).fabrics[0]
    costs = [option.buy.cost for option in choice.options if option.buy.cost is not None]
    assert choice.chosen.buy.cost == min(costs)


def without_words(found: Estimate) -> object:
    """All figures of an estimate: what is bought, for what money, how it lies and its working."""
    return (
        [
            (line.key, line.needed, line.buy.bought, line.buy.cost, line.width,
             [step.result for step in line.buy.steps])
            for line in found.purchases
        ],
        [(one.chosen.laid.cuts[0], [(piece.width, piece.length) for piece in one.chosen.pieces])
         for one in found.fabrics],
    )  # fmt: skip


@settings(max_examples=20)
@given(plans)
def test_the_same_exact_lengths_in_inches_and_in_centimetres_give_the_same_estimate(
    drawn: Drawn,
) -> None:
    imperial = estimate(plan(drawn.text()))
    metric = estimate(plan(drawn.text(in_centimetres, "cm")))
    assert without_words(metric) == without_words(imperial)


def of(drawn: Drawn, **changed: int) -> Estimate:
    fields = {name: getattr(drawn, name) for name in Drawn.__dataclass_fields__}
    return estimate(plan(Drawn(**{**fields, **changed}).text()))


@settings(max_examples=10)
@given(plans, st.integers(2, 4))
def test_copies_are_cut_like_so_many_times_the_pieces(drawn: Drawn, copies: int) -> None:
    copied = of(drawn, copies=copies).fabrics[0].chosen
    multiplied = of(drawn, quantity=copies).fabrics[0].chosen
    assert copied.laid.cuts[0] == multiplied.laid.cuts[0]
    assert copied.buy.bought == multiplied.buy.bought


@settings(max_examples=10)
@given(plans, st.integers(2, 3))
def test_garments_cut_together_take_no_more_than_each_alone(drawn: Drawn, copies: int) -> None:
    text = drawn.text()
    alone = estimate(plan(text)).fabrics[0].chosen
    together = estimate(Job(tuple(order(text) for _ in range(copies)))).fabrics[0]
    at_that_width = next(one for one in together.options if one.width == alone.width)
    assert alone.buy.amount <= at_that_width.buy.amount <= alone.buy.amount * copies


@settings(max_examples=25)
@given(plans, st.integers(0, 12), st.integers(0, 25))
def test_no_trim_is_bought_short(drawn: Drawn, shrinkage: int, waste: int) -> None:
    terms = f'shrinkage = "{shrinkage} %"\nwaste = "{waste} %"\n'
    text = drawn.text().replace('name = "lace"\n', f'name = "lace"\n{terms}')
    found = estimate(plan(text))
    (lace,) = (line for line in found.purchases if "lace" in line.names)
    width, _, quantity, _ = drawn.pieces[0]
    hem = length(f"{width * quantity / 100} in")
    assert lace.needed >= hem
    assert lace.buy.amount * (100 - shrinkage) >= hem.ticks * (100 + waste)
