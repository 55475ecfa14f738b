"""The working of a figure cannot disagree with the figure."""

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.measure import Length
from estimator.working import Operation, Reckoning, Source
from estimator.written import length


def test_a_figure_carries_every_step_that_made_it() -> None:
    # (20 1/4 + 1 1/4) x 2 / 0.8 = 53 3/4; up to 4 1/2 in: 54.
    figure = (
        Reckoning.start("finished", length("20 1/4"))
        .plus("seams", length("1 1/4"))
        .times("panels", 2)
        .divided_by("shrinkage", Fraction(4, 5))
        .sold_by("eighths", length("4 1/2"))
    )
    assert figure.value == length("54")
    assert [step.result for step in figure.steps] == [
        length("20 1/4"), length("21 1/2"), length("43"), length("53 3/4"), length("54")
    ]  # fmt: skip


@pytest.mark.parametrize(
    "idle",
    [
        lambda figure: figure.plus("nothing", length("0")),
        lambda figure: figure.minus("nothing", length("0")),
        lambda figure: figure.times("once", 1),
        lambda figure: figure.divided_by("one", Fraction(1)),
        lambda figure: figure.to_mark("on the mark", length("1/4")),
        lambda figure: figure.at_least("enough", length("20")),
    ],
    ids=["plus", "minus", "times", "divided by", "to the mark", "at least"],
)
def test_a_step_that_changes_nothing_leaves_no_line(
    idle: Callable[[Reckoning], Reckoning],
) -> None:
    figure = Reckoning.start("finished", length("20 1/4"))
    assert idle(figure) == figure


def test_an_exact_hit_on_a_step_is_shown_and_stays() -> None:
    figure = Reckoning.start("needed", length("1 yd")).sold_by("eighths", length("1/8 yd"))
    assert figure.value == length("1 yd")
    assert figure.steps[-1].operation is Operation.SOLD_BY


def test_a_minimum_is_shown_where_it_raises() -> None:
    figure = Reckoning.start("needed", length("10 in")).at_least("minimum", length("18 in"))
    assert figure.steps[-1].result == figure.value == length("18 in")


operations = st.one_of(
    st.tuples(st.just("plus"), st.integers(0, 10**7).map(Length)),
    st.tuples(st.just("times"), st.fractions(1, 5, max_denominator=50)),
    st.tuples(st.just("divided_by"), st.fractions("1/2", 1, max_denominator=50)),
    st.tuples(st.just("up_to"), st.integers(1, 10**6).map(Length)),
    st.tuples(st.just("to_mark"), st.integers(1, 10**5).map(Length)),
    st.tuples(st.just("at_least"), st.integers(0, 10**7).map(Length)),
)


@given(st.integers(1, 10**7), st.lists(operations, max_size=6))
def test_the_last_line_of_the_working_is_the_figure(
    start: int, then: list[tuple[str, Length | Fraction]]
) -> None:
    figure = Reckoning.start("start", Length(start))
    for name, operand in then:
        before = figure.value
        figure = getattr(figure, name)("step", operand)
        assert figure.value >= before
        assert figure.steps[-1].result == figure.value


def test_a_source_names_garment_wearer_and_piece() -> None:
    assert str(Source("coat", "sleeve")) == "coat: sleeve"
    assert str(Source("coat", "sleeve", wearer="Second Herald")) == "coat (Second Herald): sleeve"
