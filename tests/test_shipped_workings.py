"""The working of every shipped plan, read as a person would: each line follows from those above."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path

import pytest

from estimator import Estimate, Length, estimate, read_catalog
from estimator.reports.tables import Sold
from estimator.reports.working_lines import workings_of
from estimator.working import Figure, Operation, Step
from tests.shipped_plans import ALL, SHOPS, sound, stem

ESTIMATES: dict[Path, Estimate] = {}


def of(path: Path) -> Estimate:
    if path not in ESTIMATES:
        ESTIMATES[path] = estimate(sound(path), read_catalog(SHOPS))
    return ESTIMATES[path]


def number(figure: Figure) -> Fraction:
    return Fraction(figure.ticks) if isinstance(figure, Length) else Fraction(figure)


def by_hand(before: Fraction, step: Step, earlier: Sequence[Fraction]) -> Fraction | None:
    """What a step comes to, from the figure before it; None where it begins anew."""
    by = number(step.operand)
    match step.operation:
        case Operation.START:
            return None
        case Operation.ADD:
            return before + by
        case Operation.TAKE:
            return before - by
        case Operation.TIMES:
            return before * by
        case Operation.DIVIDE if isinstance(step.result, int):
            return Fraction(-(-before // by))
        case Operation.DIVIDE:
            return before / by
        case Operation.UP_TO | Operation.SOLD_BY | Operation.MARK:
            return -(-before // by) * by
        case Operation.DOWN_TO:
            return before // by * by
        case Operation.AT_LEAST:
            return max(before, by)
        case Operation.IN_ALL:
            return sum(earlier[-int(by) :], Fraction(0))
        case Operation.FITTED:
            # whole runs take more put-ups than their sum would
            return max(number(step.result), -(-before // by))


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_each_line_of_a_working_follows_from_the_lines_above_it(path: Path) -> None:
    for line in of(path).purchases:
        sums: list[Fraction] = []
        for step in line.buy.steps:
            came_to = by_hand(sums[-1] if sums else Fraction(0), step, sums)
            result = number(step.result)
            # lengths keep their fraction of a tick from line to line, and show the next whole one
            if came_to is not None and step.operation is not Operation.SOLD_BY:
                assert abs(came_to - result) <= 40, (line.title, step)
            if step.operation is Operation.SOLD_BY:
                assert result % number(step.operand) == 0, (line.title, step)
                assert came_to is not None
                assert 0 <= result - sums[-1] < number(step.operand), (line.title, step)
            if step.operation is Operation.START:
                sums.append(result)
            elif step.operation is Operation.IN_ALL:
                sums[-int(number(step.operand)) :] = [result]
            else:
                sums[-1:] = [result]


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_the_last_line_of_a_working_is_the_quantity_on_the_list_and_its_price_multiplies_out(
    path: Path,
) -> None:
    found = of(path)
    for line in found.purchases:
        assert line.buy.steps[-1].result == line.buy.bought, line.title
        working = workings_of(line, found)[0]
        bought = Sold(line.buy.sold_units, line.buy.unit)
        in_put_ups = {f"{bought.text} × {line.buy.unit}", f"{bought.text} {line.buy.unit}"}
        told = working.answer.removeprefix("buy ").partition(" at ")[0]
        assert told in {*in_put_ups, bought.text if line.buy.unit == "each" else ""}, line.title
        last = working.lines[-1].result
        if isinstance(line.buy.bought, Length):
            assert last.endswith(f", {bought.text} {line.buy.unit}"), line.title
        else:
            assert last == str(line.buy.bought), line.title
        price, cost = line.buy.offer.price_per_sold_unit, line.buy.cost
        if price is not None and cost is not None:
            exact = Fraction(price) * line.buy.sold_units
            assert abs(Fraction(cost) - exact) <= Fraction(1, 200), line.title
