"""Where the work can hurt someone, the list says so, and defers to local rules."""

import pytest

from estimator import estimate
from tests.plans import HEADING, plan

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'
TIE = '[[piece]]\nname = "tie"\ncut = "print"\nmade = "tube"\nwidth = "1"\nlength = "30"\n'
CORD = '[[trim]]\nname = "drawstring"\nlength = "60"\n'
BUTTONS = '[[notion]]\nname = "buttons"\nquantity = 5\n'


def risks(tables: str, wearer: str) -> list[str]:
    """The risks named, by the word that each is about."""
    heading = HEADING.replace('"apron"', f'"apron"\nwearer = "{wearer}"')
    cautions = " ".join(estimate(plan(heading + PANEL + tables)).cautions)
    return [word for word in ("strangle", "choke", "burn") if word in cautions]


@pytest.mark.parametrize("wearer", ["child", "under three", "not said"])
def test_cords_and_small_parts_are_cautioned_of_unless_an_adult_wears_them(wearer: str) -> None:
    assert risks(TIE + BUTTONS, wearer) == ["strangle", "choke", "burn"]
    assert risks(CORD, wearer) == ["strangle", "burn"]
    assert risks(BUTTONS, wearer) == ["choke", "burn"]


def test_an_adults_buttons_and_ties_need_no_caution() -> None:
    assert risks(TIE + CORD + BUTTONS, "adult") == ["burn"]


def test_every_list_defers_to_local_rules_on_fire() -> None:
    (fire,) = estimate(
        plan(HEADING.replace('"apron"', '"apron"\nwearer = "adult"') + PANEL)
    ).cautions
    assert "local fire rules" in fire
    assert "licensed practice" in fire
