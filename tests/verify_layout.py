"""An independent checker of cutting layouts: it shares no code with the engine it judges.

It knows the frozen types of question and answer and nothing else, works each rule out again from
the placements, and reports every breach in words. A layout with faults prints as a test case that
can be pasted into a test file as it stands.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from estimator.layout.answer import Layout, Placement, Row, Style
from estimator.layout.question import Blank, Cloth, Held


def faults_in(cloth: Cloth, blanks: Sequence[Blank], layout: Layout) -> list[str]:
    """Everything that is wrong with this layout, in words; an empty list if it can be cut."""
    return [
        *_off_the_cloth(cloth, layout),
        *_not_as_asked(blanks, layout),
        *_one_over_another(layout.placements),
        *_off_the_repeat(cloth, blanks, layout),
        *_away_from_its_edge(cloth, blanks, layout),
        *_not_in_rows(cloth, layout),
        *_wrong_lengths(cloth, layout),
    ]


def assert_sound(cloth: Cloth, blanks: Sequence[Blank], layout: Layout) -> None:
    """Fail with all faults and the layout as a test case, unless there are none."""
    faults = faults_in(cloth, blanks, layout)
    if faults:
        raise AssertionError("\n".join([*faults, "", as_test_case(cloth, blanks, layout)]))


def as_test_case(cloth: Cloth, blanks: Sequence[Blank], layout: Layout) -> str:
    """The layout as the source of a test that fails as long as it has faults."""
    return "\n".join(
        [
            "def test_this_layout_can_be_cut():",
            f"    cloth = Cloth(width={cloth.width}, repeat={cloth.repeat}, "
            f"repeat_across={cloth.repeat_across})",
            "    blanks = [",
            *(f"        {_written(blank)}," for blank in blanks),
            "    ]",
            "    layout = Layout(",
            f"        width={layout.width},",
            f"        length={layout.length},",
            "        placements=(",
            *(f"            {placed!r}," for placed in layout.placements),
            "        ),",
            "        rows=(",
            *(f"            {row!r}," for row in layout.rows),
            "        ),",
            f"        bound={layout.bound},",
            f"        style={layout.style!s},",
            "    )",
            "    assert faults_in(cloth, blanks, layout) == []",
        ]
    )


def _written(blank: Blank) -> str:
    values = (blank.name, blank.width, blank.length, blank.quantity, blank.may_turn)
    return f"Blank({', '.join(map(repr, values))}, {blank.held!s})"


def _named(placed: Placement) -> str:
    return (
        f"blank {placed.blank} at {placed.across} across, {placed.along} along, "
        f"{placed.width} x {placed.length}"
    )


def _off_the_cloth(cloth: Cloth, layout: Layout) -> Iterator[str]:
    if layout.width != cloth.width:
        yield f"laid on {layout.width} ticks, the cloth is {cloth.width} wide"
    for placed in layout.placements:
        if placed.across < 0:
            yield f"{_named(placed)}: over the near selvedge"
        if placed.across + placed.width > cloth.width:
            yield f"{_named(placed)}: over the far selvedge"
        if placed.along < 0:
            yield f"{_named(placed)}: before the cut end"
        if placed.along + placed.length > layout.length:
            yield f"{_named(placed)}: past the end of the layout at {layout.length}"


def _not_as_asked(blanks: Sequence[Blank], layout: Layout) -> Iterator[str]:
    found = Counter(placed.blank for placed in layout.placements)
    for index in sorted(set(found) - set(range(len(blanks)))):
        yield f"blank {index} was never asked for"
    for index, blank in enumerate(blanks):
        if found[index] != blank.quantity:
            yield f"{blank.name}: wanted {blank.quantity}, placed {found[index]}"
    for placed in layout.placements:
        if not 0 <= placed.blank < len(blanks):
            continue
        blank = blanks[placed.blank]
        if placed.turned and not blank.may_turn:
            yield f"{_named(placed)}: {blank.name} must not be turned"
        size = (blank.length, blank.width) if placed.turned else (blank.width, blank.length)
        if (placed.width, placed.length) != size:
            yield f"{_named(placed)}: {blank.name} is {size[0]} x {size[1]}"


def _one_over_another(placements: Sequence[Placement]) -> Iterator[str]:
    """Pieces in the order of their starts, each against those that have not ended before it."""
    unfinished: list[Placement] = []
    for placed in sorted(placements, key=lambda one: one.along):
        unfinished = [other for other in unfinished if other.along + other.length > placed.along]
        for other in unfinished:
            beside = (
                placed.across + placed.width <= other.across
                or other.across + other.width <= placed.across
            )
            if not beside:
                yield f"{_named(placed)}: over {_named(other)}"
        unfinished.append(placed)


def _off_the_repeat(cloth: Cloth, blanks: Sequence[Blank], layout: Layout) -> Iterator[str]:
    if cloth.repeat:
        for placed in layout.placements:
            if placed.along % cloth.repeat:
                yield f"{_named(placed)}: does not start on the repeat of {cloth.repeat}"
        for row in layout.rows:
            if row.start % cloth.repeat:
                yield f"the row at {row.start} does not start on the repeat of {cloth.repeat}"
    if cloth.repeat_across:
        for placed in _asked_for(blanks, layout):
            free = blanks[placed.blank].held is Held.FREE
            if free and placed.across % cloth.repeat_across:
                yield f"{_named(placed)}: off the repeat across of {cloth.repeat_across}"


def _asked_for(blanks: Sequence[Blank], layout: Layout) -> list[Placement]:
    return [placed for placed in layout.placements if 0 <= placed.blank < len(blanks)]


def _away_from_its_edge(cloth: Cloth, blanks: Sequence[Blank], layout: Layout) -> Iterator[str]:
    for placed in _asked_for(blanks, layout):
        near = placed.across == 0
        far = placed.across + placed.width == cloth.width
        well = {
            Held.FREE: True,
            Held.NEAR: near,
            Held.FAR: far,
            Held.EITHER: near or far,
        }[blanks[placed.blank].held]
        if not well:
            yield f"{_named(placed)}: is not {blanks[placed.blank].held.value}"


def _not_in_rows(cloth: Cloth, layout: Layout) -> Iterator[str]:
    if layout.style is Style.CLOSE:
        if layout.rows:
            yield "a close layout has no rows"
        return
    in_rows = [
        placed for row in layout.rows for column in row.columns for placed in column.placements
    ]
    if Counter(in_rows) != Counter(layout.placements):
        yield "the pieces in the rows are not those of the layout"
    end = 0
    for row in layout.rows:
        if row.start < end:
            yield f"the row at {row.start} starts before the last one ends at {end}"
        end = row.start + row.height
        yield from _crooked(cloth, row)


def _crooked(cloth: Cloth, row: Row) -> Iterator[str]:
    edge = 0
    for column in row.columns:
        if column.across < edge:
            yield f"the column at {column.across}, row {row.start}, lies over the one before it"
        edge = column.across + column.width
        top = row.start
        for placed in column.placements:
            if placed.across != column.across or placed.width > column.width:
                yield f"{_named(placed)}: not within its column at {column.across}"
            if placed.along < top:
                yield f"{_named(placed)}: lies over the one before it, or before its row"
            top = placed.along + placed.length
        if top > row.start + row.height:
            yield f"the column at {column.across}, row {row.start}, is higher than its row"
    if edge > cloth.width:
        yield f"the row at {row.start} is {edge} wide, the cloth {cloth.width}"


def _wrong_lengths(cloth: Cloth, layout: Layout) -> Iterator[str]:
    end = max((placed.along + placed.length for placed in layout.placements), default=0)
    if layout.length != end:
        yield f"the layout says {layout.length} long, its last piece ends at {end}"
    if layout.bound > layout.length:
        yield f"the bound {layout.bound} is above the layout's own length {layout.length}"
    if cloth.buys(layout.bound) > cloth.buys(layout.length):
        yield "the bound would buy more than the layout"
