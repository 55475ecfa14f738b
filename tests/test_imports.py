"""Imports run in one direction, from what is bought back to what was measured; never round."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "estimator"

ROOMS = [
    "measure", "faults", "quoting", "fraction_dates", "written", "arithmetic", "rules",
    "working", "fields", "edges", "stitches", "fibres", "prices", "put_up", "catalog", "stash",
    "shops", "bill", "plan", "form", "job", "show", "readers", "cast", "needs", "layout",
    "buying", "estimated", "ring_widths", "estimate", "together", "would_save", "stash_after",
    "memory", "workers", "files", "shipped", "reports", "commands", "cli", "__main__",
]  # fmt: skip
"""Each may import from those before it, and from itself. A new module takes its place here."""

FILES_ARE_TOUCHED_BY = {
    "readers": {"readers", "cast", "files", "reports", "commands", "cli"},
    "reports": {"reports", "commands", "cli"},
}
"""Only the two ends touch files: what lies between them must not import the ends."""


def wrong_imports(package: Path) -> list[str]:
    """Each import of the package's own modules that runs the wrong way, or runs in a circle."""
    wrong: list[str] = []
    imports: dict[str, set[str]] = {}
    for file in sorted(package.rglob("*.py")):
        module = name_of(file, package)
        if module == "":
            continue  # the public face names what is in every room
        imports[module] = set()
        for line, imported in own_imports(file, module, package):
            imports[module].add(imported)
            fault = fault_of(room(module), room(imported))
            if fault:
                wrong.append(f"{file.relative_to(package)}, line {line}: {fault}")
    try:
        TopologicalSorter(imports).prepare()
    except CycleError as circle:
        wrong.append("in a circle: " + " imports ".join(reversed(circle.args[1])))
    return wrong


def fault_of(importing: str, imported: str) -> str:
    for one in (importing, imported):
        if one not in ROOMS:
            return f"{one or 'the public face'} has no place in the order of rooms"
    if importing == imported:
        return ""
    if importing == "layout":
        return f"layout is to be used alone, and imports {imported}"
    if ROOMS.index(imported) > ROOMS.index(importing):
        return f"{importing} comes before {imported}"
    if importing not in FILES_ARE_TOUCHED_BY.get(imported, {importing}):
        return f"{importing} touches files through {imported}"
    return ""


def name_of(file: Path, package: Path) -> str:
    """The module's name within the package: ``needs.runs``, ``plan`` for ``plan/__init__.py``."""
    parts = file.relative_to(package).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def room(module: str) -> str:
    return module.split(".")[0]


def own_imports(file: Path, module: str, package: Path) -> Iterator[tuple[int, str]]:
    """Line and module of each import of the package, in functions and for type checking as well."""
    inside = module if file.name == "__init__.py" else module.rpartition(".")[0]
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            base = "" if node.level == 0 else absolute(inside, node.level, package)
            path = ".".join(filter(None, (base, node.module)))
            names = [f"{path}.{alias.name}" for alias in node.names]
        elif called(node) in ("import_module", "__import__"):
            yield node.lineno, "an import by a name made while running"
            continue
        else:
            continue
        for name in names:
            if name.split(".")[0] == package.name:
                yield node.lineno, nearest_module(name, package)


def called(node: ast.AST) -> str:
    if not isinstance(node, ast.Call):
        return ""
    return getattr(node.func, "id", "") or getattr(node.func, "attr", "")


def absolute(inside: str, level: int, package: Path) -> str:
    parts = [package.name, *filter(None, inside.split("."))]
    return ".".join(parts[: len(parts) - level + 1])


def nearest_module(name: str, package: Path) -> str:
    """The module that an imported name is, or is in."""
    parts = name.split(".")[1:]
    while parts and not (
        (package.joinpath(*parts)).is_dir() or package.joinpath(*parts).with_suffix(".py").is_file()
    ):
        parts.pop()
    return ".".join(parts)


def test_imports_run_in_one_direction() -> None:
    assert wrong_imports(PACKAGE) == []


def test_every_room_of_the_order_is_in_the_house() -> None:
    assert {room(name_of(file, PACKAGE)) for file in PACKAGE.rglob("*.py")} - {""} == set(ROOMS)


def house(folder: Path, file: str, text: str) -> Path:
    """A made-up tree with one module in each room, and ``text`` in one of them."""
    package = folder / "estimator"
    rooms = {f"{one}/__init__.py": "" for one in ("plan", "layout", "needs", "buying", "reports")}
    sound = {
        "__init__.py": "from estimator.cli import main\n",
        "measure.py": "import math\n",
        "catalog.py": "from estimator.measure import Length\n",
        "needs/runs.py": "from estimator.catalog import Item\nfrom . import types\n",
        "needs/types.py": "from estimator import plan\n",
        "layout/rows.py": "from estimator.layout import choose\n",
        "layout/choose.py": "",
        "buying/choice.py": "import estimator.layout\nfrom ..needs.runs import Run\n",
        "cli.py": "def main():\n    from estimator.reports import page\n",
        "reports/page.py": "",
    }
    for name, source in {**rooms, **sound, file: text}.items():
        path = package / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(source, encoding="utf-8")
    return package


def test_a_sound_tree_has_no_wrong_import(tmp_path: Path) -> None:
    assert (
        wrong_imports(house(tmp_path, "rules.py", "from estimator.measure import Length\n")) == []
    )


@pytest.mark.parametrize(
    ("file", "text", "told"),
    [
        ("measure.py", "from estimator.catalog import Item\n",
         "measure.py, line 1: measure comes before catalog"),
        ("measure.py", "import math\nimport estimator.needs.runs as runs\n",
         "measure.py, line 2: measure comes before needs"),
        ("needs/runs.py", "def later():\n    from estimator.buying.choice import choose\n",
         "needs/runs.py, line 2: needs comes before buying"),
        ("catalog.py", "if TYPE_CHECKING:\n    from estimator.plan import Plan\n",
         "catalog.py, line 2: catalog comes before plan"),
        ("needs/runs.py", "from ..buying import choice\n",
         "needs/runs.py, line 1: needs comes before buying"),
        ("needs/runs.py", "from estimator import cli\n",
         "needs/runs.py, line 1: needs comes before cli"),
        ("layout/rows.py", "from estimator.measure import Length\n",
         "layout/rows.py, line 1: layout is to be used alone, and imports measure"),
        ("files.py", "import estimator.reports.page\n",
         "files.py, line 1: files comes before reports"),
        ("needs/runs.py", "import estimator.readers.toml\n",
         "needs/runs.py, line 1: needs touches files through readers"),
        ("needs/runs.py", "from estimator import estimate_all\n",
         "needs/runs.py, line 1: the public face has no place in the order of rooms"),
        ("colours.py", "import estimator.measure\n",
         "colours.py, line 1: colours has no place in the order of rooms"),
        ("needs/types.py", "from estimator.needs import runs\n",
         "in a circle: needs.runs imports needs.types imports needs.runs"),
        ("needs/types.py", "from importlib import import_module\nimport_module('estimator.cli')\n",
         "needs/types.py, line 2: an import by a name made while running has no place in the "
         "order of rooms"),
    ],
)  # fmt: skip
def test_a_wrong_import_is_caught_wherever_it_hides(
    tmp_path: Path, file: str, text: str, told: str
) -> None:
    package = house(tmp_path, file, text)
    if "readers" in text:
        (package / "readers").mkdir()
    assert told in wrong_imports(package)


def test_every_module_has_its_reason_in_the_map_of_the_house():
    told = (PACKAGE.parent / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = {name.split("/")[-1].removesuffix(".py") for name in re.findall(r"`([\w/.]+)`", told)}
    modules = {file.stem for file in PACKAGE.rglob("*.py") if file.parent.name != "plan"}
    assert {name for name in modules if not name.startswith("__")} - named == set()
