"""Text in pictures: harmless, measured, shortened."""

from __future__ import annotations

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from estimator.reports.pictures.lettering import harmless, shortened, width_of, wrapped


@given(st.text())
def test_text_comes_out_in_one_line_without_characters_that_turn_or_control(text: str) -> None:
    found = harmless(text)
    kinds = {unicodedata.category(char) for char in found}
    assert not kinds & {"Cc", "Cs", "Cn", "Co", "Zl", "Zp"}
    assert not set(found) & set(
        "\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
    )
    assert found == " ".join(found.split())
    assert harmless(found) == found


def test_letters_and_signs_of_the_trade_stay() -> None:
    assert harmless("½ yd × 3, ärmel, כנף, 🧵") == "½ yd × 3, ärmel, כנף, 🧵"


@given(st.text(min_size=1), st.floats(1, 300))
def test_what_is_shortened_fits(text: str, room: float) -> None:
    text = harmless(text)
    found = shortened(text, room, 9)
    assert width_of(found, 9) <= room or not found
    assert found == text or found.endswith("…") or not found


def test_a_text_is_wrapped_at_its_words_and_no_word_is_broken() -> None:
    room = width_of("front neck", 9) + 0.1
    assert wrapped("front neck facing", room, 9) == ("front neck", "facing")
    assert wrapped("front neck facing", width_of("neck", 9), 9) is None


def test_wide_signs_count_as_wide() -> None:
    assert width_of("漢字", 10) >= 20
    assert width_of("🧵", 10) >= 10
