"""Whatever is written into a sound plan or catalog, it is estimated or refused with complaints."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Fault, Refused, estimate_files

HOUSE = Path(__file__).parents[2]
PLANS = sorted([*(HOUSE / "templates").glob("*.toml"), *(HOUSE / "catalog_demo").glob("*.toml")])
TABLES = {name: (HOUSE / "catalog_demo" / name) for name in ("items.csv", "offers.csv")}

ODD_VALUES = [
    '""', '"0"', '"-1"', '"1/2"', '"1 kg"', '"99999 yd"', '"hem"', '"fold"', '"a: b"', '"2 x a: b"',
    "0", "-1", "7", "1e300", "nan", "true", "2024-01-02", "12:30:00", "[]", "[[]]", "{}", '["x"]',
    '[{ fabric = "x" }]', "{ from = 3 }", '{ finish = "raw", length = 0 }', '"\\u0000"', '"½"',
    '"joined strip"', '"taper"', '"sector"', '"crosswise"', '"finished size"', '"100 %"',
    "'''\n'''", '"card of 1 mm"', '"1/64 in"', '"0.001 mm"',
]  # fmt: skip
ODD_CELLS = [
    "", "0", "-1", "x", "1/2", "02-Jan", "1 in", "9999 yd", "100 %", "each", "pack of 0", "trim",
    "fabric", "=1+1", '"', '"a,b"', ",", "½ in", "1e9", "\u0000",
]  # fmt: skip


@cache
def lines_of(path: Path) -> tuple[str, ...]:
    return tuple(path.read_text(encoding="utf-8").splitlines())


def faults_of(plan: str, tables: dict[str, str]) -> tuple[Fault, ...]:
    """What a plan and a catalog are refused for; any exception but a refusal is a failure."""
    with TemporaryDirectory() as folder:
        for name, path in TABLES.items():
            text = tables.get(name, "\n".join(lines_of(path)))
            (Path(folder) / name).write_text(text, encoding="utf-8")
        file = Path(folder) / "plan.toml"
        file.write_text(plan, encoding="utf-8")
        try:
            estimate_files([file], Path(folder))
        except Refused as refused:
            return refused.faults or (Fault("", "", "refused without a complaint"),)
    return ()


def told(faults: tuple[Fault, ...]) -> bool:
    return all(fault.wrong and fault.right for fault in faults)


@settings(max_examples=50)
@given(st.sampled_from(PLANS), st.data())
def test_an_odd_value_in_a_plan_is_estimated_or_complained_of(
    path: Path, data: st.DataObject
) -> None:
    lines = list(lines_of(path))
    keys = [number for number, line in enumerate(lines) if " = " in line and line[0].isalpha()]
    number = data.draw(st.sampled_from(keys))
    value = data.draw(st.sampled_from(ODD_VALUES))
    lines[number] = f"{lines[number].split(' = ')[0]} = {value}"
    text = "\n".join(lines)
    assert told(faults_of(text, {})), lines[number]


@settings(max_examples=25)
@given(st.sampled_from(PLANS), st.data())
def test_a_line_lost_or_doubled_in_a_plan_is_estimated_or_complained_of(
    path: Path, data: st.DataObject
) -> None:
    lines = list(lines_of(path))
    number = data.draw(st.integers(0, len(lines) - 1))
    lines[number : number + 1] = data.draw(st.sampled_from([[], [lines[number]] * 2]))
    assert told(faults_of("\n".join(lines), {}))


@settings(max_examples=25)
@given(st.sampled_from(sorted(TABLES)), st.data())
def test_an_odd_cell_in_a_catalog_is_read_or_complained_of(name: str, data: st.DataObject) -> None:
    rows = [line.split(",") for line in lines_of(TABLES[name])]
    row = data.draw(st.integers(0, len(rows) - 1))
    column = data.draw(st.integers(0, len(rows[row]) - 1))
    rows[row][column] = data.draw(st.sampled_from(ODD_CELLS))
    text = "\n".join(lines_of(HOUSE / "catalog_demo" / "market_dress.toml"))
    table = "\n".join(",".join(cells) for cells in rows)
    assert told(faults_of(text, {name: table})), table
