"""A garment plan from a TOML file. Syntax faults come alone, all others of a plan together."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

from estimator.faults import Fault, Places, Refused
from estimator.readers.files import read_text
from estimator.readers.places import lines_of
from estimator.readers.plan_tables import PlanTables

_CURLY = "“”„‟‘’‚"
"""The quotes that a word processor writes."""
_OPENS_CURLY = re.compile(r"[“”„‟]|[=,\[{]\s*[‘’‚]")
"""A double one anywhere, a single one where a value begins: elsewhere it may be an apostrophe."""
_BARE = re.compile(r"\s*([\w-]+)\s*=\s*((?:[\d.½¼¾/\s\w%-]|(?<=\d),(?=\d))+?)\s*(?:#.*)?$")
_LONG = re.compile(r"[\d_]{4000}")


def tables_from_toml(path: Path) -> PlanTables:
    """The tables of a plan; raises Refused where nothing can be made of the file."""
    return tables_from_text(read_text(path, "a plan"), str(path))


def tables_from_text(text: str, file: str = "plan") -> PlanTables:
    """The tables of TOML text; ``file`` names it in complaints. Raises Refused for bad syntax."""
    return PlanTables(parsed(text, file), Places(file, lines_of(text.encode())))


def parsed(text: str, file: str) -> dict[str, Any]:
    """The tables of a TOML text; raises Refused for a fault of syntax."""
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as problem:
        found = re.search(r"\(at line (\d+), column (\d+)\)", str(problem))
        lines = text.split("\n")
        line = int(found[1]) if found else len(lines)
        said = re.sub(r"\s*\(at .*\)$", "", str(problem))
        where = f"{file}, line {line}" + (f", column {found[2]}" if found else "")
        raise Refused(
            [Fault(where, f"this is not TOML: {said}", _remedy(lines[line - 1]))]
        ) from None
    except ValueError:
        line = next((n for n, one in enumerate(text.split("\n"), 1) if _LONG.search(one)), 1)
        wrong = "a number has more digits than can be read"
        raise Refused([Fault(f"{file}, line {line}", wrong, "write a shorter number")]) from None
    except RecursionError:
        raise Refused([Fault(file, "brackets are nested too deep", "write it flatter")]) from None


def _remedy(line: str) -> str:
    if _OPENS_CURLY.search(re.sub(r'"[^"]*"', "", line).partition("#")[0]):
        curly = re.match(rf'\s*([\w-]+)\s*=\s*["{_CURLY}]([^"{_CURLY}]*)["{_CURLY}]', line)
        as_in = f', as in {curly[1]} = "{curly[2]}"' if curly else ""
        return f"write straight quotes{as_in}"
    bare = _BARE.match(line)
    if bare:
        return f'write it in quotes: {bare[1]} = "{bare[2]}"'
    return 'a plan holds lines such as width = "20 1/4" under headings such as [[piece]]'
