"""Trims follow edges or state a length; notions are counted."""

import pytest

from estimator.edges import EdgeRef
from estimator.plan import End, TrimEnd
from tests.plans import HEADING, complaints, plan

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'


def trim(more: str) -> str:
    return f'{HEADING}{PANEL}[[trim]]\nname = "lace"\n{more}\n'


def told(text: str) -> str:
    (found,) = complaints(text)
    return found.split(": ", 1)[1]


def test_a_trim_states_one_of_along_and_length() -> None:
    right = 'write along = "skirt panel: bottom", or length = "40", and not both'
    assert told(trim("")) == f"a trim states one of along and length; {right}"
    assert told(trim('along = "panel: top"\nlength = "3"')) == (
        f"a trim states along and length, and they may not agree; {right}"
    )


def test_a_trim_follows_one_edge_or_several_or_a_seam() -> None:
    (one,) = plan(trim('along = "panel: top"')).trim
    assert one.along == (EdgeRef("panel", "top"),)
    (several,) = plan(trim('along = ["panel: top", "side seam"]')).trim
    assert several.along == (EdgeRef("panel", "top"), "side seam")


def test_a_trim_is_sewn_once_and_closes_as_its_edge_does_unless_it_says_otherwise() -> None:
    (lace,) = plan(trim('along = "panel: top"')).trim
    assert (lace.rows, lace.joined) == (1, None)
    assert lace.ends == (TrimEnd(End.TURNED), TrimEnd(End.TURNED))


@pytest.mark.parametrize(
    ("more", "wrong"),
    [
        ("along = []", "along names no edge"),
        ('along = ": top"', "along: ': top' does not name an edge"),
        ('along = "panel: top"\njoined = "round"', "joined cannot be 'round'"),
        ('along = "panel: top"\nends = "turned"', "ends cannot be 'turned'; did you mean 'turned"),
        ('along = "panel: top"\nrun = "all"', "run cannot be 'all'; choose from each, together"),
        ('along = "panel: top"\nprice = "2"', "price: '2' does not say what the price is for"),
        ('along = "panel: top"\nshrinkage = "100 %"', "leaves nothing; write less than 100 %"),
        ('along = "panel: top"\nsold = [{ put_up = "roll" }]', "put_up: 'roll' is not a put-up"),
        ('along = "panel: top"\nsold = [{ put_up = "pack of 0 x 2 yd" }]', "holds nothing"),
        (
            'along = "panel: top"\nrow_spacing = "1"',
            "row_spacing is between rows, and there is one",
        ),
        ('length = "40"\nfrom_edge = "1"', "row_spacing and from_edge go inwards from an edge"),
        ('along = "panel: top"\ncorner = "cut"', "corner and measured say nothing without corners"),
        (
            'along = "panel: top"\nfullness = 2\npleats = { depth = "1" }',
            "a trim is pleated or gathered, not both",
        ),
        (
            'along = "panel: top"\nbow = "9"\njoined = "in the round"',
            "a trim tied in a bow is not joined in the round",
        ),
        ('along = "panel: top"\noverlapped = "0 %"', "overlapped is a part of a repeat"),
        ('along = "panel: top"\nease_repeats = "30 %"', "nobody eases in more than a fifth"),
        ('along = "panel: top"\njoins = -1', "joins cannot be '-1'"),
        (
            'along = "panel: top"\nthrough = "cord"',
            "states more than one of along, length, through",
        ),
    ],
)
def test_a_trim_that_makes_no_sense_is_refused(more: str, wrong: str) -> None:
    assert wrong in told(trim(more))


@pytest.mark.parametrize("spare", ["-1", "1.5", '"x"', "5000"])
def test_spares_are_a_whole_number(spare: str) -> None:
    notion = f'[[notion]]\nname = "buttons"\nspare = {spare}\n'
    assert told(f"{HEADING}{PANEL}{notion}").startswith(("spare", "'spare'"))


def test_a_notion_is_one_without_a_spare_unless_it_says_otherwise() -> None:
    (clasp,) = plan(f'{HEADING}{PANEL}[[notion]]\nname = "clasp"\n').notion
    assert (clasp.quantity, clasp.spare, clasp.length) == (1, 0, None)
