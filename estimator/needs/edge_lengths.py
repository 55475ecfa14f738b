"""How long an edge is when finished: what trims follow and strips are gathered onto."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from estimator.edges import SIDES, EdgeRef, Finish
from estimator.faults import NamesAnUnread, Wrong, nearest
from estimator.job import GarmentOrder
from estimator.measure import ZERO, Length, Unit, tape_text, whole_ticks
from estimator.needs.arc import PI
from estimator.needs.circles import ring_of_sector
from estimator.needs.cutting import size_piece, with_own_sizes
from estimator.needs.outlines import point_of, side_of_taper, stated
from estimator.needs.types import ToCut
from estimator.plan import Joined, Made, Piece, Shape
from estimator.quoting import quoted
from estimator.working import Reckoning


@dataclass(frozen=True)
class EdgeLengths:
    """Looks edges up in one garment.

    ``sewn`` holds what was made up: the finished long way of each joined strip, and of each band,
    tube or facing that takes its length from an edge.
    """

    order: GarmentOrder
    sewn: Mapping[str, Length]

    def piece(self, name: str) -> Piece:
        """The piece of that name; raises Wrong with the nearest name, or NamesAnUnread."""
        pieces = self.order.pieces
        if name in pieces:
            return pieces[name]
        if name in self.order.unread:
            raise NamesAnUnread(name)
        raise Wrong(f"there is no piece {quoted(name)}", nearest(name, pieces))

    def check(self, ref: EdgeRef) -> None:
        """Raises Wrong for a piece or an edge that does not exist, or more edges than pieces."""
        piece = self.piece(ref.piece)
        known = (*SIDES, *(edge for edge in piece.edges if edge not in SIDES))
        if ref.edge not in known:
            raise Wrong(
                f"{quoted(ref.piece)} has no edge {quoted(ref.edge)}",
                _right_edge(ref.edge, known),
            )
        if ref.count is not None and ref.count > piece.quantity:
            raise Wrong(
                f"{quoted(ref)} is meant {ref.count} times, but the piece {piece.quantity} times",
                f"write at most {piece.quantity}",
            )

    def one(self, ref: EdgeRef, inside: Length = ZERO) -> Length:
        """The finished length of one such edge, or of the line that lies ``inside`` it.

        Only across a taper, round a sector or inside a curved edge is that another length than the
        edge's own.
        """
        self.check(ref)
        piece = self.piece(ref.piece)
        edge = piece.edges.get(ref.edge)
        if edge is not None and edge.length is not None:
            return _of_curve(ref, edge.length, edge.turns, inside, self.order.tape)
        if ref.edge not in SIDES:
            raise Wrong(
                f"the edge {quoted(ref)} has no length",
                f'state it: edges = {{ {ref.edge} = {{ length = "10" }} }} in the piece',
            )
        if ref.edge == point_of(piece) and not inside:
            raise Wrong(
                f"{quoted(ref.piece)} comes to a point at its {ref.edge}, and has no edge there",
                "name another of its edges",
            )
        across = ref.edge in ("top", "bottom")
        if piece.made is not Made.FLAT:
            return self._of_made_up(piece, across)
        match piece.shape:
            case Shape.TAPER:
                _refuse_beyond(ref, inside, piece, self.order.tape)
                return self._of_taper(piece, ref.edge, inside)
            case Shape.SECTOR:
                _refuse_beyond(ref, inside, piece, self.order.tape)
                return _of_sector(piece, ref.edge, inside)
            case Shape.RECTANGLE | Shape.BOX:
                return self._of_rectangle(piece, across)

    def how_many(self, ref: EdgeRef) -> int:
        """On how many pieces of one garment the edge is meant."""
        return ref.count or self.piece(ref.piece).quantity

    def is_ring(self, ref: EdgeRef) -> bool:
        """Whether the edge closes on itself: a long edge of a strip joined in the round."""
        piece = self.piece(ref.piece)
        closed = piece.made is Made.JOINED_STRIP and piece.joined is not Joined.OPEN
        return closed and ref.edge in ("top", "bottom")

    def one_alone(self, ref: EdgeRef, inside: Length = ZERO) -> Reckoning:
        """The finished length of one such edge, or of a line inside it, with its working."""
        unit = self.order.tape
        where = f", {tape_text(inside, unit)} inside it" if inside else ""
        return Reckoning.start(f"{ref}, one{where}", self.one(ref, inside))

    def all(self, ref: EdgeRef, inside: Length = ZERO) -> Reckoning:
        """The finished length of the edge on as many pieces as are meant, with its working."""
        one = self.one_alone(ref, inside)
        return one.times("so many pieces, sewn to one another", self.how_many(ref))

    def share(self, ref: EdgeRef, quantity: int) -> Reckoning:
        """The edge's length for each of ``quantity`` pieces that are sewn onto it.

        Two cuffs onto the edges of two sleeves take one sleeve each; one ruffle onto the edges of
        six panels takes all six; a stated number of edges is for each of the pieces.
        """
        if ref.count is not None:
            return self.all(ref)
        return self.all(ref).divided_by("shared by so many", quantity)

    def _of_made_up(self, piece: Piece, across: bool) -> Length:
        if piece.made is Made.JOINED_STRIP:
            return self.sewn[piece.name] if across else stated(piece.length)
        if across:
            return stated(piece.width)
        return piece.length or self.sewn[piece.name]

    def _of_rectangle(self, piece: Piece, across: bool) -> Length:
        width, length = self._finished(piece)
        return width if across else length

    def _of_taper(self, piece: Piece, edge: str, inside: Length) -> Length:
        if edge in ("left", "right"):
            try:
                return side_of_taper(piece, edge)
            except Wrong:  # which the piece is complained of for
                raise NamesAnUnread(piece.name) from None
        near, far = stated(piece.top), stated(piece.bottom)
        if edge == "bottom":
            near, far = far, near
        size = near + (far - near).times(inside / stated(piece.length))
        return size * 2 if {"left", "right"} & _folds(piece) else size

    def _finished(self, piece: Piece) -> tuple[Length, Length]:
        """Both finished sizes; a piece that cannot be cut has a complaint of its own already."""
        cut = piece.cut[0]
        try:
            return size_piece(ToCut(self.order, (), with_own_sizes(piece, cut), cut)).finished
        except Wrong:
            raise NamesAnUnread(piece.name) from None


def _right_edge(edge: str, known: tuple[str, ...]) -> str:
    right = nearest(edge, known)
    if right.startswith("did you mean"):
        return right
    return f"{right}, or name it in the piece's edges with its length"


def _folds(piece: Piece) -> set[str]:
    return {side for side, edge in piece.edges.items() if edge.finish.finish is Finish.FOLD}


def _refuse_beyond(ref: EdgeRef, inside: Length, piece: Piece, unit: Unit) -> None:
    if inside > stated(piece.length):
        raise Wrong(
            f"a row {tape_text(inside, unit)} inside {quoted(ref)} lies beyond the piece, "
            f"which is {tape_text(stated(piece.length), unit)} long",
            "plan fewer rows, or less between them",
        )


def _of_curve(ref: EdgeRef, length: Length, turns: Fraction, inside: Length, unit: Unit) -> Length:
    """A line beside a curve: longer by its turn, 2 pi x share, x distance; or shorter, if rounded.

    That holds of every curve without a corner, whatever its shape (the offset of a curve).
    """
    more = whole_ticks(2 * PI * turns * inside.ticks)
    if length + more <= ZERO:
        raise Wrong(
            f"a row {tape_text(inside, unit)} inside {quoted(ref)} lies beyond the middle of its "
            "curve",
            "plan fewer rows, or less between them",
        )
    return length + more


def _of_sector(piece: Piece, edge: str, inside: Length) -> Length:
    """Rings round a sector: from the waist outwards they grow by 2 pi x share x distance."""
    if edge in ("left", "right"):
        return stated(piece.length)
    return ring_of_sector(piece, inside if edge == "top" else stated(piece.length) - inside)
