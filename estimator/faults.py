"""Complaints as values: where it is, what is wrong, and what would be right."""

from __future__ import annotations

import difflib
import heapq
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, field
from functools import lru_cache

Path = tuple[str | int, ...]
"""The way to a value in a plan: ``("piece", 3, "edges", "bottom")``."""

MOST_COMPARED = 1000
SHORT_LIST = 12


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong: ``where`` names the file and the place in it."""

    where: str
    wrong: str
    right: str

    def __str__(self) -> str:
        text = f"{self.wrong}; {self.right}"
        return f"{self.where}: {text}" if self.where else text


class Wrong(ValueError):
    """What was written cannot stand: what is wrong, what would be right, ``at`` which sub-path."""

    def __init__(self, wrong: str, right: str, at: Path = ()) -> None:
        super().__init__(f"{wrong}; {right}")
        self.wrong = wrong
        self.right = right
        self.at = at


class NamesAnUnread(Exception):
    """An entry hangs on another that could not be read; that one's complaint is enough."""


class Refused(Exception):
    """Work is refused for the faults it carries; nothing has been written."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(dict.fromkeys(faults))
        super().__init__("\n".join(str(fault) for fault in self.faults))


def _as_it_is(_at: Path, wrong: Wrong) -> Wrong:
    return wrong


@dataclass(frozen=True)
class Places:
    """Where each value of a plan stands in its file; a value without a place takes its parent's.

    A place is the number of a line, or a cell in words. ``names`` holds what a person calls an
    entry: ``("piece", 3)`` is ``piece 'skirt panel'``. ``worded`` says a complaint about a path in
    the words of the file, where that has others than the keys of a plan.
    """

    file: str = ""
    lines: Mapping[Path, int | str] = field(default_factory=dict)
    names: dict[Path, str] = field(default_factory=dict)
    worded: Callable[[Path, Wrong], Wrong] = _as_it_is

    def of(self, path: Path) -> str:
        """The file and line or cell of a path, or the path in words where no file was read."""
        for length in range(len(path), -1, -1):
            line = self.lines.get(path[:length])
            if line is not None:
                return f"{self.file}, {f'line {line}' if isinstance(line, int) else line}"
        return self.file or _in_words(path)

    def in_full(self, path: Path) -> str:
        """The file and line or cell of a path, and the name of the entry in which it stands."""
        name = self.names.get(path[:2])
        return f"{self.of(path)} ({name})" if name else self.of(path)


class Faults:
    """Collects complaints, so that all of a plan's come together."""

    def __init__(self) -> None:
        self.found: list[Fault] = []

    @contextmanager
    def at(self, places: Places, path: Path) -> Iterator[None]:
        """Work under this catches what is Wrong, and goes on after the block."""
        try:
            yield
        except Wrong as problem:
            self.add(places, path, problem)
        except NamesAnUnread:
            pass

    def about(self, place: str) -> AbstractContextManager[None]:
        """Like ``at``, for a place that is in words already."""
        return self.at(Places(place), ())

    @contextmanager
    def of_others(self) -> Iterator[None]:
        """Work under this may be refused as a whole; its complaints join these."""
        try:
            yield
        except Refused as refused:
            self.found += refused.faults

    def add(self, places: Places, path: Path, wrong: Wrong) -> None:
        """Note a complaint about ``path``, or about what ``wrong`` is at below it."""
        at = (*path, *wrong.at)
        said = places.worded(at, wrong)
        self.found.append(Fault(places.in_full(at), said.wrong, said.right))

    def refuse_if_any(self) -> None:
        """Raises Refused with all that was found."""
        if self.found:
            raise Refused(self.found)


def _in_words(path: Path) -> str:
    return " ".join(str(part + 1) if isinstance(part, int) else part for part in path)


A_SLIP = 0.8
"""The share of letters in their places from which on a word is taken for a slip of another."""


def nearest(word: str, known: Iterable[str]) -> str:
    """What would be right instead of an unknown word: the nearest known one, or the choices."""
    choices = tuple(sorted(known))
    if not choices:
        return "there is none to choose from"
    meant = alike(word, choices)
    return f"did you mean '{meant}'?" if meant else one_of(choices)


def alike(word: str, known: Iterable[str], share: float = 0.6) -> str:
    """The known word that is spelt most like another, at least by that ``share``, or nothing."""
    choices = tuple(sorted(known))
    return _alike(word, choices, share) if choices and len(choices) <= MOST_COMPARED else ""


def one_of(choices: Sequence[str]) -> str:
    """The choices to name instead, the first dozen of very many."""
    return f"choose from {', '.join(choices[:12])}" + (", ..." if len(choices) > 12 else "")


def _alike(word: str, choices: tuple[str, ...], share: float) -> str:
    """The choice that is spelt most like a word, or nothing.

    Only those that share most letters are compared in full: thousands of words that are not known
    among thousands that are would else take minutes.
    """
    wanted = frozenset(word.lower())
    size = len(wanted) or 1
    shared = [len(wanted & letters) / (size + len(letters)) for letters in _letters(choices)]
    short = heapq.nlargest(SHORT_LIST, range(len(choices)), shared.__getitem__)
    spelt = {choices[number].lower(): choices[number] for number in reversed(short)}
    found = difflib.get_close_matches(word.lower(), spelt, 1, share)
    return spelt[found[0]] if found else ""


@lru_cache(maxsize=8)
def _letters(choices: tuple[str, ...]) -> list[frozenset[str]]:
    """The letters of each choice; the same choices are asked about again and again."""
    return [frozenset(choice.lower()) for choice in choices]
