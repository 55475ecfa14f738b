"""Linings, underlinings and interfacings beside their shell, worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import Estimate
from estimator.measure import Length
from estimator.written import length
from tests.plans import HEADING, Size, by, complaints, in_print

LINING = '[[fabric]]\nname = "lawn"\nrole = "lining"\nwidths = ["54 in"]\nselvedge = "0"\n'
PANEL = """
[[piece]]
name = "panel"
cut = ["print", { fabric = "lawn"%s }]
width = "20"
length = "30"
edges = { bottom = "hem 2" }
"""


def lined(entry: str, piece: str = PANEL) -> Estimate:
    return in_print(LINING + piece % entry)


def size(found: Estimate) -> Size:
    """The cut size in the lining."""
    (choice,) = (one for one in found.fabrics if "lawn" in one.need.names)
    (piece,) = choice.chosen.pieces
    return piece.width.value, piece.length.value


def note(found: Estimate) -> str:
    (choice,) = (one for one in found.fabrics if "lawn" in one.need.names)
    return choice.chosen.pieces[0].note


def test_an_underlining_is_cut_as_its_shell() -> None:
    # 20 + 2 x 5/8 = 21 1/4; 30 + 5/8 + 2 + 1/4 = 32 7/8
    assert size(lined("")) == by("21 1/4", "32 7/8")


def test_a_free_hanging_lining_ends_an_inch_above_the_hem_and_takes_its_own() -> None:
    # 30 - 1 = 29; + 5/8 + 3/4 + 1/4 = 30 5/8 (common practice: 1 in above, then its own hem)
    found = lined(', shorter = "1", edges = { bottom = "hem 3/4" }')
    assert size(found) == by("21 1/4", "30 5/8")
    assert "1 in shorter than its shell, then its own hem" in note(found)


@pytest.mark.parametrize(
    ("edge", "ends"),
    [
        ("seam", "then its seam allowance"),
        ("rolled hem", "then its own rolled hem"),
        ("hem 3/4", "then its own hem"),
        ("raw", "left raw there"),
    ],
)
def test_a_shorter_lining_is_told_with_how_its_lower_edge_is_finished(edge: str, ends: str) -> None:
    found = lined(f', shorter = "2", edges = {{ bottom = "{edge}" }}')
    assert note(found) == f"2 in shorter than its shell, {ends}"
    # an edge that the lining does not name is finished as its piece's
    as_its_piece = lined(', shorter = "2"', PANEL.replace("hem 2", edge))
    assert note(as_its_piece) == note(found)


def test_a_lining_sewn_into_the_hem_takes_an_ease_pleat() -> None:
    # 30 + 1/2 = 30 1/2; + 2 x 5/8 = 31 3/4
    found = lined(', longer = "1/2", edges = { bottom = "seam" }')
    assert size(found) == by("21 1/4", "31 3/4")
    assert "for an ease pleat" in note(found)


def test_a_shorter_lining_of_a_taper_ends_where_its_slant_is_there() -> None:
    gore = PANEL.replace('width = "20"', 'shape = "taper"\ntop = "10"\nbottom = "20"')
    gore = gore.replace('"hem 2"', '"raw", top = "raw", left = "raw", right = "raw"')
    # From 10 to 20 in over 30: 1 in wider in 3. 3 in shorter it is 19 in wide below, and 27 long.
    assert size(lined(', shorter = "3"', gore)) == by("19", "27")
    assert size(lined(', longer = "3"', gore)) == by("21", "33")


def test_a_shorter_lining_of_a_circle_has_a_shorter_radius() -> None:
    circle = (
        '[[piece]]\nname = "skirt"\ncut = ["print", {{ fabric = "lawn"{} }}]\nshape = "sector"\n'
        'share = "1/4"\nwaist = "14"\nlength = "20"\n'
        'edges = {{ bottom = "raw", left = "raw", right = "raw" }}\n'
    )
    whole = size(in_print(LINING + circle.format("")))
    short = size(in_print(LINING + circle.format(', shorter = "1"')))
    assert [a - b for a, b in zip(whole, short, strict=True)] == [length("1 in")] * 2


def test_interfacing_is_trimmed_all_round() -> None:
    # 21 1/4 - 2 x 1/2 = 20 1/4; 32 7/8 - 1 = 31 7/8: 1/8 in of it is caught in the seams.
    found = lined(', trimmed = "1/2"')
    assert size(found) == by("20 1/4", "31 7/8")
    assert "trimmed by 1/2 in all round" in note(found)


def test_interfacing_trimmed_by_its_allowance_is_cut_to_the_finished_size() -> None:
    seams = PANEL.replace('"hem 2"', '"seam"')
    assert size(lined(', trimmed = "5/8"', seams)) == by("20", "30")
    assert size(lined(', cut_to = "finished size"', seams)) == by("20", "30")


def gore(bottom: str, seam: str, more: str = "") -> str:
    """A taper from 10 in at its top, 12 in long, every edge with the same finish."""
    edges = ", ".join(f'{side} = "{seam}"' for side in ("top", "bottom", "left", "right"))
    sizes = f'shape = "taper"\ntop = "10"\nbottom = "{bottom}"\n{more}'
    shaped = PANEL.replace('width = "20"', sizes).replace('length = "30"', 'length = "12"')
    return shaped.replace('bottom = "hem 2"', edges)


def test_interfacing_of_a_taper_is_trimmed_along_its_slanted_sides_and_at_both_ends() -> None:
    # Each side goes 5 in outwards over 12, so 1 / cos is 13/12, and 3/4 in off is 13/16 across.
    # 3/4 in from its ends it is 10 + 10 x 3/4 / 12 = 10 5/8 and 20 - 5/8 = 19 3/8 in wide: less
    # 2 x 13/16 these are 9 and 17 3/4 in, and 12 - 1 1/2 = 10 1/2 in long.
    found = lined(', trimmed = "3/4"', gore("20", "raw"))
    assert size(found) == by("17 3/4", "10 1/2")
    assert "cut 9 in at its narrow end" in note(found)


def test_a_taper_with_a_square_side_loses_the_plain_amount_there() -> None:
    # 5 in outwards over 12 at one side only: 3/4 in from the ends 10 5/16 and 14 11/16 in wide;
    # less 13/16 at the slanted and 3/4 at the square side these are 8 3/4 and 13 1/8.
    found = lined(', trimmed = "3/4"', gore("15", "raw", 'slant = "left side"\n'))
    assert size(found) == by("13 1/8", "10 1/2")
    assert "cut 8 3/4 in at its narrow end" in note(found)


@given(st.integers(81, 240), st.integers(1, 16))
def test_a_taper_trimmed_by_its_seams_is_cut_to_the_finished_size(bottom: int, seam: int) -> None:
    found = lined(f', trimmed = "{seam}/16"', gore(f"{bottom}/8", f"seam {seam}/16"))
    assert size(found) == by(f"{bottom}/8", "12")
    assert "cut 10 in at its narrow end" in note(found)


def test_interfacing_may_have_a_width_of_its_own() -> None:
    # 3 + 2 x 5/8 = 4 1/4 along the hem of the panel.
    found = lined(', length = "3", edges = { bottom = "seam" }')
    assert size(found) == by("21 1/4", "4 1/4")


def test_a_lining_may_be_less_full_than_its_shell() -> None:
    frill = (
        '[[piece]]\nname = "frill"\ncut = ["print", { fabric = "lawn", fullness = 1.2 }]\n'
        'made = "joined strip"\njoined = "open"\nlength = "4"\nonto = "band: top"\nfullness = 2\n'
        '[[piece]]\nname = "band"\ncut = "print"\nwidth = "20"\nlength = "3"\n'
    )
    # The shell is 20 x 2 = 40 in long, its lining 20 x 1.2 = 24; and 5/8 in at each end: 25 1/4.
    assert size(in_print(LINING + frill)) == by("25 1/4", "5 1/4")


@pytest.mark.parametrize(
    ("entry", "told"),
    [
        (', shorter = "30"', "shorter leaves nothing of the length"),
        (', trimmed = "11"', "trimming leaves nothing of the piece"),
        (', shorter = "1", length = "20"', "it states length and shorter; state one of them"),
        (", fullness = 2", "fullness is not a size of this piece"),
    ],
)
def test_what_would_leave_nothing_or_says_two_things_is_refused(entry: str, told: str) -> None:
    (found,) = complaints(HEADING + LINING + PANEL % entry)
    assert told in found


@given(st.integers(1, 200), st.integers(0, 200))
def test_a_shorter_lining_is_never_cut_longer(less: int, more: int) -> None:
    def long(by_so_much: int) -> Length:
        return size(lined(f', shorter = "{by_so_much}/16"'))[1]

    assert long(less + more) <= long(less) < size(lined(""))[1]


FUSIBLE = '[[fabric]]\nname = "lawn"\nrole = "interfacing"\nwidths = ["{}"]\nselvedge = "0"\n'


def fused(width: str, entry: str, piece: str = PANEL) -> Estimate:
    return in_print(FUSIBLE.format(width) + piece % entry)


def parts(found: Estimate) -> tuple[int, Length]:
    (choice,) = (one for one in found.fabrics if "lawn" in one.need.names)
    (piece,) = choice.chosen.pieces
    return piece.quantity, piece.width.value


def test_narrow_fusible_is_pieced_from_the_fewest_parts() -> None:
    # A panel 21 1/4 in wide on 18 in of fusible: two parts of (21 1/4 + 1/4) / 2 = 10 3/4 in. On
    # 8 in they are three: (21 1/4 + 1/2) / 3 = 7 1/4 in.
    pieced = ', pieced = "1/4"'
    assert parts(fused("18 in", pieced)) == (2, length("10 3/4 in"))
    assert parts(fused("8 in", pieced)) == (3, length("7 1/4 in"))
    assert "2 parts beside each other, overlapped by 1/4 in" in note(fused("18 in", pieced))


def test_fusible_that_takes_the_piece_is_not_pieced() -> None:
    assert parts(fused("22 in", ', pieced = "1/4"')) == (1, length("21 1/4 in"))
    assert parts(fused("21 1/4 in", ', pieced = "0"')) == (1, length("21 1/4 in"))


def test_parts_may_butt() -> None:
    assert parts(fused("11 in", ', pieced = "0"')) == (2, length("10 5/8 in"))


def test_fusible_is_not_pieced_unasked() -> None:
    (found,) = complaints(HEADING + FUSIBLE.format("18 in") + PANEL % "")
    assert "'panel' is cut 21 1/4 in wide, and the widest 'lawn' on offer (18 in)" in found


def test_a_facing_may_be_pieced_along_its_edge() -> None:
    # Onto 20 in, crosswise: 20 + 2 x 5/8 = 21 1/4 in across, in two parts of 10 3/4 in.
    facing = (
        '[[piece]]\nname = "facing"\ncut = ["print", { fabric = "lawn"%s, grain = "crosswise" }]\n'
        'made = "facing"\nwidth = "3"\nonto = "band: top"\n'
        '[[piece]]\nname = "band"\ncut = "print"\nwidth = "20"\nlength = "3"\n'
    )
    assert parts(fused("18 in", ', pieced = "1/4"', facing)) == (2, length("10 3/4 in"))


def test_strips_and_circles_are_not_pieced() -> None:
    circle = (
        '[[piece]]\nname = "skirt"\ncut = [{ fabric = "print", pieced = "1/4" }]\n'
        'shape = "sector"\nshare = "1/4"\nwaist = "14"\nlength = "20"\n'
    )
    (found,) = complaints(HEADING + circle)
    assert "strips, circles and pieces on the bias are not pieced" in found


@given(st.integers(24, 400))
def test_parts_cover_the_piece_and_each_goes_on_the_fusible(eighths: int) -> None:
    width = length(f"{eighths}/8 in")
    number, part = parts(fused(f"{eighths}/8 in", ', pieced = "1/4"'))
    overlapped = length("1/4 in") * (number - 1)
    assert part <= width
    assert part * number - overlapped >= length("21 1/4 in")
