"""A row of a layout as one line of text, to scale."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from estimator.layout import Blank, Cloth, lay_out
from estimator.reports.sketch import sketch


def test_pieces_stand_to_scale_between_the_selvedges_and_what_is_left_is_dotted() -> None:
    layout = lay_out(Cloth(40), [Blank("panel", 20, 9), Blank("tie", 10, 9)])
    # 40 across in 40 characters: half a panel, a quarter tie, a quarter left
    assert sketch(layout, layout.rows[0], ("panel", "tie"), 40) == (
        "|       panel       |   tie   |.........|"
    )


def test_a_stack_shows_its_lowest_piece_and_how_many_lie_above() -> None:
    layout = lay_out(Cloth(30), [Blank("panel", 20, 9), Blank("cuff", 10, 4, quantity=2)])
    (row,) = layout.rows
    assert "cuff +1" in sketch(layout, row, ("panel", "cuff"), 60)


@given(st.lists(st.integers(1, 30), min_size=1, max_size=12), st.text(max_size=40))
def test_a_sketch_is_as_wide_as_the_cloth_whatever_lies_in_the_row(
    widths: list[int], name: str
) -> None:
    layout = lay_out(Cloth(30), [Blank(name, width, 5) for width in widths])
    for row in layout.rows:
        line = sketch(layout, row, (name,) * len(widths))
        assert len(line) == 77
        assert line[0] == line[-1] == "|"
