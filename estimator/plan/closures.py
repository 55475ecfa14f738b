"""The tables of a plan for closures that are cut from a length: lacing, boning, button loops."""

from __future__ import annotations

from pydantic import model_validator

from estimator.fields import Allowance, Count, Name, Size, refusal
from estimator.plan.piece_edges import EdgeRefField
from estimator.plan.trims import ByLength


class _ForAClosure(ByLength):
    """What these tables do not share with trims."""

    @model_validator(mode="after")
    def _no_rows(self) -> _ForAClosure:
        if self.rows != 1 or self.overlap is not None:
            raise refusal("rows and overlap are for trims", "leave them out, and state quantity")
        return self


class Lacing(_ForAClosure):
    """A lace crossed through pairs of eyelets up an opening.

    The opening is an edge or a stated length. ``gap`` is how far apart its sides stand at most,
    ``apart`` how far the eyelets of one side, and ``tie`` what each end has left to tie.
    """

    along: EdgeRefField | None = None
    length: Size | None = None
    apart: Size | None = None
    pairs: Count | None = None
    gap: Size
    from_ends: Allowance | None = None
    tie: Allowance | None = None

    @model_validator(mode="after")
    def _one_opening(self) -> Lacing:
        if (self.along is None) is (self.length is None):
            raise refusal(
                "a lacing states one of along and length, for the opening that it closes",
                'write along = "1 x back: left", or length = "12"',
            )
        if (self.apart is None) is (self.pairs is None):
            raise refusal(
                "a lacing states one of apart and pairs, for its eyelets",
                'write apart = "1", or pairs = 8',
            )
        return self


class Boning(_ForAClosure):
    """Bones for channels of a stated length or along an edge, or the casing that holds them.

    ``casing_for`` names the bones whose channels a casing makes; ``clear`` is by how much a bone
    ends short of its channel at each end. Of bones that are sold ready cut, ``shorter`` is by how
    much one may be shorter than that; without it the next longer one is cut.
    """

    along: EdgeRefField | None = None
    length: Size | None = None
    casing_for: Name | None = None
    clear: Allowance | None = None
    shorter: Allowance | None = None

    @model_validator(mode="after")
    def _one_channel(self) -> Boning:
        stated = [one for one in (self.along, self.length, self.casing_for) if one is not None]
        if len(stated) != 1:
            raise refusal(
                "boning states one of along, length and casing_for",
                'write length = "9" for each channel, or casing_for = "bones"',
            )
        if self.casing_for is not None and (
            self.clear is not None or self.shorter is not None or self.quantity != 1
        ):
            raise refusal(
                "a casing is as long as the channels of its bones, and has as many",
                "leave out clear, shorter and quantity",
            )
        return self


class Loops(_ForAClosure):
    """Loops of cord or tube, one for each of the buttons named: a notion that states its size."""

    buttons: Name
