"""A trim, notion or thread and the way it is bought, as lines of the shopping list."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from estimator.buying.types import Buy, Need, Purchase, Way


def as_lines(
    need: Need,
    way: Way,
    others: Iterable[Way],
    *,
    alike: object,
    told: Callable[[Buy], Iterable[str]] = lambda _: (),
) -> tuple[Purchase, ...]:
    """A line for each put-up of the way, with what is ``told`` of it beside the need's own notes.

    ``others`` are the other ways that were reckoned; they, and what each source takes, stand on the
    first line. A further line's key names its put-up.
    """
    bills = tuple(tuple(part.buy for part in one) for one in others)
    return tuple(
        Purchase(
            key=f"{need.key} / {part.buy.offer.put_up.text}" if number else need.key,
            group=need.group,
            title=need.title,
            names=need.names,
            colour=need.terms.colour,
            width=part.buy.offer.width,
            needed=part.needed,
            buy=part.buy,
            notes=(*need.notes, *filter(None, (part.buy.note,)), *told(part.buy)),
            sources=need.sources,
            alike=alike,
            others=() if number else bills,
            takes=() if number else need.takes,
            need=need,
        )
        for number, part in enumerate(way)
    )
