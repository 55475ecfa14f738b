"""A show: its garments made for each of its wearers, planned and bought together."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator import estimate_files
from estimator.faults import Refused
from estimator.reports.measure_sheet import measure_tables
from estimator.written import length
from tests.forms import write_form

SKIRT = """
[garment]
name = "Skirt"
unit = "in"
[measures]
waist = "28"
ease = "2"
[[fabric]]
name = "serge"
widths = ["60 in"]
selvedge = "0"
[[piece]]
name = "panel"
quantity = 2
cut = "serge"
sizes = "cut"
width = { from = "waist / 2 + ease" }
length = { from = "skirt length" }
"""
WEARERS = "wearer,unit,waist,skirt length\nAda,in,26,30\nBo,in,32,34\nCy,cm,76,80\n"
SHOW = """
[show]
name = "Harvest"
wearers = "wearers.csv"
[[garment]]
plan = "skirt.toml"
wearers = "all"
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "skirt.toml").write_text(SKIRT, encoding="utf-8")
    (tmp_path / "wearers.csv").write_text(WEARERS, encoding="utf-8")
    (tmp_path / "show.toml").write_text(SHOW, encoding="utf-8")
    return tmp_path


def rewrite(folder: Path, name: str, old: str, new: str) -> None:
    text = (folder / name).read_text(encoding="utf-8")
    assert old in text
    (folder / name).write_text(text.replace(old, new), encoding="utf-8")


def told(folder: Path) -> list[str]:
    with pytest.raises(Refused) as refused:
        estimate_files([folder / "show.toml"])
    return [str(fault).replace(f"{folder}/", "") for fault in refused.value.faults]


def sizes(folder: Path) -> dict[str, tuple[object, object]]:
    found = estimate_files([folder / "show.toml"])
    return {
        piece.source.wearer: (piece.width.value, piece.length.value)
        for piece in found.fabrics[0].chosen.pieces
    }


def test_each_wearer_has_sizes_from_her_own_measures(folder: Path) -> None:
    # waist / 2 + 2: 26 gives 15, 32 gives 18; 76 cm / 2 is 38 cm, and 2 in more
    assert sizes(folder) == {
        "Ada": (length("15"), length("30")),
        "Bo": (length("18"), length("34")),
        "Cy": (length("43.08 cm").up_to(length("1/16")), length("80 cm").up_to(length("1/16"))),
    }


def test_a_measure_that_has_no_column_is_that_of_the_plan_for_all(folder: Path) -> None:
    rewrite(folder, "skirt.toml", 'ease = "2"', 'ease = "3"')
    assert sizes(folder)["Ada"] == (length("16"), length("30"))


def test_their_cloth_is_laid_out_and_bought_together(folder: Path) -> None:
    # 60 in wide: Ada's two panels and one of Bo's are 48; apart each takes a length of her own
    found = estimate_files([folder / "show.toml"])
    (line,) = found.purchases
    apart = []
    for name in ("Ada", "Bo", "Cy"):
        (folder / "one.toml").write_text(SHOW.replace('"all"', f'"{name}"'), encoding="utf-8")
        apart.append(estimate_files([folder / "one.toml"]).purchases[0].buy.sold_units)
    assert line.buy.sold_units <= sum(apart)


def test_a_garment_without_wearers_is_made_by_its_plan_so_many_times(folder: Path) -> None:
    rewrite(folder, "show.toml", 'wearers = "all"', "count = 3")
    rewrite(folder, "skirt.toml", 'ease = "2"', 'ease = "2"\n"skirt length" = "31"')
    found = estimate_files([folder / "show.toml"])
    (piece,) = found.fabrics[0].chosen.pieces
    assert (piece.quantity, piece.length.value) == (6, length("31"))


def test_a_missing_measure_is_one_complaint_for_all_who_lack_it(folder: Path) -> None:
    rewrite(folder, "wearers.csv", "Ada,in,26,30", "Ada,in,26,")
    rewrite(folder, "wearers.csv", "Cy,cm,76,80", "Cy,cm,76,")
    assert told(folder) == [
        "wearers.csv, column skirt length, rows 2, 4: the skirt length of 'Ada', 'Cy' is missing, "
        "and skirt.toml asks for it; measure it and fill it in"
    ]


def test_a_measure_that_nothing_asks_for_may_be_missing(folder: Path) -> None:
    rewrite(folder, "wearers.csv", "skirt length\n", "skirt length,hip\n")
    assert set(sizes(folder)) == {"Ada", "Bo", "Cy"}


@pytest.mark.parametrize(
    ("old", "new", "complaint"),
    [
        ('"all"', '["Ada", "Boo"]', "show.toml, line 7: wearers.csv has no wearer 'Boo'; "
         "did you mean 'Bo'?"),
        ('wearers = "wearers.csv"\n', "", "show.toml, line 6: it names wearers, and the show has "
         'no table of them; add wearers = "wearers.csv" to [show]'),
        ('"skirt.toml"', '"skurt.toml"', "skurt.toml: does not exist; "
         "check the name and the folder"),
        ('plan = ', 'pan = ', "show.toml, line 6: there is no key 'pan' here; "
         "did you mean 'plan'?"),
        ("[[garment]]", "[[costume]]", "show.toml, line 5: there is no table 'costume' in a show; "
         "choose from garment, shop, show"),
        ("wearers.csv", "wearer.csv", "wearer.csv: does not exist; check the name and the folder"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_show_is_told(
    folder: Path, old: str, new: str, complaint: str
) -> None:
    rewrite(folder, "show.toml", old, new)
    assert complaint in told(folder)


@pytest.mark.parametrize("column", ["Waist", "WAIST", " waist "])
def test_a_measure_is_known_by_its_heading_in_capitals_or_not(folder: Path, column: str) -> None:
    plain = sizes(folder)
    rewrite(folder, "wearers.csv", "wearer,unit,waist", f"Wearer,Unit,{column}")
    assert sizes(folder) == plain


def test_the_words_of_a_measure_are_joined_in_the_table_or_not(folder: Path) -> None:
    rewrite(folder, "skirt.toml", 'waist = "28"', 'waist = "28"\n"skirt length" = "25"')
    plain = sizes(folder)
    rewrite(folder, "wearers.csv", "skirt length", "Skirt_Length")
    assert sizes(folder) == plain


def test_a_heading_that_is_a_slip_of_a_measure_is_asked_about(folder: Path) -> None:
    rewrite(folder, "wearers.csv", "unit,waist", "unit,wiast")
    (remark,) = estimate_files([folder / "show.toml"]).remarks
    assert remark.removeprefix(f"{folder}/") == (
        "wearers.csv, column wiast: no plan here has a measure 'wiast', and the table has none "
        "'waist'; did you mean that?"
    )


def test_a_measure_that_no_plan_asks_for_may_stand_in_the_table(folder: Path) -> None:
    plain = sizes(folder)
    rewrite(folder, "wearers.csv", "skirt length\n", "skirt length,waistcoat,shirt length\n")
    assert sizes(folder) == plain
    assert not estimate_files([folder / "show.toml"]).remarks


@pytest.mark.parametrize(
    ("name", "old", "new", "wrong"),
    [
        ("show.toml", '"all"', "[]", "it is for wearers and names none; name them, or leave"),
        ("show.toml", '"all"', '["Ada", "Bo", "ada"]', "'Ada' is named twice; name each once"),
        ("wearers.csv", WEARERS, "wearer,unit,waist,skirt length\n", "there is nobody in "),
        ("wearers.csv", "unit,waist", "unit,waist,Waist", "the column 'Waist' stands here twice"),
    ],
)
def test_wearers_who_are_nobody_or_twice_are_asked_about(
    folder: Path, name: str, old: str, new: str, wrong: str
) -> None:
    rewrite(folder, name, old, new)
    assert wrong in told(folder)[0]


def test_spares_are_for_all_that_is_made_by_a_plan(folder: Path) -> None:
    notion = '[[notion]]\nname = "hook"\nquantity = 2\nspare = 1\n'
    (folder / "skirt.toml").write_text(SKIRT + notion, encoding="utf-8")
    (hooks,) = (
        line for line in estimate_files([folder / "show.toml"]).purchases if line.title == "hook"
    )
    assert hooks.needed == 3 * 2 + 1
    with (folder / "show.toml").open("a", encoding="utf-8") as show:
        show.write('[[garment]]\nplan = "skirt.toml"\nwearers = ["Ada"]\n')  # one for the double
    again = estimate_files([folder / "show.toml"])
    (hooks,) = (line for line in again.purchases if line.title == "hook")
    assert hooks.needed == 4 * 2 + 1


def test_a_plan_with_spares_has_one_measure_sheet_for_all_who_measure_alike(folder: Path) -> None:
    notion = '[[notion]]\nname = "hook"\nquantity = 2\nspare = 1\n'
    (folder / "skirt.toml").write_text(SKIRT + notion, encoding="utf-8")
    rewrite(folder, "wearers.csv", "Bo,in,32,34", "Bo,in,26,30")
    titles = [sheet.title for sheet in measure_tables(estimate_files([folder / "show.toml"]))]
    assert [title for title in titles if "Bo" in title] == []
    assert any("Ada" in title for title in titles)


def test_a_show_in_the_place_of_a_plan_is_told_so(folder: Path) -> None:
    show = folder / "play.show.toml"
    show.write_text(
        '[show]\nname = "Play"\n[[garment]]\nplan = "play.show.toml"\n', encoding="utf-8"
    )
    with pytest.raises(Refused) as refused:
        estimate_files([show])
    assert [str(fault) for fault in refused.value.faults] == [
        f"{show}, line 4: 'play.show.toml' is a show, not a plan; name the plans of its garments"
    ]


def test_a_fault_of_the_plan_is_told_once_for_all_wearers(folder: Path) -> None:
    rewrite(folder, "skirt.toml", "quantity = 2", "quantity = 0")
    assert len(told(folder)) == 1


def test_the_list_is_headed_by_the_show(folder: Path) -> None:
    assert estimate_files([folder / "show.toml"]).job.title == "Harvest"


def test_a_plan_of_a_show_may_be_a_spreadsheet(folder: Path) -> None:
    wanted = estimate_files([folder / "show.toml"])
    # its form wants a length of its own; each wearer's goes before it
    plan = SKIRT.replace('ease = "2"', 'ease = "2"\n"skirt length" = "1"')
    write_form(folder / "skirt.xlsx", plan)
    rewrite(folder, "show.toml", "skirt.toml", "skirt.xlsx")
    found = estimate_files([folder / "show.toml"])
    assert [line.buy.amount for line in found.purchases] == [
        line.buy.amount for line in wanted.purchases
    ]
