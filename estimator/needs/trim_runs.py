"""Runs of trim: what path each follows, how long each is, and how many there are."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.edges import SIDES, EdgeRef
from estimator.faults import Wrong, nearest
from estimator.job import GarmentOrder
from estimator.measure import ZERO, Length, tape_text
from estimator.needs.casings import check_depth
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.sewn_on import Path, ends_take, joining, sewn_on
from estimator.needs.types import Material, Run
from estimator.plan import Joined, Plan, Seam, Trim
from estimator.quoting import quoted
from estimator.rules import Rules
from estimator.working import Reckoning, Source, in_all

MOST_RUNS = 1_000_000


def trim_runs(trim: Trim, of: Material, edges: EdgeLengths, source: Source) -> tuple[Run, ...]:
    """The runs of a trim in the whole job, as lengths of the trim as it is bought.

    Raises Wrong for a trim that cannot be sewn on as its plan says.
    """
    order = edges.order
    garment = order.plan.garment
    if trim.casing is not None:
        check_depth(trim.casing, "trim", trim.rows, of.width, edges)
    if trim.covers is not None:
        cord = followed_trim(trim, order.plan)
        assert cord is not None, "it covers one"
        trim, of = as_its_cord(trim, cord, garment.rules), replace(of, width=of.width or cord.width)
    found = [
        (one, sewn_on(trim, of, Path(one.length, one.ring), garment.rules, order.tape))
        for one in _alike_together(finished_rows(trim, edges))
    ]
    differ = len({sewn.notes for _, sewn in found}) > 1
    runs = []
    for finished, sewn in found:
        count = sane(finished.count * order.copies * trim.quantity)
        overlap = _at_a_join(trim, of, order)
        about = f"{trim.name} along {' and '.join(finished.where)}" if differ else trim.name
        notes = tuple(f"{about}: {note}" for note in sewn.notes)
        runs.append(
            Run(source, sewn.length, count, trim.joins, overlap, of.repeat, notes, sewn.after)
        )
    if trim.mirrored and sum(run.count for run in runs) % 2:
        raise Wrong(
            f"{quoted(trim.name)} is cut in mirrored pairs, and there are "
            f"{sum(run.count for run in runs)} runs",
            'write run = "each" for a run on each of two fronts, or leave mirrored out',
            ("mirrored",),
        )
    return tuple(runs)


def as_its_cord(strip: Trim, cord: Trim, rules: Rules) -> Trim:
    """A strip that covers a cord, laid as the cord is wherever it does not say how itself.

    It ends like the cord too, where that takes more than what a strip's ends take: else it would
    be shorter than what it covers.
    """
    own = strip.model_fields_set
    alike = {key: getattr(cord, key) for key in _LAID_ALIKE if key not in own}
    if "ends" not in own and ends_take(cord, rules) > ends_take(strip, rules):
        alike["ends"] = cord.ends
    return strip.model_copy(update=alike)


_LAID_ALIKE = ("ease", "fullness", "overlap", "corners", "corner", "measured", "bow")


def _at_a_join(trim: Trim, of: Material, order: GarmentOrder) -> Length:
    """What a join within a run overlaps, as it is bought: a repeat of a patterned trim."""
    if of.repeat is not None:
        return of.repeat
    overlap = order.plan.garment.rules.overlap if trim.overlap is None else trim.overlap
    return overlap.times(1 / (1 - of.shrinkage))


def sane(count: int) -> int:
    if count > MOST_RUNS:
        raise Wrong(f"it takes {count} runs", f"plan at most {MOST_RUNS}")
    return count


@dataclass(frozen=True, slots=True)
class Finished:
    """A finished length that a trim follows without a break, ``count`` times in one garment.

    ``ring`` says that it closes on itself, and ``where`` in words which edges it follows.
    """

    length: Reckoning
    count: int
    ring: bool = False
    where: tuple[str, ...] = ()

    def and_another(self, one: Finished) -> Finished:
        """Both counted together; they are of one length."""
        places = tuple(dict.fromkeys((*self.where, *one.where)))
        return replace(self, count=self.count + one.count, where=places)


def finished_rows(trim: Trim, edges: EdgeLengths) -> list[Finished]:
    """The unbroken lengths of a trim, row by row; rows of one length are counted together."""
    if trim.row_spacing is None and not trim.from_edge:
        return _times(trim.rows, _finished_runs(trim, edges))
    first, apart = trim.from_edge or ZERO, trim.row_spacing or ZERO
    rows = [_finished_runs(trim, edges, first + apart * row) for row in range(trim.rows)]
    if all(_lengths(row) == _lengths(rows[0]) for row in rows):
        return _times(trim.rows, rows[0])
    return [finished for row in rows for finished in row]


def _alike_together(found: list[Finished]) -> list[Finished]:
    """Runs of one length counted together, with the working of the first of them."""
    alike: dict[tuple[Fraction, bool], Finished] = {}
    for one in found:
        key = (one.length.exact, one.ring)
        before = alike.get(key)
        alike[key] = before.and_another(one) if before else one
    return list(alike.values())


def _times(number: int, found: list[Finished]) -> list[Finished]:
    return [replace(one, count=one.count * number) for one in found]


def _lengths(row: list[Finished]) -> list[object]:
    return [(one.length.exact, one.count) for one in row]


def _finished_runs(trim: Trim, edges: EdgeLengths, inside: Length = ZERO) -> list[Finished]:
    """The unbroken lengths of one row of a trim, ``inside`` the edges that it follows.

    Where the plan does not say, a ring is a run by itself; a path that goes up or down a side of a
    piece is a run on each such piece, for sides do not meet end to end; and top or bottom edges are
    taken as sewn to one another, as round a skirt. A trim through another one follows each of its
    runs, as they are finished.
    """
    if trim.length is not None:
        return [Finished(Reckoning.start("finished length as stated", trim.length), 1)]
    host = followed_trim(trim, edges.order.plan)
    if host is not None:
        found = _times(host.quantity, finished_rows(host, edges))
        return [replace(one, ring=joining(host, one.ring) is Joined.IN_THE_ROUND) for one in found]
    refs = followed_edges(trim, edges)
    if trim.run == "each":
        _refuse_corners_of_a_side(trim, refs, edges)
        return [_each(ref, edges, inside) for ref in refs]
    if trim.run == "together":
        path = _path([edges.all(ref, inside) for ref in refs])
        return [Finished(path, 1, where=_where(refs, edges, inside))]
    open_refs = [ref for ref in refs if not edges.is_ring(ref)]
    found = [_each(ref, edges, inside) for ref in refs if edges.is_ring(ref)]
    if any(ref.edge in ("left", "right") for ref in open_refs):
        for piece in dict.fromkeys(ref.piece for ref in open_refs):
            of_piece = [ref for ref in open_refs if ref.piece == piece]
            path = _path([edges.one_alone(ref, inside) for ref in of_piece])
            count = max(map(edges.how_many, of_piece))
            found.append(Finished(path, count, where=_where(of_piece, edges, inside)))
    elif open_refs:
        path = _path([edges.all(ref, inside) for ref in open_refs])
        found.append(Finished(path, 1, where=_where(open_refs, edges, inside)))
    return found


def _refuse_corners_of_a_side(trim: Trim, refs: list[EdgeRef], edges: EdgeLengths) -> None:
    """Raises Wrong for corners of a run on each side of a piece: they lie between its sides.

    An edge of a stated length may turn corners by itself.
    """
    if not trim.corners:
        return
    for side in refs:
        of_piece = list(dict.fromkeys(ref.edge for ref in refs if ref.piece == side.piece))
        stated = edges.piece(side.piece).edges.get(side.edge)
        if side.edge not in SIDES or len(of_piece) < 2 or (stated and stated.length is not None):
            continue
        right = 'leave out run = "each": then it goes round each piece, one side after another'
        if not any(edge in ("left", "right") for edge in of_piece):
            right = "leave out corners: no two of these edges meet"
        raise Wrong(
            f"{quoted(trim.name)} has a run on each of {len(of_piece)} edges of "
            f"{quoted(side.piece)}, and {quoted(side)} alone turns no corner",
            right,
            ("corners",),
        )


def followed_trim(trim: Trim, plan: Plan) -> Trim | None:
    """The trim through which another is threaded, or whose cord a strip covers.

    Raises Wrong where there is none of that name, or trims follow one another in a circle.
    """
    key = "through" if trim.through is not None else "covers"
    name = getattr(trim, key)
    if name is None:
        return None
    trims = {other.name: other for other in plan.trim}
    seen = [trim.name]
    while name is not None:
        if name not in trims:
            right = nearest(name, [one for one in trims if one != trim.name])
            raise Wrong(f"there is no trim {quoted(name)}", right, (key,))
        if name in seen:
            raise Wrong(
                f"{quoted(trim.name)} follows {quoted(name)} in a circle",
                'write along = "skirt panel: bottom" for one of them',
                (key,),
            )
        seen.append(name)
        name = trims[name].through or trims[name].covers
    return trims[seen[1]]


def followed_edges(trim: Trim, edges: EdgeLengths) -> list[EdgeRef]:
    """The edges along which a trim is sewn, those of seams that it names with them."""
    return [ref for one in trim.along or () for ref in edges_of(one, edges)]


def _each(ref: EdgeRef, edges: EdgeLengths, inside: Length) -> Finished:
    one, where = edges.one_alone(ref, inside), _where([ref], edges, inside)
    return Finished(one, edges.how_many(ref), edges.is_ring(ref), where)


def _where(refs: list[EdgeRef], edges: EdgeLengths, inside: Length) -> tuple[str, ...]:
    """The edges of a run in words: the bottom of tier one, the bottom of tier two."""
    off = f", {tape_text(inside, edges.order.tape)} inside it" if inside else ""
    return tuple(f"the {ref.edge} of {ref.piece}{off}" for ref in refs)


def _path(parts: list[Reckoning]) -> Reckoning:
    return in_all("one after the other", parts)


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
