"""Lacing, boning and button loops, worked by hand."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator import estimate
from estimator.measure import Length
from estimator.written import length
from tests.plans import HEADING, bought, catalog, complaints, in_print, needed, plan

BACKS = '[[piece]]\nname = "back"\nquantity = 2\ncut = "print"\nwidth = "10"\nlength = "12"\n'


def lace(more: str) -> Length:
    text = f'{BACKS}[[lacing]]\nname = "lace"\nwaste = 0\n{more}\n'
    return needed(in_print(text), "lace")


def test_a_lace_crosses_twice_over_each_space() -> None:
    # 12 in with eyelets 3 apart: 4 spaces, 5 pairs. With a gap of 4 in each crossing is 5 in, the
    # root of 4 x 4 + 3 x 3. 4 across at the first pair, 8 x 5 = 40, and 2 x 10 to tie: 64 in.
    assert lace('length = "12"\napart = "3"\ngap = "4"\ntie = "10"') == length("64 in")


def test_a_lace_follows_the_edge_of_its_opening() -> None:
    # The same 12 in as the back's edge, on one of two; ends of 12 in by the house's rule: 4 + 40
    # + 24 = 68 in.
    assert lace('along = "1 x back: left"\napart = "3"\ngap = "4"') == length("68 in")


def test_spaces_are_evened_out_below_the_wished_distance() -> None:
    # 12 in at most 3 1/2 apart: 12 / 3 1/2 = 3.43, so 4 spaces of 3 in: as above.
    assert lace('length = "12"\napart = "3 1/2"\ngap = "4"\ntie = "10"') == length("64 in")


def test_pairs_may_be_stated_and_the_ends_left_free() -> None:
    # 14 - 2 x 1 = 12 in between the first and the fifth pair: 4 spaces of 3 in.
    assert lace('length = "14"\npairs = 5\nfrom_ends = "1"\ngap = "4"\ntie = "10"') == length(
        "64 in"
    )


def test_one_pair_is_a_tie() -> None:
    # 2 in across and 2 x 12 in to tie.
    assert lace('length = "1"\npairs = 1\ngap = "2"') == length("26 in")


def test_the_list_tells_where_the_eyelets_go() -> None:
    text = '[[lacing]]\nname = "lace"\nlength = "12"\napart = "3 1/2"\ngap = "4"\n'
    line = bought(in_print(BACKS + text), "lace")
    assert "through 5 pairs of eyelets, 3 in apart on each side" in line.notes


def test_a_lace_is_in_one_piece() -> None:
    # Two laces of 68 in: not two cards of 70 in, unless each holds a whole one; cards of 5 ft hold
    # none.
    text = (
        '[[lacing]]\nname = "lace"\nlength = "12"\napart = "3"\ngap = "4"\nquantity = 2\n'
        'sold = [{ put_up = "card of 3 yd" }]\n'
    )
    assert bought(in_print(BACKS + text), "lace").buy.bought == 2
    (found,) = complaints(HEADING + BACKS + text.replace("3 yd", "5 ft"))
    assert "one run takes 68 in in one piece" in found


BONES = '[[boning]]\nname = "bones"\nwaste = 0\nlength = "10"\nquantity = 8\n'


def test_a_bone_ends_short_of_its_channel() -> None:
    # 10 - 2 x 1/4 = 9 1/2 in; eight of them 76 in.
    found = in_print(BACKS + BONES)
    assert needed(found, "bones") == length("76 in")
    assert "8 bones, each 9 1/2 in long with its tips on" in bought(found, "bones").notes
    clear = BONES + 'clear = "1/2"\n'
    assert needed(in_print(BACKS + clear), "bones") == length("72 in")


def test_a_casing_covers_the_channel_and_is_turned_under() -> None:
    # 10 + 2 x 1/4 = 10 1/2 in; eight of them 84 in.
    casing = '[[boning]]\nname = "casing"\nwaste = 0\ncasing_for = "bones"\n'
    assert needed(in_print(BACKS + BONES + casing), "casing") == length("84 in")


def test_bones_along_a_seam_are_one_for_each_piece() -> None:
    # 12 - 1/2 = 11 1/2 in in each of two backs.
    along = BONES.replace('length = "10"\nquantity = 8', 'along = "back: left"')
    assert needed(in_print(BACKS + along), "bones") == length("23 in")


LOOPS = (
    '[[notion]]\nname = "buttons"\nquantity = 6\nsize = "20 lignes"\nthickness = "1/4"\nspare = 1\n'
    '[[loops]]\nname = "loops"\nwaste = 0\nbuttons = "buttons"\n'
)


def test_a_loop_goes_round_its_button_and_into_the_seam() -> None:
    # 20 lignes are 1/2 in: 2 x (1/2 + 1/4) + 2 x 5/8 = 2 3/4 in; six of them, none for the spare
    # button: 16 1/2 in.
    assert needed(in_print(BACKS + LOOPS), "loops") == length("16 1/2 in")


def test_a_button_whose_thickness_nobody_states_is_said_to_be_taken_as_flat() -> None:
    # 2 x (1.2 + 0.3) + 2 x 1.5 = 6 cm; six of them 36 cm.
    metric = HEADING.replace('"apron"', '"apron"\nunit = "cm"') + BACKS
    flat = LOOPS.replace("20 lignes", "12 mm").replace('thickness = "1/4"\n', "")
    found = estimate(plan(metric + flat))
    assert needed(found, "loops") == length("36 cm")
    told = "apron: buttons: taken as flat, 0.3 cm thick, for buttonholes and loops."
    assert told in found.granted
    stated = estimate(plan(metric + LOOPS.replace("1/4", "4 mm")))
    assert not any("thick" in one for one in stated.granted)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (LOOPS.replace('size = "20 lignes"\n', ""), "which states none; add size"),
        (LOOPS.replace('buttons = "buttons"', 'buttons = "button"'), "did you mean 'buttons'?"),
        (BONES.replace("10", "1/4"), "clear leaves nothing of the bone"),
        (BONES + 'along = "back: left"\n', "boning states one of along, length and casing_for"),
        (
            BONES + '[[boning]]\nname = "casing"\ncasing_for = "bnes"\n',
            "there are no bones 'bnes'; did you mean 'bones'?",
        ),
        (
            '[[lacing]]\nname = "lace"\nalong = "back: lft"\napart = "1"\ngap = "2"\n',
            "'back' has no edge 'lft'; did you mean 'left'?",
        ),
        (
            '[[lacing]]\nname = "lace"\nlength = "9"\ngap = "2"\n',
            "a lacing states one of apart and pairs",
        ),
        (
            '[[lacing]]\nname = "lace"\nlength = "9"\npairs = 3\ngap = "2"\nrows = 2\n',
            "rows and overlap are for trims",
        ),
    ],
)
def test_a_closure_that_hangs_on_nothing_is_refused(text: str, told: str) -> None:
    (found,) = complaints(HEADING + BACKS + text)
    assert told in found


LENGTHS = (
    'sold = [{ put_up = "each", length = "11 in" }, { put_up = "each", length = "12 in" }, '
    '{ put_up = "pack of 6", length = "13 in" }, { put_up = "each", length = "13 in" }]\n'
)


def ready_cut(more: str, length_of_channel: str = "13") -> str:
    return (
        f'{BACKS}[[boning]]\nname = "bones"\nlength = "{length_of_channel}"\nquantity = 7\n'
        f"{LENGTHS}{more}\n"
    )


def test_bones_sold_ready_cut_are_the_next_longer_ones_and_cut_down() -> None:
    # A channel of 13 in, 1/4 in clear at each end: 12 1/2 in. Seven of 13 in: a pack of 6 and one.
    found = in_print(ready_cut(""))
    pack, single = (line for line in found.purchases if "bones" in line.names)
    assert [(one.buy.bought, one.buy.unit) for one in (pack, single)] == [
        (1, "pack of 6"), (1, "each")
    ]  # fmt: skip
    assert single.notes[-2:] == ("13 in long", "cut to 12 1/2 in")
    assert single.buy.steps[-1].result == 1
    assert [(step.label, step.result) for step in single.buy.steps[:3]] == [
        ("finished length as stated", length("13 in")),
        ("clear of both ends of its channel", length("12 1/2 in")),
        ("the next longer one sold", length("13 in")),
    ]


def test_bones_that_are_not_cut_may_be_shorter_than_their_channels() -> None:
    line = bought(in_print(ready_cut('shorter = "1/2"')), "bones")
    assert line.buy.offer.length == length("12 in")
    assert line.buy.bought == 7
    assert line.notes[-2:] == ("12 in long", "1/2 in shorter than it might be")
    # A channel of 12 1/2 in has bones of 12 in as they are.
    exact = bought(in_print(ready_cut('shorter = "1/2"', "12 1/2")), "bones")
    assert exact.notes[-1] == "12 in long"


def test_bones_that_may_be_shorter_are_not_told_with_such_as_are_cut_down() -> None:
    # one item, two needs: a half inch decides which length of it is right
    items = [{"item": "steel-bone", "kind": "notion"}]
    sold = [{"item": "steel-bone", "put_up": "each", "length": long} for long in ("12 in", "13 in")]
    bones = '[[boning]]\nname = "{}"\nbuy = "steel-bone"\nlength = "13"\nquantity = 7\n{}\n'
    text = HEADING + BACKS + bones.format("cut", "") + bones.format("whole", 'shorter = "1/2"')
    found = estimate(plan(text), catalog(items, sold))
    cut, whole = bought(found, "cut"), bought(found, "whole")
    assert (cut.buy.offer.length, whole.buy.offer.length) == (length("13 in"), length("12 in"))
    assert cut.alike != whole.alike


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ('shorter = "1/4"', "'bones' is not sold between 12 1/4 in and 12 1/2 in long; "
         "the lengths sold are 11 in, 12 in, 13 in"),
        ('clear = "0"\nshorter = 0', ""),
        ('clear = "7"', "clear leaves nothing of the bone; write a smaller clear"),
    ],
)  # fmt: skip
def test_bones_that_are_sold_in_no_right_length_are_refused(more: str, told: str) -> None:
    found = complaints(HEADING + ready_cut(more))
    assert found == [] if not told else any(told in one for one in found)


def test_bones_longer_than_any_that_is_sold_are_refused() -> None:
    (found,) = complaints(HEADING + ready_cut("", "15"))
    assert "'bones' is not sold 14 1/2 in long, or longer" in found


def test_bones_are_sold_ready_cut_or_by_the_length_and_not_both() -> None:
    both = ready_cut("").replace("sold = [", 'sold = [{ put_up = "by the length" }, ')
    (found,) = complaints(HEADING + both)
    assert "'bones' would be sold ready cut and by the length" in found
    no_length = BACKS + '[[boning]]\nname = "bones"\nlength = "9"\nsold = [{ put_up = "each" }]\n'
    (found,) = complaints(HEADING + no_length)
    assert "'bones' are sold each, and nothing says how long one is" in found


def test_bones_of_a_catalog_are_a_notion_in_several_lengths() -> None:
    shop = catalog(
        [{"item": "steel-bone", "kind": "notion"}],
        [
            {"item": "steel-bone", "put_up": "each", "length": f"{long} in", "price": "0.80",
             "currency": "USD"}
            for long in (9, 10, 11)
        ],
    )  # fmt: skip
    bones = '[[boning]]\nname = "bones"\nalong = "back: left"\nquantity = 2\nbuy = "steel-bone"\n'
    # A channel of 12 in: 11 1/2 in, two on each of two backs; 11 in is 1/2 in shorter.
    line = bought(estimate(plan(HEADING + BACKS + bones + 'shorter = "1/2"\n'), shop), "bones")
    assert (line.buy.bought, line.buy.offer.length) == (4, length("11 in"))


def test_a_lace_and_its_loops_take_as_much_in_centimetres_as_in_inches() -> None:
    both = []
    for unit, spell in (("in", Decimal(1)), ("cm", Decimal("2.54"))):
        of = {
            key: f'"{Decimal(size) * spell}"'
            for key, size in (("width", "10"), ("long", "12.5"), ("apart", "1.25"), ("gap", "2.75"),
                              ("tie", "9"), ("round", "0.6"), ("thick", "0.15"), ("seam", "0.5"))
        }  # fmt: skip
        text = (
            f'[garment]\nname = "stays"\nunit = "{unit}"\nseam_allowance = {of["seam"]}\n'
            f'[[fabric]]\nname = "print"\nwidths = ["45 in"]\n'
            f'[[piece]]\nname = "back"\ncut = "print"\nwidth = {of["width"]}\n'
            f'length = {of["long"]}\n[[lacing]]\nname = "lace"\nwaste = 0\n'
            f'along = "back: left"\napart = {of["apart"]}\ngap = {of["gap"]}\ntie = {of["tie"]}\n'
            f'[[notion]]\nname = "buttons"\nsize = {of["round"]}\nthickness = {of["thick"]}\n'
            'quantity = 5\n[[loops]]\nname = "loops"\nbuttons = "buttons"\nwaste = 0\n'
        )
        found = estimate(plan(text))
        both.append([needed(found, "lace"), needed(found, "loops")])
    assert both[0] == both[1]
    # 2 x (0.6 + 0.15) + 2 x 0.5 = 2.5 in, five of them
    assert both[0][1] == length("12.5 in")
