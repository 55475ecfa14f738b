"""Trims on cards and spools: whole runs, sizes mixed, partly from the roll, or joined."""

from fractions import Fraction
from math import ceil

import pytest

from estimator import Estimate, Length, estimate
from estimator.buying.types import Purchase
from estimator.written import length
from tests.plans import HEADING, bought, complaints, plan

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'


def ribbons(runs: list[str], sold: str) -> Estimate:
    """Runs of ribbon of these lengths, with raw ends, as the item of one put-up."""
    edges = ", ".join(f'e{number} = {{ length = "{run}" }}' for number, run in enumerate(runs))
    along = ", ".join(f'"panel: e{number}"' for number in range(len(runs)))
    text = (
        f'{PANEL}edges = {{ {edges} }}\n[[trim]]\nname = "ribbon"\nalong = [{along}]\n'
        f'run = "each"\nends = "raw"\nsold = [{sold}]\n'
    )
    return estimate(plan(HEADING + text))


def lengths(*told: str) -> tuple[Length, ...]:
    return tuple(map(length, told))


def test_more_runs_than_are_fitted_on_cards_are_refused() -> None:
    trim = '[[trim]]\nname = "tie"\nlength = "3"\nquantity = 5001\n'
    (found,) = complaints(HEADING + PANEL + trim + 'sold = [{ put_up = "card of 3 yd" }]\n')
    assert "there are 5001 runs to fit on cards of 3 yd; plan at most 5000" in found


def test_three_cards_long_enough_in_sum_are_too_short_for_whole_runs() -> None:
    # Four runs of 60 in are 240 in, and so are three cards of 80 in: but no card holds two runs.
    line = bought(ribbons(["60", "60", "60", "60"], '{ put_up = "card of 80 in" }'), "ribbon")
    assert line.buy.bought == 4
    assert "the sum of lengths would fit on 3, but no run is joined" in line.notes[0]


def test_a_run_longer_than_a_card_is_refused_and_not_two_cards() -> None:
    trim = '[[trim]]\nname = "tie"\nlength = "3 yd"\nsold = [{ put_up = "card of 3 yd" }]\n'
    assert complaints(HEADING + PANEL + trim) == [
        "apron.toml, line 13 ('tie'): one run takes 108 1/2 in in one piece, and the longest "
        "put-up of 'tie' holds 108 in; plan shorter runs, allow joins, or offer it by the length "
        "or in a longer put-up"
    ]


def test_a_run_exactly_as_long_as_a_card_fits() -> None:
    line = bought(ribbons(["3 yd", "3 yd"], '{ put_up = "card of 3 yd" }'), "ribbon")
    assert (line.buy.bought, line.notes) == (2, ())


def test_cards_take_no_waste_but_they_shrink() -> None:
    # 100 in at 5 % is 105.26 in: a card of 105 in is too short, one of 106 in is not.
    for holds, fits in (("105 in", False), ("106 in", True)):
        trim = (
            f'[[trim]]\nname = "tie"\nlength = "100"\nends = "raw"\nshrinkage = "5 %"\n'
            f'sold = [{{ put_up = "card of {holds}" }}]\n'
        )
        assert (complaints(HEADING + PANEL + trim) == []) is fits


def test_what_is_left_over_on_each_card_is_told() -> None:
    line = bought(ribbons(["40", "30 1/2", "25"], '{ put_up = "card of 2 yd" }'), "ribbon")
    assert line.buy.bought == 2
    assert line.buy.left == lengths("47", "1 1/2")  # 72 - 25 and 72 - 40 - 30 1/2


def test_of_two_put_ups_the_one_that_buys_less_is_taken_without_prices() -> None:
    sold = '{ put_up = "card of 5 yd" }, { put_up = "card of 2 yd" }'
    line = bought(ribbons(["40", "30"], sold), "ribbon")
    assert (line.buy.offer.put_up.text, line.buy.bought) == ("card of 2 yd", 1)


def test_by_the_length_or_on_a_card_whichever_costs_less() -> None:
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    trim = '[[trim]]\nname = "tie"\nlength = "60"\nends = "raw"\nwaste = 0\nsold = [{0}, {1}]\n'
    card = '{ put_up = "card of 2 yd", price = "2.10 each" }'
    for price, unit in (("1.20 per yd", "yd"), ("1.30 per yd", "card of 2 yd")):
        # 60 in are 1 3/4 yd: 2.10 (the first wins a tie), or 2.275.
        text = trim.replace("{0}", f'{{ price = "{price}" }}').replace("{1}", card)
        assert bought(estimate(plan(heading + PANEL + text)), "tie").buy.unit == unit


IN_DOLLARS = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')


def mixed(runs: list[str], sold: str, more: str = "") -> list[Purchase]:
    """The lines of ribbon for runs with raw ends and no waste, each put-up with a price."""
    edges = ", ".join(f'e{number} = {{ length = "{run}" }}' for number, run in enumerate(runs))
    along = ", ".join(f'"panel: e{number}"' for number in range(len(runs)))
    text = (
        f'{PANEL}edges = {{ {edges} }}\n[[trim]]\nname = "ribbon"\nalong = [{along}]\n'
        f'run = "each"\nends = "raw"\nwaste = 0\nsold = [{sold}]\n{more}'
    )
    return list(estimate(plan(IN_DOLLARS + text)).purchases[1:])


def told(lines: list[Purchase]) -> list[tuple[Length | int, str]]:
    return [(line.buy.bought, line.buy.unit) for line in lines]


TWO_CARDS = (
    '{ put_up = "card of 3 yd", price = "2.50 each" }, '
    '{ put_up = "card of 5 yd", price = "3.80 each" }'
)


def test_cards_of_two_sizes_are_bought_together_where_that_costs_less() -> None:
    # Runs of 100, 170 and 60 in. 108 in a card: the 170 is too long. 180 in: 170; 100 + 60: two,
    # 7.60. One of 5 yd with the 170, and 100 and 60 on two of 3 yd: 8.80. 60 + 100 = 160 > 108.
    assert told(mixed(["100", "170", "60"], TWO_CARDS)) == [(2, "card of 5 yd")]
    # Without the 60: 170 on a card of 5 yd and 100 on one of 3 yd are 6.30, and two of 5 yd 7.60.
    small, large = mixed(["100", "170"], TWO_CARDS)
    assert told([small, large]) == [(1, "card of 3 yd"), (1, "card of 5 yd")]
    assert (small.needed, large.needed) == (length("100"), length("170"))
    assert small.notes == ("together with 1 × card of 5 yd: see that their colours match",)
    assert large.notes == ("together with 1 × card of 3 yd: see that their colours match",)
    assert (small.buy.left, large.buy.left) == (lengths("8"), lengths("10"))
    assert small.key != large.key


def test_the_working_of_each_size_ends_in_what_is_bought_of_it() -> None:
    small, _ = mixed(["100", "170"], TWO_CARDS)
    labels = [(step.label, step.operand, step.result) for step in small.buy.steps[2:]]
    assert labels == [
        ("all runs together", 2, length("270")),
        ("what is on the others", length("170"), length("100")),
        ("1 run in one piece", length("108"), 1),
    ]


def test_what_is_beyond_a_spool_is_cut_from_the_roll_where_that_costs_less() -> None:
    # Twelve runs of 30 in are 10 yd. A spool of 9 yd (324 in) holds ten: two more, 60 in, are
    # 1 3/4 yd at 0.80: 1.40, with the spool 6.40. All from the roll: 8.00. Two spools: 10.00.
    sold = '{ price = "0.80 per yd" }, { put_up = "spool of 9 yd", price = "5.00 each" }'
    spool, roll = mixed(["30"] * 12, sold)
    assert told([spool, roll]) == [(1, "spool of 9 yd"), (length("1 3/4 yd"), "yd")]
    assert (spool.needed, roll.needed) == (length("300"), length("60"))
    # Where the spool costs 7.00, with it 8.40: all comes from the roll.
    dear = sold.replace("5.00", "7.00")
    assert told(mixed(["30"] * 12, dear)) == [(length("10 yd"), "yd")]


def test_parts_of_the_money_for_a_yard_decide_what_is_cut_from_the_roll() -> None:
    # Five runs of 32 in are 160 in, 4 1/2 yd at 1.00: 4.50. Four on a spool of 151 in for 3.00,
    # and the fifth, 7/8 yd and a bit, 1 yd at 1.00: 4.00. In whole money both would be 4.
    sold = '{ price = "1.00 per yd" }, { put_up = "spool of 151 in", price = "3.00 each" }'
    assert told(mixed(["32"] * 5, sold)) == [
        (1, "spool of 151 in"),
        (length("1 yd"), "yd"),
    ]


@pytest.mark.parametrize("shrinkage", [3, 7, 11, 13, 17, 19])
def test_what_is_cut_from_the_roll_is_not_short_by_part_of_a_tick(shrinkage: int) -> None:
    # Before it shrinks a run of 30 in is no whole number of ticks. A spool of 151 in holds four of
    # five for 3.00, which from the roll cost more; the fifth is less than 1 1/8 yd at 1.00.
    sold = '{ price = "1.00 per yd" }, { put_up = "spool of 151 in", price = "3.00 each" }'
    spool, roll = mixed(["30"] * 5, sold, f'shrinkage = "{shrinkage} %"\n')
    grown = length("30 in").ticks / (1 - Fraction(shrinkage, 100))
    assert grown.denominator > 1
    assert spool.needed == Length(ceil(4 * grown))
    assert roll.needed == Length(ceil(grown))


def test_the_sum_of_lengths_may_suggest_another_size() -> None:
    # Three runs of 70 in are 210 in. By the sum two cards of 108 in do, 5.00; but each card of
    # 3 yd holds one run: three, 7.50. Or two on a card of 5 yd (140 of 180) and one: 6.30.
    lines = mixed(["70"] * 3, TWO_CARDS)
    assert told(lines) == [(1, "card of 3 yd"), (1, "card of 5 yd")]
    assert "the sum of lengths would fit on 2 × card of 3 yd, but no run is joined" in str(
        lines[0].notes
    )


def test_a_run_that_may_be_joined_is_shared_by_two_cards() -> None:
    # 200 in on cards of 108 in, once joined with 1/2 in: 108 and 92 1/2 in; 15 1/2 in is left.
    # Twice 200 in, joined once each: 108 + 92 1/2 and again: four cards.
    sold = '{ put_up = "card of 3 yd", price = "2.50 each" }'
    (line,) = mixed(["200"], sold, "joins = 1\n")
    assert told([line]) == [(2, "card of 3 yd")]
    assert (line.notes, line.buy.left) == (("1 join in all",), lengths("15 1/2"))
    assert told(mixed(["200", "200"], sold, "joins = 1\n")) == [(4, "card of 3 yd")]


def test_a_joined_run_does_not_end_in_a_scrap() -> None:
    # 36 1/4 in on cards of 36 in: 36 in of it would leave 3/4 in, with 1/2 in under the join. So
    # much is cut from the first that 1 in goes on the second: 35 3/4 and 1 in.
    sold = '{ put_up = "card of 1 yd", price = "2.00 each" }'
    (line,) = mixed(["36 1/4"], sold, "joins = 1\n")
    assert [run for held in line.buy.filled for _, run in held.runs] == [
        length("35 3/4"), length("1")
    ]  # fmt: skip


def test_joined_runs_take_fewer_cards_than_whole_ones() -> None:
    # Three runs of 70 in on cards of 108 in: whole, three cards. Joined once with 1 in: 70 and 38;
    # 70 and 33 of the third (38 + 33 = 70 + 1): 108 and 103, two cards.
    sold = '{ put_up = "card of 3 yd", price = "2.50 each" }'
    whole = mixed(["70"] * 3, sold)
    joined = mixed(["70"] * 3, sold, 'joins = 1\noverlap = "1"\n')
    assert (told(whole), told(joined)) == ([(3, "card of 3 yd")], [(2, "card of 3 yd")])
    assert joined[0].buy.left == lengths("5")


def test_a_patterned_trim_is_joined_at_a_repeat() -> None:
    # Scallops of 2 in, a run of 100 in, cards of 55 in: 27 scallops (54 in) on the first; one is
    # overlapped at the join: 100 - 54 + 2 = 48 in on the second, 7 in left; and 1 in of the first.
    sold = '{ put_up = "card of 55 in", price = "1.00 each" }'
    (line,) = mixed(["100"], sold, 'joins = 1\nrepeat = "2"\n')
    assert told([line]) == [(2, "card of 55 in")]
    assert (line.notes, line.buy.left) == (("1 join in all",), lengths("7", "1"))


def test_a_run_is_joined_no_oftener_than_the_plan_allows() -> None:
    # 200 in on cards of 72 in takes two joins: 72 + 72 + 57 in.
    sold = '{ put_up = "card of 2 yd", price = "2.10 each" }'
    assert told(mixed(["200"], sold, "joins = 2\n")) == [(3, "card of 2 yd")]
    text = f'{PANEL}[[trim]]\nname = "tie"\nlength = "200"\njoins = 1\nsold = [{sold}]\n'
    (found,) = complaints(IN_DOLLARS + text)
    assert "one run takes 200 1/2 in in one piece" in found


def test_without_prices_the_least_length_is_bought() -> None:
    # 40 and 70 in: cards of 72 in for each, 144 in; both on one of 5 yd are 180 in.
    sold = '{ put_up = "card of 2 yd" }, { put_up = "card of 5 yd" }'
    line = bought(ribbons(["40", "70"], sold), "ribbon")
    assert told([line]) == [(2, "card of 2 yd")]


def test_a_pack_of_several_lengths_holds_a_run_on_each_and_none_across_two() -> None:
    # Packs of three lengths of 2 yd (72 in). Runs of 60, 60, 40 and 30 in: 60, 60 and 40 + 30 are
    # one pack. A fifth of 30 in takes a length of a second pack, of which two are left.
    sold = '{ put_up = "pack of 3 x 2 yd", price = "4.00 each" }'
    (one,) = mixed(["60", "60", "40", "30"], sold)
    assert told([one]) == [(1, "pack of 3 x 2 yd")]
    assert one.buy.left == lengths("12", "12", "2")
    (two,) = mixed(["60", "60", "40", "30", "30"], sold)
    assert told([two]) == [(2, "pack of 3 x 2 yd")]
    assert two.buy.left == lengths("2 yd", "2 yd", "42", "12", "12", "2")
    assert [step.result for step in two.buy.steps[-2:]] == [4, 2]


def test_runs_are_joined_from_card_to_card_where_whole_ones_would_not_go() -> None:
    # 100, 98, 96 and 94 in, each joined at most once with 1/2 in, on two cards of 4 yd (144 in)
    # and one of 3 yd (108 in): on the first 100 and 44 of the second run, whose other 54 1/2 in go
    # with 89 1/2 of the third on the second card; on the last are the third's other 7 in and the
    # fourth, 101 in, and 7 in are left. Bought whole, they take four cards.
    sold = (
        '{ put_up = "card of 3 yd", price = "3.00 each" }, '
        '{ put_up = "card of 4 yd", price = "3.50 each" }'
    )
    runs = ["100", "98", "96", "94"]
    assert told(mixed(runs, sold)) == [(4, "card of 3 yd")]
    three, four = mixed(runs, sold, "joins = 1\n")
    assert told([three, four]) == [(1, "card of 3 yd"), (2, "card of 4 yd")]
    assert three.notes[0].startswith("2 joins in all; together with 2 × card of 4 yd")
    assert three.buy.left == lengths("7")


def test_the_end_of_a_joined_run_is_cut_from_the_roll_where_that_costs_less() -> None:
    # 200 in, joined at most once with 1/2 in: a card of 5 yd (180 in) and 20 1/2 in from the roll,
    # 5/8 yd at 1.20: 3.00 + 0.75. All from the roll it is 5 5/8 yd, 6.75, and two cards cost 6.00.
    sold = '{ put_up = "card of 5 yd", price = "3.00 each" }, { price = "1.20 per yd" }'
    card, roll = mixed(["200"], sold, "joins = 1\n")
    assert told([card, roll]) == [(1, "card of 5 yd"), (length("5/8 yd"), "yd")]
    assert (card.needed, roll.needed) == (length("180"), length("20 1/2"))
    assert card.notes[0].startswith("1 join in all; together with a length from the roll")
    assert [held.runs[0][1] for held in (*card.buy.filled, *roll.buy.filled)] == [
        length("180"), length("20 1/2")
    ]  # fmt: skip
    assert told(mixed(["200"], sold)) == [(length("5 5/8 yd"), "yd")]


def test_a_joined_run_of_scallops_leaves_its_card_at_a_whole_one() -> None:
    # 198 in are 99 scallops of 2 in; one more overlaps at the join. A card of 5 yd and a half,
    # 197 in, gives 98 of them, 196 in: 4 in come from the roll, 1/8 yd.
    sold = '{ put_up = "card of 5.4722222 yd", price = "3.00 each" }, { price = "1.20 per yd" }'
    card, roll = mixed(["198"], sold, 'joins = 1\nrepeat = "2"\n')
    assert (card.needed, roll.needed) == (length("196"), length("4"))
