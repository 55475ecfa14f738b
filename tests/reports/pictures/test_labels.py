"""Labels on pieces: within the outline, in full where there is room, else a mark."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.reports.pictures.labels import Label, Words, inside, label
from estimator.reports.pictures.lettering import LEADING, width_of
from estimator.reports.pictures.marks import Lettering, Shape, Stroke, rectangle
from estimator.reports.pictures.outlines import Grain

PANEL = Words("A", "skirt panel", "20 1/2 × 32 1/4 in", Grain.ALONG)
sizes = st.floats(2, 300)
words = st.builds(
    Words,
    mark=st.sampled_from(["A", "AB", "17"]),
    name=st.text(st.characters(codec="utf-8", categories=["L", "N", "Zs"]), min_size=1).map(
        lambda text: " ".join(text.split()) or "x"
    ),
    size=st.just("20 1/2 × 32 1/4 in"),
    grain=st.sampled_from(Grain),
    one_way=st.booleans(),
)


def box_of(text: Lettering) -> Shape:
    assert text.anchor == "middle"
    wide, high = width_of(text.text, text.size), text.size * LEADING
    if text.upright:
        wide, high = high, wide
    x, y = text.at
    return rectangle((x - wide / 2, y - high / 2), (x + wide / 2, y + high / 2))


def lettering(found: Label) -> list[Lettering]:
    return [mark for mark in found.marks if isinstance(mark, Lettering)]


def arrows(found: Label) -> list[Stroke]:
    return [mark for mark in found.marks if isinstance(mark, Stroke)]


@given(sizes, sizes, st.floats(0, 1), words)
def test_all_that_is_lettered_on_a_taper_lies_within_it(
    wide: float, high: float, narrows: float, said: Words
) -> None:
    shift = wide * narrows / 2
    shape: Shape = ((0, 0), (wide, 0), (wide - shift, high), (shift, high))
    found = label(shape, (), said)
    for text in lettering(found):
        assert all(inside(shape, corner) for corner in box_of(text))
    for stroke in arrows(found):
        assert all(inside(shape, point) for point in stroke.points)


@given(sizes, sizes, words)
def test_lines_of_a_label_do_not_lie_over_one_another(
    wide: float, high: float, said: Words
) -> None:
    boxes = [box_of(text) for text in lettering(label(rectangle((0, 0), (wide, high)), (), said))]
    for number, one in enumerate(boxes):
        for other in boxes[number + 1 :]:
            apart = [
                max(one[0][side], other[0][side]) >= min(one[2][side], other[2][side]) - 1e-6
                for side in (0, 1)
            ]
            assert any(apart)


def test_a_large_piece_bears_name_size_and_arrow() -> None:
    found = label(rectangle((0, 0), (150, 200)), (), PANEL)
    assert [text.text for text in lettering(found)] == ["skirt panel", "20 1/2 × 32 1/4 in"]
    assert found.in_full
    shaft = arrows(found)[0].points
    assert shaft[0][0] == shaft[1][0]


def test_a_strap_along_the_fabric_is_lettered_upright_and_one_across_it_level() -> None:
    for wide, high, upright in ((24, 200, True), (200, 24, False)):
        found = label(rectangle((0, 0), (wide, high)), (), PANEL)
        assert found.in_full
        assert {text.upright for text in lettering(found)} == {upright}


@pytest.mark.parametrize("name", ["x" * 200, "a name of very many words " * 8])
def test_a_name_without_room_leaves_the_mark_alone(name: str) -> None:
    found = label(rectangle((0, 0), (60, 60)), (), Words("B", name, "9 × 9 in", Grain.ALONG))
    assert [text.text for text in lettering(found)] == ["B"]
    assert not found.in_full


def test_a_piece_too_small_for_a_letter_bears_nothing() -> None:
    assert label(rectangle((0, 0), (3, 3)), (), PANEL).marks == ()


def test_a_label_keeps_out_of_the_hole_of_a_ring() -> None:
    hole = rectangle((60, 60), (140, 140))
    found = label(rectangle((0, 0), (200, 200)), (hole,), PANEL)
    assert lettering(found)
    for text in lettering(found):
        assert not any(inside(hole, corner) for corner in box_of(text))


def test_only_where_pieces_may_lie_either_way_has_the_arrow_two_heads() -> None:
    one_way = Words("A", "panel", "9 × 9 in", Grain.ALONG, one_way=True)
    both = Words("A", "panel", "9 × 9 in", Grain.ALONG)
    shape = rectangle((0, 0), (100, 100))
    assert [len(arrows(label(shape, (), said))) for said in (one_way, both)] == [2, 3]
