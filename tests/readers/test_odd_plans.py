"""Plans that nobody would write on purpose are refused with a place and a remedy, never a crash."""

from pathlib import Path

import pytest

from estimator import Refused, estimate_files, read_plan
from tests.plans import complaints

# Line 1 is [garment]; the piece stands at line 6, its width at line 9.
APRON = """\
[garment]
name = "apron"
[[fabric]]
name = "print"
widths = ["45 in"]
[[piece]]
name = "panel"
cut = "print"
width = "20 1/4"
length = "30 3/8"
"""


def spoilt(old: str, new: str) -> list[str]:
    assert APRON.count(old) == 1
    return complaints(APRON.replace(old, new))


def test_a_plan_with_a_fault_is_not_read_as_if_that_entry_were_not_there(tmp_path: Path) -> None:
    path = tmp_path / "apron.toml"
    path.write_text(APRON.replace("20 1/4", "20 kg"), encoding="utf-8")
    with pytest.raises(Refused, match=r"line 9 \(piece 'panel'\): width: 'kg' in '20 kg'"):
        read_plan(path)


def test_a_file_without_an_end_is_no_plan() -> None:
    with pytest.raises(Refused, match="is no file on a disk; name a file that holds a plan"):
        read_plan(Path("/dev/zero"))


def test_a_name_too_long_for_any_disk_is_refused() -> None:
    with pytest.raises(Refused, match=r"cannot be read \(File name too long\)"):
        estimate_files([Path("x" * 300)], Path("y" * 300))


@pytest.mark.parametrize("number", ["1" * 5000, "1_" * 4999 + "1"])
def test_a_number_of_thousands_of_digits_is_told_with_its_line(number: str) -> None:
    assert spoilt('"20 1/4"', number) == [
        "apron.toml, line 9: a number has more digits than can be read; write a shorter number"
    ]


@pytest.mark.parametrize(
    ("old", "key"), [('"20 1/4"', "width"), ('"panel"', "name"), ('"30 3/8"', "length")]
)
def test_a_huge_number_in_another_base_is_a_complaint_too(old: str, key: str) -> None:
    # Such a number has no limit when it is read, and one when it is printed.
    (found,) = spoilt(old, "0x" + "f" * 5000)
    assert f"{key}" in found
    assert "a number of more than 4000 digits" in found


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('cut = "print"', 'cut = [["f"]]', "cut cannot be a list; write a table of keys and"),
        ('"apron"', '"apron"\nunit = ["in"]', "unit: a list is not a unit for a plan; write in,"),
        ('"30 3/8"', '"30"\nedges = { top = ["hem 1"] }', "top: a list is not a way to finish an"),
        ('"30 3/8"', '"30"\nshape = ["taper"]', "shape cannot be a list; choose from rectangle, "),
        ('length = "30 3/8"', 'made = "tube"\nonto = ["panel: top"]', "onto: a list is not one "
         'edge; write it like "skirt panel: bottom" or "2 x skirt panel: bottom", without'),
    ],
)  # fmt: skip
def test_a_list_where_one_value_is_meant_is_called_a_list(old: str, new: str, told: str) -> None:
    (found,) = spoilt(old, new)
    assert told in found


def test_a_complaint_about_an_edge_says_which_edge_of_which_piece() -> None:
    edges = 'edges.bottom = "hem"\nedges.neckline = { length = "3 kg", finish = "faced" }\n'
    assert [one.split(";")[0] for one in complaints(APRON + edges)] == [
        "apron.toml, line 11 (piece 'panel'): bottom: the hem states no depth",
        "apron.toml, line 12 (piece 'panel'): neckline length: 'kg' in '3 kg' measures mass, "
        "not a length",
    ]


@pytest.mark.parametrize("share", ['"1/3"', '"14"', "0.25"])
def test_for_a_share_that_a_circle_is_not_cut_in_the_choices_are_told(share: str) -> None:
    sector = '[[piece]]\nname = "q"\ncut = "print"\nshape = "sector"\nwaist = "3"\nlength = "20"\n'
    (found,) = complaints(f"{APRON}{sector}share = {share}\n")
    assert found.endswith("; choose from 1/4, 1/2, 3/4, 1")


def test_a_size_from_a_measure_that_cannot_be_read_says_so() -> None:
    found = complaints(
        APRON.replace('"20 1/4"', '{ from = "waist" }') + '[measures]\nwaist = "28 kg"\n'
    )
    assert [one.split(";")[0] for one in found] == [
        "apron.toml, line 12 (measure 'waist'): 'kg' in '28 kg' measures mass, not a length",
        "apron.toml, line 9 (piece 'panel'): width: the measure 'waist' could not be read",
    ]


def test_twins_are_told_beside_what_else_is_wrong_with_them() -> None:
    twins = '[[piece]]\nname = " PANEL"\ncut = "print"\nwidth = "3 kg"\nlength = "4"\n' * 2
    found = complaints(APRON + twins)
    assert (
        sum("a second piece is named 'PANEL', as is the one in line 6" in one for one in found) == 2
    )
    assert sum("measures mass" in one for one in found) == 2


def test_a_fabric_and_a_piece_may_have_one_name() -> None:
    assert complaints(APRON.replace('"panel"', '"print"')) == []


def test_an_unread_piece_without_a_name_does_not_make_its_fabric_idle() -> None:
    (found,) = spoilt('name = "panel"', "")
    assert found == "apron.toml, line 6: 'name' is missing; add name"


def test_a_key_of_thousands_of_dots_is_an_unknown_table() -> None:
    (found,) = complaints(f"{'a.' * 2000}a = 1\n{APRON}")
    assert "there is no table 'a' in a plan" in found


def reckoned(text: str, measures: str) -> list[str]:
    found = complaints(
        APRON.replace('"20 1/4"', f'{{ from = "{text}" }}') + f"[measures]\n{measures}\n"
    )
    return [one.split(";")[0].removeprefix("apron.toml, ") for one in found]


def test_a_measure_whose_name_holds_that_of_an_unread_one_is_read_all_the_same() -> None:
    assert reckoned("half waist + 1 in", '"half waist" = "14"\nwaist = "28 kg"') == [
        "line 13 (measure 'waist'): 'kg' in '28 kg' measures mass, not a length"
    ]


def test_an_arithmetic_that_comes_to_more_than_any_cloth_is_refused() -> None:
    assert reckoned("waist * 999999999 * 999999999", 'waist = "28"') == [
        "line 9 (piece 'panel'): width: 'waist * 999999999 * 999999999' comes to more than 10 km"
    ]


def test_a_measure_without_a_name_is_refused() -> None:
    assert reckoned("waist", 'waist = "28"\n"" = "3"') == [
        "line 13 (measure ''): a measure has no name"
    ]
