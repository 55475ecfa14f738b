"""Cutting layouts as SVG, read back and compared with the layouts that they show."""

from __future__ import annotations

from collections import Counter
from itertools import combinations
from pathlib import Path
from xml.etree.ElementTree import Element

import pytest

from estimator import Estimate, estimate
from estimator.buying.fabric_widths import FabricChoice
from estimator.files import estimate_files
from estimator.reports.pictures.labels import inside
from estimator.reports.pictures.layout_pictures import layout_pictures
from estimator.reports.pictures.lettering import width_of
from estimator.reports.pictures.svg import MIDDLE, svg_text
from tests.plans import HEADING, in_print, plan
from tests.reports.pictures.drawn import NS, Box, Written, box, pieces, read, written
from tests.shipped_plans import ALL, SHOPS, stem

INCH = 203_200


def pictures(choice: FabricChoice, found: Estimate) -> list[list[Element]]:
    """For each cut of a fabric the parts of its picture, read back."""
    return [
        [read(svg_text(one)) for one in layout_pictures(choice, number, found)]
        for number in range(len(choice.chosen.laid.cuts))
    ]


def only_picture(found: Estimate) -> Element:
    (choice,) = found.fabrics
    ((picture,),) = pictures(choice, found)
    return picture


def place_of(text: Written) -> Box:
    """The box of a line: as wide as it is in the font that it is measured in."""
    wide, size = width_of(text.text, text.size), text.size
    x, y = text.at
    if text.upright:
        assert text.anchor == "middle"
        return x - size * MIDDLE * 2, y - wide / 2, x + size * (1 - 2 * MIDDLE) / 2, y + wide / 2
    left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[text.anchor]
    return left, y - size * MIDDLE * 2, left + wide, y + size * (1 - 2 * MIDDLE) / 2


def overlap(one: Box, other: Box) -> bool:
    return (
        min(one[2], other[2]) - max(one[0], other[0]) > 0.1
        and min(one[3], other[3]) - max(one[1], other[1]) > 0.1
    )


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_every_piece_of_a_shipped_plan_is_drawn_once_and_to_one_scale(path: Path) -> None:
    found = estimate_files([path], SHOPS)
    for choice in found.fabrics:
        for cut, parts in zip(choice.chosen.laid.cuts, pictures(choice, found), strict=True):
            lots = choice.chosen.laid.lots
            drawn = [piece for part in parts for piece in pieces(part)]
            assert len(drawn) == sum(lots[place.blank].count for place in cut.placements)
            assert len({part.get("viewBox", "").split()[2] for part in parts}) == 1


RECTANGLES = """
[[piece]]
name = "panel"
quantity = 3
cut = ["print"]
width = "19 1/4"
length = "12"
[[piece]]
name = "band"
quantity = 2
cut = ["print"]
width = "4"
length = "29 1/2"
grain = "either"
"""


def test_pieces_lie_in_the_picture_as_in_the_layout() -> None:
    # Every corner is that of a placement, moved and made smaller by one factor both ways.
    found = in_print(RECTANGLES)
    (choice,) = found.fabrics
    (cut,) = choice.chosen.laid.cuts
    ((picture,),) = pictures(choice, found)
    boxes = [box(corners) for _, corners in pieces(picture)]
    first, last = boxes[0], cut.placements[0]
    scale = (first[2] - first[0]) / last.width
    left, top = first[0] - last.across * scale, first[1] - last.along * scale
    wanted = Counter(
        (
            round(left + place.across * scale, 1),
            round(top + place.along * scale, 1),
            round(left + (place.across + place.width) * scale, 1),
            round(top + (place.along + place.length) * scale, 1),
        )
        for place in cut.placements
    )
    for one in boxes:
        near = [
            key for key in wanted if all(abs(a - b) < 0.15 for a, b in zip(key, one, strict=True))
        ]
        assert len(near) == 1
        wanted[near[0]] -= 1
    assert set(wanted.values()) == {0}


def test_the_scale_bar_is_as_long_as_it_says() -> None:
    # The panel is cut 19 1/4 + 2 x 5/8 = 20 1/2 in wide.
    picture = only_picture(in_print(RECTANGLES))
    (said,) = (one.text for one in written(picture) if "drawn to scale" in one.text)
    panel = next(box(corners) for title, corners in pieces(picture) if title.startswith("panel"))
    bar = [
        box(tuple(tuple(map(float, pair.split(","))) for pair in shape.get("points", "").split()))  # type: ignore[misc]
        for shape in picture.iter(f"{NS}polygon")
        if shape.get("class") is None
    ]
    top = max(one[1] for one in bar if one[3] - one[1] == pytest.approx(5))
    quarters = [one for one in bar if one[1] == top and one[3] - one[1] == pytest.approx(5)]
    long = max(one[2] for one in quarters) - min(one[0] for one in quarters)
    number = int(said.split()[0])
    assert long / number == pytest.approx((panel[2] - panel[0]) / 20.5, rel=0.01)


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_no_text_lies_over_another_or_runs_out_of_the_picture(path: Path) -> None:
    found = estimate_files([path], SHOPS)
    for choice in found.fabrics:
        for part in (part for parts in pictures(choice, found) for part in parts):
            _, _, wide, high = map(float, part.get("viewBox", "").split())
            places = [(one.text, place_of(one)) for one in written(part)]
            for text, (left, top, right, bottom) in places:
                assert (left >= 0, right <= wide, top >= 0, bottom <= high) == (True,) * 4, text
            for (text, one), (beside, other) in combinations(places, 2):
                assert not overlap(one, other), f"{text} over {beside}"


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_a_label_lies_in_one_piece_and_its_letters_cross_no_edge(path: Path) -> None:
    found = estimate_files([path], SHOPS)
    for choice in found.fabrics:
        for part in (part for parts in pictures(choice, found) for part in parts):
            drawn = pieces(part)
            floor = max(box(corners)[3] for _, corners in drawn)
            for one in written(part):
                left, top, right, bottom = place_of(one)
                if one.anchor != "middle" or not 20 < top < floor:
                    continue
                within = [
                    title
                    for title, corners in drawn
                    if all(
                        inside(corners, point)
                        for point in ((left, top), (right, top), (left, bottom), (right, bottom))
                    )
                ]
                assert len(within) == 1, one.text


def test_rows_are_lettered_with_their_distances_from_the_cut_end() -> None:
    # Two panels side by side, and one above: 12 + 2 x 5/8 = 13 1/4 from row to row.
    text = '[[piece]]\nname = "panel"\nquantity = 3\ncut = ["print"]\nwidth = "19"\nlength = "12"\n'
    said = [one.text for one in written(only_picture(in_print(text)))]
    assert [one for one in said if one.startswith("row")] == ["row 1", "row 2"]
    assert {"0 in", "13 1/4 in"} <= set(said)
    assert {"cut end", "selvedge", "waste", "end", "26 1/2 in"} <= set(said)


def test_a_long_layout_is_drawn_in_parts_and_no_piece_in_two_of_them() -> None:
    text = (
        '[[piece]]\nname = "panel"\nquantity = 30\ncut = ["print"]\nwidth = "30"\nlength = "20"\n'
    )
    found = in_print(text)
    (choice,) = found.fabrics
    (parts,) = pictures(choice, found)
    assert len(parts) > 5
    assert sum(len(pieces(part)) for part in parts) == 30
    for part in parts:
        _, _, wide, high = map(float, part.get("viewBox", "").split())
        assert high < wide * 1.4
    firsts = [[one.text for one in written(part)] for part in parts]
    assert ["cut end" in first for first in firsts] == [True, *[False] * (len(parts) - 1)]
    # 20 + 2 x 5/8 from row to row
    assert any(text.startswith("from ") for text in firsts[1])


def test_folded_fabric_has_both_selvedges_on_one_side_and_its_fold_on_the_other() -> None:
    heading = HEADING.replace('selvedge = "0"', 'laid = "folded"')
    found = estimate(plan(heading + RECTANGLES))
    ((picture, *_),) = pictures(found.fabrics[0], found)
    said = [one.text for one in written(picture)]
    assert {"both selvedges", "fold"} <= set(said)
    assert "selvedge" not in said


def test_a_piece_that_only_its_box_is_known_of_is_drawn_in_dashes_and_the_legend_says_so() -> None:
    text = RECTANGLES + '[[piece]]\nname = "hood"\ncut = ["print"]\nshape = "box"\n'
    picture = only_picture(in_print(text + 'width = "11"\nlength = "14"\n'))
    dashed = [
        str(shape[0].text)
        for shape in picture.iter(f"{NS}polygon")
        if shape.get("class") == "piece" and shape.get("stroke-dasharray")
    ]
    assert ["hood" in name for name in dashed] == [True]
    assert "box round a paper pattern" in [one.text for one in written(picture)]


HOSTILE = {
    "a formula": "=1+1",
    "markup": "<b>bold</b> & <script>x</script>",
    "two hundred characters": "x" + "ruffle" * 33 + "s",
    "many words": "a very long name " * 11,
    "emoji": "🧵 ribbon 👗",
    "right to left": "כנף שמאל",
    "a turning mark": "left\\u202eright",
    "line breaks": "over\\ntwo\\r\\nlines",
    "a control character": "bell\\u0007",
    "a noncharacter": "odd\\uFFFE",
    "a quotation": 'she said \\"cut\\" \' it',
}


@pytest.mark.parametrize("name", HOSTILE.values(), ids=HOSTILE)
def test_whatever_a_piece_is_called_comes_out_as_harmless_text(name: str) -> None:
    text = f'[[piece]]\nname = "{name}"\ncut = ["print"]\nwidth = "8"\nlength = "9"\n'
    picture = only_picture(in_print(text))
    allowed = {"svg", "title", "desc", "polygon", "polyline", "path", "text"}
    assert {one.tag.removeprefix(NS) for one in picture.iter()} == allowed
    for one in picture.iter():
        assert "\u202e" not in (one.text or "")
        assert not any(ord(char) < 32 for char in one.text or "")
    for one in written(picture):
        left, _, right, _ = place_of(one)
        assert left >= 0
        assert right <= 400
    assert len(pieces(picture)) == 1


def test_the_same_plan_is_drawn_in_the_same_bytes() -> None:
    def drawn() -> list[str]:
        found = in_print(RECTANGLES)
        return [svg_text(one) for one in layout_pictures(found.fabrics[0], 0, found)]

    assert drawn() == drawn()
