"""The comments of a TOML plan, so that what a starter plan explains is not lost in another form."""

from __future__ import annotations

import re

import tree_sitter_toml
from tree_sitter import Language, Node, Parser

from estimator.faults import Path
from estimator.readers.places import lines_of


def opening_remarks(toml: str) -> list[str]:
    """The comment with which a plan begins, as paragraphs: its first line, then the others.

    Not those that tell how the text file is to be changed.
    """
    lines = []
    for line in toml.splitlines():
        if not line.startswith("#"):
            break
        lines.append(line.lstrip("# ").rstrip())
    first, _, rest = "\n".join(lines).partition("\n")
    parts = (" ".join(part.split()) for part in rest.split("\n\n"))
    return [first, *(part for part in parts if part and "CHANGE" not in part)] if first else []


def remarks_in(toml: str) -> dict[Path, str]:
    """The comment on the line of each key, or on the lines just above it or its table."""
    comments = _comments(toml)
    first: dict[int, Path] = {}
    lines = lines_of(toml.encode())
    for path, line in lines.items():
        of_first_entry = lines.get((*path, 0)) == line and len(path) == 1
        if path and not of_first_entry and (line not in first or len(path) < len(first[line])):
            first[line] = path
    found: dict[Path, str] = {}
    code = {number: line.split("#")[0].strip() for number, line in enumerate(toml.splitlines(), 1)}
    opening = next((number for number, text in code.items() if text), 0)
    waiting: list[str] = []
    for number, text in code.items():
        comment = comments.get(number, "")
        if number < opening:
            continue
        if not text:
            waiting = [*waiting, comment] if comment else []
            continue
        said = " ".join(filter(None, (*waiting, comment)))
        if said and number in first:
            found[first[number]] = said
        waiting = []
    return found


def _comments(toml: str) -> dict[int, str]:
    """Comments by their lines, from 1, without their signs and rulers."""
    root = Parser(Language(tree_sitter_toml.language())).parse(toml.encode()).root_node
    found: dict[int, str] = {}
    waiting: list[Node] = [root]
    while waiting:
        node = waiting.pop()
        waiting += node.children
        if node.type == "comment":
            text = (node.text or b"").decode("utf-8", "replace").lstrip("# ").strip()
            found[int(node.start_point[0]) + 1] = re.sub(r"\s*-{3,}\s*|-{3,}", " ", text).strip()
    return found
