"""What a job needs before any width is chosen; the complaints about its plans come from here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.faults import Faults, NamesAnUnread, Wrong, nearest
from estimator.job import GarmentOrder, Job
from estimator.measure import Length
from estimator.needs.allowances import allowances_of
from estimator.needs.as_one import as_one
from estimator.needs.closures import check_closures, sold_ready_cut
from estimator.needs.counted import counted_in, counted_together
from estimator.needs.currencies import currency_of
from estimator.needs.cut_piece import CutPiece
from estimator.needs.cutting import cut_length, cut_piece, with_own_sizes
from estimator.needs.fits import refuse_all_selvedge, refuse_too_wide
from estimator.needs.makeup import is_hanging, takes_a_length
from estimator.needs.pieced import refuse_not_flat
from estimator.needs.sewing import check_sewing
from estimator.needs.strips import strips_to_cut
from estimator.needs.terms import (
    allowed_offers,
    buying_terms,
    fabric_terms,
    notes_on,
)
from estimator.needs.thread import check_threads
from estimator.needs.trim_runs import followed_trim
from estimator.needs.types import (
    CountNeed,
    FabricNeed,
    FabricTerms,
    Group,
    Needs,
    ToCut,
    ToRun,
    ToSew,
    key_of,
)
from estimator.plan import (
    Boning,
    ByLength,
    Elastic,
    Fabric,
    Lacing,
    Loops,
    Made,
    Role,
    Trim,
)
from estimator.quoting import quoted

_SHELL = {Role.MAIN, Role.CONTRAST, Role.NET}
"""Fabrics that stand with the fabrics in a shop; the others stand with linings."""


def needs_of(job: Job, faults: Faults) -> Needs:
    """Everything the job needs, as far as its plans are sound; complaints go into ``faults``."""
    currencies: list[str] = []
    fabrics: dict[FabricTerms, FabricNeed] = {}
    lengths: list[ToRun] = []
    counts: dict[object, CountNeed] = {}
    threads: list[ToSew] = []
    for number, order in enumerate(job.garments):
        with faults.at(order.places, ()):
            currency = currency_of(order, job)
            if currency and currencies and currency != currencies[0]:
                raise Wrong(
                    f"prices are in {currency} here and in {currencies[0]} in another plan",
                    "use one currency in a job",
                    ("garment", "currency"),
                )
            currencies += [currency] if currency else []
        _refuse_unknown_fabrics(order, faults)
        for fabric in _fabrics(number, order, job, faults):
            before = fabrics.get(fabric.terms)
            fabrics[fabric.terms] = _joined(before, fabric) if before else fabric
        lengths += _lengths(number, order, job, faults)
        for count in counted_in(order, job, faults):
            alike = (count.terms, count.opening, count.shorter)
            before_it = counts.get(alike)
            counts[alike] = counted_together(before_it, count) if before_it else count
        threads += _threads(number, order, job, faults)
        check_sewing(order, faults)
        check_threads(order, faults)
        check_closures(order, faults)
    return Needs(
        garments=job.garments,
        fabrics=tuple(fabrics.values()),
        lengths=tuple(lengths),
        counts=tuple(counts.values()),
        threads=tuple(threads),
        currency=next(iter(currencies), ""),
    )


def _refuse_unknown_fabrics(order: GarmentOrder, faults: Faults) -> None:
    known = {fabric.name for fabric in order.plan.fabric}
    named = known | order.unread
    for number, piece in enumerate(order.plan.piece):
        for place, cut in enumerate(piece.cut):
            if cut.fabric not in named:
                wrong = f"the plan has no fabric {quoted(cut.fabric)}"
                parts = [one.strip() for one in cut.fabric.split(",")]
                listed = ", ".join(f'"{one}"' for one in parts)
                right = f"write cut = [{listed}]" if known.issuperset(parts) else (
                    nearest(cut.fabric, known))  # fmt: skip
                problem = Wrong(wrong, right, ("cut", place, "fabric"))
                faults.add(order.places, ("piece", number), problem)
    for number, trim in enumerate(order.plan.trim):
        if trim.cut_from is not None and trim.cut_from not in named:
            wrong = f"the plan has no fabric {quoted(trim.cut_from)}"
            problem = Wrong(wrong, nearest(trim.cut_from, known), ("cut_from",))
            faults.add(order.places, ("trim", number), problem)


def _fabrics(number: int, order: GarmentOrder, job: Job, faults: Faults) -> Iterator[FabricNeed]:
    for place, fabric in enumerate(order.plan.fabric):
        path = ("fabric", place)
        to_cut = (*_to_cut(fabric, order, faults), *_strips(fabric, order, job, faults))
        with faults.at(order.places, path):
            terms = fabric_terms(fabric, order, job)
            refuse_all_selvedge(terms)
            if _is_idle(fabric, order):
                raise Wrong(
                    f"no piece is cut from {quoted(fabric.name)}",
                    "name it in a piece's cut, or leave the fabric out",
                )
            item = job.catalog.items.get(terms.item)
            to_cut = tuple(replace(one, nap=terms.nap, garment=number) for one in to_cut)
            yield FabricNeed(
                key=key_of(terms.item, terms.colour, [fabric.name]),
                title=item.name if item else fabric.name,
                names=(fabric.name,),
                group=Group.FABRICS if fabric.role in _SHELL else Group.LININGS,
                terms=terms,
                notes=notes_on(item, fabric.note),
                pieces=tuple(_sized(to_cut, terms, order, faults)),
                hanging=tuple(one for one in to_cut if is_hanging(one)),
                used_as=((number, fabric.name),),
                sources=(order.source(fabric.name, path),),
            )


def _is_idle(fabric: Fabric, order: GarmentOrder) -> bool:
    """Nothing is cut from it; where an entry or a name cannot be read, that is not known."""
    named = {cut.fabric for piece in order.plan.piece for cut in piece.cut}
    named |= {trim.cut_from for trim in order.plan.trim if trim.cut_from is not None}
    known = {one.name for one in order.plan.fabric}
    return fabric.name not in named and named <= known and not order.unread


def _to_cut(fabric: Fabric, order: GarmentOrder, faults: Faults) -> Iterator[ToCut]:
    for number, piece in enumerate(order.plan.piece):
        for place, cut in enumerate(piece.cut):
            if cut.fabric != fabric.name:
                continue
            path = ("piece", number)
            try:
                yield ToCut(order, path, with_own_sizes(piece, cut), cut)
            except Wrong as wrong:
                faults.add(order.places, (*path, "cut", place), wrong)


def _strips(fabric: Fabric, order: GarmentOrder, job: Job, faults: Faults) -> Iterator[ToCut]:
    """The bias strips that bindings and pipings take from a fabric."""
    for number, trim in enumerate(order.plan.trim):
        if trim.cut_from != fabric.name:
            continue
        path = ("trim", number)
        with faults.at(order.places, path):
            cord = followed_trim(trim, order.plan) if trim.covers is not None else None
            yield strips_to_cut(trim, _thickness(cord, order, job), order, path)


def _thickness(cord: Trim | None, order: GarmentOrder, job: Job) -> Length | None:
    """How thick a cord is: as the plan says, else as it is on offer."""
    if cord is None or cord.width is not None:
        return cord.width if cord else None
    try:
        offers = buying_terms(cord, order, job).offers
    except Wrong:  # which the cord is complained of for
        raise NamesAnUnread(cord.name) from None
    return next((offer.width for offer in offers if offer.width), None)


def _sized(
    to_cut: tuple[ToCut, ...], terms: FabricTerms, order: GarmentOrder, faults: Faults
) -> Iterator[CutPiece]:
    for one in to_cut:
        with faults.at(order.places, one.path):
            if one.cut.pieced is not None:
                refuse_not_flat(one.piece)
            if not is_hanging(one):
                piece = cut_piece(one)
                offers = allowed_offers(terms)
                refuse_too_wide(piece, terms, offers, one.cut.fabric, order.tape)
                yield piece
            elif not takes_a_length(one.piece):
                cut_piece(one)
            elif one.piece.made is Made.JOINED_STRIP:
                cut_length(one)
            else:
                allowances_of(one)


def _joined(first: FabricNeed, second: FabricNeed) -> FabricNeed:
    return replace(
        as_one(first, second),
        pieces=first.pieces + second.pieces,
        hanging=first.hanging + second.hanging,
        used_as=first.used_as + second.used_as,
    )


def _lengths(number: int, order: GarmentOrder, job: Job, faults: Faults) -> Iterator[ToRun]:
    entries: list[tuple[str, int, Trim | Elastic | Lacing | Boning | Loops]] = [
        *(
            ("trim", place, trim)
            for place, trim in enumerate(order.plan.trim)
            if trim.cut_from is None
        ),
        *(("elastic", place, elastic) for place, elastic in enumerate(order.plan.elastic)),
        *(("lacing", place, lacing) for place, lacing in enumerate(order.plan.lacing)),
        *(("boning", place, boning) for place, boning in enumerate(order.plan.boning)),
        *(("loops", place, loops) for place, loops in enumerate(order.plan.loops)),
    ]
    for table, place, entry in entries:
        with faults.at(order.places, (table, place)):
            terms = buying_terms(entry, order, job)
            item = job.catalog.items.get(terms.item)
            repeat = item.repeat if item else None
            if isinstance(entry, Trim) and entry.repeat is not None:
                repeat = entry.repeat or None
            _refuse_two_overlaps(entry, repeat)
            if isinstance(entry, Boning) and sold_ready_cut(entry, terms):
                continue
            yield ToRun(
                garment=number,
                path=(table, place),
                entry=entry,
                terms=terms,
                title=item.name if item else entry.name,
                repeat=repeat,
                notes=notes_on(item, entry.note),
            )


def _refuse_two_overlaps(entry: ByLength, repeat: Length | None) -> None:
    """A round of a patterned trim overlaps one repeat, whatever else a plan may state."""
    if isinstance(entry, Trim) and repeat is not None and entry.overlap is not None:
        raise Wrong(
            f"{quoted(entry.name)} has a repeat, and a round of it overlaps one repeat",
            'leave overlap out, or write repeat = "0" for a trim that is not matched',
            ("overlap",),
        )


def _threads(number: int, order: GarmentOrder, job: Job, faults: Faults) -> Iterator[ToSew]:
    for place, thread in enumerate(order.plan.thread):
        path = ("thread", place)
        with faults.at(order.places, path):
            terms = buying_terms(thread, order, job)
            item = job.catalog.items.get(terms.item)
            title = item.name if item else thread.name
            notes = (*filter(None, (thread.weight,)), *notes_on(item, thread.note))
            yield ToSew(number, path, thread, terms, title, notes)
