"""Casings, and whether what runs in one goes through it."""

import pytest

from estimator.measure import Length
from estimator.written import length
from tests.plans import HEADING, bought, complaints, in_print

POUCH = """
[[piece]]
name = "pouch"
quantity = 2
cut = "print"
width = "8"
length = "10"
edges = { top = "casing 3/4" }
[[thread]]
name = "sewing thread"
sold = [{ put_up = "spool of 500 yd" }]
waste = 0
"""


def cord(more: str) -> str:
    return f'[[trim]]\nname = "drawstring"\nends = "raw"\nwaste = 0\n{more}\n'


def thread_in(text: str) -> Length | int:
    return bought(in_print(text), "sewing thread").needed


def test_a_cord_goes_into_a_casing_that_is_deep_enough() -> None:
    cased = 'casing = "pouch: top"\nlength = "26"\n'
    found = in_print(POUCH + cord(cased + 'width = "3/4"'))
    assert bought(found, "drawstring").needed == length("26 in")
    (deep,) = complaints(HEADING + POUCH + cord(cased + 'width = "1"'))
    assert (
        "trim 1 in wide will not go into a casing of 3/4 in; "
        "make the casing deeper, or take a narrower trim" in deep
    )
    (rows,) = complaints(HEADING + POUCH + cord(cased + 'width = "3/8"\nrows = 3'))
    assert "3 rows of trim 3/8 in wide will not go into a casing of 3/4 in" in rows


def test_a_cord_of_no_known_width_asks_only_for_a_casing() -> None:
    found = in_print(POUCH + cord('casing = "pouch: top"\nlength = "26"'))
    assert bought(found, "drawstring").needed == length("26 in")
    (none,) = complaints(HEADING + POUCH + cord('casing = "pouch: bottom"\nlength = "26"'))
    assert 'has no casing; write edges = { bottom = "casing 1" } in the piece' in none


def test_what_runs_in_a_casing_is_not_stitched_along_its_edge() -> None:
    along = 'along = "pouch: top"\n'
    plain = thread_in(POUCH)
    # 16 in round both pieces, narrow and so stitched once, x 2.5 = 40 in of thread.
    assert thread_in(POUCH + cord(along)) == plain + length("40 in")
    assert thread_in(POUCH + cord(along + 'casing = "pouch: top"')) == plain
    (both,) = complaints(HEADING + POUCH + cord(along + 'casing = "pouch: top"\nstitched = 1'))
    assert "what runs in a casing is not stitched; leave out stitched, or casing" in both


@pytest.mark.parametrize(
    ("ref", "told"),
    [
        ("pouches: top", "there is no piece 'pouches'; did you mean 'pouch'?"),
        ("pouch: tops", "'pouch' has no edge 'tops'; did you mean 'top'?"),
    ],
)
def test_a_casing_that_is_not_there_is_complained_of(ref: str, told: str) -> None:
    (found,) = complaints(HEADING + POUCH + cord(f'casing = "{ref}"\nlength = "26"'))
    assert "(trim 'drawstring')" in found
    assert told in found
