"""Which sizes a piece takes hangs on its shape and on how it is made up."""

from __future__ import annotations

import pytest

from estimator.edges import EdgeFinish, Finish
from estimator.plan import Grain, Made, Shape
from estimator.written import length
from tests.plans import HEADING, complaints, plan


def piece(body: str) -> str:
    return f'{HEADING}[[piece]]\nname = "panel"\ncut = "print"\n{body}\n'


def refused(body: str) -> str:
    """What is wrong and what would be right, of the one complaint about a piece."""
    (found,) = complaints(piece(body))
    return found.split(": ", 1)[1]


@pytest.mark.parametrize(
    ("body", "told"),
    [
        ('width = "20"', "a rectangle takes width and length, and this one states width; "
         "add length"),
        ("", "a rectangle takes width and length, and this one states no size; "
         "add width and length"),
        ('width = "20"\nlength = "3"\nwaist = "28"', "a rectangle takes width and length, and this "
         "one states length, waist, width; leave out waist"),
        ('shape = "taper"\nwidth = "20"\nlength = "3"', "a taper takes length and top and bottom, "
         "and this one states length, width; add top and bottom, leave out width"),
        ('shape = "sector"\nwaist = "20"\nlength = "3"', "a sector takes length and waist and "
         "share, and this one states length, waist; add share"),
        ('made = "joined strip"\nlength = "3"', "a joined strip takes length and ring or length "
         "and widths or length and onto, and this one states length; add ring"),
        ('made = "joined strip"\nlength = "3"\nring = "90"\nwidths = 2', "a joined strip takes "
         "length and ring or length and widths or length and onto, and this one states length, "
         "ring, widths; leave out widths"),
        ('made = "tube"\nwidth = "3"', "a tube takes width and length or width and onto, and this "
         "one states width; add length"),
        ('made = "tube"\nshape = "box"\nwidth = "3"\nlength = "9"', "a tube is cut as a rectangle, "
         "not a box; leave shape out"),
        ('width = "20"\nlength = "3"\nfullness = 2', "fullness goes with onto, the edge it is "
         "gathered onto, or with a ring; add onto = \"piece: edge\", or the ring to which it is "
         "gathered"),
        ('width = "20"\nlength = "3"\njoined = "open"', "joined goes with made = 'joined strip'; "
         "leave joined out"),
        ('made = "tube"\nwidth = "2"\nlength = "3"\ntakes_up = [{ kind = "tuck", depth = "1" }]',
         "pleats, tucks and darts go into flat rectangles and boxes; leave takes_up out"),
        ('made = "tube"\nwidth = "2"\nlength = "3"\nsizes = "cut"', "cut sizes are given, and yet "
         "something is to be made up; give the finished sizes"),
    ],
)  # fmt: skip
def test_a_piece_with_the_wrong_sizes_is_told_which_to_add_or_leave_out(
    body: str, told: str
) -> None:
    assert refused(body) == told


@pytest.mark.parametrize(
    ("key", "written", "told"),
    [
        (
            "fullness",
            "0.05",
            "a fullness of '0.05' is not from 0.1 to 20; 2 is usual for a ruffle, "
            "0.5 for a cuff onto a gathered sleeve",
        ),
        ("fullness", '"two"', "'two' is not a number; write fullness as in 2 or 1.5"),
        ("fullness", "nan", "'nan' is not a number; write fullness as in 2 or 1.5"),
        ("fullness", "inf", "'inf' is not a number; write fullness as in 2 or 1.5"),
        ("fullness", '"1/0"', "'1/0' is not a number; write fullness as in 2 or 1.5"),
        ("quantity", "0", "0 is not from 1 to 100000; write how many there are"),
        ("quantity", "-2", "-2 is not from 1 to 100000; write how many there are"),
        ("quantity", "1000000", "1000000 is not from 1 to 100000; write how many there are"),
        ("quantity", "true", "'true' is not a whole number; write a whole number, as in 4"),
        ("quantity", '"four"', "'four' is not a whole number; write a whole number, as in 4"),
    ],
)
def test_a_count_or_a_fullness_that_cannot_be_is_refused(key: str, written: str, told: str) -> None:
    assert refused(f'width = "20"\nlength = "3"\n{key} = {written}').endswith(told)


def test_a_plain_panel_is_a_flat_rectangle_with_seams_on_the_lengthwise_grain() -> None:
    (panel,) = plan(piece('width = "20"\nlength = "3"')).piece
    assert (panel.shape, panel.made, panel.grain) == (
        Shape.RECTANGLE, Made.FLAT, Grain.LENGTHWISE
    )  # fmt: skip
    assert (panel.quantity, panel.edges) == (1, {})


def test_one_fabric_is_as_good_as_a_list_of_one() -> None:
    one = piece('width = "20"\nlength = "3"')
    assert plan(one) == plan(one.replace('cut = "print"', 'cut = ["print"]'))
    assert plan(one) == plan(one.replace('cut = "print"', 'cut = [{ fabric = "print" }]'))


def test_a_finish_is_as_good_as_a_table_with_a_finish() -> None:
    (panel,) = plan(piece('width = "20"\nlength = "3"\nedges = { top = "raw" }')).piece
    (table,) = plan(piece('width = "20"\nlength = "3"\nedges.top = { finish = "raw" }')).piece
    assert panel == table
    assert panel.edges["top"].finish == EdgeFinish(Finish.RAW)


def test_a_named_edge_states_its_finished_length() -> None:
    body = 'width = "20"\nlength = "3"\nedges = { neckline = { length = "14 1/4" } }'
    (panel,) = plan(piece(body)).piece
    assert panel.edges["neckline"].length == length("14 1/4")
    assert panel.edges["neckline"].finish == EdgeFinish(Finish.SEAM)


def test_a_fullness_may_have_a_decimal_comma() -> None:
    strip = 'made = "joined strip"\nlength = "3"\nonto = "panel: top"\nfullness = "1,5"'
    found = complaints(piece(strip))
    assert not [one for one in found if "fullness" in one]


def test_a_whole_number_in_quotes_is_a_whole_number() -> None:
    assert plan(piece('width = "20"\nlength = "3"\nquantity = "4"')).piece[0].quantity == 4


@pytest.mark.parametrize("edges", ["[]", '["panel: left"]', '["a: top", "b: top", "c: top"]'])
def test_a_seam_joins_two_edges(edges: str) -> None:
    text = piece('width = "20"\nlength = "3"') + f"[[seam]]\nedges = {edges}\n"
    assert complaints(text)[0].startswith("apron.toml, line 14: edges")


def test_a_misspelt_side_is_refused_and_told_the_nearest() -> None:
    said = refused('width = "14 1/2"\nlength = "21"\nedges = { botom = "hem 1" }')
    assert "'botom' is no side of a piece" in said
    assert "did you mean 'bottom'?" in said
