"""What is sewn in a garment and how long it is: seams, hems, trims, gathers and overedged edges.

Two edges make one seam, so an edge in no ``[[seam]]`` counts as half of one. What is cut again from
a lining is sewn again; underlining and interfacing are sewn as one with their piece.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import replace

from estimator.edges import EdgeRef, Finish
from estimator.measure import ZERO, Length
from estimator.needs.closures import closure_of
from estimator.needs.cutting import ACROSS, with_own_sizes
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.elastics import starts_of
from estimator.needs.loose_edges import loose_edges
from estimator.needs.makeup import takes_a_length
from estimator.needs.outlines import stated
from estimator.needs.sewn import Sewn, times_over
from estimator.needs.trim_runs import edges_of, finished_rows
from estimator.plan import Cut, Made, Piece, Role, Seam, Shape, TakeUpKind, Trim, Work
from estimator.working import Reckoning, in_all
from estimator.written import length

_SEWN_APART = {Role.MAIN, Role.CONTRAST, Role.LINING, Role.NET}
"""Roles whose pieces have seams of their own, though the piece is cut from another fabric too."""

NARROW_TRIM = length("3/8 in")
"""Up to this width one row of stitching holds a trim, beyond it one at each edge (common practice).
"""
ROWS_AT_A_ZIP = 2


def sewn_in(edges: EdgeLengths, joins: Mapping[str, int]) -> tuple[Sewn, ...]:
    """All that is sewn in the copies of one garment.

    ``joins`` tells of strips and circles, by the name of the piece, how many joins they have in the
    job beyond the seam that closes them.
    """
    found = [*_shell(edges), *_trims(edges), *_elastics(edges), *_zips(edges)]
    found += _casings(edges)
    for fabric, layer in _layers(edges):
        found += [_named(fabric, one) for one in _shell(layer)]
    copies = edges.order.copies
    of_all = [replace(one, length=one.length.times("garments", copies)) for one in found]
    return tuple(one for one in (*of_all, *_joins(edges, joins)) if one.length.exact)


def _named(fabric: str, one: Sewn) -> Sewn:
    return replace(one, length=_labelled(fabric, one.length))


def _labelled(what: str, found: Reckoning) -> Reckoning:
    """A working that says with its first line of what it is."""
    first = replace(found.steps[0], label=f"{what}: {found.steps[0].label}")
    return replace(found, steps=(first, *found.steps[1:]))


def _layers(edges: EdgeLengths) -> Iterator[tuple[str, EdgeLengths]]:
    """The garment once more for each fabric from which pieces are cut again and sewn apart."""
    order = edges.order
    for fabric in order.plan.fabric:
        pieces = tuple(
            with_own_sizes(piece, cut).model_copy(update={"cut": (cut,)})
            for piece in order.plan.piece
            for cut in piece.cut[1:]
            if cut.fabric == fabric.name and is_sewn_apart(cut, fabric.role)
        )
        if not pieces:
            continue
        names = {piece.name for piece in pieces}
        seams = tuple(
            seam for seam in order.plan.seam
            if all(ref.piece in names for side in seam.edges for ref in side)
        )  # fmt: skip
        plan = order.plan.model_copy(update={"piece": pieces, "seam": seams})
        yield fabric.name, EdgeLengths(replace(order, plan=plan), edges.sewn)


def is_sewn_apart(cut: Cut, role: Role) -> bool:
    """Whether what is cut from a fabric beside the shell has seams of its own."""
    return role in _SEWN_APART and cut.cut_to == "cut size"


def _shell(edges: EdgeLengths) -> Iterator[Sewn]:
    """Seams, gathers and the edges of pieces, of one layer of one garment."""
    covered: Counter[tuple[str, str]] = Counter()
    gathered: dict[tuple[str, str], EdgeRef] = {}
    for seam in edges.order.plan.seam:
        for ref in (ref for side in seam.edges for ref in side):
            covered[ref.piece, ref.edge] += ref.count or times_over(ref, edges)
        if seam.gathered is not None:
            gathered[seam.gathered.piece, seam.gathered.edge] = seam.gathered
        yield _seam(seam, edges)
    for piece in edges.order.plan.piece:
        yield from _set_on(piece, edges, covered, gathered)
    rows = edges.order.plan.garment.gathering_rows
    for ref in gathered.values():
        gathers = _everywhere(ref, edges).times("rows of gathering", rows)
        yield Sewn(Work.GATHERING, _labelled("gathers", gathers))
    for piece in edges.order.plan.piece:
        yield from loose_edges(piece, edges, covered)
        yield from _folds(piece, edges)


def _seam(seam: Seam, edges: EdgeLengths) -> Sewn:
    """As long as the side that is not gathered, else as the longer."""
    sides = [side for side in seam.edges if seam.gathered not in side] or seam.edges
    found = [
        in_all("one after the other", [_everywhere(ref, edges) for ref in side]) for side in sides
    ]
    whole = max(found, key=lambda one: one.exact)
    return Sewn(Work.SEAMS, _labelled(seam.name or "seam", whole), seam.name, seam.stitch)


def _everywhere(ref: EdgeRef, edges: EdgeLengths) -> Reckoning:
    """An edge's length as often as it is meant, or as it is there."""
    halves = 1 if ref.count else times_over(ref, edges) // edges.how_many(ref)
    return edges.all(ref).times("both halves of what is cut on the fold", halves)


def _set_on(
    piece: Piece,
    edges: EdgeLengths,
    covered: Counter[tuple[str, str]],
    gathered: dict[tuple[str, str], EdgeRef],
) -> Iterator[Sewn]:
    """The seam by which a strip, band or facing is sewn onto its edge, and its gathers."""
    mine = EdgeRef(piece.name, "top" if piece.made is Made.JOINED_STRIP else "left")
    full = piece.fullness or 1
    if full > 1:
        gathered.setdefault((mine.piece, mine.edge), mine)
    onto = piece.onto
    long_edges = ("top", "bottom") if piece.made is Made.JOINED_STRIP else ("left", "right")
    in_a_seam = any(covered[piece.name, edge] for edge in long_edges)
    if onto is None or in_a_seam or onto.piece not in edges.order.pieces:
        return
    if full < 1:
        gathered.setdefault((onto.piece, onto.edge), onto)
    number = 1 if onto.count is None else piece.quantity
    seam = edges.all(onto).times("so many sewn onto it", number).times("fullness", min(full, 1))
    covered[onto.piece, onto.edge] += (
        times_over(onto, edges) if onto.count is None else onto.count * number
    )
    covered[piece.name, mine.edge] += piece.quantity
    yield Sewn(Work.SEAMS, _labelled(f"{piece.name} onto", seam))


def _folds(piece: Piece, edges: EdgeLengths) -> Iterator[Sewn]:
    """Tucks and darts, each as long as the piece: a dart is shorter."""
    for fold in piece.takes_up:
        if fold.kind not in (TakeUpKind.TUCK, TakeUpKind.DART):
            continue
        along = edges.one(EdgeRef(piece.name, "left" if fold.across == "width" else "top"))
        on_fold = any(
            side in piece.edges and piece.edges[side].finish.finish is Finish.FOLD
            for side in ACROSS[fold.across]
        )
        folds = Reckoning.start(f"{fold.kind.value}s of {piece.name}, one", along)
        count = fold.count * piece.quantity * (2 if on_fold else 1)
        yield Sewn(Work.SEAMS, folds.times("so many of them", count))


def _joins(edges: EdgeLengths, joins: Mapping[str, int]) -> Iterator[Sewn]:
    """The seams between widths of a strip, or parts of a circle; counted for all copies."""
    for name, count in joins.items():
        depth = stated(edges.piece(name).length)
        one = Reckoning.start(f"a join of {name}", depth).times("joins", count)
        yield Sewn(Work.SEAMS, one)


def may_have_joins(piece: Piece) -> bool:
    """Whether a piece may be joined from widths or parts, once a width is known."""
    return piece.made is Made.JOINED_STRIP or (
        piece.shape is Shape.SECTOR and not takes_a_length(piece)
    )


def _trims(edges: EdgeLengths) -> Iterator[Sewn]:
    """The stitching along trims, and the gathers of those that are gathered."""
    rows_of_gathers = edges.order.plan.garment.gathering_rows
    for trim in edges.order.plan.trim:
        if trim.along is None or trim.casing is not None:
            continue  # a cord or a tie: it is drawn through, or tied
        runs = [run.length.times("runs alike", run.count) for run in finished_rows(trim, edges)]
        path = in_all("all runs together", runs).times("so many of it", trim.quantity)
        held = path.times("rows of stitching hold it", stitching_of(trim))
        yield Sewn(Work.TRIMS, _labelled(f"along {trim.name}", held), trim.name)
        if trim.fullness > 1:
            full = path.times("fullness", trim.fullness).times("rows of gathering", rows_of_gathers)
            yield Sewn(Work.GATHERING, _labelled(f"gathers of {trim.name}", full), trim.name)


def stitching_of(trim: Trim) -> int:
    """How many rows of stitching hold a trim: as stated, else by its width.

    A binding is sewn on, turned, and sewn down.
    """
    if trim.stitched is not None:
        return trim.stitched
    if trim.cut_from is not None and trim.covers is None:
        return 2
    return 1 if (trim.width or ZERO) <= NARROW_TRIM else 2


def _elastics(edges: EdgeLengths) -> Iterator[Sewn]:
    """Each row of an elastic that is sewn to an edge; in a casing it is not sewn along."""
    for elastic in edges.order.plan.elastic:
        if elastic.along is None or elastic.casing is not None:
            continue
        refs = tuple(ref for one in elastic.along for ref in edges_of(one, edges))
        edge, times = starts_of(elastic, refs, edges)
        rows = edge.times("so many of it", times * elastic.quantity).times("rows", elastic.rows)
        yield Sewn(Work.TRIMS, _labelled(f"along {elastic.name}", rows), elastic.name)


def _casings(edges: EdgeLengths) -> Iterator[Sewn]:
    """Both long edges of the casings of bones."""
    for entry in edges.order.plan.boning:
        if entry.casing_for is not None:
            casing = closure_of(entry, edges)
            one = casing.length.times("casings", casing.count).times("both edges", 2)
            yield Sewn(Work.SEAMS, _labelled(f"a {entry.name}", one), entry.name)


def _zips(edges: EdgeLengths) -> Iterator[Sewn]:
    for notion in edges.order.plan.notion:
        if isinstance(notion.length, Length):
            one = Reckoning.start(f"opening of {notion.name}", notion.length)
            sides = one.times("zips", notion.quantity).times("sides", ROWS_AT_A_ZIP)
            yield Sewn(Work.SEAMS, sides, notion.name)
