"""Thread by the seams of a garment. Ratios by stitch are textbook tables, from memory."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import Estimate, GarmentOrder, Job, estimate
from estimator.measure import Length
from estimator.written import length
from tests.plans import HEADING, bought, catalog, complaints, in_print, plan

PANELS = """
[[piece]]
name = "panel"
quantity = 4
cut = "print"
width = "20"
length = "25"
edges = { bottom = "hem 1" }
"""
SPOOL = 'sold = [{ put_up = "spool of 100 yd" }]\n'
THREAD = f'[[thread]]\nname = "blue"\nwaste = 0\n{SPOOL}'


def thread(tables: str, name: str = "blue") -> Length:
    return of(in_print(tables), name)


def of(found: Estimate, name: str = "blue") -> Length:
    needed = bought(found, name).needed
    assert isinstance(needed, Length)
    return needed


def test_an_edge_in_no_seam_is_half_a_seam() -> None:
    # Each panel: top 20, two sides 25: 70 in of edges, 35 of seam; four make 140. Hems 4 x 20 = 80.
    # 220 in of lockstitch take 2.5 times their length: 550 in.
    assert thread(PANELS + THREAD) == length("550 in")


def test_two_edges_in_a_seam_are_sewn_once() -> None:
    # Naming the four side seams changes nothing: 4 x 25 is what eight half seams came to.
    seam = '[[seam]]\nedges = ["panel: left", "panel: right"]\n'
    assert thread(PANELS + seam + THREAD) == length("550 in")


def test_of_edges_partly_in_a_seam_the_others_are_half_seams() -> None:
    # One side seam of 25; of the other 6 side edges 6 x 25 / 2 = 75; tops 40, hems 80: 220 in.
    seam = '[[seam]]\nedges = ["1 x panel: left", "1 x panel: right"]\n'
    assert thread(PANELS + seam + THREAD) == length("550 in")


def test_fifteen_per_cent_of_thread_is_wasted_unless_the_plan_says_otherwise() -> None:
    # 550 x 1.15 = 632.5 in (10-15 % waste is common practice; the greater one is taken).
    assert thread(PANELS + THREAD.replace("waste = 0\n", "")) == length("632.5 in")
    assert thread(PANELS + THREAD.replace("waste = 0", 'waste = "10 %"')) == length("605 in")


def test_a_gathered_edge_is_gathered_in_two_rows_and_sewn_as_long_as_the_other() -> None:
    band = '[[piece]]\nname = "band"\ncut = "print"\nwidth = "40"\nlength = "3"\n'
    seam = '[[seam]]\nedges = ["panel: top", "band: top"]\ngathered = "panel: top"\n'
    # Panels: sides 8 x 25 / 2 = 100, hems 80. Band: (40 + 3 + 3) / 2 = 23. Seam 40. Gathers
    # 2 x 80 = 160. In all 403 in, times 2.5 = 1007.5.
    assert thread(PANELS + band + seam + THREAD) == length("1007.5 in")


def test_a_ruffle_is_gathered_sewn_on_hemmed_and_joined() -> None:
    frill = (
        '[[piece]]\nname = "frill"\ncut = "print"\nmade = "joined strip"\nlength = "5"\n'
        'onto = "panel: top"\nfullness = 2\nedges = { bottom = "rolled hem" }\n'
    )
    # Onto four tops: a seam of 80; the frill is 160 long, gathered twice: 320; its hem 160.
    # Of 45 in, less 1 1/4 in a join, it takes 4 widths: three joins of 5 in and the one that
    # closes it, 20. Panels: sides 100, hems 80. In all 80 + 320 + 160 + 20 + 180 = 760 in.
    assert thread(PANELS + frill + THREAD) == length("760 in").times(Fraction(5, 2))


def test_a_band_is_sewn_on_and_sewn_down() -> None:
    band = (
        '[[piece]]\nname = "band"\ncut = "print"\nmade = "folded band"\nwidth = "2"\n'
        'onto = "panel: top"\n'
    )
    # Panels 100 + 80; the band's seam 80, sewn down 80, and its two ends 2 x 2 / 2 = 2: 342 in.
    assert thread(PANELS + band + THREAD) == length("342 in").times(Fraction(5, 2))


def test_trims_are_held_by_a_row_or_two_by_their_width() -> None:
    def trim(width: str) -> str:
        return f'[[trim]]\nname = "braid"\nalong = "panel: bottom"\nrows = 2\n{width}\n'

    # Two rows along 80 in: 160 in of stitching for a narrow braid, 320 in for one of 1/2 in.
    assert thread(PANELS + trim("") + THREAD) == length("950 in")
    assert thread(PANELS + trim('width = "3/8"') + THREAD) == length("950 in")
    assert thread(PANELS + trim('width = "1/2"') + THREAD) == length("1350 in")
    assert thread(PANELS + trim("stitched = 0") + THREAD) == length("550 in")


def test_a_zip_is_sewn_in_along_both_sides() -> None:
    # 550 + 2.5 x 2 x 9 = 595.
    assert thread(PANELS + '[[notion]]\nname = "zip"\nlength = "9"\n' + THREAD) == length("595 in")


def test_a_lining_is_sewn_once_more_and_interfacing_is_not() -> None:
    roles = (
        '[[fabric]]\nname = "lawn"\nrole = "lining"\nwidths = ["45 in"]\n'
        '[[fabric]]\nname = "fusible"\nrole = "interfacing"\nwidths = ["45 in"]\n'
    )
    lined = PANELS.replace('"print"', '["print", "lawn"]')
    assert of(in_print(roles.split('[[fabric]]\nname = "fusible')[0] + lined + THREAD)) == length(
        "1100 in"
    )
    both = PANELS.replace('"print"', '["print", "lawn", "fusible"]')
    assert of(in_print(roles + both + THREAD)) == length("1100 in")


def test_every_copy_takes_its_thread() -> None:
    thrice = HEADING.replace('"apron"', '"apron"\ncopies = 3')
    assert of(estimate(plan(thrice + PANELS + THREAD))) == length("1650 in")


def test_an_overlocker_takes_a_cone_for_its_needle_and_each_looper() -> None:
    edged = PANELS.replace('bottom = "hem 1"', 'bottom = "serged"')
    # Seams 140 x 2.5 = 350 in; 80 in overedged in 504 take 14 x 80 = 1120 in: by the needle 20 %,
    # 224 in, and by each looper 40 %, 448 in. One spool for the lockstitch and three cones.
    found = in_print(edged + THREAD)
    assert of(found) == length("1470 in")
    assert bought(found, "blue").buy.bought == 4


def test_a_looper_that_needs_more_than_a_cone_takes_two() -> None:
    # A looper's 448 in are on two spools of 400 in; the needle's 224 in and the seams on one each.
    edged = PANELS.replace('bottom = "hem 1"', 'bottom = "serged"')
    short = THREAD.replace("100 yd", "400 in")
    assert bought(in_print(edged + short), "blue").buy.bought == 1 + 1 + 2 + 2


def test_needle_and_bobbin_share_spools() -> None:
    # 550 in are on two spools of 500 in, not on a spool for each of needle and bobbin twice over.
    assert bought(in_print(PANELS + THREAD.replace("100 yd", "500 in")), "blue").buy.bought == 2
    assert bought(in_print(PANELS + THREAD.replace("100 yd", "550 in")), "blue").buy.bought == 1


def test_a_seam_may_be_sewn_and_overedged() -> None:
    seam = '[[seam]]\nedges = ["panel: left", "panel: right"]\nstitch = "301 + 504"\n'
    # 550 as before, and 4 x 25 in overedged: 100 x 14 = 1400.
    assert thread(PANELS + seam + THREAD) == length("1950 in")


def test_thickness_and_stitches_give_the_thread_of_a_lockstitch() -> None:
    # 2 + 2TS (textile engineering textbooks) with 1/16 in and 12 per in: 2 + 2 x 12 / 16 = 3.5.
    stated = THREAD + 'thickness = "1/16"\nstitches = "12 per in"\n'
    assert thread(PANELS + stated) == length("220 in").times(Fraction(7, 2))


def test_thickness_and_stitches_give_the_thread_of_a_chainstitch() -> None:
    # 4 + 2TS with 2 mm and 4 per cm: 4 + 2 x 0.2 x 4 = 5.6.
    stated = THREAD + 'stitch = "401"\nthickness = "2 mm"\nstitches = "4 per cm"\n'
    assert thread(PANELS + stated) == length("220 in").times(Fraction(28, 5))


def test_each_thread_sews_what_it_names_and_the_last_one_the_rest() -> None:
    gold = f'[[thread]]\nname = "gold"\nwaste = 0\nsews = ["hems"]\n{SPOOL}'
    found = in_print(PANELS + THREAD + gold)
    # Hems 80 x 2.5 = 200; the seams' 140 x 2.5 = 350.
    assert of(found, "gold") == length("200 in")
    assert of(found) == length("350 in")


def test_what_no_thread_sews_is_told() -> None:
    gold = THREAD.replace("waste = 0", 'waste = 0\nsews = "hems"')
    told = " ".join(in_print(PANELS + gold).granted)
    assert "no thread is named for 3.89 yd of seams" in told  # 140 in are 3.888 yd


def test_a_thread_from_a_shop_comes_in_packs_of_spools_of_its_length() -> None:
    items = [{"item": "poly", "kind": "thread"}]
    poly = {"item": "poly", "length": "200 in", "currency": "USD"}
    offers = [
        {**poly, "put_up": "each", "price": "2"}, {**poly, "put_up": "pack of 2", "price": "2.50"}
    ]  # fmt: skip
    shop = catalog(items, offers)
    blue = '[[thread]]\nname = "blue"\nwaste = 0\nbuy = "poly"\n'
    # 550 in are on 3 spools of 200 in: 6.00 singly, 5.00 in two packs, 4.50 in one and a single.
    two, one = estimate(plan(HEADING + PANELS + blue), shop).purchases[-2:]
    assert [(line.buy.bought, line.buy.unit) for line in (two, one)] == [
        (1, "pack of 2"), (1, "each")
    ]  # fmt: skip
    assert two.notes == ("5.56 yd on each; together with 1 × each",)
    dear = [{**offers[0], "price": "2.60"}, offers[1]]
    # At 2.60 for one spool two packs cost less, and one spool is to spare.
    line = bought(estimate(plan(HEADING + PANELS + blue), catalog(items, dear)), "blue")
    assert (line.buy.bought, line.buy.unit) == (2, "pack of 2")
    assert "1 to spare" in line.buy.note


def test_two_garments_in_one_thread_share_its_spools() -> None:
    again = plan(HEADING + PANELS + THREAD)
    found = estimate(Job((GarmentOrder(again), GarmentOrder(again))))
    assert of(found) == length("1100 in")


def test_a_thread_for_what_is_not_there_is_refused() -> None:
    (found,) = complaints(HEADING + PANELS + THREAD + 'sews = ["hemms"]\n')
    assert "there is nothing 'hemms' to sew; did you mean 'hems'?" in found


def test_two_threads_for_the_same_work_are_refused() -> None:
    (found,) = complaints(HEADING + PANELS + THREAD + THREAD.replace("blue", "gold"))
    assert "'gold' says nothing of what it sews, as does 'blue'" in found


def test_a_thread_of_which_nobody_knows_the_spools_is_refused() -> None:
    (found,) = complaints(HEADING + PANELS + THREAD.replace(SPOOL, ""))
    assert "nothing says how much is on a spool of 'blue'" in found
    assert "spool of 250 yd" in found


def test_an_unknown_stitch_is_refused_with_the_nearest() -> None:
    (found,) = complaints(HEADING + PANELS + THREAD + 'stitch = "lokstitch"\n')
    assert "'lokstitch' is not a stitch; did you mean 'lockstitch'?" in found


def test_the_working_ends_in_the_spools_on_the_list() -> None:
    line = bought(in_print(PANELS + THREAD), "blue")
    assert line.buy.steps[-1].result == line.buy.bought == 1
    assert [step.result for step in line.buy.steps][-2] == length("550 in")


@given(st.integers(1, 400), st.integers(0, 400), st.integers(1, 9))
def test_a_longer_piece_never_needs_less_thread(size: int, more: int, count: int) -> None:
    def needed(long: int) -> Length:
        text = PANELS.replace("25", f"{long}/8").replace("quantity = 4", f"quantity = {count}")
        return thread(text.replace('"hem 1"', '"rolled hem"') + THREAD)

    assert needed(size + 16) <= needed(size + 16 + more)


FOLDED = """
[[piece]]
name = "front"
cut = "print"
width = "10"
length = "20"
edges = { left = "fold", top = "raw", bottom = "raw" }
[[piece]]
name = "back"
quantity = 2
cut = "print"
width = "10"
length = "20"
edges = { right = "raw", top = "raw", bottom = "raw" }
"""


def test_what_is_cut_on_the_fold_has_its_other_side_too() -> None:
    # Two side seams of 20 in, be they half seams or named: 40 in, times 2.5.
    seam = '[[seam]]\nedges = ["front: right", "back: left"]\n'
    assert thread(FOLDED + THREAD) == length("100 in")
    assert thread(FOLDED + seam + THREAD) == length("100 in")
    one = seam.replace("front", "1 x front").replace("back", "1 x back")
    assert thread(FOLDED + one + THREAD) == length("100 in")


def test_a_wider_panel_moves_fabric_lace_and_thread_and_nothing_else() -> None:
    # 30 panels of 20 in: hems of 600 in; of 24 in: 720 in. Lace: 600 + 1/2 turned under + 5 % is
    # 630 1/2 in, 17 5/8 yd; 720 1/2 and 5 % 756 1/2 in, 21 1/8 yd. Thread: tops half, sides, hems
    # and the lace's row: 300 + 750 + 600 + 600 = 2250 in, times 2.5 = 5625 in, 2 spools of 100 yd;
    # 360 + 750 + 720 + 720 = 2550, times 2.5 = 6375 in; spools of 3000 in are 2 and 3.
    def line(found: Estimate, name: str) -> object:
        return bought(found, name).buy.bought

    text = PANELS.replace("quantity = 4", "quantity = 30") + (
        '[[trim]]\nname = "lace"\nalong = "panel: bottom"\n'
        '[[notion]]\nname = "buttons"\nquantity = 5\n' + THREAD.replace("100 yd", "3000 in")
    )
    narrow, wide = in_print(text), in_print(text.replace('"20"', '"24"'))
    assert (line(narrow, "lace"), line(wide, "lace")) == (length("17 5/8 yd"), length("21 1/8 yd"))
    assert (line(narrow, "blue"), line(wide, "blue")) == (2, 3)
    assert line(narrow, "print") != line(wide, "print")
    assert line(narrow, "buttons") == line(wide, "buttons") == 5


def test_rows_of_braid_round_a_curve_are_each_stitched_as_long_as_they_are() -> None:
    # A neckline of 12 in, a quarter of a circle: rows 2 and 4 in inside it are longer by pi / 2 x 2
    # and pi / 2 x 4 in, 33.4248 in in all, narrow and so stitched once, x 2.5 = 83.562 in.
    neck = (
        '[[piece]]\nname = "yoke"\ncut = "print"\nwidth = "20"\nlength = "9"\n'
        'edges = { top = "raw", bottom = "raw", left = "raw", right = "raw", '
        'neck = { length = "12", finish = "raw", curve = "hollow 1/4" } }\n'
        '[[trim]]\nname = "braid"\nalong = "yoke: neck"\nrows = 2\nfrom_edge = "2"\n'
        'row_spacing = "2"\n'
    )
    found = thread(neck + THREAD)
    assert found / length("1 in") == pytest.approx(2.5 * (24 + 3 * pi), abs=1e-4)


def test_elastic_sewn_to_an_edge_is_sewn_row_by_row_and_a_binding_twice() -> None:
    # Three rows of 20 in, x 2.5: 150 in. A binding of 20 in is sewn on and sewn down: 100 in.
    raw = (
        '[[piece]]\nname = "cuff"\ncut = "print"\nwidth = "20"\nlength = "9"\n'
        'edges = { top = "raw", bottom = "raw", left = "raw", right = "raw" }\n'
    )
    rows = '[[elastic]]\nname = "shirring"\nkind = "shirring"\nalong = "cuff: top"\nrows = 3\n'
    bound = '[[trim]]\nname = "binding"\nalong = "cuff: top"\nwidth = "3/8"\ncut_from = "print"\n'
    assert thread(raw + rows + THREAD) == length("150")
    assert thread(raw + bound + THREAD) == length("100")
    named = THREAD.replace("waste = 0", 'waste = 0\nsews = "shirring"')
    assert thread(raw + rows + bound + named) == length("150")


BOXED = """
[[piece]]
name = "sleeve"
quantity = 2
cut = "print"
shape = "box"
width = "16"
length = "18"
edges = { %s }
"""


@pytest.mark.parametrize(
    ("edges", "thread"),
    [
        # No edge named: 2 x (16 + 18) = 68 in round the box, half a seam: 34; two, x 2.5 = 170.
        ("", "170"),
        # A cap of 19 in takes the place of as much of the sides: still 68 in round.
        ('cap = { length = "19" }', "170"),
        # A hemmed wrist of 9 in leaves 7 of the box's hem of 16 in: hems 16, and 52 / 2 of seams.
        ('bottom = "hem 1", wrist = { length = "9", finish = "hem 1" }', "210"),
        # A longer one leaves none of it: 20 + 26 in, two of them.
        ('bottom = "hem 1", wrist = { length = "20", finish = "hem 1" }', "230"),
        # The sides under a cap are said to be 11 in: 11 + 11 + 16 + 16 = 54 in, of which the cap
        # stands in the place of 19: 54 / 2 = 27.
        ('left = { length = "11" }, right = { length = "11" }, cap = { length = "19" }', "135"),
    ],
)  # fmt: skip
def test_named_edges_of_a_box_stand_in_the_place_of_its_straight_sides(
    edges: str, thread: str
) -> None:
    assert of(in_print(BOXED % edges + THREAD)) == length(thread)
