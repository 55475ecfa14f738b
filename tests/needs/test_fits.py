"""A piece that no width takes is refused with what would help, and what is advised does help."""

from __future__ import annotations

import pytest

from tests.plans import complaints

CLOTH = """
[garment]
name = "Harbour cloak"
[[fabric]]
name = "calico"
widths = ["45 in", "60 in"]
{fabric}
[[piece]]
name = "panel"
cut = ["calico"]
{piece}
"""
SEAM = "cut the piece in parts with a seam"
EITHER = 'let the piece lie either way (grain = "either")'
WIDE = 'width = "70"\nlength = "30"\n'
TAPER = 'shape = "taper"\ntop = "40"\nbottom = "80"\nlength = "30"\n'
ON_FOLD = 'width = "40"\nlength = "{long}"\nedges = {{ left = "{edge}" }}\n'
TUBE = 'made = "tube"\nwidth = "2"\nlength = "90"\n'
SELVEDGE = WIDE + 'edges = { left = "selvedge" }\n'
TURNED = 'grain = "either"\n'


def said(piece: str, fabric: str = "") -> list[str]:
    return complaints(CLOTH.format(piece=piece, fabric=fabric))


ADVISED = [
    # as it was planned, the advice, and the same with the advice taken
    (WIDE, "", EITHER, WIDE + TURNED, ""),
    ('shape = "box"\n' + WIDE, "", EITHER, 'shape = "box"\n' + WIDE + TURNED, ""),
    (TAPER, "", EITHER, TAPER + TURNED, ""),
    (TUBE + 'grain = "crosswise"\n', "", EITHER, TUBE + TURNED, ""),
    (
        TUBE + 'grain = "crosswise"\n',
        "nap = true",
        'lay it along the fabric (grain = "lengthwise"), or cut it in parts with a seam',
        TUBE,
        "nap = true",
    ),
    (WIDE, "nap = true", SEAM, 'quantity = 2\nwidth = "35"\nlength = "30"\n', "nap = true"),
    (
        SELVEDGE,
        "",
        f"write seam for what is on the selvedge and {EITHER}",
        WIDE + TURNED,
        "",
    ),
    (
        ON_FOLD.format(long=30, edge="fold"),
        "",
        EITHER,
        ON_FOLD.format(long=30, edge="fold") + TURNED,
        "",
    ),
    (
        ON_FOLD.format(long=90, edge="fold"),
        "",
        "cut it in two with a seam in the place of the fold",
        "quantity = 2\n" + ON_FOLD.format(long=90, edge="seam"),
        "",
    ),
    (
        'width = "60"\nlength = "60"\ngrain = "bias"\n',
        "",
        "cut it on the straight grain, or in parts with a seam",
        'width = "57"\nlength = "60"\n',
        "",
    ),
    ('width = "50"\nlength = "80"\n', 'width = "45 in"', SEAM, 'width = "40"\nlength = "80"\n', ""),
]


@pytest.mark.parametrize(("piece", "fabric", "advice", "better", "better_fabric"), ADVISED)
def test_what_is_advised_for_a_piece_that_is_too_wide_helps(
    piece: str, fabric: str, advice: str, better: str, better_fabric: str
) -> None:
    (complaint,) = said(piece, fabric)
    assert complaint.endswith(f", or {advice}")
    assert said(better, better_fabric) == []


def test_of_one_width_among_wider_ones_nobody_says_that_it_is_the_widest() -> None:
    (complaint,) = said('width = "50"\nlength = "80"\n', 'width = "45 in"')
    assert "'panel' is cut 51 1/4 in wide, and 'calico' 45 in wide has 44 in to use" in complaint
    assert "; take it 60 in wide, or " in complaint
    assert said('width = "50"\nlength = "80"\n', 'width = "60 in"') == []


def test_where_no_width_on_offer_takes_a_piece_the_width_that_would_is_told() -> None:
    (complaint,) = said(WIDE)
    assert "the widest 'calico' on offer (60 in) has 59 in to use" in complaint
    assert "; take a fabric with at least 71 1/4 in to use, or " in complaint


def test_a_fabric_that_is_all_selvedge_is_to_blame_and_not_its_piece() -> None:
    text = CLOTH.format(fabric='selvedge = "31"', piece='width = "7"\nlength = "30"\n')
    assert complaints(text) == [
        "apron.toml, line 7 (fabric 'calico'): two selvedges of 31 in leave nothing to use of "
        "60 in; state a smaller selvedge, or the usable width"
    ]


def test_a_piece_on_the_fold_and_the_selvedge_is_told_as_it_lies() -> None:
    edges = 'edges = { left = "fold", right = "selvedge" }\n'
    (complaint,) = said('width = "10"\nlength = "30"\n' + edges)
    assert (
        "'panel' lies on the fold with its other side on the selvedge, and is, opened out, 20 in "
        "wide; 'calico' 60 in wide is 60 in from edge to edge; give that side a seam"
    ) in complaint
    assert said('width = "10"\nlength = "30"\nedges = { left = "fold" }\n') == []


def test_a_bolt_that_is_too_short_says_what_the_piece_takes_of_it() -> None:
    # 70 in and two seams of 5/8 in; with 1 in of each end straightened, and 1/25 lost in the wash
    panel = 'width = "17"\nlength = "70"\n'
    (complaint,) = said(panel, 'bolt = "2 yd"')
    assert (
        "'panel' lies 71 1/4 in along the fabric and takes 73 1/4 in of it with straightened ends, "
        "and no bolt is longer than 72 in"
    ) in complaint
    (complaint,) = said(panel, 'bolt = "2 yd"\nshrinkage = "4 %"')
    assert "takes about 76 5/16 in of it with straightened ends and shrinkage" in complaint
    (complaint,) = said(panel, 'bolt = "70 in"\nstraightening = "0"')
    assert "'panel' lies 71 1/4 in along the fabric, and no bolt is longer than 70 in" in complaint
    assert said(panel, 'bolt = "73 1/4 in"\nstep = "1/4"') == []
