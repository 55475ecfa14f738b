"""What is said of the fabrics beside their figures: spare pieces, and which width is meant."""

from __future__ import annotations

import pytest

from estimator import estimate
from estimator.reports.as_json import estimate_json
from estimator.reports.fabric_papers import OF_CIRCLES, cut_table, widths_table
from estimator.written import length
from tests.needs.capes import cape
from tests.plans import plan

CLOTH = """
[garment]
name = "Gull cloak"
laid = "{laid}"
[[fabric]]
name = "calico"
widths = [{widths}]
[[piece]]
name = "hood"
quantity = {count}
cut = ["calico"]
shape = "box"
width = "18"
length = "20"
"""
GORES = """
[[piece]]
name = "gore"
quantity = 3
cut = ["calico"]
shape = "taper"
top = "6"
bottom = "12"
slant = "left side"
length = "60"
"""
FRILL = """
[[piece]]
name = "frill"
cut = ["calico"]
made = "joined strip"
length = "4"
ring = "80"
"""


def made(count: int = 3, laid: str = "folded", widths: str = '"45 in"', more: str = ""):
    return estimate(plan(CLOTH.format(count=count, laid=laid, widths=widths) + more))


def notes_of_cuts(found) -> dict[str, str]:
    table = cut_table(found, with_garments=False)
    return {str(row[1]): str(row[-1]) for row in table.rows}


@pytest.mark.parametrize(
    ("count", "laid", "said"), [(3, "folded", True), (2, "folded", False), (3, "open", False)]
)
def test_the_cut_list_says_when_the_last_of_a_pair_is_cut_with_one_to_spare(
    count: int, laid: str, said: bool
) -> None:
    note = notes_of_cuts(made(count, laid))["hood"]
    assert ("folded, the last is cut in a pair, with one to spare" in note) is said


def test_the_cut_list_counts_the_pieces_of_the_other_hand() -> None:
    note = notes_of_cuts(made(more=GORES))["gore"]
    assert "folded, 3 of the other hand are cut with them, to spare" in note


def test_of_several_widths_the_foot_of_their_table_says_which_is_laid_the_other_way() -> None:
    widths = '"40 in", "60 in"'
    found = made(laid="open", widths=widths)
    (choice,) = found.fabrics
    bought = "40 in" if choice.chosen is choice.options[0] else "60 in"
    (note,) = (one for one in widths_table(choice, found).notes if "folded lengthwise" in one)
    assert note.startswith(f"At {bought}: folded lengthwise and cut in pairs it takes ")


def test_of_one_width_the_foot_of_its_table_names_none() -> None:
    found = made(laid="open", widths='"60 in"')
    (note,) = (
        one for one in widths_table(found.fabrics[0], found).notes if "olded lengthwise" in one
    )
    assert note.startswith("Folded lengthwise and cut in pairs it takes ")


def test_strips_are_spoken_of_where_they_differ_from_width_to_width() -> None:
    def says(more: str) -> bool:
        found = made(widths='"45 in", "60 in"', more=more)
        notes = widths_table(found.fabrics[0], found).notes
        return any("Strips take the fabric's width" in note for note in notes)

    assert says(FRILL)
    assert not says("")
    assert not says('note = "mark its width"\n')


BIAS_FRILL = """
[[piece]]
name = "frill"
cut = ["calico"]
made = "bias strip"
width = "3"
length = "40"
[[trim]]
name = "binding"
cut_from = "calico"
along = "hood: bottom"
width = "1/2"
"""


def test_the_cut_list_tells_a_seamed_circle_by_its_waist_edge_and_its_length() -> None:
    # 44 cm of neck, 60 cm long: too wide for the cloth in one, and each half has 22 cm of the neck
    found = estimate(plan(cape('"115 cm"', "44 cm", "60 cm", "1")))
    table = cut_table(found, with_garments=False)
    (half,) = table.rows
    assert half[1:3] == ("cape, half", 2)
    assert half[5:7] == (length("22 cm"), length("60 cm"))
    assert OF_CIRCLES in table.notes
    assert OF_CIRCLES not in cut_table(made(), with_garments=False).notes


def test_the_cut_list_tells_no_finished_width_of_a_bias_strip_but_that_of_a_binding() -> None:
    found = made(laid="open", more=BIAS_FRILL)
    finished = {row[1]: row[5:7] for row in cut_table(found, with_garments=False).rows}
    assert finished["frill"] == (None, length("40"))
    assert finished["binding"][0] == length("1/2")
    assert "cut into bias strips 3 in wide" in notes_of_cuts(found)["frill"]
    (width,) = estimate_json(found)["fabrics"][0]["widths"]
    told = {one["name"]: one["finished"] for one in width["pieces"]}
    assert told["frill"][0] is None
    assert told["frill"][1] is not None
