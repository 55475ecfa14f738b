"""The layout engine beside a general-purpose rectangle packer (rectpack) on the same cuttings."""

from __future__ import annotations

from estimator.layout import lay_out
from tests.benchmarks.garments import garment_cuttings
from tests.benchmarks.rival import best_of_rectpack
from tests.verify_layout import assert_sound

CUTTINGS = 12


def test_no_rival_goes_below_a_bound_and_all_together_it_buys_more() -> None:
    ours = theirs = 0
    for cutting in garment_cuttings(CUTTINGS, seed=3):
        cloth, blanks = cutting.cloth, cutting.blanks
        layout = lay_out(cloth, blanks)
        assert_sound(cloth, blanks, layout)
        rival = cloth.buys(best_of_rectpack(cloth, blanks))
        assert cloth.buys(layout.bound) <= rival
        ours += cloth.buys(layout.length)
        theirs += rival
    assert ours < theirs
