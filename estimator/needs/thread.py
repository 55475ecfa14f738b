"""Thread from what is sewn: each thing goes to the thread that names it, times its stitch."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from estimator.faults import Faults, Wrong, nearest
from estimator.job import GarmentOrder
from estimator.measure import Unit, decimal_text, natural_text, shop_text, total
from estimator.needs.as_one import as_one
from estimator.needs.sewn import Sewn
from estimator.needs.types import BuyingTerms, Needs, ThreadNeed, ToSew, key_of
from estimator.plan import Thread, Work
from estimator.quoting import quoted
from estimator.stitches import LOCKSTITCH, OVEREDGE, Machine, Stitch, ratio_from_geometry
from estimator.working import Reckoning, in_all

_WORDS = tuple(work.value for work in Work)


def check_threads(order: GarmentOrder, faults: Faults) -> None:
    """Adds a complaint for a thread that sews what is not there, or what another sews too."""
    plan = order.plan
    things = {seam.name for seam in plan.seam if seam.name}
    things |= {one.name for one in (*plan.trim, *plan.elastic, *plan.boning, *plan.notion)}
    seen: dict[str, str] = {}
    for number, thread in enumerate(plan.thread):
        with faults.at(order.places, ("thread", number)):
            _refuse_no_length(thread)
        for place, name in enumerate(thread.sews or ("",)):
            at = ("sews", place) if name else ()
            with faults.at(order.places, ("thread", number, *at)):
                if name and name not in {*_WORDS, *things, *order.unread}:
                    raise Wrong(
                        f"there is nothing {quoted(name)} to sew", nearest(name, {*_WORDS, *things})
                    )
                if name in seen:
                    what = f"sews {quoted(name)} too" if name else "says nothing of what it sews"
                    raise Wrong(
                        f"{quoted(thread.name)} {what}, as does {quoted(seen[name])}",
                        f'name what each sews, as in sews = ["{_WORDS[0]}", "{_WORDS[1]}"]',
                    )
                seen[name] = thread.name


def _refuse_no_length(thread: Thread) -> None:
    for sold in thread.sold:
        if sold.put_up is not None and sold.put_up.cut_to_length:
            raise Wrong(
                "thread is not cut to length", 'write put_up = "spool of 250 yd"', ("sold",)
            )
    if thread.buy is None and not thread.sold:
        raise Wrong(
            f"nothing says how much is on a spool of {quoted(thread.name)}",
            'add sold = [{ put_up = "spool of 250 yd" }], or buy an item of a catalog',
        )


def thread_needs(needs: Needs, sewn: Sequence[Sequence[Sewn]]) -> tuple[ThreadNeed, ...]:
    """The thread of each kind and colour, all garments together, for what is sewn in each."""
    found: dict[BuyingTerms, ThreadNeed] = {}
    for number, order in enumerate(needs.garments):
        mine = [one for one in needs.threads if one.garment == number]
        work = _shared_out(sewn[number], mine)
        for one in mine:
            by_stitch = tuple(_thread_for(one, order, work[one.path]))
            if not by_stitch:
                continue
            need = _need(one, order, by_stitch)
            before = found.get(one.terms)
            found[one.terms] = _added(before, need) if before else need
    return tuple(found.values())


_Pass = tuple[Stitch | None, Sewn]


def _shared_out(sewn: Sequence[Sewn], threads: Sequence[ToSew]) -> dict[object, list[_Pass]]:
    """Each pass over a seam with the thread that sews it; what none sews is left out."""
    work: dict[object, list[_Pass]] = {one.path: [] for one in threads}
    for one in sewn:
        for stitch in one.stitches or (None,):
            thread = _sewn_by(one, stitch, threads)
            if thread is not None:
                work[thread.path].append((stitch, one))
    return work


def _sewn_by(one: Sewn, stitch: Stitch | None, threads: Sequence[ToSew]) -> ToSew | None:
    """The thread that names a thing, else its kind of work, else the one that says nothing."""
    overedged = stitch is not None and stitch.machine is Machine.OVERLOCKER
    kind = Work.OVEREDGING if overedged else one.work
    names = [thread for thread in threads if one.name and one.name in thread.entry.sews]
    kinds = [thread for thread in threads if kind.value in thread.entry.sews]
    others = [thread for thread in threads if not thread.entry.sews]
    return next(iter((*names, *kinds, *others)), None)


def _stitch_of(one: Sewn, stated: Stitch | None, thread: Thread) -> tuple[Stitch, ...]:
    if stated is not None:
        return (stated,)
    if one.work is Work.OVEREDGING:
        return tuple(s for s in thread.stitch if s.machine is Machine.OVERLOCKER) or (OVEREDGE,)
    return thread.stitch or (LOCKSTITCH,)


def _thread_for(
    one: ToSew, order: GarmentOrder, work: Sequence[_Pass]
) -> list[tuple[Stitch, Reckoning]]:
    """The thread for each stitch: what is sewn in it, times its ratio, and the waste."""
    by_stitch: dict[Stitch, list[Reckoning]] = {}
    for stated, sewn in work:
        for stitch in _stitch_of(sewn, stated, one.entry):
            by_stitch.setdefault(stitch, []).append(sewn.length)
    waste = order.plan.garment.rules.thread_waste if one.entry.waste is None else one.entry.waste
    found = []
    for stitch, lengths in by_stitch.items():
        ratio, label = _ratio(stitch, one.entry, order.tape)
        thread = in_all(f"sewn in {stitch}", lengths).times(label, ratio)
        found.append((stitch, thread.times("waste: ends, tests and unpicking", 1 + waste)))
    return found


def _ratio(stitch: Stitch, thread: Thread, unit: Unit) -> tuple[Fraction, str]:
    """Thread for one length of seam, and where that comes from."""
    if thread.thickness is not None and thread.stitches is not None:
        ratio = ratio_from_geometry(stitch, thread.thickness, thread.stitches)
        if ratio is not None:
            crossings = "2" if stitch is LOCKSTITCH else "4"
            thick = natural_text(thread.thickness, unit)
            per = decimal_text(unit.tape.length.ticks * thread.stitches, 1)
            return ratio, (
                f"thread for a length of seam, {crossings} + 2 × thickness {thick} × {per} "
                f"stitches per {unit.tape.symbol}"
            )
    return stitch.ratio, f"thread for a length of seam in {stitch}"


def _need(
    one: ToSew, order: GarmentOrder, sewn: tuple[tuple[Stitch, Reckoning], ...]
) -> ThreadNeed:
    source = order.source(one.entry.name, one.path)
    return ThreadNeed(
        key=key_of(one.terms.item, one.terms.colour, [one.entry.name]),
        title=one.title,
        names=(one.entry.name,),
        terms=one.terms,
        notes=one.notes,
        sewn=sewn,
        takes=((source, total(thread.value for _, thread in sewn)),),
        sources=(source,),
    )


def _added(first: ThreadNeed, second: ThreadNeed) -> ThreadNeed:
    return replace(
        as_one(first, second), sewn=first.sewn + second.sewn, takes=first.takes + second.takes
    )


def granted_of_thread(
    order: GarmentOrder, sewn: Sequence[Sewn], threads: Sequence[ToSew]
) -> tuple[str, ...]:
    """What was taken for granted of a garment's thread, and what no thread of its plan sews."""
    garment = order.plan.garment
    name, shop = garment.name, order.tape.shop
    if not threads:
        return ()
    lines = [
        f"{name}: thread for a length of seam: 301 2.5, 401 5.5, 504 14, 514 18, 602 25, unless "
        f"thickness and stitches are stated; an edge in no seam counts as half a seam, "
        f"named edges of a box stand in the place of as much of its sides, lining is sewn as its "
        f"shell is, gathers take {garment.gathering_rows} rows, and hand sewing is "
        f"in the waste of {decimal_text(garment.rules.thread_waste * 100, 1)} %."
    ]
    for work in Work:
        idle = [
            one.length.value
            for one in sewn
            if one.work is work and any(
                _sewn_by(one, stitch, threads) is None for stitch in one.stitches or (None,)
            )
        ]  # fmt: skip
        if idle:
            lines.append(
                f"{name}: no thread is named for {shop_text(total(idle), shop)} of {work.value}."
            )
    return tuple(lines)
