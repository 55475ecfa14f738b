"""Where each value of a TOML file stands, for complaints that name a line."""

from __future__ import annotations

import json
from collections import Counter

import tree_sitter_toml
from tree_sitter import Language, Node, Parser

from estimator.faults import Path


def lines_of(toml: bytes) -> dict[Path, int]:
    """The line (from 1) of every table, key and array entry of a TOML text that has been read.

    The syntax is taken for granted: the values themselves come from the standard library's reader.
    """
    root = Parser(Language(tree_sitter_toml.language())).parse(toml).root_node
    lines: dict[Path, int] = {(): 1}
    arrays: Counter[Path] = Counter()
    for node in root.children:
        if node.type == "pair":
            _pair(node, (), lines)
        elif node.type in ("table", "table_array_element"):
            header = next(child for child in node.children if child.type.endswith("key"))
            path = _through_arrays(_key(header), arrays, new=node.type == "table_array_element")
            lines[path] = _line(node)
            if node.type == "table_array_element":
                lines.setdefault(path[:-1], _line(node))
            for child in node.children:
                if child.type == "pair":
                    _pair(child, path, lines)
    return lines


def _through_arrays(keys: Path, arrays: Counter[Path], *, new: bool) -> Path:
    """A header's path with the number of the array entry that each of its keys is about."""
    path: Path = ()
    for position, key in enumerate(keys):
        path = (*path, key)
        if new and position == len(keys) - 1:
            arrays[path] += 1
        if arrays[path]:
            path = (*path, arrays[path] - 1)
    return path


def _pair(node: Node, parent: Path, lines: dict[Path, int]) -> None:
    key, value = node.children[0], node.children[-1]
    path = (*parent, *_key(key))
    lines[path] = _line(node)
    _value(value, path, lines)


def _value(node: Node, path: Path, lines: dict[Path, int]) -> None:
    if node.type == "inline_table":
        for child in node.children:
            if child.type == "pair":
                _pair(child, path, lines)
    elif node.type == "array":
        entries = [child for child in node.named_children if child.type != "comment"]
        for number, child in enumerate(entries):
            lines[(*path, number)] = _line(child)
            _value(child, (*path, number), lines)


def _key(node: Node) -> Path:
    """The parts of a key; each dot nests one deeper, and there may be thousands."""
    parts: list[str] = []
    waiting = [node]
    while waiting:
        one = waiting.pop()
        if one.type == "dotted_key":
            waiting += reversed(one.named_children)
        else:
            text = (one.text or b"").decode("utf-8", "replace")
            parts.append(_unquoted(text) if one.type == "quoted_key" else text)
    return tuple(parts)


def _unquoted(text: str) -> str:
    if text.startswith('"'):
        try:
            return str(json.loads(text))
        except ValueError:
            return text[1:-1]
    return text[1:-1]


def _line(node: Node) -> int:
    return int(node.start_point[0]) + 1
