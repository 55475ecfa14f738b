"""Runs of trim and elastic: how long each unbroken length is, and how many there are.

Order of arithmetic: finished length, fullness, what shrinking takes, whole repeats, then overlap or
ends. So fullness never multiplies an allowance, and scallops are counted as they are bought.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from estimator.catalog import Kind
from estimator.edges import EdgeRef
from estimator.faults import Path, Wrong, nearest
from estimator.job import GarmentOrder
from estimator.measure import ZERO, Length
from estimator.needs.closures import closure_of
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.types import BuyingTerms, Group, LengthNeed, Needs, Run, key_of
from estimator.plan import Elastic, Joined, Seam, Trim
from estimator.working import SHRINKS, Reckoning, in_all
from estimator.written import quoted

MOST_RUNS = 1_000_000


def trim_runs(
    trim: Trim, repeat: Length | None, shrinkage: Fraction, edges: EdgeLengths, path: Path
) -> tuple[Run, ...]:
    """The runs of a trim in the whole job, as lengths of the trim as it is bought.

    ``repeat`` is one scallop or motif before it shrinks, or None.
    """
    order = edges.order
    source = order.source(trim.name, path)
    runs = []
    for finished in _finished_runs(trim, edges):
        length = _sewn_on(trim, repeat, shrinkage, finished, order)
        count = _sane(finished.count * trim.rows * order.copies * trim.quantity)
        runs.append(Run(source, length, count))
    return tuple(runs)


def _sane(count: int) -> int:
    if count > MOST_RUNS:
        raise Wrong(f"it takes {count} runs", f"plan at most {MOST_RUNS}")
    return count


@dataclass(frozen=True, slots=True)
class Finished:
    """A finished length that a trim follows without a break, ``count`` times in one garment.

    ``ring`` says that it closes on itself.
    """

    length: Reckoning
    count: int
    ring: bool = False


def _finished_runs(trim: Trim, edges: EdgeLengths) -> list[Finished]:
    """The unbroken lengths of a trim.

    Where the plan does not say, a ring is a run by itself; a path that goes up or down a side of a
    piece is a run on each such piece, for sides do not meet end to end; and top or bottom edges are
    taken as sewn to one another, as round a skirt.
    """
    if trim.length is not None:
        return [Finished(Reckoning.start("finished length as stated", trim.length), 1)]
    refs = _followed(trim, edges)
    if trim.run == "each":
        return [_each(ref, edges) for ref in refs]
    if trim.run == "together":
        return [Finished(_path([edges.all(ref) for ref in refs]), 1)]
    open_refs = [ref for ref in refs if not edges.is_ring(ref)]
    found = [_each(ref, edges) for ref in refs if edges.is_ring(ref)]
    if any(ref.edge in ("left", "right") for ref in open_refs):
        for piece in dict.fromkeys(ref.piece for ref in open_refs):
            of_piece = [ref for ref in open_refs if ref.piece == piece]
            path = _path([Reckoning.start(f"{ref}, one", edges.one(ref)) for ref in of_piece])
            found.append(Finished(path, max(map(edges.how_many, of_piece))))
    elif open_refs:
        found.append(Finished(_path([edges.all(ref) for ref in open_refs]), 1))
    return found


def granted_of_trims(edges: EdgeLengths) -> tuple[str, ...]:
    """What was taken for granted of a garment's trims."""
    name = edges.order.plan.garment.name
    lines = [taken_together(trim, edges) for trim in edges.order.plan.trim]
    return tuple(f"{name}: {line}" for line in lines if line)


def _followed(trim: Trim, edges: EdgeLengths) -> list[EdgeRef]:
    return [ref for one in trim.along or () for ref in edges_of(one, edges)]


def _each(ref: EdgeRef, edges: EdgeLengths) -> Finished:
    length = Reckoning.start(f"{ref}, one", edges.one(ref))
    return Finished(length, edges.how_many(ref), edges.is_ring(ref))


def _path(parts: list[Reckoning]) -> Reckoning:
    return in_all("one after the other", parts)


def taken_together(trim: Trim, edges: EdgeLengths) -> str:
    """What was taken for granted of a trim over several pieces; nothing where the plan says it."""
    if trim.run is not None:
        return ""
    refs = [ref for ref in _followed(trim, edges) if not edges.is_ring(ref)]
    over = [ref for ref in refs if edges.how_many(ref) > 1]
    if not over or any(ref.edge in ("left", "right") for ref in refs):
        return ""
    names = " and ".join(f"{edges.how_many(ref)} × {ref}" for ref in over)
    return (
        f"{trim.name} is one run over {names}, sewn to one another; for a run on each, write "
        'run = "each".'
    )


def edges_of(one: EdgeRef | str, edges: EdgeLengths) -> tuple[EdgeRef, ...]:
    """An edge as it is, or the ungathered side of the seam that a text names.

    Raises Wrong for a seam that does not exist.
    """
    if isinstance(one, EdgeRef):
        return (one,)
    seams = {seam.name: seam for seam in edges.order.plan.seam if seam.name}
    if one not in seams:
        raise Wrong(
            f"there is no seam {quoted(one)}",
            _with_a_colon(one, edges) or nearest(one, seams),
        )
    return _ungathered(seams[one], edges)


def _with_a_colon(text: str, edges: EdgeLengths) -> str:
    """The remedy where a piece and its edge were named without the colon between them."""
    for piece in edges.order.plan.piece:
        rest = text.removeprefix(piece.name)
        if rest != text and rest.strip():
            return f'an edge has a colon: "{piece.name}: {rest.strip()}"'
    return "" if edges.order.plan.seam else 'name an edge, as in "skirt panel: bottom"'


def _ungathered(seam: Seam, edges: EdgeLengths) -> tuple[EdgeRef, ...]:
    """The side that gives a seam its length: the one that is not gathered, else the longer."""
    first, second = seam.edges
    if seam.gathered is not None:
        return second if seam.gathered in first else first
    return max(seam.edges, key=lambda side: sum(edges.all(ref).exact for ref in side))


def _sewn_on(
    trim: Trim,
    repeat: Length | None,
    shrinkage: Fraction,
    finished: Finished,
    order: GarmentOrder,
) -> Reckoning:
    usual = Joined.IN_THE_ROUND if finished.ring else Joined.OPEN
    joined = trim.joined or usual
    run = finished.length.times("fullness", trim.fullness)
    label, ends = _ends(trim, joined, order)
    if repeat is None:
        return run.plus(label, ends).divided_by(SHRINKS, 1 - shrinkage)
    run = run.divided_by(SHRINKS, 1 - shrinkage).up_to("whole repeats", repeat)
    if joined is Joined.IN_THE_ROUND:
        return run.plus("one repeat overlapped where the round joins", repeat)
    return run.plus(label, ends.times(1 / (1 - shrinkage)))


def _ends(trim: Trim, joined: Joined, order: GarmentOrder) -> tuple[str, Length]:
    """What a run without a repeat takes at its ends, or where it joins."""
    rules = order.plan.garment.rules
    if joined is Joined.IN_THE_ROUND:
        overlap = rules.overlap if trim.overlap is None else trim.overlap
        return "overlap where the round joins", overlap
    match trim.ends:
        case "turned under":
            return "two ends turned under", rules.turn_under * 2
        case "in a seam":
            return "two ends caught in seams", rules.seam_allowance * 2
        case "raw":
            return "raw ends", ZERO


def elastic_runs(
    elastic: Elastic, shrinkage: Fraction, order: GarmentOrder, path: Path
) -> tuple[Run, ...]:
    """An elastic's runs: the stretch applies to the body measure, the overlap is added after."""
    rules = order.plan.garment.rules
    stretch = rules.elastic_stretch if elastic.stretch is None else elastic.stretch
    run = Reckoning.start("body measure", elastic.measure)
    run = run.times("cut shorter, to be stretched", Fraction(1) - stretch)
    if elastic.joined is Joined.IN_THE_ROUND:
        overlap = rules.elastic_overlap if elastic.overlap is None else elastic.overlap
        run = run.plus("overlap where it joins", overlap)
    else:
        run = run.plus("two ends caught in seams", rules.seam_allowance * 2)
    run = run.divided_by(SHRINKS, 1 - shrinkage)
    count = _sane(elastic.rows * elastic.quantity * order.copies)
    return (Run(order.source(elastic.name, path), run, count),)


def length_needs(needs: Needs, edges: Sequence[EdgeLengths]) -> tuple[LengthNeed, ...]:
    """All that is bought by its length; ``edges`` holds those of each garment, as it is sewn.

    What is bought on the same terms is one need, so that its runs are totalled before rounding.
    """
    found: dict[BuyingTerms, LengthNeed] = {}
    for one in needs.lengths:
        entry, of_garment = one.entry, edges[one.garment]
        notes = one.notes
        if isinstance(entry, Elastic):
            runs = elastic_runs(entry, one.terms.shrinkage, of_garment.order, one.path)
        elif isinstance(entry, Trim):
            runs = trim_runs(entry, one.repeat, one.terms.shrinkage, of_garment, one.path)
        else:
            closure = closure_of(entry, of_garment)
            runs = closure.runs(entry, one.terms.shrinkage, of_garment.order, one.path)
            notes += closure.notes
        before = found.get(one.terms)
        names = tuple(dict.fromkeys((*(before.names if before else ()), entry.name)))
        found[one.terms] = LengthNeed(
            key=key_of(one.terms.item, one.terms.colour, names),
            title=one.title,
            names=names,
            group=Group.ELASTICS if one.terms.kind is Kind.ELASTIC else Group.TRIMS,
            terms=one.terms,
            notes=tuple(dict.fromkeys((*(before.notes if before else ()), *notes))),
            runs=(*(before.runs if before else ()), *runs),
        )
    return tuple(found.values())
