"""Dates that spreadsheets make of fractions."""

import pytest

from estimator.fraction_dates import refuse_date
from estimator.quoting import NotReadable


@pytest.mark.parametrize(
    ("cell", "likely"),
    [("2024-01-02", "1/2"), ("2025-04-03 00:00:00", "3/4"), ("02-Jan", "1/2"), ("4-Mar", "3/4"),
     ("Mar 4", "3/4"), ("8-Jul", "7/8"), ("01/02/2024", "1/2"), ("3.4.2024", "3/4"),
     ("5-May-24", "5/5")],
)  # fmt: skip
def test_a_fraction_that_became_a_date_is_refused_with_the_likely_fraction(
    cell: str, likely: str
) -> None:
    with pytest.raises(NotReadable) as refused:
        refuse_date(cell)
    assert f"such as {likely}" in refused.value.wrong
    assert refused.value.right == f"format the cell as text and write {likely} again"


@pytest.mark.parametrize("cell", ["1/2", "3/4", "17 1/2", "17-1/2", "3 inches", "44.5", "8.50"])
def test_a_fraction_and_a_number_are_no_dates(cell: str) -> None:
    assert refuse_date(cell) is None
