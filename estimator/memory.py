"""What was worked out in earlier runs, in a file of the user's cache folder; it may be deleted."""

from __future__ import annotations

import atexit
import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import platformdirs

from estimator.buying.known_layouts import MEMORY

MOST = 20_000
"""Answers kept; of more, those asked for longest ago are forgotten."""
SWITCH = "ESTIMATOR_MEMORY"
"""An environment variable: ``off`` remembers nothing, a folder remembers there."""


def place() -> Path | None:
    """The file in which layouts are remembered; None where the user wants none."""
    wish = os.environ.get(SWITCH, "")
    if wish.lower() in ("off", "no", "0"):
        return None
    folder = Path(wish) if wish else Path(platformdirs.user_cache_dir("estimator"))
    return folder / "layouts.sqlite"


class Kept:
    """Texts by their keys in a database; what cannot be read or kept is as good as not known.

    The file is opened when it is first asked.
    """

    def __init__(self, file: Path) -> None:
        self._file = file
        self._data: sqlite3.Connection | None = None
        self._usable = True
        self._run = 1

    def find(self, key: str) -> str | None:
        """What was kept under a key."""
        rows = self._done("SELECT text FROM known WHERE key = ?", key)
        if rows:
            self._done("UPDATE known SET used = ? WHERE key = ?", self._run, key)
            return str(rows[0][0])
        return None

    def keep(self, key: str, text: str) -> None:
        """Keep a text under a key."""
        if self._opened():
            self._done("INSERT OR REPLACE INTO known VALUES (?, ?, ?)", key, text, self._run)

    def close(self) -> None:
        """Forget what is too much, and let go of the file."""
        if self._data is None:
            return
        self._done(
            "DELETE FROM known WHERE key IN "
            "(SELECT key FROM known ORDER BY used DESC LIMIT -1 OFFSET ?)",
            MOST,
        )
        self._data.close()

    def _done(self, order: str, *values: object) -> list[tuple[Any, ...]]:
        data = self._opened()
        if data is None:
            return []
        try:
            return data.execute(order, values).fetchall()
        except sqlite3.Error:
            self._usable = False
            return []

    def _opened(self) -> sqlite3.Connection | None:
        if self._data is None and self._usable:
            try:
                self._open()
            except (OSError, sqlite3.Error):
                self._usable = False
        return self._data if self._usable else None

    def _open(self) -> None:
        self._file.parent.mkdir(parents=True, exist_ok=True)
        self._data = sqlite3.connect(self._file, timeout=5, isolation_level=None)
        self._data.execute("PRAGMA synchronous = OFF")
        self._data.execute(
            "CREATE TABLE IF NOT EXISTS known (key TEXT PRIMARY KEY, text TEXT, used INTEGER)"
        )
        (last,) = self._data.execute("SELECT coalesce(max(used), 0) FROM known").fetchone()
        self._run = last + 1


@contextmanager
def remembering(file: Path | None) -> Iterator[None]:
    """Layouts worked out under this are remembered in a file, and asked for there first.

    A file that cannot be used is done without: nothing depends on it but the time.
    """
    if file is None:
        yield
        return
    kept = Kept(file)
    token = MEMORY.set(kept)
    try:
        yield
    finally:
        MEMORY.reset(token)
        kept.close()


def remember_until_the_end(file: Path | None) -> None:
    """The same until the process ends."""
    if file is not None:
        kept = Kept(file)
        MEMORY.set(kept)
        atexit.register(kept.close)
