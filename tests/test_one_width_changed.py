"""One panel of a shipped demo garment made wider: all that hangs on it moves, and nothing else."""

from __future__ import annotations

from fractions import Fraction

import pytest

from estimator import Estimate, Length, estimate, read_catalog
from estimator.measure import whole_ticks
from estimator.needs.cut_piece import CutPiece
from estimator.written import length
from tests.plans import plan
from tests.shipped_plans import SHOPS

MOVES = {"linen", "lining", "hem lace", "beading", "beading ribbon", "thread"}


def goose_girl(width: str) -> Estimate:
    text = (SHOPS / "goose_girl.toml").read_text(encoding="utf-8")
    assert text.count('width = "19 1/2"') == 1
    return estimate(
        plan(text.replace('width = "19 1/2"', f'width = "{width}"')), read_catalog(SHOPS)
    )


@pytest.fixture(scope="module")
def narrow() -> Estimate:
    return goose_girl("19 1/2")


@pytest.fixture(scope="module")
def wide() -> Estimate:
    # three panels of 4 1/2 in more are 13 1/2 in more round the skirt: more than the lace's selling
    # step of 9 in, and the others' of 4 1/2 in
    return goose_girl("24")


def pieces(found: Estimate) -> dict[tuple[str, str], CutPiece]:
    return {
        (choice.need.names[0], piece.name): piece
        for choice in found.fabrics
        for piece in choice.chosen.pieces
    }


def test_no_need_of_the_plan_lies_on_its_selling_step(narrow: Estimate) -> None:
    for line in narrow.purchases:
        if isinstance(line.needed, Length) and isinstance(line.buy.bought, Length):
            off = line.buy.bought.ticks - line.needed.ticks
            assert off > 0, line.title


def test_a_wider_panel_is_the_only_one_whose_cut_size_moves(
    narrow: Estimate, wide: Estimate
) -> None:
    before, after = pieces(narrow), pieces(wide)
    assert before.keys() == after.keys()
    moved = {key for key in before if before[key].width.value != after[key].width.value}
    assert moved == {("linen", "skirt panel"), ("lining", "skirt panel")}
    for key in moved:
        assert after[key].width.value == before[key].width.value + length("4 1/2")
        assert after[key].length == before[key].length
    assert all(before[key] == after[key] for key in before.keys() - moved)


def test_its_fabrics_are_laid_out_anew_and_the_others_lie_as_they_did(
    narrow: Estimate, wide: Estimate
) -> None:
    for before, after in zip(narrow.fabrics, wide.fabrics, strict=True):
        moves = bool(MOVES & set(before.need.names))
        assert (before.chosen.laid != after.chosen.laid) is moves
        assert (before.chosen.buy != after.chosen.buy) is moves


def test_lace_ribbon_thread_and_cost_move_and_no_other_line(
    narrow: Estimate, wide: Estimate
) -> None:
    before = {line.key: line for line in narrow.purchases}
    after = {line.key: line for line in wide.purchases}
    assert before.keys() == after.keys()
    moved = {key for key in before if before[key] != after[key]}
    assert {name for key in moved for name in before[key].names} == MOVES
    for key in moved:
        assert after[key].needed > before[key].needed, key
        if "thread" not in before[key].names:  # a spool holds more than all of it
            assert after[key].buy.amount > before[key].buy.amount, key
    assert wide.cost > narrow.cost
    assert wide.cautions == narrow.cautions
    assert wide.advice == narrow.advice


def test_the_ribbon_moves_by_as_much_as_the_skirt_with_its_ease(
    narrow: Estimate, wide: Estimate
) -> None:
    # 3 x 4 1/2 in, with 3 % of ease and 5 % of waste
    (before,) = (line for line in narrow.purchases if "beading ribbon" in line.names)
    (after,) = (line for line in wide.purchases if "beading ribbon" in line.names)
    assert isinstance(after.needed, Length)
    assert isinstance(before.needed, Length)
    more = length("13 1/2").ticks * 103 * 105
    assert (
        abs(after.needed.ticks - before.needed.ticks - whole_ticks(Fraction(more, 10_000)).ticks)
        <= 1
    )
