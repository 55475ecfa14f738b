"""Pieces on the bias, by the box that they take at 45 degrees, against corners turned in floats."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import estimate
from estimator.measure import INCH
from estimator.needs.cut_piece import CutPiece
from estimator.reports.fabric_papers import proof_text
from estimator.written import length
from tests.plans import by, complaints, cut_pieces, in_print, needed, plan
from tests.verify_outlines import faults_in

MARK = 1 / 16


def cowl(more: str = "", size: str = 'width = "18 3/4"\nlength = "20 3/4"\n') -> str:
    return f'[[piece]]\nname = "cowl"\ncut = "print"\n{size}{more}'


BIAS = 'grain = "bias"\n'


def cut(text: str) -> CutPiece:
    (piece,) = cut_pieces(in_print(text)).values()
    return piece


def test_a_piece_on_the_bias_takes_width_and_length_over_the_root_of_two_both_ways() -> None:
    # Cut 20 by 22: 42 / 1.41421 = 29.698, up to 29 3/4
    piece = cut(cowl(BIAS))
    assert (piece.width.value, piece.length.value) == by("29 3/4", "29 3/4")
    assert piece.on_bias == by("20", "22")
    assert piece.finished == by("18 3/4", "20 3/4")
    assert piece.note == "on the bias: cut 20 in by 22 in, and laid at 45°"


def test_the_working_of_a_piece_on_the_bias_goes_from_its_own_size_to_its_box() -> None:
    steps = [(step.label, step.result) for step in cut(cowl(BIAS)).width.steps]
    assert steps[2] == ("right seam allowance", length("20"))
    assert steps[3] == ("its cut length, as it lies at 45°", length("42"))
    assert steps[-1] == ("up to the mark of the tape", length("29 3/4"))


def test_waste_counts_the_piece_on_the_bias_and_not_its_box() -> None:
    # 20 by 22 in 45 by 36 in (a yard)
    option = in_print(cowl(BIAS)).fabrics[0].chosen
    assert option.waste == 1 - (length("20") / length("45")) * (length("22") / length("36"))


def test_the_proof_of_a_layout_with_a_piece_on_the_bias_is_one_of_rectangles() -> None:
    said = proof_text(in_print(cowl(BIAS)).fabrics[0].chosen)
    assert said.startswith("no layout of these rectangles buys less; enough fabric, but")


def test_a_piece_on_the_bias_keeps_the_lengths_of_its_edges() -> None:
    lace = '[[trim]]\nname = "lace"\nalong = "cowl: bottom"\nends = "raw"\nwaste = 0\n'
    assert needed(in_print(cowl(BIAS) + lace), "lace") == length("18 3/4")


def test_a_band_may_lie_on_the_bias_and_take_its_length_from_an_edge() -> None:
    # The cowl's top is 18 3/4: the band is cut 2 x 1 + 1 1/4 by 18 3/4 + 1 1/4, 23 1/4 / 1.41421
    band = '[[piece]]\nname = "band"\ncut = "print"\nmade = "folded band"\nwidth = "1"\n'
    found = cut_pieces(in_print(cowl() + band + 'onto = "cowl: top"\n' + BIAS))["band"]
    assert found.on_bias == by("3 1/4", "20")
    assert (found.width.value, found.length.value) == by("16 1/2", "16 1/2")


def test_one_fabric_of_a_piece_may_lie_on_the_bias_and_the_other_on_the_grain() -> None:
    text = cowl().replace('cut = "print"', 'cut = ["print", { fabric = "silk", grain = "bias" }]')
    silk = '[[fabric]]\nname = "silk"\nwidths = ["45 in"]\n'
    print_, silk_ = (choice.chosen.pieces[0] for choice in in_print(silk + text).fabrics)
    assert (print_.on_bias, silk_.on_bias) == (None, by("20", "22"))


@pytest.mark.parametrize(
    ("body", "told"),
    [
        (cowl(BIAS + 'edges.left = "fold"\n'), "the piece lies on the bias, and its left edge on "
         "the fold, which runs along the grain; give the whole piece, or leave grain out"),
        (cowl(BIAS + 'edges.right = "selvedge"\n'), "the piece lies on the bias, and its right "
         "edge on the selvedge, which runs along the grain; write seam for it, or leave grain out"),
        (cowl(BIAS + 'made = "joined strip"\n', 'length = "4"\nring = "60"\n'), "a joined strip is "
         "made of widths of the fabric, which do not lie on the bias; "
         'write made = "bias strip" for strips cut on the bias and joined, or leave grain out'),
        (cowl(BIAS + 'made = "bias strip"\n'), "a bias strip lies on the bias already; "
         "leave grain out"),
        (cowl(BIAS, 'shape = "sector"\nwaist = "9"\nlength = "9"\nshare = "1/4"\n'),
         "a part of a circle is on the bias somewhere, however it lies; leave grain out"),
        (cowl(BIAS, 'width = "30"\nlength = "38"\n'), "'cowl' lies on the bias 49 7/8 in wide, and "
         "the widest 'print' on offer (45 in) has 45 in to use; take a fabric with at least "
         "49 7/8 in to use, or cut it on the straight grain, or in parts with a seam"),
    ],
)  # fmt: skip
def test_what_puts_a_piece_off_the_bias_is_told(body: str, told: str) -> None:
    heading = '[garment]\nname = "gown"\n[[fabric]]\nname = "print"\nwidths = ["45 in"]\n'
    (found,) = complaints(heading + 'selvedge = "0"\n' + body)
    assert found.endswith(told)


SHAPES = {
    "rectangle": 'width = "{bottom}/8"\nlength = "{long}/8"\n',
    "both sides": 'shape = "taper"\ntop = "{top}/8"\nbottom = "{bottom}/8"\nlength = "{long}/8"\n',
}
SQUARE = SHAPES["both sides"] + 'slant = "{slant}"\n'


@settings(max_examples=200)
@given(
    top=st.integers(1, 140), bottom=st.integers(1, 140), long=st.integers(8, 140),
    slant=st.sampled_from(["rectangle", "both sides", "left side", "right side"]),
)  # fmt: skip
def test_the_box_on_the_bias_holds_the_turned_outline_and_no_more_than_a_mark_above(
    top: int, bottom: int, long: int, slant: str
) -> None:
    size = SHAPES.get(slant, SQUARE).format(top=top, bottom=bottom, long=long, slant=slant)
    heading = """
[garment]
name = "gown"
seam_allowance = "0"
[[fabric]]
name = "print"
widths = ["80 in"]
selvedge = "0"
"""
    text = heading + cowl(BIAS, size)
    if complaints(text):
        return
    option = estimate(plan(text)).fabrics[0].chosen
    assert faults_in(option.pieces, option.laid, option.usable) == []
    wide, narrow, tall = max(top, bottom) / 8, min(top, bottom) / 8, long / 8
    if slant == "rectangle":
        wide = narrow = bottom / 8
    start = (wide - narrow) / 2 if slant in ("rectangle", "both sides") else 0
    corners = [(0.0, 0.0), (wide, 0.0), (start + narrow, tall), (start, tall)]
    reaches = sorted(
        max(x * math.sqrt(0.5) + way * y * math.sqrt(0.5) for x, y in corners)
        - min(x * math.sqrt(0.5) + way * y * math.sqrt(0.5) for x, y in corners)
        for way in (1, -1)
    )
    (piece,) = option.pieces
    sizes = [piece.width.value.ticks / INCH.ticks, piece.length.value.ticks / INCH.ticks]
    for got, least in zip(sizes, reaches, strict=True):
        assert -1e-9 <= got - least <= 3 * MARK
