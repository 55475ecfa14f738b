"""The shortest layout by a general-purpose constraint solver (OR-Tools CP-SAT), for comparison.

One worker and a fixed seed; each copy is an interval across and one along, no two of which overlap,
plus the cumulative sums of widths and of lengths that the solver prunes with. A repeat makes each
start along a multiple of it, one across likewise; a held piece starts at its edge. It shares no
code with the engine. As a rival it may be told a length that is known, and looks no further.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd

from ortools.sat.python import cp_model

from estimator.layout import Blank, Cloth, Held

SEED = 7


def _starts(held: Held, last: int, period: int) -> list[int]:
    """Where across the cloth a piece may start, up to `last`."""
    if held is Held.FREE:
        return list(range(0, last + 1, period or 1))
    return {Held.NEAR: [0], Held.FAR: [last], Held.EITHER: [0, last]}[held]


@dataclass(frozen=True, slots=True)
class Solved:
    """What the solver knows at its limit: a length it has reached, one it cannot go below."""

    length: int
    bound: int

    @property
    def proved(self) -> bool:
        return self.length == self.bound


def shortest(
    cloth: Cloth,
    blanks: Sequence[Blank],
    *,
    known: int | None = None,
    seconds: float | None = None,
    work: float = 20.0,
) -> Solved:
    """The shortest layout found within `seconds` by the clock, or `work` of the solver's own count.

    The `known` length where it finds nothing better; else all pieces one after another are looked
    at. `buys` is not looked at.
    """
    grid = gcd(
        cloth.width,
        cloth.repeat,
        cloth.repeat_across,
        *(s for b in blanks for s in (b.width, b.length)),
    )
    wide, repeat = cloth.width // grid, cloth.repeat // grid
    copies = [
        (b.width // grid, b.length // grid, b.may_turn and b.width != b.length, b.held)
        for b in blanks
        for _ in range(b.quantity)
    ]
    each = [max(width, length) if turns else length for width, length, turns, _ in copies]
    horizon = sum(-(-long // (repeat or 1)) * (repeat or 1) for long in each)
    if known is not None:
        horizon = known // grid
    model = cp_model.CpModel()
    end = model.new_int_var(0, horizon, "end")
    rects_x, rects_y, widths, lengths = [], [], [], []
    for i, (width, length, turns, held) in enumerate(copies):
        if turns:
            turned = model.new_bool_var(f"turned {i}")
            w = model.new_int_var_from_domain(cp_model.Domain.from_values([width, length]), f"w{i}")
            h = model.new_int_var_from_domain(cp_model.Domain.from_values([width, length]), f"h{i}")
            for flag, (here, there) in ((turned, (length, width)), (~turned, (width, length))):
                model.add(w == here).only_enforce_if(flag)
                model.add(h == there).only_enforce_if(flag)
        else:
            w, h = width, length
        last = wide - min(width, length if turns else width)
        x = model.new_int_var_from_domain(
            cp_model.Domain.from_values(_starts(held, last, cloth.repeat_across // grid)), f"x{i}"
        )
        if repeat:
            step = model.new_int_var(0, horizon // repeat, f"step {i}")
            y = step * repeat
        else:
            y = model.new_int_var(0, horizon, f"y{i}")
        x_end = model.new_int_var(0, wide, f"xe{i}")
        y_end = model.new_int_var(0, horizon, f"ye{i}")
        model.add(y_end <= end)
        rects_x.append(model.new_interval_var(x, w, x_end, f"X{i}"))
        rects_y.append(model.new_interval_var(y, h, y_end, f"Y{i}"))
        widths.append(w)
        lengths.append(h)
    model.add_no_overlap_2d(rects_x, rects_y)
    model.add_cumulative(rects_y, widths, wide)
    model.add_cumulative(rects_x, lengths, end)
    model.minimize(end)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = SEED
    if seconds is None:
        solver.parameters.max_deterministic_time = work
    else:
        solver.parameters.max_time_in_seconds = seconds
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Solved(horizon * grid, round(solver.best_objective_bound) * grid)
    found, bound = round(solver.objective_value), round(solver.best_objective_bound)
    return Solved(found * grid, bound * grid)
