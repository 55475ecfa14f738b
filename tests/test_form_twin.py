"""A plan filled in as a spreadsheet, by somebody who knows no TOML, beside its twin in TOML."""

from __future__ import annotations

import json
from pathlib import Path

from estimator import Estimate, estimate_files, read_plan
from estimator.reports.as_json import estimate_json
from estimator.shipped import starter_plans
from tests.forms import Form, write_form
from tests.shipped_plans import SHOPS

TWIN = """\
[garment]
name = "Fishwife's skirt"
unit = "in"
copies = 2
seam_allowance = "1/2"

[measures]
waist = "31 1/2"
"skirt length" = "28"

[[fabric]]
name = "skirt fabric"
buy = "linen-medium"

[[fabric]]
name = "interfacing"
role = "interfacing"
widths = ["20 in", { width = "36 in", usable = "35" }]
selvedge = "0"

[[piece]]
name = "waistband"
cut = ["skirt fabric", { fabric = "interfacing", cut_to = "finished size" }]
made = "folded band"
width = "1 1/4"
length = { from = "waist" }
grain = "either"
edges = { bottom = "seam 1 7/8" }

[[piece]]
name = "skirt"
cut = "skirt fabric"
made = "joined strip"
length = { from = "skirt length - 4 in" }
onto = "waistband: right"
fullness = 2
edges = { bottom = "hem 2 double", slit = { length = "7", finish = "faced" } }

[[piece]]
name = "patch pocket"
quantity = 2
cut = "skirt fabric"
width = "7"
length = "8 1/4"
edges = { top = "hem 1", left = "turned under", right = "turned under", bottom = "turned under" }
takes_up = [{ kind = "box pleat", depth = "1/2" }]
note = "On the right side, a hand's breadth below the band."

[[seam]]
name = "waist seam"
edges = ["waistband: right", "skirt: top"]
gathered = "skirt: top"

[[trim]]
name = "hem lace"
buy = "scalloped-lace"
along = "skirt: bottom"
joined = "in the round"

[[trim]]
name = "pocket tape"
along = ["patch pocket: top", "waist seam"]
run = "each"
price = "0.60 per yd"

[[notion]]
name = "zip"
length = "7"

[[notion]]
name = "skirt hook and bar"

[[notion]]
name = "buttons"
quantity = 3
spare = 1
sold = [{ put_up = "each", price = "0.40 each" }, { put_up = "pack of 6", price = "1.90 each" }]

[[thread]]
name = "thread"
sold = [{ put_up = "spool of 250 yd" }]
"""


def fill_in(form: Form) -> None:
    """As the form's own explanations say it, from the gathered skirt that is shipped."""
    form.yours("Name", "Fishwife's skirt")
    form.yours("Copies", 2)
    form.yours("Seam allowance", "1/2")
    form.put("Measures", "waist", "Size", "31 1/2")
    form.put("Measures", "skirt length", "Size", 28)
    form.put("Fabrics", "skirt fabric", "Widths", None)
    form.put("Fabrics", "skirt fabric", "Shrinkage", None)
    form.put("Fabrics", "skirt fabric", "Buy", "linen-medium")
    form.add("Widths", Fabric="interfacing", Width="36 in", Usable="35")
    form.put("Pieces", "skirt", "Length", "from skirt length - 4 in")
    form.put("Pieces", "skirt", "Fullness", 2)
    form.put("Pieces", "skirt", "Bottom edge", "hem 2 double")
    form.add("Named edges", Piece="skirt", Edge="slit", Length="7", Finish="faced")
    form.add(
        "Pieces", Name="patch pocket", Cut_from="skirt fabric", Quantity=2, Width="7",
        Length="8 1/4", Top_edge="hem 1", Left_edge="turned under", Right_edge="turned under",
        Bottom_edge="turned under", Note="On the right side, a hand's breadth below the band.",
    )  # fmt: skip
    form.add("Pleats, tucks, darts", Piece="patch pocket", Kind="box pleat", Depth="1/2")
    form.empty("Trims", "hem ribbon")
    form.add("Trims", Name="hem lace", Buy="scalloped-lace", Along="skirt: bottom",
             Joined="in the round")  # fmt: skip
    form.add("Trims", Name="pocket tape", Along="patch pocket: top; waist seam", Run="each",
             Price="0.60 per yd")  # fmt: skip
    form.add("Notions", Name="buttons", Quantity=3, Spare=1)
    form.add("Packs", Table="notion", Name="buttons", Pack="each", Price="0.40 each")
    form.add("Packs", Table="notion", Name="buttons", Pack="pack of 6", Price="1.90 each")


def told(found: Estimate, file: Path) -> str:
    """All that an estimate tells, but where in its file each thing was written."""
    return "\n".join(
        line
        for line in json.dumps(estimate_json(found), indent=1, default=str).splitlines()
        if str(file) not in line
    )


def test_a_form_filled_in_by_a_newcomer_gives_the_same_estimate_as_its_twin_in_toml(
    tmp_path: Path,
) -> None:
    starter = starter_plans()["gathered_skirt"].read_text(encoding="utf-8")
    form = Form(write_form(tmp_path / "skirt.xlsx", starter))
    fill_in(form)
    sheet = form.save()
    twin = tmp_path / "skirt.toml"
    twin.write_text(TWIN, encoding="utf-8")
    assert read_plan(sheet) == read_plan(twin)
    found, wanted = estimate_files([sheet], SHOPS), estimate_files([twin], SHOPS)
    assert told(found, sheet) == told(wanted, twin)
    assert found.cost == wanted.cost > 0
