"""Where the work can hurt someone, the list says so, and defers to local rules."""

import pytest

from estimator import Job, estimate
from tests.plans import HEADING, order, plan

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


def said(garment: str, tables: str = "") -> str:
    heading = HEADING.replace('"apron"', f'"apron"\n{garment}')
    return " ".join(estimate(plan(heading + PANEL + tables)).cautions)


def test_the_public_rules_are_named_where_a_child_wears_the_garment() -> None:
    found = said('wearer = "under three"', TIE + BUTTONS)
    for rule in ("EN 14682", "ASTM F1816", "16 CFR 1501", "16 CFR 1610", "16 CFR 1615 and 1616"):
        assert rule in found
    assert "1615" not in said('wearer = "adult"')


def test_childrens_sleepwear_has_a_caution_of_its_own() -> None:
    assert "fire rules of its own" in said('wearer = "child"\nuse = "sleepwear"')
    assert "fire rules of its own" not in said('wearer = "adult"\nuse = "sleepwear"')
    assert "fire rules of its own" not in said('wearer = "child"')


def test_on_stage_costumes_keep_away_from_flame() -> None:
    assert "On stage keep costumes away from flame" in said('wearer = "adult"\nuse = "stage"')
    assert "On stage" not in said('wearer = "adult"\nuse = "everyday"')


def test_laces_and_open_casings_are_cords_too() -> None:
    lace = '[[lacing]]\nname = "lace"\nlength = "9"\npairs = 4\ngap = "1"\n'
    assert "strangle" in said('wearer = "child"', lace)
    casing = PANEL.replace("panel", "hood") + 'edges = { top = "casing 1" }\n'
    assert "strangle" in said('wearer = "child"', casing)
    elastic = '[[elastic]]\nname = "elastic"\nmeasure = "20"\n'
    assert "strangle" not in said('wearer = "child"', casing + elastic)


def test_an_adults_ties_beside_a_childs_dress_are_not_the_childs() -> None:
    adult = order(HEADING.replace('"apron"', '"apron"\nwearer = "adult"') + PANEL + TIE)
    child = order(HEADING.replace('"apron"', '"dress"\nwearer = "child"') + PANEL)
    assert "strangle" not in " ".join(estimate(Job((adult, child))).cautions)


def test_a_threaded_ribbon_is_a_cord_where_it_is_tied_in_a_bow() -> None:
    lace = '[[trim]]\nname = "beading"\nalong = "panel: top"\n'
    ribbon = lace + '[[trim]]\nname = "ribbon"\nthrough = "beading"\n'
    assert risks(ribbon, "child") == ["burn"]
    assert risks(ribbon + 'bow = "20"\n', "child") == ["strangle", "burn"]
