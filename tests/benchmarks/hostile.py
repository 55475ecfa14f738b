"""Files that nobody should write: sound ones cut, crossed, given hostile values, or damaged."""

from __future__ import annotations

import csv
import io
import zipfile
from functools import cache
from pathlib import Path
from random import Random

from openpyxl import Workbook, load_workbook
from openpyxl.cell.cell import MergedCell

from estimator.reports.catalog_form import catalog_as_workbook
from estimator.reports.plan_file import as_workbook
from estimator.shipped import shipped

DEMO, TEMPLATES = shipped("catalog_demo"), shipped("templates")
PLANS = [
    path
    for path in sorted([*DEMO.glob("*.toml"), *TEMPLATES.glob("*.toml")])
    if not path.name.endswith(".show.toml")
]
TABLES = ("items.csv", "offers.csv", "wearers.csv", "stash.csv")
CLOAK, SHOW = "night_cloak.toml", "harvest_fair.show.toml"
ODD = [
    "", "0", "-1", "7", "1/0", "9**9**9", "(" * 300, "-" * 300, "1e308", "nan", "inf", "½", "１２",
    "9" * 400, "9/" * 90 + "1", "0." + "0" * 200 + "1", "1 in 1 in", "999999 yd", "1/64 in",
    "100 %", "99.999999 %", "1e9 %", "fold", "a: b", "99999 x a: b", "card of 1 mm",
    "pack of 999999", "pack of 999 x 1 mm", "spool of 999999 yd",
    "=1+1", "'=1", "\x00", "\ufeff", "\u202e",
    "😀" * 50, "02-Jan", "2024-01-02", "../../etc/passwd", "/dev/zero", "/dev/stdin",
    "wearers.csv", ".",
    "min(1 in)", "max()", "waist", "waist / 0", "waist * waist", "waist ** 9", "__import__('os')",
    "min(" * 60 + "1 in" + ")" * 60, "1 in" + " + 1 in" * 40, '"', "'''", "\\", "all", "A" * 5000,
]  # fmt: skip
ODD_TOML = [
    "0", "-1", "7", "9" * 40, "1e308", "nan", "-inf", "true", "2024-01-02", "12:30:00", "[]", "{}",
    "[" * 200 + "]" * 200, "[" * 5000, "{a=" * 200 + "1" + "}" * 200, '[["a: b"]]',
    "{ from = 'waist + 1 in' }", "{ from = '" + "(" * 90 + "' }", "'''\n'''", "0x7fffffffffffffff",
    "999", "5000", "2000000",
]  # fmt: skip
MEASURES = [
    '[measures]\nwaist = { from = "waist" }\n',
    '[measures]\nwaist = { from = "hip" }\nhip = { from = "waist" }\n',
    '[measures]\n' + "".join(f'm{n} = "{n + 1}"\n' for n in range(2_000)),
    '[measures]\nwaist = "9**9**9"\n',
    '[measures]\nwaist = "999999 yd"\n',
]  # fmt: skip


def odd_toml(text: str, chance: Random) -> str:
    """A text file of tables with some of its lines changed, lost, repeated or crossed."""
    lines = text.split("\n")
    for _ in range(chance.choice((1, 1, 1, 2, 4, 12))):
        place = chance.randrange(len(lines))
        way = chance.randrange(9)
        if way < 4 and "=" in lines[place]:
            key, _, value = lines[place].partition("=")
            if way < 2:
                lines[place] = f"{key}= {chance.choice(ODD_TOML)}"
            elif '"' in value:
                parts = value.split('"')
                parts[chance.randrange(len(parts) // 2) * 2 + 1] = chance.choice(ODD)
                lines[place] = key + "=" + '"'.join(parts)
        elif way == 4:
            del lines[place]
        elif way == 5:
            lines[place:place] = [lines[place]] * chance.choice((1, 2, 40))
        elif way == 6:
            other = chance.randrange(len(lines))
            lines[place], lines[other] = lines[other], lines[place]
        elif way == 7:
            lines.insert(place, chance.choice(MEASURES))
        else:
            lines.insert(place, f"{chance.choice(ODD) or 'x'} = {chance.choice(ODD_TOML)}")
        lines = lines or [""]
    return "\n".join(lines)


def odd_csv(text: str, chance: Random) -> str:
    """A table with some cells changed, rows lost or repeated, or its commas exchanged."""
    rows = [row for row in csv.reader(io.StringIO(text)) if row]
    for _ in range(chance.choice((1, 1, 2, 5, 20))):
        row = rows[chance.randrange(len(rows))]
        way = chance.randrange(7)
        if way < 4:
            row[chance.randrange(len(row))] = chance.choice(ODD)
        elif way == 4:
            rows.extend([list(row) for _ in range(chance.choice((1, 3, 300)))])
        elif way == 5 and len(rows) > 1:
            rows.remove(row)
        else:
            row.insert(chance.randrange(len(row) + 1), chance.choice(ODD))
    held = io.StringIO()
    csv.writer(held, delimiter=chance.choice(",,,,;\t")).writerows(rows)
    return held.getvalue()


def odd_bytes(content: bytes, chance: Random) -> bytes:
    """Bytes changed, lost, doubled, or in another encoding."""
    way = chance.randrange(6)
    if way == 0:
        return content.decode("utf-8", "replace").encode(
            chance.choice(("utf-16", "cp500")), "replace"
        )
    if way == 1:
        return content[: chance.randrange(len(content) + 1)]
    if way == 2:
        return content * chance.choice((2, 50))
    found = bytearray(content)
    for _ in range(chance.choice((1, 3, 30))):
        place = chance.randrange(len(found))
        found[place : place + chance.choice((0, 1, 1, 9))] = chance.randbytes(
            chance.choice((0, 1, 9))
        )
    return bytes(found)


def odd_cell(chance: Random) -> object:
    """What a cell of a workbook can hold and should not."""
    odd = chance.choice([*ODD, 3, 2.5, True, -1e300])
    if isinstance(odd, str):
        return "".join(one for one in odd if one.isprintable())[:1_000]
    return odd


def workbook(sheets: dict[str, list[list[str]]], chance: Random) -> bytes:
    """Tables as a workbook, some of its cells odd, and the archive perhaps damaged or a bomb."""
    book = Workbook()
    book.remove(book.active)
    for title, rows in sheets.items():
        sheet = book.create_sheet(title)
        for row in rows:
            cells: list[object] = list(row)
            if chance.random() < 0.2 and cells:
                cells[chance.randrange(len(cells))] = odd_cell(chance)
            sheet.append(cells)
        if chance.random() < 0.1:
            sheet.cell(chance.choice((40, 4_000, 1_048_576)), chance.choice((3, 300)), "far off")
        if chance.random() < 0.1:
            sheet.merge_cells("A1:C3")
    held = io.BytesIO()
    book.save(held)
    return odd_archive(held, chance)


@cache
def sound_form(number: int) -> bytes:
    """A shipped plan, or the demo's catalog, as the workbook to fill in."""
    return as_workbook(PLANS[number], DEMO) if number < len(PLANS) else catalog_as_workbook(DEMO)


def form(chance: Random) -> bytes:
    """A filled-in form with a few entries changed, lost, moved or written beside their place."""
    book = load_workbook(io.BytesIO(sound_form(chance.randrange(len(PLANS) + 1))))
    for _ in range(chance.choice((1, 1, 2, 6))):
        sheet = chance.choice(book.worksheets)
        filled = [cell for row in sheet.iter_rows() for cell in row if cell.value is not None]
        if not filled:
            continue
        cell = chance.choice(filled)
        way = chance.randrange(6)
        if way < 3:
            cell.value = odd_cell(chance)
        elif way == 3:
            cell.value = None
        elif way == 4:
            beside = sheet.cell(cell.row + chance.choice((0, 1)), cell.column + 1)
            if not isinstance(beside, MergedCell):
                beside.value = cell.value
        elif chance.random() < 0.5:
            sheet.delete_rows(cell.row)
        else:
            sheet.insert_cols(cell.column)
    if chance.random() < 0.05:
        book.remove(chance.choice(book.worksheets))
    held = io.BytesIO()
    book.save(held)
    return held.getvalue() if chance.random() < 0.8 else odd_archive(held, chance)


def bombed(content: bytes, chance: Random) -> bytes:
    """A part of a workbook swollen with what packs to nothing: blanks, empty rows, empty fonts."""
    if chance.random() < 0.3:
        return content + b" " * 80_000_000
    most = chance.choice((600_000, 5_500_000, 9_000_000))
    for inside, swollen in ((b"<sheetData>", b'<row r="1"/>'), (b"<fonts", b"<font/>")):
        before, found, after = content.partition(inside)
        if found:
            head, close, rest = after.partition(b">") if inside == b"<fonts" else (b"", b"", after)
            return before + found + head + close + swollen * (most // len(swollen)) + rest
    return content


def odd_archive(held: io.BytesIO, chance: Random) -> bytes:
    """A workbook's archive as it is, or damaged, or a bomb."""
    way = chance.randrange(8)
    if way == 0:
        return odd_bytes(held.getvalue(), chance)
    if way > 2:
        return held.getvalue()
    packed = io.BytesIO()
    with zipfile.ZipFile(held) as old, zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            content = old.read(name)
            if name.endswith("sheet1.xml") or (name.endswith("styles.xml") and way == 1):
                bomb = chance.random() < 0.1 if way == 1 else False
                content = bombed(content, chance) if bomb else odd_bytes(content, chance)
            new.writestr(name, content)
    return packed.getvalue()


def rows_of(path: Path) -> list[list[str]]:
    return list(csv.reader(io.StringIO(path.read_text(encoding="utf-8"))))


def hostile(folder: Path, kind: str, chance: Random) -> Path:
    """Writes the file, or the folder, of one kind that is to be read."""
    for path in [*DEMO.iterdir(), *PLANS]:
        (folder / path.name).write_bytes(path.read_bytes())
    if kind == "form":
        target = folder / "form.xlsx"
        target.write_bytes(form(chance))
        return target
    if kind == "workbook":
        names = chance.sample(TABLES, chance.randint(1, 4))
        own = {Path(name).stem: rows_of(DEMO / name) for name in names}
        target = folder / "book.xlsx"
        target.write_bytes(workbook(own, chance))
        return target
    if kind in ("plan", "show"):
        target = folder / (SHOW if kind == "show" else chance.choice(PLANS).name)
        text = target.read_text(encoding="utf-8")
        written = odd_toml(text, chance).encode("utf-8", "replace")
    else:
        target = folder / (chance.choice(TABLES[:2]) if kind == "catalog" else f"{kind}.csv")
        written = odd_csv(target.read_text(encoding="utf-8"), chance).encode("utf-8", "replace")
    target.write_bytes(odd_bytes(written, chance) if chance.random() < 0.15 else written)
    return target
