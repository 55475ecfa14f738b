"""The keys by which the lines of a list are told from one another, and told again in the next."""

from __future__ import annotations

from estimator import Job, estimate
from tests.plans import HEADING, catalog, order


def test_lines_of_one_name_have_keys_of_their_own() -> None:
    text = HEADING + '[[piece]]\nname = "sleeve"\ncut = "print"\nwidth = "14 1/2"\nlength = "21"\n'
    other = text.replace('"apron"', '"smock"').replace('"45 in"', '"54 in"')
    found = estimate(Job((order(text), order(other), order(other.replace("54", "60")))))
    keys = [line.key for line in found.purchases]
    assert len(keys) == 3
    assert len(set(keys)) == 3


def test_the_order_of_the_plans_changes_no_key() -> None:
    cloth = {"item": "lawn", "kind": "fabric", "colour": "rose"}
    shop = catalog([cloth], [{"item": "lawn", "width": "45 in"}])
    plans = [
        order(
            f'[garment]\nname = "{name}"\n[[fabric]]\nname = "{name} cloth"\nbuy = "lawn"\n'
            f'[[piece]]\nname = "p"\ncut = "{name} cloth"\nwidth = "9"\nlength = "9"\n'
        )
        for name in ("smock", "apron")
    ]
    keys = {estimate(Job(tuple(some), shop)).purchases[0].key for some in (plans, reversed(plans))}
    assert keys == {"lawn / rose / apron cloth + smock cloth"}
