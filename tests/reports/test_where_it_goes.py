"""Where each quantity goes: whose piece, trim or notion takes how much of a line."""

from __future__ import annotations

from fractions import Fraction

from estimator import Estimate, Job, estimate
from estimator.files import estimate_files
from estimator.reports.where_it_goes import where_table
from estimator.stash import InHand, Stash
from tests.plans import order
from tests.shipped_plans import ROOT

PLAN = """
[garment]
name = "{name}"
copies = {copies}
seam_allowance = "0"
[[fabric]]
name = "drill"
widths = ["60 in"]
[[piece]]
name = "front"
cut = "drill"
width = "20"
length = "30"
[[piece]]
name = "back"
quantity = 2
cut = "drill"
width = "10"
length = "30"
[[trim]]
name = "tape"
colour = "red"
length = "{tape}"
quantity = 2
ends = "raw"
[[notion]]
name = "snap"
quantity = 4
spare = 1
"""


def found() -> Estimate:
    first = PLAN.format(name="herald", copies=1, tape="12")
    second = PLAN.format(name="usher", copies=2, tape="6")
    return estimate(Job((order(first), order(second, wearer="Tam"))))


def rows(item: str) -> list[tuple[object, ...]]:
    table = where_table(found()).rows
    start = next(number for number, row in enumerate(table) if row[0] == item)
    end = next(
        (number for number, row in enumerate(table) if number > start and row[0]), len(table)
    )
    return [row[1:] for row in table[start:end]]


def test_fabric_goes_by_the_area_of_the_pieces_of_each_garment() -> None:
    # a front is 20 x 30 and two backs are as much; the usher's are cut twice: 1, 1, 2 and 2 of 6
    assert rows("drill") == [
        ("herald", "front", "1 cut", Fraction(1, 6)),
        ("herald", "back", "2 cut", Fraction(1, 6)),
        ("usher (Tam)", "front", "2 cut", Fraction(1, 3)),
        ("usher (Tam)", "back", "4 cut", Fraction(1, 3)),
    ]


def test_trim_goes_by_the_length_of_its_runs() -> None:
    # 2 x 12 in are 2/3 yd, shown as 11/16; so are 2 x 2 x 6 in
    assert rows("tape, red") == [
        ("herald", "tape", "11/16 yd", Fraction(1, 2)),
        ("usher (Tam)", "tape", "11/16 yd", Fraction(1, 2)),
    ]


def test_notions_go_by_count_with_the_spares_of_their_own_garment() -> None:
    # 4 + 1, and 2 x 4 + 1
    assert rows("snap") == [
        ("herald", "snap", "5", Fraction(5, 14)),
        ("usher (Tam)", "snap", "9", Fraction(9, 14)),
    ]


EYELETS = """
[garment]
name = "{name}"
copies = {copies}
currency = "USD"
[[notion]]
name = "eyelet"
over = "{over}"
apart = "2"
spare = 1
{sold}
"""


def eyelets(sold: str = "") -> Estimate:
    doublet = EYELETS.format(name="doublet", copies=1, over="10", sold=sold)
    bodice = EYELETS.format(name="bodice", copies=2, over="6", sold=sold)
    return estimate(Job((order(doublet), order(bodice))))


def test_notions_spread_so_far_apart_go_by_how_many_there_are_and_not_by_rows() -> None:
    # 10 / 2 + 1 and a spare are 7; 2 x (6 / 2 + 1) and a spare are 9
    assert list(where_table(eyelets()).rows) == [
        ("eyelet", "doublet", "eyelet", "7", Fraction(7, 16)),
        (None, "bodice", "eyelet", "9", Fraction(9, 16)),
    ]


def test_a_notion_in_two_sizes_of_pack_is_told_once() -> None:
    # 16 are a pack of 12 at 1.20 and 4 singly at 0.15: 1.80, where two packs would be 2.40
    packs = '{ put_up = "pack of 12", price = "1.20 each" }'
    found = eyelets(f'sold = [{packs}, {{ put_up = "each", price = "0.15 each" }}]')
    assert [line.needed for line in found.purchases] == [12, 4]
    assert where_table(found).rows == where_table(eyelets()).rows


def with_tape_in_hand(heralds: str = "12", ushers: str = "6") -> Estimate:
    """Two runs of a herald's and four of an usher's, and 13 in of tape in a tin."""
    first = PLAN.format(name="herald", copies=1, tape=heralds)
    second = PLAN.format(name="usher", copies=2, tape=ushers)
    tin = InHand.model_validate({"item": "tape", "colour": "red", "length": "13 in"})
    return estimate(Job((order(first), order(second, wearer="Tam")), stash=Stash({2: tin})))


def test_a_run_cut_from_the_stash_is_trim_that_its_garment_takes() -> None:
    beside_the_stash = with_tape_in_hand()
    (line,) = (one for one in beside_the_stash.purchases if one.taken)
    assert sum(len(one.runs) for one in line.taken) > 0
    assert where_table(beside_the_stash).rows == where_table(found()).rows


def test_trim_wholly_from_the_stash_goes_to_its_garments_all_the_same() -> None:
    # 2 x 2 in and 4 x 2 in are 12 in of the 13 in the tin
    wholly = with_tape_in_hand("2", "2")
    (line,) = (one for one in wholly.purchases if one.taken)
    assert not line.buy.bought
    told = [row[1:] for row in where_table(wholly).rows if row[2] == "tape"]
    assert told == [
        ("herald", "tape", "1/8 yd", Fraction(1, 3)),
        ("usher (Tam)", "tape", "1/4 yd", Fraction(2, 3)),
    ]


def test_all_shares_of_a_line_make_the_whole_of_it() -> None:
    for item in ("drill", "tape, red", "snap"):
        assert sum(row[3] for row in rows(item)) == 1  # type: ignore[misc]


def test_every_line_of_the_demo_goes_somewhere_with_its_share() -> None:
    demo = ROOT / "catalog_demo"
    names = ("market_dress", "herald_tabard", "night_cloak")
    together = estimate_files([demo / f"{name}.toml" for name in names], demo)
    for row in where_table(together).rows:
        assert row[3]
        assert row[4]
