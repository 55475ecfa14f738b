"""What runs of trim take: rows, pleats, ends, repeats and threaded ribbons, by hand."""

from __future__ import annotations

from math import pi

import pytest

from estimator import Estimate
from estimator.measure import INCH
from estimator.written import length
from tests.plans import HEADING, bought, complaints, in_print, needed

# Six panels of 17 1/2 in, a lower edge of 105 in. A turned end takes 1/4 in, a seam 5/8 in.
SKIRT = """
[[piece]]
name = "skirt"
quantity = 6
cut = "print"
width = "17 1/2"
length = "26"
"""
BIB = '[[piece]]\nname = "bib"\ncut = "print"\nwidth = "12"\nlength = "10"\n'


def trim(more: str, name: str = "lace") -> str:
    return f'[[trim]]\nname = "{name}"\nwaste = 0\n{more}\n'


def round_hem(more: str) -> Estimate:
    return in_print(SKIRT + trim(f'along = "skirt: bottom"\n{more}'))


def test_rings_round_gores_differ_in_length() -> None:
    # Six gores of 6 in at the top and 18 in below, 30 in long: in 30 in they widen by 12 in, 0.4 in
    # for each inch. 2 in above the lower edge: 18 - 0.8 = 17.2, six: 103.2 in; 3 1/2 in above it
    # 18 - 1.4 = 16.6, six: 99.6; 5 in above it 16, six: 96. In all 298.8 in, and three overlaps
    # of 1/2 in: 300.3 in.
    gores = (
        '[[piece]]\nname = "gore"\nquantity = 6\ncut = "print"\nshape = "taper"\n'
        'top = "6"\nbottom = "18"\nlength = "30"\n'
    )
    rows = 'rows = 3\nfrom_edge = "2"\nrow_spacing = "1 1/2"\njoined = "in the round"\n'
    found = in_print(gores + trim('along = "gore: bottom"\n' + rows))
    assert needed(found, "lace") == length("300.3 in")
    # From the top edge downwards they grow: 6.8, 7.4 and 8 in, six of each: 133.2 in.
    down = in_print(gores + trim('along = "gore: top"\n' + rows))
    assert needed(down, "lace") == length("133.2 in") + length("1 1/2")


def test_rings_round_half_a_circle_shrink_by_pi_times_their_distance() -> None:
    # Half a circle, waist 28 in, 20 in long: its hem is 28 + pi x 20 = 90.83 in, a ring 2 in above
    # it 28 + pi x 18 = 84.55 in.
    half = (
        '[[piece]]\nname = "cape"\ncut = "print"\nshape = "sector"\nshare = "1/2"\n'
        'waist = "28"\nlength = "20"\n'
    )
    rows = trim('along = "cape: bottom"\nends = "raw"\nrows = 2\nrow_spacing = "2"')
    of_two = needed(in_print(half + rows), "lace").ticks / INCH.ticks
    assert of_two == pytest.approx(28 + pi * 20 + 28 + pi * 18, abs=1e-5)


def test_rows_round_a_straight_skirt_are_alike_however_far_apart() -> None:
    # 3 x (105 + 1/2) in.
    apart = 'rows = 3\nrow_spacing = "1"\njoined = "in the round"'
    assert needed(round_hem(apart), "lace") == length("316 1/2")


def test_rows_inside_a_round_neckline_are_longer_by_its_turn() -> None:
    # Half a neckline of 11 in turns by half a circle: a row 1 in inside it is longer by pi x 1 in,
    # 14.1416, and one 2 in inside it 17.2832 in; in all 42.4248 in.
    yoke = (
        '[[piece]]\nname = "yoke"\ncut = "print"\nwidth = "20"\nlength = "9"\n'
        'edges = { neck = { length = "11", finish = "faced"%s } }\n'
    )
    rows = trim('along = "yoke: neck"\nends = "raw"\nrows = 3\nrow_spacing = "1"')
    hollow = in_print(yoke % ', curve = "hollow 1/2"' + rows)
    assert needed(hollow, "lace").ticks / INCH.ticks == pytest.approx(33 + 3 * pi, abs=1e-5)
    # A collar that turns outwards by half a circle has shorter rows: 11 + 11 - pi + 11 - 2 pi.
    rounded = in_print(yoke % ', curve = "rounded 1/2"' + rows)
    assert needed(rounded, "lace").ticks / INCH.ticks == pytest.approx(33 - 3 * pi, abs=1e-5)
    # Where nothing is said of its curve rows are as long as the edge, and the list says so.
    straight = in_print(yoke % "" + rows)
    assert needed(straight, "lace") == length("33")
    assert any("rows inside yoke: neck are taken as long as" in one for one in straight.granted)
    (far,) = complaints(HEADING + yoke % ', curve = "rounded 1"' + rows)
    assert "a row 2 in inside 'yoke: neck' lies beyond the middle of its curve" in far


def test_ease_and_fullness_multiply_the_run_and_not_its_ends() -> None:
    # 105 x 1.04 = 109.2; x 1.5 = 163.8; two ends of 1/4 in: 164.3 in.
    assert needed(round_hem('ease = "4 %"\nfullness = 1.5'), "lace") == length("164.3 in")


@pytest.mark.parametrize(
    ("pleats", "run"),
    [
        # Knife pleats 1/2 in deep that meet: one each 1/2 in, 210 of them, each takes 1 in:
        # 105 + 210 = 315 in, three times the edge.
        ('{ depth = "1/2" }', "315"),
        # Box pleats that meet lie 1 in apart, 105 of them, and take 4 x 1/2 in each: 105 + 210.
        ('{ depth = "1/2", kind = "box pleat" }', "315"),
        # One each 3 in: 35; knife pleats take 35 in, box pleats 70.
        ('{ depth = "1/2", spacing = "3" }', "140"),
        ('{ depth = "1/2", spacing = "3", kind = "box pleat" }', "175"),
        # One each 4 in: 26 1/4, and a pleat begun is whole: 27.
        ('{ depth = "1/2", spacing = "4" }', "132"),
    ],
)
def test_a_pleated_trim_takes_its_pleats_by_their_depth(pleats: str, run: str) -> None:
    assert needed(round_hem(f'ends = "raw"\npleats = {pleats}'), "lace") == length(run)


@pytest.mark.parametrize(
    ("ends", "run"),
    [
        # Folded back by 3/4 in, and 1/4 in turned under, at both ends: 105 + 2.
        ('"folded back 3/4"', "107"),
        # Not said how deep: twice the turn-under, 1/2 in, and 1/4 in.
        ('"folded back"', "106 1/2"),
        ('"in a seam 3/8"', "105 3/4"),
        ('"turned under 1/2"', "106"),
        ('["in a seam", "raw"]', "105 5/8"),
        ('["in a seam", "folded back 1"]', "106 7/8"),
    ],
)
def test_each_end_takes_what_its_finish_does(ends: str, run: str) -> None:
    assert needed(round_hem(f"ends = {ends}"), "lace") == length(run)


@pytest.mark.parametrize(
    ("ends", "told"),
    [
        ('"raw 1/2"', "a raw end takes nothing, not 1/2; write raw alone"),
        ('["raw", "raw", "raw"]', "a run has two ends; "),
        ('"folded"', "did you mean 'folded back'?"),
    ],
)
def test_ends_that_make_no_sense_are_refused(ends: str, told: str) -> None:
    (found,) = complaints(HEADING + SKIRT + trim(f'along = "skirt: bottom"\nends = {ends}'))
    assert told in found


IN_THE_ROUND = 'joined = "in the round"\nrepeat = "2"\n'


def notes(found: Estimate) -> tuple[str, ...]:
    return bought(found, "lace").notes


def test_an_edge_is_eased_in_for_fewer_scallops_by_no_more_than_its_plan_allows() -> None:
    # 105 in are 52 scallops of 2 in and 1 in over. 1 % of 105 in is 1.05: the inch is eased in,
    # 52 and one overlapped, 106 in. 0.9 % are 0.945: 53 and one, 108 in, and 1 in of lace eased.
    eased = round_hem(IN_THE_ROUND + 'ease_repeats = "1 %"')
    assert needed(eased, "lace") == length("106")
    assert notes(eased) == ("lace: ease 1 in of the edge into it, for whole repeats",)
    fuller = round_hem(IN_THE_ROUND + 'ease_repeats = "0.9 %"')
    assert needed(fuller, "lace") == length("108")
    assert notes(fuller) == ("lace: ease 1 in of it in, for whole repeats",)


def test_gathered_lace_has_its_ease_in_its_gathers() -> None:
    # 157 1/2 in are 79 scallops of 2 in, 158 in, and one overlapped.
    gathered = round_hem(IN_THE_ROUND + "fullness = 1.5")
    assert (needed(gathered, "lace"), notes(gathered)) == (length("160"), ())


def test_a_round_overlaps_as_much_of_a_repeat_as_its_plan_says() -> None:
    # 60 scallops of 1 3/4 in are 105 in, and half a scallop 7/8 in.
    half = IN_THE_ROUND.replace('"2"', '"1 3/4"') + 'overlapped = "50 %"'
    assert needed(round_hem(half), "lace") == length("105 7/8")


def test_what_lace_is_eased_by_is_told_as_it_is_after_washing() -> None:
    # 105 / 0.95 = 110.526 in as bought are 55 scallops and 0.526 in: 56, 1.474 in too much; of
    # these 95 % are left after washing: 1.4, 1 3/8 in to the nearest sixteenth.
    found = round_hem(IN_THE_ROUND + 'shrinkage = "5 %"')
    assert needed(found, "lace") == length("2") * 57
    assert notes(found) == ("lace: ease 1 3/8 in of it in, for whole repeats",)


def test_a_motif_in_the_middle_takes_one_repeat_more_to_begin_anywhere() -> None:
    # 12 in across the bib, two ends of 5/8 in, and a repeat of 2 1/4 in: 15 1/2 in.
    more = 'along = "bib: top"\nends = "in a seam"\nrepeat = "2 1/4"\nmotif = "centred"'
    found = in_print(BIB + trim(more))
    assert needed(found, "lace") == length("15 1/2")
    assert notes(found) == ("lace: a motif lies in the middle",)


def test_both_fronts_begin_on_a_motif_and_mirror_each_other() -> None:
    # Each 24 1/2 in and two ends turned under: 25 in. The first, and a repeat of 2 1/4 in to begin
    # on a motif: 27 1/4. The second lies the other way round and ends on a motif: from motif to
    # motif lie both fronts and the two ends between them, 49 1/2 in, which are 22 repeats: nothing
    # is lost between them, and the second takes 25 in: 52 1/4 in all.
    fronts = (
        '[[piece]]\nname = "front"\nquantity = 2\ncut = "print"\nwidth = "11"\nlength = "24 1/2"\n'
    )
    more = 'along = "front: left"\nrepeat = "2 1/4"\nmirrored = true\n'
    found = in_print(fronts + trim(more))
    assert needed(found, "lace") == length("52 1/4")
    assert notes(found) == ("lace: cut in pairs that mirror each other, both from a motif",)
    odd = fronts + trim(more.replace("front: left", "1 x front: left"))
    (told,) = complaints(HEADING + odd)
    assert "'lace' is cut in mirrored pairs, and there are 1 runs" in told


def test_several_runs_with_a_motif_in_the_middle_begin_whole_repeats_after_one_another() -> None:
    # Four of 12 in with two ends of 5/8 in, 13 1/4 in each. The first takes a repeat of 2 1/4 in
    # more to begin anywhere, 15 1/2 in; each of the others begins 6 repeats, 13 1/2 in, after the
    # one before it: 15 1/2 + 3 x 13 1/2 = 56 in, and not 4 x 15 1/2 = 62 in.
    more = 'along = "bib: top"\nends = "in a seam"\nrepeat = "2 1/4"\nmotif = "centred"\n'
    found = in_print(BIB + trim(more + "quantity = 4"))
    assert needed(found, "lace") == length("56")
    # On cards each length has a start of its own: one run a card of 20 in, four cards. A card of
    # 29 in holds two, 15 1/2 + 13 1/2, though two by themselves would take 31 in.
    for card, number in (("20", 4), ("28 15/16", 4), ("29", 2), ("42 1/2", 2), ("56", 1)):
        cards = f'quantity = 4\nsold = [{{ put_up = "card of {card} in" }}]'
        line = bought(in_print(BIB + trim(more + cards)), "lace")
        assert line.buy.bought == number
        assert line.buy.steps[-1].result == number


@pytest.mark.parametrize(
    ("ends", "first_end"), [("raw", 0), ("turned under", 25), ('["in a seam 1", "raw"]', 100)]
)
@pytest.mark.parametrize("mirrored", [False, True])
@pytest.mark.parametrize("number", [2, 4, 6])
def test_runs_from_a_motif_fit_wherever_the_length_bought_begins(
    ends: str, first_end: int, mirrored: bool, number: int
) -> None:
    """Laid one after another as a person would, for every place in the repeat of 2 1/4 in."""
    finish = ends if ends.startswith("[") else f'"{ends}"'
    more = f'along = "bib: top"\nends = {finish}\nrepeat = "2 1/4"\nquantity = {number}\n'
    more += "mirrored = true" if mirrored else 'motif = "at the start"'
    found = in_print(BIB + trim(more))
    bought_for = needed(found, "lace").ticks * 100 // INCH.ticks
    repeat = 225
    cut = 1200 + first_end + {"raw": 0, "turned under": 25}.get(ends, 0)
    lost = []
    for begins in range(repeat):  # so much of a repeat has gone where the length begins
        place = 0
        for run in range(number):
            # the motif of a run lies where its first end is folded: of one that is turned round, at
            # its other end
            at_motif = cut - first_end if mirrored and run % 2 else first_end
            place += -(place + at_motif + begins) % repeat
            place += cut
        lost.append(bought_for - place)
    assert min(lost) >= 0
    assert min(lost) <= 1  # and no more than is needed, to a hundredth of an inch


def test_a_scallop_longer_than_the_run_is_refused() -> None:
    text = BIB + trim('along = "bib: top"\nrepeat = "14"\njoined = "in the round"')
    (found,) = complaints(HEADING + text)
    assert found == (
        "apron.toml, line 13 (trim 'lace'): one repeat of 'lace' is 14 in, and the run only 12 in; "
        'take a trim with a smaller repeat, or write repeat = "0" where it is not matched'
    )


@pytest.mark.parametrize("key", ['motif = "centred"', "mirrored = true", 'overlapped = "50 %"'])
def test_what_is_about_a_repeat_asks_for_one(key: str) -> None:
    (found,) = complaints(HEADING + BIB + trim(f'along = "bib: top"\n{key}'))
    assert f"'lace' states {key.split(' ')[0]}, and has no repeat" in found


BEADING = trim('along = "skirt: bottom"\njoined = "in the round"\nrepeat = "1 1/2"\n', "beading")


def test_a_ribbon_follows_the_beading_lace_that_it_is_threaded_through() -> None:
    # The lace: 105 in are 70 repeats of 1 1/2 in, and one overlapped: 106 1/2 in. The ribbon goes
    # round the same 105 in: eased by 5 % it is 110 1/4 in, overlapped 1/2 in.
    found = in_print(SKIRT + BEADING + trim('through = "beading"\nease = "5 %"', "ribbon"))
    assert needed(found, "beading") == length("106 1/2")
    assert needed(found, "ribbon") == length("110 3/4")


def test_a_ribbon_tied_in_a_bow_is_open_and_has_the_length_of_the_bow() -> None:
    # 105 in, 5 % of ease: 110 1/4 in; 36 in to tie, and raw ends.
    bow = trim('through = "beading"\nease = "5 %"\nbow = "36"\nends = "raw"', "ribbon")
    assert needed(in_print(SKIRT + BEADING + bow), "ribbon") == length("146 1/4")


def test_a_ribbon_is_threaded_through_every_row_of_its_lace() -> None:
    # Two rows of 105 in, each overlapped by 1/2 in; when the panels widen to 18 in, of 108 in.
    two_rows = BEADING.replace("waste = 0", "waste = 0\nrows = 2")
    text = SKIRT + two_rows + trim('through = "beading"', "ribbon")
    assert needed(in_print(text), "ribbon") == length("211")
    assert needed(in_print(text.replace("17 1/2", "18")), "ribbon") == length("217")


def test_a_ribbon_through_no_trim_or_in_a_circle_is_refused() -> None:
    wrong = SKIRT + BEADING + trim('through = "beeding"', "ribbon")
    (told,) = complaints(HEADING + wrong)
    assert told.endswith("there is no trim 'beeding'; did you mean 'beading'?")
    ring = trim('through = "b"', "a") + trim('through = "a"', "b")
    told = "; ".join(complaints(HEADING + SKIRT + ring))
    assert "'a' follows 'b' in a circle" in told or "follows 'a' in a circle" in told


def test_a_row_beyond_the_piece_is_refused() -> None:
    gore = (
        '[[piece]]\nname = "gore"\ncut = "print"\nshape = "taper"\n'
        'top = "6"\nbottom = "18"\nlength = "30"\n'
    )
    rows = trim('along = "gore: bottom"\nrows = 9\nrow_spacing = "4"')
    (found,) = complaints(HEADING + gore + rows)
    assert "a row 32 in inside 'gore: bottom' lies beyond the piece, which is 30 in long" in found
