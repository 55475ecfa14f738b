"""What a run of trim takes beyond the path it follows: ease, pleats, corners, repeats, ends.

Order of arithmetic: finished length, ease and fullness, pleats, corners, what shrinking takes,
whole repeats, then overlap or ends. So fullness never multiplies an allowance, and scallops are
counted as they are bought.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from estimator.faults import Wrong
from estimator.measure import ZERO, Length, Unit, tape_text, whole_ticks
from estimator.needs.bias import ROOT_2_AT_MOST
from estimator.needs.types import Material
from estimator.plan import End, Joined, Trim, TrimEnd
from estimator.quoting import quoted
from estimator.rules import Rules
from estimator.working import SHRINKS, Reckoning

CUT_OF_A_BINDING = 4
"""A single binding is cut four times as wide as it finishes (common practice)."""


@dataclass(frozen=True, slots=True)
class Path:
    """A finished length that a trim follows without a break; a ``ring`` closes on itself."""

    length: Reckoning
    ring: bool = False


@dataclass(frozen=True, slots=True)
class SewnOn:
    """A run as it is bought, with what its maker should know of it.

    ``after`` is what a further one takes after another on the same length, if that is less.
    """

    length: Reckoning
    notes: tuple[str, ...] = ()
    after: tuple[Reckoning, ...] = ()


def sewn_on(trim: Trim, of: Material, path: Path, rules: Rules, unit: Unit) -> SewnOn:
    """The length of trim for one run along a path.

    Raises Wrong for a repeat longer than the run, and for keys that need a repeat or a width.
    """
    run = path.length.times("ease", 1 + trim.ease).times("fullness", trim.fullness)
    run = _with_corners(trim, of, _pleated(trim, run), rules)
    joined = joining(trim, path.ring)
    if of.repeat is None:
        _refuse_without_repeat(trim)
        run = run.plus(*_allowed(trim, joined, rules)).plus("for the bow", trim.bow or ZERO)
        return SewnOn(run.divided_by(SHRINKS, 1 - of.shrinkage))
    if joined is Joined.OPEN and (trim.motif or trim.mirrored):
        return _started_on_a_motif(trim, of, run, rules)
    run = run.divided_by(SHRINKS, 1 - of.shrinkage)
    if of.repeat.ticks > run.exact:
        raise Wrong(
            f"one repeat of {quoted(trim.name)} is {tape_text(of.repeat, unit)}, and the run only "
            f"{tape_text(run.value, unit)}",
            'take a trim with a smaller repeat, or write repeat = "0" where it is not matched',
        )
    whole, note = _whole_repeats(trim, of, run, joined, unit)
    notes = (note,) if note else ()
    if joined is Joined.IN_THE_ROUND:
        label = "one repeat overlapped where the round joins"
        if trim.overlapped != 1:
            label = "the part of a repeat overlapped where the round joins"
        return SewnOn(whole.plus(label, of.repeat.times(trim.overlapped)), notes)
    label, ends = _allowed(trim, joined, rules)
    grown = 1 / (1 - of.shrinkage)
    whole = whole.plus(label, ends.times(grown))
    return SewnOn(whole.plus("for the bow", (trim.bow or ZERO).times(grown)), notes)


def joining(trim: Trim, ring: bool) -> Joined:
    """Whether a run closes on itself: as the plan says, else as its path does."""
    if trim.bow is not None:
        return Joined.OPEN
    return trim.joined or (Joined.IN_THE_ROUND if ring else Joined.OPEN)


def _pleated(trim: Trim, run: Reckoning) -> Reckoning:
    """A knife pleat takes twice its depth and a box pleat four times; a pleat begun is whole."""
    pleats = trim.pleats
    if pleats is None:
        return run
    count = ceil(run.exact / pleats.apart.ticks)
    return run.plus(f"{count} {pleats.kind}s", pleats.depth * (pleats.takes * count))


def _with_corners(trim: Trim, of: Material, run: Reckoning, rules: Rules) -> Reckoning:
    """A mitre takes twice the trim's width beyond a path along its inner edge.

    Beyond one along its outer edge it takes nothing. Folded that is all; cut and seamed, it takes a
    seam allowance at each end, √2 as long on the slant of 45°. Where the trim is cut square at a
    corner, one end covers it, and both are finished as the ends of the run are.
    """
    if not trim.corners:
        return run
    corners = f"{trim.corners} corner{'s' if trim.corners > 1 else ''}"
    if trim.measured != "outer edge":
        if of.width is None:
            raise Wrong(
                f"{quoted(trim.name)} turns corners, and nothing says how wide it is",
                'add width = "1", or measured = "outer edge" where its outer edge was measured',
            )
        once = 1 if trim.corner == "cut" else 2
        how = "cut, the width each" if once == 1 else "mitred, twice the width each"
        run = run.plus(f"{corners} {how}", of.width * (once * trim.corners))
    if trim.corner == "cut":
        _, ends = _ends(trim, rules)
        run = run.plus(f"two ends more at each of {corners}", ends * trim.corners)
    elif trim.corner == "mitred":
        seam = whole_ticks(2 * rules.seam_allowance.ticks * ROOT_2_AT_MOST)
        run = run.plus(f"slanting seams at {corners}", seam * trim.corners)
    return run


def _started_on_a_motif(trim: Trim, of: Material, run: Reckoning, rules: Rules) -> SewnOn:
    """An open run cut where its motif lies right.

    What is bought may begin anywhere within a repeat: it takes one more. A further run from the
    same length begins a number of whole repeats after the one before it.
    """
    assert of.repeat is not None, "the caller has seen to that"
    run = run.plus(*_ends(trim, rules)).plus("for the bow", trim.bow or ZERO)
    run = run.divided_by(SHRINKS, 1 - of.shrinkage)
    where = "lies in the middle" if trim.motif == "centred" else "is where it starts"
    notes = [f"a motif {where}"]
    after: tuple[Reckoning, ...] = (
        run.up_to("whole repeats, to where the next begins", of.repeat),
    )
    if trim.mirrored:
        notes = [f"cut in pairs that mirror each other, a motif {where} of both"]
        if trim.motif != "centred":
            notes = ["cut in pairs that mirror each other, both from a motif"]
            after = _mirrored_after(trim, of, run, rules)
    first = run.plus("one repeat, to begin where the motif asks", of.repeat)
    return SewnOn(first, tuple(notes), after)


def _mirrored_after(
    trim: Trim, of: Material, run: Reckoning, rules: Rules
) -> tuple[Reckoning, Reckoning]:
    """What the second of a pair takes after the first, and the first of the next pair after that.

    The second lies the other way round: its end is where the motif is. From where the motif is on
    the one to where it is on the other there are whole repeats, which hold both but for the ends
    that are taken in there.
    """
    assert of.repeat is not None, "the caller has seen to that"
    taken_in = Fraction(end_takes(trim.ends[0], rules).ticks) / (1 - of.shrinkage)
    between = whole_ticks(-2 * (run.exact - taken_in) % of.repeat.ticks)
    next_pair = whole_ticks(-2 * taken_in % of.repeat.ticks)
    return (
        run.plus("to whole repeats from one motif to the other", between),
        run.plus("to the motif of the next pair", next_pair),
    )


def _whole_repeats(
    trim: Trim, of: Material, run: Reckoning, joined: Joined, unit: Unit
) -> tuple[Reckoning, str]:
    """Up to whole repeats; down, where the edge may be eased in by what is over."""
    assert of.repeat is not None, "the caller has seen to that"
    over = run.exact % of.repeat.ticks
    flat = trim.fullness == 1 and trim.pleats is None
    if over and over <= run.exact * trim.ease_repeats:
        amount = tape_text(_as_sewn(over, of), unit)
        note = f"ease {amount} of the edge into it, for whole repeats"
        return run.eased_down_to("whole repeats, the edge eased in", of.repeat), note
    short = (-run.exact) % of.repeat.ticks
    note = ""
    if short and flat and joined is Joined.IN_THE_ROUND:
        amount = tape_text(_as_sewn(short, of), unit)
        note = f"ease {amount} of it in, for whole repeats"
    return run.up_to("whole repeats", of.repeat), note


def _as_sewn(ticks: Fraction, of: Material) -> Length:
    """So much of a trim as it is bought, once it has shrunk."""
    return Length(round(ticks * (1 - of.shrinkage)))


def _refuse_without_repeat(trim: Trim) -> None:
    stated = [
        key
        for key, value, default in (
            ("motif", trim.motif, None),
            ("mirrored", trim.mirrored, False),
            ("overlapped", trim.overlapped, Fraction(1)),
            ("ease_repeats", trim.ease_repeats, Fraction(0)),
        )
        if value != default
    ]
    if stated:
        raise Wrong(
            f"{quoted(trim.name)} states {' and '.join(stated)}, and has no repeat",
            f'add repeat = "1 3/4", or leave out {" and ".join(stated)}',
        )


def _allowed(trim: Trim, joined: Joined, rules: Rules) -> tuple[str, Length]:
    """What a run without a repeat takes at its ends, or where it joins."""
    if joined is Joined.IN_THE_ROUND:
        overlap = rules.overlap if trim.overlap is None else trim.overlap
        return "overlap where the round joins", overlap
    return _ends(trim, rules)


def _ends(trim: Trim, rules: Rules) -> tuple[str, Length]:
    first, second = trim.ends
    label = f"two ends {_AT_BOTH[first.end]}"
    if first.end is not second.end:
        label = f"one end {first.end.value}, the other {second.end.value}"
    return label, ends_take(trim, rules)


def ends_take(trim: Trim, rules: Rules) -> Length:
    """What both ends of an open run take."""
    first, second = trim.ends
    return end_takes(first, rules) + end_takes(second, rules)


_AT_BOTH = {
    End.TURNED: "turned under",
    End.RAW: "raw",
    End.SEAM: "caught in seams",
    End.FOLDED: "folded back",
}


def end_takes(end: TrimEnd, rules: Rules) -> Length:
    """What one end takes; folded back, it takes its depth and a turn-under (common practice)."""
    match end.end:
        case End.RAW:
            return ZERO
        case End.TURNED:
            return rules.turn_under if end.depth is None else end.depth
        case End.SEAM:
            return rules.seam_allowance if end.depth is None else end.depth
        case End.FOLDED:
            return (rules.turn_under * 2 if end.depth is None else end.depth) + rules.turn_under


def defaults_of(trim: Trim, rules: Rules, unit: Unit) -> Iterator[str]:
    """What is taken for granted of a trim where its plan does not say it."""
    if trim.corners and trim.measured is None:
        which = (
            "takes its width" if trim.corner == "cut" else "is a folded mitre of twice its width"
        )
        yield f"{trim.name} was measured along its inner edge, and each corner {which}."
    for end in dict.fromkeys(trim.ends):
        if end.end is End.FOLDED and end.depth is None:
            deep = tape_text(rules.turn_under * 2, unit)
            yield f"{trim.name}: ends are folded back by {deep}, and turned under."
    if trim.cut_from is not None and trim.strip is None:
        if trim.covers is not None:
            yield f"{trim.name}: its strip goes round the cord, with two seam allowances."
        else:
            yield f"{trim.name}: its strip is cut {CUT_OF_A_BINDING} times as wide as it finishes."
    if trim.pleats is not None and trim.pleats.spacing is None:
        yield f"{trim.name}: its pleats meet, so that it takes three times the edge."
