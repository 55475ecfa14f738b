"""True outlines on the cloth, checked against an independent drawing and the formulas of shapes."""

from __future__ import annotations

from math import hypot, pi
from pathlib import Path

import pytest

from estimator import Estimate, estimate
from estimator.buying.one_width import WidthOption
from estimator.files import estimate_files
from estimator.reports.pictures.marks import Shape
from estimator.reports.pictures.outlines import Drawn, Grain, outlines
from tests import verify_outlines
from tests.plans import HEADING, in_print, plan
from tests.shipped_plans import ALL, SHOPS, stem

INCH = 203_200


def only(found: Estimate) -> tuple[WidthOption, list[Drawn]]:
    (choice,) = found.fabrics
    return choice.chosen, drawn_of(choice.chosen)


def drawn_of(option: WidthOption) -> list[Drawn]:
    return [one for cut in option.laid.cuts for one in outlines(option, cut)]


def inches(shape: Shape) -> list[tuple[float, float]]:
    return [(round(x / INCH, 3), round(y / INCH, 3)) for x, y in shape]


def area(shape: Shape) -> float:
    pairs = zip(shape, (*shape[1:], shape[0]), strict=True)
    return abs(sum(x * v - u * y for (x, y), (u, v) in pairs)) / 2


def same(one: Shape, other: Shape) -> bool:
    """Whether two shapes have the same corners, to a tick, wherever they begin."""
    return len(one) == len(other) and all(
        min(hypot(x - u, y - v) for u, v in other) <= 1.5 for x, y in one
    )


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_each_piece_of_a_shipped_plan_is_drawn_once_within_the_cloth(path: Path) -> None:
    found = estimate_files([path], SHOPS)
    for choice in found.fabrics:
        option = choice.chosen
        drawn = drawn_of(option)
        edge = option.breadth.selvedge.ticks
        for number, piece in enumerate(option.pieces):
            copies = [one for one in drawn if one.number == number]
            assert sum(one.lot.layers for one in copies) >= piece.quantity
        for one in drawn:
            assert all(-edge <= x <= option.breadth.of_a_layer.ticks + edge for x, _ in one.corners)
            assert min(y for _, y in one.corners) >= one.place.along - 1
            assert max(y for _, y in one.corners) <= one.place.along + one.place.length + 1


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_straight_pieces_lie_where_an_independent_drawing_has_them(path: Path) -> None:
    for choice in estimate_files([path], SHOPS).fabrics:
        option = choice.chosen
        theirs = verify_outlines.outlines(option.pieces, option.laid)
        ours = drawn_of(option)
        assert len(theirs) == len(ours)
        for mine, one in zip(ours, theirs, strict=True):
            piece = option.pieces[mine.number]
            if piece.arc or piece.selvedges:
                continue
            assert same(mine.corners, tuple((float(x), float(y)) for x, y in one.corners))


GORES = """
[[piece]]
name = "gore"
quantity = 4
cut = ["print"]
shape = "taper"
top = "6"
bottom = "10"
length = "20"
"""


@pytest.mark.parametrize("slant", ["both sides", "left side", "right side"])
def test_gores_head_to_tail_are_drawn_as_the_independent_drawing_has_them(slant: str) -> None:
    option, drawn = only(in_print(GORES + f'slant = "{slant}"\n'))
    assert option.laid.slanted
    theirs = verify_outlines.outlines(option.pieces, option.laid)
    for mine, one in zip(drawn, theirs, strict=True):
        assert same(mine.corners, tuple((float(x), float(y)) for x, y in one.corners))


def test_on_a_napped_fabric_the_top_of_each_taper_is_further_along_whichever_end_is_wide() -> None:
    text = GORES + GORES.replace("gore", "yoke").replace('top = "6"', 'top = "14"')
    napped = HEADING.replace('selvedge = "0"', 'selvedge = "0"\nnap = true')
    _, drawn = only(estimate(plan(napped + text)))
    for one in drawn:
        ends = sorted({y for _, y in one.corners})
        near, far = ([x for x, y in one.corners if y == end] for end in ends)
        wide_end_near = max(near) - min(near) > max(far) - min(far)
        assert wide_end_near == (one.lot.name == "gore")


def sector(share: str, more: str = "") -> str:
    return f"""
[[piece]]
name = "circle"
cut = ["print"]
shape = "sector"
share = "{share}"
waist = "12"
length = "9"
{more}
"""


RAW = 'edges = { top = "raw", bottom = "raw", left = "raw", right = "raw" }'


@pytest.mark.parametrize("share", ["1/4", "1/2", "3/4", "1"])
def test_a_part_of_a_circle_has_the_area_of_a_ring_by_its_share(share: str) -> None:
    # Without allowances: share x pi (R^2 - r^2), with r = 12 / (2 pi share) and R = r + 9.
    part = {"1/4": 0.25, "1/2": 0.5, "3/4": 0.75, "1": 1.0}[share]
    _, (one,) = only(in_print(sector(share, RAW)))
    inner = 12 / (2 * pi * part)
    ring = part * pi * ((inner + 9) ** 2 - inner**2)
    found = area(one.corners) - sum(map(area, one.holes))
    assert found / INCH**2 == pytest.approx(ring, rel=0.002)


@pytest.mark.parametrize("share", ["1/4", "1/2", "3/4", "1"])
def test_a_trimmed_part_of_a_circle_has_as_much_less_along_all_of_its_edges(share: str) -> None:
    # 1/4 in off a raw ring all round: both radii change by it, and the straight edges move in.
    cut = sector(share, RAW).replace('["print"]', '[{ fabric = "print", trimmed = "1/4" }]')
    part = {"1/4": 0.25, "1/2": 0.5, "3/4": 0.75, "1": 1.0}[share]
    _, (one,) = only(in_print(cut))
    inner = 12 / (2 * pi * part) + 0.25
    outer = inner + 8.5
    strips = 0 if share == "1" else 2 * 0.25 * (outer - inner)
    ring = part * pi * (outer**2 - inner**2) - strips
    found = area(one.corners) - sum(map(area, one.holes))
    assert found / INCH**2 == pytest.approx(ring, rel=0.004)


@pytest.mark.parametrize("share", ["1/4", "1/2", "3/4", "1"])
@pytest.mark.parametrize("grain", ["lengthwise", "crosswise", "either"])
def test_a_part_of_a_circle_touches_all_four_sides_of_its_box(share: str, grain: str) -> None:
    # The cut size is raised to 1/16 in, so that an arc may lie so much from the side.
    _, drawn = only(in_print(sector(share, f'grain = "{grain}"')))
    for one in drawn:
        place = one.place
        across, along = [x for x, _ in one.corners], [y for _, y in one.corners]
        sixteenth = INCH / 16 + 1
        assert 0 <= min(across) - place.across <= sixteenth
        assert 0 <= place.across + place.width - max(across) <= sixteenth
        assert -1 <= min(along) - place.along <= sixteenth
        assert -1 <= place.along + place.length - max(along) <= sixteenth


def test_a_piece_whose_edge_is_the_selvedge_reaches_to_the_edge_of_the_fabric() -> None:
    heading = HEADING.replace('selvedge = "0"', 'selvedge = "1/2"')
    text = """
[[piece]]
name = "panel"
quantity = 2
cut = ["print"]
width = "15"
length = "20"
edges = { left = "selvedge" }
"""
    # 45 in with two selvedges of 1/2 in: 44 in between them; 15 + 5/8 wide, one edge a seam.
    _, drawn = only(estimate(plan(heading + text)))
    near, far = sorted((inches(one.corners) for one in drawn), key=min)
    assert (min(x for x, _ in near), max(x for x, _ in near)) == (-0.5, 15.125)
    assert (min(x for x, _ in far), max(x for x, _ in far)) == (28.875, 44.5)


def test_a_piece_on_the_fold_lies_with_its_half_at_the_fold() -> None:
    heading = HEADING.replace('selvedge = "0"', 'selvedge = "0"\nlaid = "folded"')
    text = """
[[piece]]
name = "front"
cut = ["print"]
shape = "taper"
top = "5"
bottom = "8"
length = "20"
edges = { left = "fold" }
"""
    option, (one,) = only(estimate(plan(heading + text)))
    (piece,) = option.pieces
    assert piece.narrow is not None
    assert one.lot.half
    at_the_fold = [x for x, _ in one.corners if abs(x) < 1]
    assert len(at_the_fold) == 2
    assert area(one.corners) == pytest.approx(
        (piece.width.value + piece.narrow).ticks * piece.length.value.ticks / 4, rel=1e-6
    )


def test_a_turned_piece_has_its_grain_across_and_one_on_the_bias_at_45_degrees() -> None:
    text = """
[[piece]]
name = "sash"
cut = ["print"]
width = "5"
length = "40"
grain = "either"
[[piece]]
name = "collar"
cut = ["print"]
width = "4"
length = "9"
grain = "bias"
"""
    _, drawn = only(in_print(text))
    assert {one.lot.name: one.grain for one in drawn} == {
        "sash": Grain.ACROSS,
        "collar": Grain.BIAS,
    }
    collar = next(one for one in drawn if one.grain is Grain.BIAS)
    # 4 + 2 x 5/8 by 9 + 2 x 5/8, as it is cut
    assert area(collar.corners) / INCH**2 == pytest.approx(5.25 * 10.25, rel=1e-6)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_gore_on_the_selvedges_of_folded_fabric_has_its_slant_towards_the_fold(side: str) -> None:
    heading = HEADING.replace('selvedge = "0"', 'selvedge = "0"\nlaid = "folded"')
    slant = "right" if side == "left" else "left"
    text = f"""
[[piece]]
name = "front"
quantity = 2
cut = ["print"]
shape = "taper"
slant = "{slant} side"
top = "5"
bottom = "8"
length = "20"
edges = {{ {side} = "selvedge" }}
"""
    option, drawn = only(estimate(plan(heading + text)))
    for one in drawn:
        at_selvedges = [x for x, _ in one.corners if option.breadth.of_a_layer.ticks - x < 1]
        assert len(at_selvedges) == 2


@pytest.mark.parametrize("share", ["1/2", "1"])
def test_a_circle_on_the_fold_is_drawn_as_its_half(share: str) -> None:
    # Half of share x pi (R^2 - r^2) without allowances, with r = 12 / (2 pi share) and R = r + 9.
    part = {"1/2": 0.5, "1": 1.0}[share]
    heading = HEADING.replace('selvedge = "0"', 'selvedge = "0"\nlaid = "folded"')
    _, (one,) = only(estimate(plan(heading + sector(share, RAW))))
    assert one.lot.half
    inner = 12 / (2 * pi * part)
    ring = part * pi * ((inner + 9) ** 2 - inner**2)
    assert area(one.corners) / INCH**2 == pytest.approx(ring / 2, rel=0.003)
    assert one.holes == ()
    assert min(x for x, _ in one.corners) == pytest.approx(0, abs=1)
    # the hem reaches as far from the fold as the box does, to the 1/32 in to which half is raised
    reach = max(x for x, _ in one.corners)
    assert 0 <= one.place.width - reach <= INCH / 32 + 1
