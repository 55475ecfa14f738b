"""What people wrote, as complaints repeat it: on one line, in quotes, of a length to be read."""

from __future__ import annotations

from collections.abc import Mapping

from estimator.faults import Wrong

_HUGE = 10**4000
"""Python refuses to print numbers of more than 4300 digits."""


class NotReadable(Wrong):
    """What was written is not what was wanted; ``wrong`` says why and ``right`` what would do."""


def one_line(text: str) -> str:
    """A text without line breaks and other characters that move the cursor."""
    return " ".join("".join(c if c.isprintable() else " " for c in text).split())


def text_of(written: object) -> str:
    """What was written as text on one line; nothing for a list, a table or a number too long."""
    if _in_words(written):
        return ""
    return one_line(str(written).lower() if isinstance(written, bool) else str(written))


def quoted(written: object) -> str:
    """The user's own words in quotes, on one line and cut to a length that can be read.

    What is no text and no plain value is told in words of ours: a list, a table.
    """
    words = _in_words(written)
    if words:
        return words
    text = text_of(written)
    return f"'{text if len(text) <= 60 else text[:57] + '...'}'"


def _in_words(written: object) -> str:
    if isinstance(written, Mapping):
        return "a table"
    if isinstance(written, list | tuple | set | frozenset):
        return "a list"
    if isinstance(written, int) and abs(written) >= _HUGE:
        return "a number of more than 4000 digits"
    return ""
