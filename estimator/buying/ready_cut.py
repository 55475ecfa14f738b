"""Zips and bones, which are sold singly in lengths of their own: which of these is right."""

from __future__ import annotations

from estimator.buying.types import Buy
from estimator.catalog import Kind, Offer
from estimator.faults import Wrong
from estimator.measure import Length, Unit, natural_text, tape_text
from estimator.needs.types import CountNeed
from estimator.working import Operation, Step


def fits(need: CountNeed, length: Length) -> bool:
    """Whether one of this length will do: a zip that is long enough, a separating one exact.

    A bone that may be ``shorter`` has to go into its channel as it is; any other can be cut.
    """
    assert need.opening is not None, "what closes nothing has no length that is right"
    if need.terms.kind is Kind.SEPARATING_ZIP:
        return length == need.opening
    if need.shorter is not None:
        return need.opening - need.shorter <= length <= need.opening
    return length >= need.opening


def of_the_right_length(need: CountNeed, opening: Length, unit: Unit) -> tuple[Offer, ...]:
    """The offers of the length that comes nearest. Raises Wrong where none will do."""
    lengths = sorted({offer.length for offer in need.terms.offers if offer.length})
    good = [length for length in lengths if fits(need, length)]
    if not good:
        raise Wrong(
            _why(need, opening, unit),
            f"the lengths sold are {', '.join(natural_text(length, unit) for length in lengths)}",
        )
    nearest = min(good, key=lambda length: abs(length.ticks - opening.ticks))
    return tuple(offer for offer in need.terms.offers if offer.length == nearest)


def _why(need: CountNeed, opening: Length, unit: Unit) -> str:
    if need.shorter is not None:
        least, most = tape_text(opening - need.shorter, unit), tape_text(opening, unit)
        return f"'{need.title}' is not sold between {least} and {most} long"
    if need.bone:
        return f"'{need.title}' is not sold {tape_text(opening, unit)} long, or longer"
    why = ""
    if need.terms.kind is Kind.SEPARATING_ZIP:
        why = "a separating zip cannot be shortened, and "
    return f"{why}'{need.title}' is not sold for an opening of {tape_text(opening, unit)}"


def length_notes(need: CountNeed, buy: Buy, unit: Unit) -> list[str]:
    """How long one is as it is sold, and what to do where that is more than it has to be."""
    length = buy.offer.length
    if length is None:
        if need.opening is None:
            return []
        return [f"for an opening of {tape_text(need.opening, unit)}: take it or the next longer"]
    if need.opening is None and need.terms.kind is Kind.THREAD:
        return []
    notes = [f"{natural_text(length, unit)} long"]
    if need.opening is not None and length > need.opening:
        verb = "cut" if need.bone else "shorten"
        notes.append(f"{verb} to {natural_text(need.opening, unit)}")
    elif need.opening is not None and length < need.opening:
        notes.append(f"{natural_text(need.opening - length, unit)} shorter than it might be")
    return notes


def length_steps(need: CountNeed, buy: Buy) -> tuple[Step, ...]:
    """From the length that would be right to the one that is sold."""
    opening, length = need.opening, buy.offer.length
    if opening is None or length is None:
        return ()
    label = "sold in that length"
    if length != opening:
        label = f"the next {'longer' if length > opening else 'shorter'} one sold"
    wanted = need.bone or (Step("opening to close", Operation.START, opening, opening),)
    return (*wanted, Step(label, Operation.START, length, length))
