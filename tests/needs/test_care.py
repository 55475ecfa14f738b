"""Needles, washing before sewing, and care: the gentlest wins, and what forces it is named."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import estimate
from estimator.fibres import FIBRES, GENTLEST_FIRST, fibres_in
from tests.plans import HEADING, catalog, complaints, plan

PANEL = '[[piece]]\nname = "panel"\ncut = {cut}\nwidth = "20"\nlength = "26"\n'


def advice(print_is: str, tables: str = "", cut: str = '"print"') -> list[str]:
    """What a garment's list says before sewing; ``print_is`` are keys of its only main fabric."""
    text = HEADING + print_is + "\n" + tables + PANEL.format(cut=cut)
    return [line.removeprefix("apron: ") for line in estimate(plan(text)).advice]


LACE = '[[trim]]\nname = "lace"\nalong = "panel: bottom"\n'


def test_a_garment_of_which_nothing_is_known_is_given_no_advice() -> None:
    assert advice("") == []


def test_the_gentlest_care_wins_and_what_forces_it_is_named() -> None:
    # Cotton stands 60 °C, a hot iron and a tumble dryer; nylon 40 °C and a cool iron.
    (line,) = advice('fibres = "cotton"', LACE + 'fibres = "nylon"\n')
    assert line == (
        "care, the gentlest that any part needs: wash at 40 °C (nylon in lace); iron at most at "
        "110 °C (nylon in lace)."
    )


def test_washing_and_ironing_may_be_forced_by_different_parts() -> None:
    # Wool is washed by hand and takes a warm iron; nylon is washed and takes a cool one.
    (line,) = advice('fibres = "wool"', LACE + 'fibres = "nylon"\n')
    assert "hand wash (wool in print)" in line
    assert "iron at most at 110 °C (nylon in lace)" in line
    assert "do not tumble dry (wool in print)" in line


def test_a_label_says_more_than_the_fibres() -> None:
    (line,) = advice('fibres = "cotton"', LACE + 'fibres = "cotton"\ncare = "dry clean"\n')
    assert "dry clean (the label of lace)" in line


def test_a_part_of_which_nothing_is_known_is_asked_about() -> None:
    found = advice('fibres = "cotton"', LACE)
    assert found[-1] == "nothing is known of the care of lace: ask in the shop."


def test_what_shrinks_is_washed_before_it_is_cut_the_most_first() -> None:
    found = advice('shrinkage = "4 %"', LACE + 'shrinkage = "5 %"\n')
    assert found == [
        "before cutting wash as the garment will be: 5 % lace; 4 % print; the quantities allow for "
        "the shrinking."
    ]


def test_a_lining_that_shrinks_otherwise_than_the_shell_is_told() -> None:
    lining = '[[fabric]]\nname = "lining"\nrole = "lining"\nwidths = ["45 in"]\nshrinkage = "{}"\n'
    cut = '["print", "lining"]'
    found = advice('shrinkage = "4 %"', lining.format("2 %"), cut)
    assert found[-1] == (
        "print shrinks 4 %, and otherwise 2 % lining: unless all are washed first, the seams will "
        "pucker."
    )
    assert len(advice('shrinkage = "4 %"', lining.format("2.1 %"), cut)) == 1


FUSIBLE = '[[fabric]]\nname = "stiff"\nrole = "interfacing"\nwidths = ["36 in"]\nfusible = "yes"\n'


@pytest.mark.parametrize(
    ("print_is", "warned"),
    [
        ('fibres = "nylon"', "nylon stands 110 °C, and fusing takes about 150 °C"),
        ('fibres = "acetate, polyester"', "acetate, polyester stands 110 °C"),
        ('fibres = "vinyl"', "vinyl may not be ironed"),
        ('nap = "yes"', "pressing may crush its pile"),
    ],
)
def test_fusible_is_not_fused_to_what_its_heat_or_its_press_would_spoil(
    print_is: str, warned: str
) -> None:
    line = advice(print_is, FUSIBLE, '["print", "stiff"]')[-1]
    assert line.startswith(f"stiff is fused to print in panel: {warned}")
    assert "an interfacing that is sewn in" in line


def test_fusible_on_cotton_or_sewn_in_interfacing_on_nylon_is_no_matter() -> None:
    assert not any(
        "fused" in line for line in advice('fibres = "cotton"', FUSIBLE, '["print", "stiff"]')
    )
    sewn_in = FUSIBLE.replace("yes", "no")
    assert not any(
        "fused" in line for line in advice('fibres = "nylon"', sewn_in, '["print", "stiff"]')
    )


def test_fusible_that_shrinks_is_soaked_and_not_washed() -> None:
    found = advice("", FUSIBLE + 'shrinkage = "2 %"\n', '["print", "stiff"]')
    assert found[0] == "before cutting soak in warm water and hang up, without wringing: 2 % stiff."


@pytest.mark.parametrize(
    ("keys", "needle"),
    [
        ('weight = "sheer"', "60/8, universal for print"),
        ('weight = "medium"', "80/12, universal for print"),
        ('weight = "medium"\nknit = "yes"', "80/12, ball point for print"),
        ('weight = "heavy"', "90/14, strong, sharp point for print"),
        ('weight = "heavy"\nfibres = "leather"', "90/14, leather point for print"),
    ],
)
def test_a_needle_suits_the_weight_of_its_fabric(keys: str, needle: str) -> None:
    assert needle in advice(keys)[0]


def test_a_weight_that_is_none_is_refused_with_the_nearest() -> None:
    (found,) = complaints(HEADING + 'weight = "meduim"\n' + PANEL.format(cut='"print"'))
    assert "did you mean 'medium'?" in found


def test_fibres_and_weights_come_from_the_catalog() -> None:
    shop = catalog(
        [{"item": "lawn", "kind": "fabric", "fibres": "silk", "weight": "light", "care": ""}],
        [{"item": "lawn", "width": "45 in"}],
    )
    text = HEADING.replace('widths = ["45 in"]', 'buy = "lawn"') + PANEL.format(cut='"print"')
    needle, care = estimate(plan(text), shop).advice
    assert "70/10" in needle
    assert "hand wash (silk in print)" in care


def test_fibres_are_found_among_percentages_and_other_words() -> None:
    assert fibres_in("97 % Cotton, 3% elastane; goat hair") == ("cotton", "elastane", "hair")
    assert fibres_in("brass") == ()


@given(st.sampled_from(sorted(FIBRES)), st.sampled_from(sorted(FIBRES)))
def test_no_fibre_stands_more_in_company_than_alone(first: str, second: str) -> None:
    one, other = FIBRES[first], FIBRES[second]
    line = advice(f'fibres = "{first}, {second}"')[0]
    iron = min(one.iron, other.iron)
    assert f"{min(one.wash, other.wash, key=GENTLEST_FIRST.index).value} (" in line
    assert (f"iron at most at {iron} °C" if iron else "do not iron") in line
    assert ("tumble" in line) is not (one.tumble and other.tumble)
