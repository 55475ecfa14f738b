"""Bindings and pipings cut from a fabric of the garment."""

import pytest

from estimator.reports.assumptions import assumptions
from estimator.written import length
from tests.plans import HEADING, bought, complaints, cut_pieces, cut_size, in_print, needed

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'
CORD = (
    '[[trim]]\nname = "cord"\nalong = ["panel: left", "panel: bottom", "panel: right"]\n'
    'ends = "raw"\nwidth = "3/16"\nwaste = 0\n'
)


def binding(more: str, name: str = "binding") -> str:
    return f'[[trim]]\nname = "{name}"\ncut_from = "print"\n{more}\n'


def test_a_binding_takes_the_cloth_of_a_bias_strip_as_long_as_its_edges() -> None:
    # 26 + 20 + 26 = 72 in and two ends of 1/4 in: 72 1/2 in, finished 1/2 in wide, so cut 2 in.
    along = 'along = ["panel: left", "panel: bottom", "panel: right"]\nwidth = "1/2"'
    cut = cut_pieces(in_print(PANEL + binding(along)))["binding"]
    strip = '[[piece]]\nname = "strip"\ncut = "print"\nmade = "bias strip"\nwidth = "2"\n'
    assert (cut.width.value, cut.length.value) == cut_size(strip + 'length = "72 1/2"\n')
    assert cut.finished[0] == length("1/2")
    # With a join at its ends 73.21 in. On either side of the diagonal of a 13 in square, 18.38 in,
    # lie strips of 16.38, 12.38 and 8.38 in: six are 74.31 in, less five joins of 0.71 in 70.77;
    # one of 4.38 in more, and a sixth join: 74.45 in.
    assert cut.width.value == length("13")
    assert cut.note == "cut into bias strips 2 in wide, and joined 6 times"


def test_a_binding_follows_its_edges_and_is_on_no_shopping_list_of_its_own() -> None:
    along = 'along = "panel: bottom"\nstrip = "2"'
    found = in_print(PANEL + binding(along))
    assert [line.names for line in found.purchases] == [("print",)]
    longer = in_print(PANEL.replace('"20"', '"40"') + binding(along))
    assert cut_pieces(longer)["binding"].finished[1] > cut_pieces(found)["binding"].finished[1]


def test_mitred_corners_of_a_binding_are_counted() -> None:
    # Beyond an inner edge a folded mitre takes twice the finished 1/2 in: 72 + 2 x 1 + 1/2 in,
    # and 0.71 in for the join at its ends.
    along = 'along = ["panel: left", "panel: bottom", "panel: right"]\nwidth = "1/2"\ncorners = 2'
    cut = cut_pieces(in_print(PANEL + binding(along)))["binding"]
    assert length("75.2 in") < cut.finished[1] < length("75.22 in")


def test_piping_takes_cord_and_a_strip_that_goes_round_it() -> None:
    # Cord 3/16 in thick is 0.589 in round; two seam allowances of 5/8 in: 1.839, cut 1 7/8 in. The
    # cord is 72 in with raw ends, and so is the strip, with two turned ends of 1/4 in and 0.71 in.
    found = in_print(PANEL + CORD + binding('covers = "cord"', "piping"))
    strip = cut_pieces(found)["piping"]
    assert strip.finished[0] is None
    assert "bias strips 1 7/8 in wide" in strip.note
    assert length("73.2 in") < strip.finished[1] < length("73.22 in")
    assert needed(found, "cord") == length("72")
    assert bought(found, "cord").buy.unit == "yd"
    assert "apron: piping: its strip goes round the cord, with two seam allowances." in assumptions(
        found
    )


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ('cut_from = "lawn"\nstrip = "2"\nalong = "panel: top"', "the plan has no fabric 'lawn'"),
        ('cut_from = "print"\nalong = "panel: top"', "nothing says how wide its strip is cut"),
        ('strip = "2"\nalong = "panel: top"', "strip and covers are for bias strips"),
        ('cut_from = "print"\nstrip = "2"\nalong = "panel: top"\nrepeat = "2"',
         "it is cut from a fabric and states repeat as well; leave out repeat"),
        ('cut_from = "print"\ncovers = "crod"', "there is no trim 'crod'; did you mean 'cord'?"),
        ('cut_from = "print"\nstrip = "30"\nalong = "panel: top"',
         "too wide to be cut on the bias"),
    ],
)  # fmt: skip
def test_a_binding_that_makes_no_sense_is_refused_once(more: str, told: str) -> None:
    text = f'{HEADING}{PANEL}{CORD}[[trim]]\nname = "binding"\n{more}\n'
    (found,) = complaints(text)
    assert told in found


@pytest.mark.parametrize(
    ("cord", "strip", "reaches"),
    [
        # 72 x 1.05 and two seams of 5/8 in: 76.85 in, and 0.71 in for the join at the strip's ends
        ('ease = "5 %"\nends = "in a seam"\n', "", "77.56"),
        ('ease = "5 %"\nends = "in a seam"\n', 'ease = "0 %"\n', "73.96"),
        ('joined = "in the round"\noverlap = "3"\n', "", "75.71"),
        ('ends = "in a seam"\n', 'ends = "raw"\n', "72.71"),
    ],
)
def test_a_strip_is_no_shorter_than_the_cord_that_it_covers_unless_it_says_so(
    cord: str, strip: str, reaches: str
) -> None:
    laid = CORD.replace('ends = "raw"\n', "") + cord
    found = in_print(PANEL + laid + binding(f'covers = "cord"\n{strip}', "piping"))
    long = cut_pieces(found)["piping"].finished[1]
    assert length(f"{reaches} in") <= long + length("0.01 in")
    assert long <= length(f"{reaches} in") + length("0.01 in")


def test_piping_round_a_cord_of_unknown_thickness_is_refused() -> None:
    text = PANEL + CORD.replace('width = "3/16"\n', "") + binding('covers = "cord"', "piping")
    (found,) = complaints(HEADING + text)
    assert "nothing says how thick the cord 'cord' is" in found
