"""How shops pack things: by the length, each, in packs, on cards and spools."""

from __future__ import annotations

import re
from dataclasses import dataclass

from estimator.measure import Length, Unit, put_up_text
from estimator.quoting import NotReadable, quoted
from estimator.written import read_length


@dataclass(frozen=True, slots=True)
class PutUp:
    """How a shop packs a thing. ``holds`` is a length, a count, or None where it is cut to length.

    ``by the length`` holds None, ``card of 3 yd`` 3 yd, ``pack of 6`` 6, and ``each`` 1. A pack of
    several lengths, ``pack of 3 x 2 yd``, has 3 ``pieces`` that hold 2 yd each. ``label`` is a
    length as it was written, and ``metric`` says in which system.
    """

    word: str
    holds: Length | int | None
    label: str = ""
    metric: bool = False
    pieces: int = 1

    @property
    def text(self) -> str:
        """As the list names it: ``each``, ``pack of 6``, ``card of 3 yd``."""
        return self.word + self._of

    @property
    def many_text(self) -> str:
        """Several of a kind: ``packs of 6``, ``boxes of 3 yd``."""
        hisses = self.word.endswith(("s", "x", "z", "ch", "sh"))
        return f"{self.word}{'es' if hisses else 's'}{self._of}"

    @property
    def sold_text(self) -> str:
        """How a thing is sold: ``each``, ``by the length``, ``as pack of 6``."""
        return self.text if self in (EACH, BY_THE_LENGTH) else f"as {self.text}"

    @property
    def _of(self) -> str:
        if self.holds is None or self.holds == 1:
            return ""
        if isinstance(self.holds, int):
            return f" of {self.holds}"
        several = f"{self.pieces} x " if self.pieces > 1 else ""
        return f" of {several}{self.label}"

    def of_lengths(self, each: Length) -> PutUp:
        """The same where each of what it holds is so long: ``length of 4 yd`` for ``each``."""
        assert isinstance(self.holds, int), "things that are counted have a length each"
        label = put_up_text(each, Unit.IN)
        word = "length" if self == EACH else self.word
        return PutUp(word, each, label, label.endswith("m"), self.holds)

    @property
    def cut_to_length(self) -> bool:
        """Whether the shop cuts what is asked for from a roll."""
        return self.holds is None


BY_THE_LENGTH = PutUp("by the length", None)
EACH = PutUp("each", 1)
_PUT_UP_EXAMPLES = "write by the length, each, pack of 6, card of 3 yd or spool of 25 m"


def read_put_up(written: object, unit: Unit | None = None) -> PutUp:
    """Reads ``by the length``, ``each``, ``pack of 6``, ``card of 3 yd``; raises NotReadable."""
    if isinstance(written, PutUp):
        return written
    text = " ".join(str(written).split())
    if text.lower() in ("", BY_THE_LENGTH.word):
        return BY_THE_LENGTH
    if text.lower() == EACH.word:
        return EACH
    found = re.fullmatch(r"([^\W\d_]{2,20}) of (.+)", text)
    if not found:
        raise NotReadable(f"{quoted(written)} is not a put-up", _PUT_UP_EXAMPLES)
    word, holds = found[1].lower(), found[2]
    if holds.isascii() and holds.isdigit():
        if not 1 <= len(holds) <= 6 or int(holds) == 0:
            raise NotReadable(f"{quoted(written)} holds {holds}", _PUT_UP_EXAMPLES)
        return PutUp(word, int(holds))
    several = re.fullmatch(r"(\d{1,3})\s*[x×]\s*(.+)", holds, re.ASCII)
    pieces = int(several[1]) if several else 1
    each = several[2] if several else holds
    length = read_length(each, unit)
    if not length or not pieces:
        raise NotReadable(f"{quoted(written)} holds nothing", _PUT_UP_EXAMPLES)
    metric = bool(re.search(r"\d\s*(?:mm|cm|m)\b", each))
    return PutUp(word, length, each, metric, pieces)
