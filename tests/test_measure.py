import re
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.measure import (
    INCH,
    MILLIMETRE,
    ZERO,
    Length,
    Unit,
    natural_text,
    put_up_text,
    shop_text,
    tape_text,
    total,
    usable_text,
)
from estimator.written import length, read_length

YARD, METRE = Unit.YD.length, Unit.M.length
lengths = st.integers(0, 100 * YARD.ticks).map(Length)
steps = st.integers(1, YARD.ticks).map(Length)


@pytest.mark.parametrize("written", ["1/64 in", "0.01 in", "0.1 mm", "1 ligne", "0.01 yd"])
def test_the_finest_marks_of_tapes_and_shops_are_whole_ticks(written: str) -> None:
    number, unit = written.split()
    size = {"in": INCH, "mm": Length(8000), "ligne": length("1/40 in"), "yd": YARD}[unit]
    assert Fraction(length(written).ticks) == Fraction(number) * size.ticks


def test_a_sum_of_tape_fractions_never_drifts() -> None:
    # A float sum of a hundred 0.1 mm misses 10 mm.
    assert total([length("0.1 mm")] * 100) == length("1 cm")
    assert length("17 1/2") * 6 == length("105 in")


def test_a_length_that_is_no_whole_tick_goes_up_to_the_next() -> None:
    # 1 in is 203,200 ticks; a third of it is 67,733 1/3.
    assert INCH.times(Fraction(1, 3)) == Length(67_734)
    assert length("1/3 in") == Length(67_734)


def test_a_width_on_offer_is_never_flattered() -> None:
    assert INCH.times_rounded_down(Fraction(1, 3)) == Length(67_733)


@pytest.mark.parametrize(
    ("needed", "sold"),
    [
        ("0", "0"),
        ("2 1/4 yd", "2 1/4 yd"),
        ("1/8000 mm", "1/8 yd"),
        ("2 1/4 yd 1/64 in", "2 3/8 yd"),
    ],
    ids=["nothing", "an exact hit stays", "one tick", "a hair above goes up"],
)
def test_up_to_the_next_eighth_of_a_yard(needed: str, sold: str) -> None:
    assert length(needed).up_to(length("1/8 yd")) == length(sold)


@pytest.mark.parametrize(
    ("exact", "read"),
    [
        ("26 in", "26 in"),
        ("17 1/2 in", "17 1/2 in"),
        ("3/8 in", "3/8 in"),
        ("0.03 in", "0 in"),  # 0.48 of a sixteenth
        ("1/32 in", "1/16 in"),  # halfway goes up
        ("17 31/32 in", "18 in"),
        ("0", "0 in"),
    ],
)
def test_a_tape_reads_to_the_nearest_sixteenth(exact: str, read: str) -> None:
    assert tape_text(length(exact), Unit.IN) == read


def test_a_tape_may_be_read_to_the_nearest_eighth() -> None:
    assert tape_text(length("3 5/16 in"), Unit.IN, parts=8) == "3 3/8 in"
    assert tape_text(length("3 1/4 in"), Unit.IN, parts=8) == "3 1/4 in"


@pytest.mark.parametrize(
    ("exact", "read"),
    [("44.5 cm", "44.5 cm"), ("445 mm", "44.5 cm"), ("1.2 m", "120 cm"), ("0.44 mm", "0 cm"),
     ("0.5 mm", "0.1 cm"), ("17 1/2 in", "44.5 cm")],
)  # fmt: skip
def test_a_metric_tape_reads_to_the_nearest_millimetre(exact: str, read: str) -> None:
    assert tape_text(length(exact), Unit.CM) == read


def test_a_tape_in_millimetres_reads_to_the_nearest_of_them() -> None:
    assert tape_text(length("44.5 cm"), Unit.MM.tape) == "445 mm"
    assert tape_text(length("17 1/2 in"), Unit.MM.tape) == "445 mm"  # 444.5 exactly, half up
    assert tape_text(length("0.4 mm"), Unit.MM.tape) == "0 mm"


@pytest.mark.parametrize(
    ("exact", "unit", "read"),
    [
        ("43.174 in", Unit.IN, "43 1/8 in"),  # 43 3/16 would be 43.1875
        ("43 3/16 in", Unit.IN, "43 3/16 in"),
        ("107.19 cm", Unit.CM, "107.1 cm"),
        ("107.19 cm", Unit.MM, "1071 mm"),
    ],
)
def test_a_usable_width_is_read_down_to_the_mark(exact: str, unit: Unit, read: str) -> None:
    assert usable_text(length(exact), unit) == read


@given(lengths)
def test_a_usable_width_as_it_is_read_is_always_there(width: Length) -> None:
    for unit, mark in ((Unit.IN, length("1/16 in")), (Unit.CM, MILLIMETRE), (Unit.MM, MILLIMETRE)):
        read = read_length(usable_text(width, unit), None)
        assert read <= width < read + mark


@pytest.mark.parametrize(
    ("exact", "unit", "read"),
    [
        ("60 in", Unit.CM, "60 in"),  # 152.4 cm: whole millimetres, but no number that a shop says
        ("60 in", Unit.MM, "60 in"),
        ("45 in", Unit.M, "45 in"),
        ("150 cm", Unit.IN, "150 cm"),
        ("150 cm", Unit.MM, "1500 mm"),
        ("50 in", Unit.IN, "50 in"),  # 127 cm: a whole number of both
        ("127 cm", Unit.CM, "127 cm"),
        ("12 mm", Unit.IN, "1.2 cm"),
        ("3/8 in", Unit.CM, "3/8 in"),
        ("1/3 in", Unit.IN, "5/16 in"),
        ("1/3 in", Unit.CM, "0.8 cm"),
    ],
)
def test_a_width_reads_as_the_trade_names_it(exact: str, unit: Unit, read: str) -> None:
    assert natural_text(length(exact), unit) == read


def test_a_difference_below_zero_shows_its_sign() -> None:
    assert tape_text(length("1 in") - length("3 1/4 in"), Unit.IN) == "-2 1/4 in"
    assert tape_text(length("1 cm") - length("3.4 cm"), Unit.CM) == "-2.4 cm"


@pytest.mark.parametrize(
    ("exact", "unit", "read"),
    [
        ("2 3/8 yd", Unit.YD, "2 3/8 yd"),
        ("3 yd", Unit.YD, "3 yd"),
        ("1/2 yd", Unit.YD, "1/2 yd"),
        ("2 3/16 yd", Unit.YD, "2 3/16 yd"),
        ("9.1 yd", Unit.YD, "9.10 yd"),
        ("1.2 m", Unit.M, "1.20 m"),
        ("3 m", Unit.M, "3.00 m"),
        ("1.05 m", Unit.M, "1.05 m"),
        ("1.051 m", Unit.M, "1.06 m"),  # upwards, or somebody buys short
        ("70 in", Unit.YD, "1.95 yd"),  # 1.944...
    ],
)
def test_shops_read_yards_as_fractions_and_metres_in_hundredths(
    exact: str, unit: Unit, read: str
) -> None:
    assert shop_text(length(exact), unit) == read


@given(st.integers(0, 10_000))
def test_a_tape_mark_reads_back_as_it_was_printed(sixteenths: int) -> None:
    mark = length("1/16 in") * sixteenths
    assert read_length(tape_text(mark, Unit.IN), None) == mark


@given(st.integers(0, 10_000))
def test_a_millimetre_mark_reads_back_as_it_was_printed(millimetres: int) -> None:
    mark = length("1 mm") * millimetres
    assert read_length(tape_text(mark, Unit.CM), None) == mark


@given(st.integers(0, 10_000), st.sampled_from([Unit.YD, Unit.M]))
def test_a_shop_quantity_reads_back_as_it_was_printed(steps: int, unit: Unit) -> None:
    sold = (length("1/8 yd") if unit is Unit.YD else length("0.01 m")) * steps
    assert read_length(shop_text(sold, unit), None) == sold


@given(lengths)
def test_what_a_shop_reads_is_never_short_and_less_than_a_hundredth_over(needed: Length) -> None:
    for unit in (Unit.YD, Unit.M):
        read = read_length(shop_text(needed, unit), None)
        assert needed <= read < needed + unit.of(Fraction(1, 100)) + Length(1)


@given(lengths, st.sampled_from([8, 16, 32]))
def test_what_a_tape_reads_is_within_half_a_mark(exact: Length, parts: int) -> None:
    read = read_length(tape_text(exact, Unit.IN, parts), None)
    assert abs((read - exact).ticks) * 2 * parts <= INCH.ticks


@given(lengths, steps)
def test_up_to_a_step_is_a_whole_number_of_steps_and_less_than_one_over(
    exact: Length, step: Length
) -> None:
    raised = exact.up_to(step)
    assert raised.ticks % step.ticks == 0
    assert exact <= raised < exact + step
    assert raised.up_to(step) == raised


@given(st.lists(lengths, max_size=8))
def test_the_order_in_which_lengths_are_added_makes_no_difference(parts: list[Length]) -> None:
    in_turn = ZERO
    for part in reversed(parts):
        in_turn = in_turn + part
    assert in_turn == total(parts)


@given(lengths, steps)
def test_a_length_goes_into_another_as_often_as_it_can_be_cut_from_it(
    whole: Length, part: Length
) -> None:
    times = part.times_into(whole)
    assert part * times <= whole < part * (times + 1)


@given(lengths, st.fractions(0, 20, max_denominator=97))
def test_a_length_times_a_factor_is_never_short_and_less_than_a_tick_over(
    exact: Length, factor: Fraction
) -> None:
    assert 0 <= exact.times(factor).ticks - exact.ticks * factor < 1


def test_parts_of_a_tick_are_made_whole_in_one_place() -> None:
    package = Path(__file__).parents[1] / "estimator"
    raised = re.compile(r"Length\((math\.)?(ceil\(|-\(-)")
    found = [
        (path.name, line.strip())
        for path in sorted(package.rglob("*.py"))
        for line in path.read_text(encoding="utf-8").splitlines()
        if raised.search(line)
    ]
    # the other raises whole ticks to whole steps
    assert found == [
        ("measure.py", "return Length(-(-self.ticks // step.ticks) * step.ticks)"),
        ("measure.py", "return Length(ceil(ticks))"),
    ]


def test_a_metre_is_longer_than_a_yard() -> None:
    assert METRE > YARD
    assert length("85.6 mm") == METRE - YARD


def test_a_put_up_is_named_in_whole_yards_or_metres_as_its_shop_does() -> None:
    assert put_up_text(length("250 yd"), Unit.IN) == "250 yd"
    assert put_up_text(length("1000 m"), Unit.IN) == "1000 m"
    assert put_up_text(length("3 yd"), Unit.CM) == "3 yd"
    assert put_up_text(length("20 in"), Unit.IN) == "20 in"
