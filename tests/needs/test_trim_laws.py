"""Laws of trims: never short, more edge never needs less, inches as centimetres."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, Length, estimate
from estimator.buying.types import Purchase
from estimator.written import length
from tests.plans import plan

OPEN, ROUND = 'joined = "open"\n', 'joined = "in the round"\n'


def in_inches(hundredths: int) -> str:
    return f'"{hundredths / 100:.2f}"'


def in_centimetres(hundredths: int) -> str:
    whole, rest = divmod(hundredths * 254, 10_000)
    return f'"{whole}.{rest:04d}"'


@dataclass(frozen=True)
class Drawn:
    """A trim round two panels, as it was drawn; lengths in hundredths of an inch."""

    edge: int
    rows: int
    corners: int
    width: int
    ease: int
    fullness: str
    repeat: int
    eased: int
    joined: str
    ends: str
    joins: int
    cards: tuple[int, ...]
    motif: str = ""
    by_the_length: bool = False

    def text(self, metric: bool = False) -> str:
        spell, unit = (in_centimetres, "cm") if metric else (in_inches, "in")
        own = "".join(
            f"{key} = {spell(size)}\n"
            for key, size in (("mark", 5), ("seam_allowance", 63), ("turn_under", 25),
                              ("overlap", 50), ("elastic_overlap", 50), ("straightening", 100),
                              ("selvedge", 45))
        )  # fmt: skip
        sold = [
            f'{{ put_up = "card of {card} in", price = "{card * 4 + 97}.00 each" }}'
            for card in self.cards
        ]
        sold += ['{ price = "180.00 per yd" }'] if self.by_the_length else []
        scallops = f'repeat = {spell(self.repeat)}\nease_repeats = "{self.eased} %"\n{self.motif}'
        return (
            f'[garment]\nname = "drawn"\nunit = "{unit}"\ncurrency = "USD"\n{own}'
            '[[fabric]]\nname = "print"\nwidths = ["45 in"]\nstep = "1/8 yd"\n'
            '[[piece]]\nname = "panel"\nquantity = 2\ncut = "print"\n'
            f"width = {spell(self.edge)}\nlength = {spell(2000)}\n"
            '[[trim]]\nname = "lace"\nalong = "panel: bottom"\nrun = "each"\n'
            f"rows = {self.rows}\ncorners = {self.corners}\nwidth = {spell(self.width)}\n"
            f'ease = "{self.ease} %"\nfullness = {self.fullness}\nends = "{self.ends}"\n'
            f"joins = {self.joins}\nsold = [{', '.join(sold)}]\n"
            f"{self.joined}{scallops if self.repeat else ''}"
        )


trims = st.builds(
    Drawn,
    edge=st.integers(400, 3000),
    rows=st.integers(1, 3),
    corners=st.sampled_from([0, 0, 2]),
    width=st.sampled_from([50, 75]),
    ease=st.sampled_from([0, 3]),
    fullness=st.sampled_from(["1", "1.5", "2"]),
    repeat=st.sampled_from([0, 0, 125, 175]),
    eased=st.sampled_from([0, 2]),
    joined=st.sampled_from([OPEN, ROUND]),
    ends=st.sampled_from(["turned under", "in a seam", "folded back"]),
    joins=st.sampled_from([0, 0, 1, 2]),
    cards=st.sampled_from([(90,), (80, 120), (75, 100, 190)]),
)


def lines(drawn: Drawn, metric: bool = False) -> list[Purchase]:
    """The lines of the lace; where a run goes on no card as it is, it comes from the roll too."""
    return [one for one in _estimate(drawn, metric).purchases if "lace" in one.names]


def _estimate(drawn: Drawn, metric: bool) -> Estimate:
    if drawn.edge * float(drawn.fullness) * 1.03 + 700 > max(drawn.cards, default=0) * 100:
        drawn = replace(drawn, by_the_length=True)
    return estimate(plan(drawn.text(metric)))


def cost(drawn: Drawn) -> Decimal:
    return sum((one.buy.cost or Decimal(0) for one in lines(drawn)), Decimal(0))


def all_needed(drawn: Drawn) -> int:
    return sum(one.needed.ticks for one in lines(drawn) if isinstance(one.needed, Length))


@settings(max_examples=40)
@given(trims)
def test_a_trim_is_never_shorter_than_the_edges_that_it_follows(drawn: Drawn) -> None:
    edges = length(f"{drawn.edge / 100} in").ticks * 2 * drawn.rows
    eased = edges * drawn.eased // 100 if drawn.repeat else 0
    bought = sum(one.buy.amount for one in lines(drawn))
    assert bought >= all_needed(drawn) >= edges - eased


@settings(max_examples=30)
@given(trims, st.integers(1, 300))
def test_more_edge_never_needs_less_trim(drawn: Drawn, more: int) -> None:
    alike = replace(drawn, joins=0, by_the_length=True, cards=())
    assert all_needed(replace(alike, edge=drawn.edge + more)) >= all_needed(alike)


@settings(max_examples=30)
@given(trims)
def test_a_trim_measured_in_centimetres_is_bought_as_in_inches(drawn: Drawn) -> None:
    def figures(found: list[Purchase]) -> list[object]:
        return [
            (one.needed, one.buy.bought, one.buy.cost, [step.result for step in one.buy.steps])
            for one in found
        ]

    assert figures(lines(drawn, metric=True)) == figures(lines(drawn))


@settings(max_examples=30)
@given(trims, st.integers(1, 3))
def test_a_trim_that_may_be_joined_never_costs_more_than_whole(drawn: Drawn, joins: int) -> None:
    assert cost(replace(drawn, joins=joins)) <= cost(replace(drawn, joins=0))


@settings(max_examples=30)
@given(trims, st.integers(60, 250))
def test_another_card_on_offer_never_costs_more(drawn: Drawn, card: int) -> None:
    whole = replace(drawn, joins=0, by_the_length=True)
    assert cost(replace(whole, cards=(*drawn.cards, card))) <= cost(whole)


@settings(max_examples=30)
@given(trims)
def test_a_run_that_starts_on_a_motif_is_never_shorter_than_one_cut_anywhere(drawn: Drawn) -> None:
    alike = replace(drawn, joined=OPEN, repeat=175, eased=0, joins=0, by_the_length=True, cards=())
    plain = all_needed(replace(alike, repeat=0))
    assert all_needed(replace(alike, motif='motif = "centred"\n')) >= plain


@settings(max_examples=40)
@given(trims)
def test_no_card_holds_a_run_longer_than_itself_nor_more_than_it_has(drawn: Drawn) -> None:
    needed = joins = 0
    for line in lines(drawn):
        for held in line.buy.filled:
            on_it = [run.ticks for _, run in held.runs]
            assert sum(on_it) <= held.holds.ticks + len(on_it)
            needed += sum(on_it)
            joins += len(on_it)
    # what lies on cards and comes from the roll is all that is needed, no run left out
    assert (
        needed
        >= length(f"{drawn.edge / 100} in").ticks * 2 * drawn.rows * (100 - drawn.eased) // 100
    )
    assert joins >= 2 * drawn.rows


@settings(max_examples=30)
@given(trims, st.integers(1, 300), st.sampled_from(['motif = "centred"\n', "mirrored = true\n"]))
def test_more_edge_never_needs_less_trim_with_a_motif(drawn: Drawn, more: int, motif: str) -> None:
    alike = replace(
        drawn, joined=OPEN, repeat=175, eased=0, joins=0, by_the_length=True, cards=(), motif=motif
    )
    assert all_needed(replace(alike, edge=drawn.edge + more)) >= all_needed(alike)


@settings(max_examples=30)
@given(trims, st.sampled_from(['motif = "at the start"\n', "mirrored = true\n"]))
def test_runs_that_begin_on_a_motif_measure_alike_in_centimetres(drawn: Drawn, motif: str) -> None:
    alike = replace(
        drawn, joined=OPEN, repeat=175, eased=0, joins=0, by_the_length=True, cards=(), motif=motif
    )
    in_inch, in_cm = lines(alike), lines(alike, metric=True)
    assert [one.needed for one in in_inch] == [one.needed for one in in_cm]


@settings(max_examples=40)
@given(trims, st.integers(1, 3), st.integers(90, 240))
def test_joined_runs_beside_a_roll_never_cost_more_than_whole_ones(
    drawn: Drawn, joins: int, price: int
) -> None:
    def of(number: int) -> Decimal:
        text = replace(drawn, joins=number, by_the_length=True).text()
        found = estimate(plan(text.replace("180.00 per yd", f"{price}.00 per yd")))
        prices = [line.buy.cost for line in found.purchases if "lace" in line.names]
        return sum(filter(None, prices), Decimal(0))

    assert of(joins) <= of(0)
