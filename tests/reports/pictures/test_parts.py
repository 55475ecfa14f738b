"""Long layouts in parts."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from estimator.layout import Blank, Cloth, lay_out
from estimator.reports.pictures.parts import bands_of


@given(
    st.lists(st.tuples(st.integers(5, 60), st.integers(5, 60)), min_size=1, max_size=14),
    st.integers(1, 150),
)
def test_parts_follow_one_another_and_hold_every_piece_whole(
    sizes: list[tuple[int, int]], longest: int
) -> None:
    blanks = [Blank(f"piece {n}", wide, long) for n, (wide, long) in enumerate(sizes)]
    cut = lay_out(Cloth(width=60), blanks)
    bands = bands_of(cut, longest)
    assert [start for start, _ in bands] == [0, *(end for _, end in bands[:-1])]
    assert bands[-1][1] == cut.length
    for place in cut.placements:
        whole = [a <= place.along and place.along + place.length <= b for a, b in bands]
        assert sum(whole) == 1


def test_a_part_is_as_long_as_it_may_be() -> None:
    # Five rows of 20: two make 40, three would make 60.
    cut = lay_out(Cloth(width=50), [Blank("panel", 30, 20, quantity=5)])
    assert bands_of(cut, 50) == ((0, 40), (40, 80), (80, 100))
    assert bands_of(cut, 100) == ((0, 100),)
    assert bands_of(cut, 1) == ((0, 20), (20, 40), (40, 60), (60, 80), (80, 100))
