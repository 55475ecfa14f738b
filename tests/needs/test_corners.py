"""What a trim takes where it turns a corner."""

import pytest

from estimator.measure import INCH
from estimator.written import length
from tests.plans import HEADING, complaints, in_print, needed

BIB = '[[piece]]\nname = "bib"\ncut = "print"\nwidth = "12"\nlength = "10"\n'


def trim(more: str, name: str = "lace") -> str:
    return f'[[trim]]\nname = "{name}"\nwaste = 0\n{more}\n'


@pytest.mark.parametrize(
    ("more", "run"),
    [
        # Up one side of the bib, across and down: 10 + 12 + 10 = 32 in; two corners, braid 3/4 in
        # wide. Folded mitres beyond the inner edge: 2 x 2 x 3/4 = 3 in. Two ends of 1/4 in.
        ("", "35 1/2"),
        ('measured = "inner edge"\ncorner = "folded"', "35 1/2"),
        ('measured = "outer edge"', "32 1/2"),
        # Cut square: 2 x 3/4 = 1 1/2 in, and two ends of 1/4 in more at each corner, 1 in:
        # 32 + 2 1/2 + 1/2.
        ('corner = "cut"', "35"),
        ('corner = "cut"\nmeasured = "outer edge"', "33 1/2"),
        ('ends = "raw"', "35"),
        # Fullness does not multiply a mitre: 2 x 32 + 3 + 1/2.
        ("fullness = 2", "67 1/2"),
    ],
)
def test_braid_round_the_corners_of_a_bib(more: str, run: str) -> None:
    along = 'along = ["bib: left", "bib: top", "bib: right"]\ncorners = 2\nwidth = "3/4"\n'
    assert needed(in_print(BIB + trim(along + more)), "lace") == length(run)


def test_a_mitre_that_is_cut_and_seamed_takes_its_slanting_allowances() -> None:
    # Two corners, each with two seam allowances of 5/8 in on a slant of 45 degrees: 2 x 2 x 5/8 x
    # 1.41421 = 3.5355 in beyond the folded mitres' 35 1/2 in.
    along = 'along = ["bib: left", "bib: top", "bib: right"]\ncorners = 2\nwidth = "3/4"\n'
    found = needed(in_print(BIB + trim(along + 'corner = "mitred"')), "lace")
    assert found.ticks / INCH.ticks == pytest.approx(39.0355, abs=1e-4)


def test_a_mitre_of_unknown_width_is_refused() -> None:
    text = BIB + trim('along = "bib: top"\ncorners = 2')
    (found,) = complaints(HEADING + text)
    assert found == (
        "apron.toml, line 13 (trim 'lace'): 'lace' turns corners, and nothing says how wide it "
        'is; add width = "1", or measured = "outer edge" where its outer edge was measured'
    )


COLLAR = '[[piece]]\nname = "collar"\nquantity = 2\ncut = "print"\nwidth = "20"\nlength = "7"\n'
ROUND_IT = 'corners = 2\nwidth = "3/4"\nalong = ["%s: bottom", "%s: left", "%s: right"]\n'
OPPOSITE = 'run = "each"\ncorners = 2\nwidth = "3/4"\nalong = ["collar: top", "collar: bottom"]\n'


def test_a_run_along_one_side_of_a_collar_turns_no_corner() -> None:
    each = 'run = "each"\n' + ROUND_IT % (("collar",) * 3)
    (found,) = complaints(HEADING + COLLAR + trim(each))
    assert found == (
        "apron.toml, line 18 (trim 'lace'): 'lace' has a run on each of 3 edges of 'collar', and "
        "'collar: bottom' alone turns no corner; leave out run = \"each\": then it goes round each "
        "piece, one side after another"
    )
    # As the complaint says: 20 + 2 x 7 = 34 in; two mitres of 2 x 3/4 in, two ends of 1/4 in:
    # 37 1/2 in, on each of two collars.
    assert needed(in_print(COLLAR + trim(ROUND_IT % (("collar",) * 3))), "lace") == length("75 in")
    two = COLLAR + COLLAR.replace('"collar"', '"cuff"')
    along = ROUND_IT.replace("]", ', "cuff: left", "cuff: bottom"]') % (("collar",) * 3)
    # And 27 in with two mitres and two ends, 30 1/2 in, on each of two cuffs.
    assert needed(in_print(two + trim(along)), "lace") == length("136 in")
    (apart,) = complaints(HEADING + COLLAR + trim(OPPOSITE))
    assert "leave out corners: no two of these edges meet" in apart


def test_an_edge_with_a_length_of_its_own_may_turn_corners_by_itself() -> None:
    # 33 in round a square collar with two corners of 2 x 3/4 in, and two raw ends.
    outer = COLLAR + 'edges = { outer = { length = "33" }, neck = { length = "19" } }\n'
    turns = 'run = "each"\ncorners = 2\nwidth = "3/4"\nends = "raw"\n'
    for along, run in (
        ('"collar: outer"', "72 in"),
        ('["collar: outer", "collar: neck"]', "116 in"),
    ):
        found = in_print(outer + trim(f"{turns}along = {along}"))
        assert needed(found, "lace") == length(run)
