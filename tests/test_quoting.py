"""What people wrote, as complaints repeat it."""

import pytest

from estimator.quoting import quoted


def test_a_users_words_are_quoted_on_one_line_and_cut_to_a_length() -> None:
    assert quoted("two\nlines") == "'two lines'"
    assert len(quoted("x" * 500)) == 62


@pytest.mark.parametrize(
    ("written", "told"),
    [
        (["a"], "a list"),
        ({"a": 1}, "a table"),
        (True, "'true'"),
        (10**3999, "'1" + "0" * 56 + "...'"),
        (10**4000, "a number of more than 4000 digits"),
        (-(16**5000), "a number of more than 4000 digits"),
    ],
    ids=["list", "table", "true", "long", "too long", "too long and negative"],
)
def test_what_is_no_text_is_told_in_words_of_the_trade(written: object, told: str) -> None:
    assert quoted(written) == told
