"""Every complaint about a plan names its file and line, what is wrong, and what would be right."""

import re

import pytest

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


def test_a_sound_plan_has_no_complaints() -> None:
    assert complaints(APRON) == []


@pytest.mark.parametrize(
    ("old", "new", "complaint"),
    [
        pytest.param(
            'cut = "print"',
            'cut = "pint"',
            "apron.toml, line 8 (piece 'panel'): "
            "the plan has no fabric 'pint'; did you mean 'print'?",
            id="unknown fabric",
        ),
        pytest.param(
            '"20 1/4"',
            '"20 kg"',
            "apron.toml, line 9 (piece 'panel'): "
            "width: 'kg' in '20 kg' measures mass, not a length; "
            "use in, ft, yd, mm, cm, m or ligne",
            id="nonsense unit",
        ),
        pytest.param(
            '"20 1/4"',
            "2024-01-02",
            "apron.toml, line 9 (piece 'panel'): "
            "width: 2024-01-02 is a date or a time, not a size; "
            'write fractions in quotes, as in "1/2"',
            id="a date of TOML's own",
        ),
        pytest.param(
            '"20 1/4"',
            '"02-Jan"',
            "apron.toml, line 9 (piece 'panel'): "
            "width: '02-Jan' is a date; a spreadsheet makes one of a fraction "
            "such as 1/2; format the cell as text and write 1/2 again",
            id="a date from a spreadsheet",
        ),
        pytest.param(
            '"20 1/4"',
            '"-20"',
            "apron.toml, line 9 (piece 'panel'): "
            "width: '-20' is negative; a length is zero or more",
            id="negative",
        ),
        pytest.param(
            '"20 1/4"',
            "0",
            "apron.toml, line 9 (piece 'panel'): "
            "width: the length is zero; write a length of more than zero",
            id="zero where that makes no sense",
        ),
        pytest.param(
            '"20 1/4"',
            "nan",
            "apron.toml, line 9 (piece 'panel'): width: nan is not a number; write a finite number",
            id="not a number",
        ),
        pytest.param(
            '"20 1/4"',
            '{ from = "waist" }',
            "apron.toml, line 9 (piece 'panel'): "
            "width: there is no measure 'waist'; there is none to choose from",
            id="a measure that nobody took",
        ),
        pytest.param(
            'length = "30 3/8"',
            "",
            "apron.toml, line 6 (piece 'panel'): "
            "a rectangle takes width and length, and this one states width; "
            "add length",
            id="a size forgotten",
        ),
        pytest.param(
            'length = "30 3/8"',
            'length = "30"\nshape = "tapr"',
            "apron.toml, line 11 (piece 'panel'): shape cannot be 'tapr'; did you mean 'taper'?",
            id="unknown shape",
        ),
        pytest.param(
            'length = "30 3/8"',
            'length = "30"\nquantity = 2.5',
            "apron.toml, line 11 (piece 'panel'): quantity: '2.5' is not a whole number; "
            "write a whole number, as in 4",
            id="half a piece",
        ),
        pytest.param(
            'length = "30 3/8"',
            'length = "30"\nedges.bottom = "hemm 1 1/4"',
            "apron.toml, line 11 (piece 'panel'): "
            "bottom: 'hemm 1 1/4' is not a way to finish an edge; "
            "did you mean 'hem'?",
            id="unknown finish",
        ),
        pytest.param(
            '"panel"',
            "3",
            "apron.toml, line 7: name cannot be '3'; write it as text, in quotes",
            id="a number for a name",
        ),
        pytest.param(
            '"panel"',
            '"front: panel"',
            "apron.toml, line 7 (piece 'front: panel'): name cannot be 'front: panel'; "
            "leave the colon out: it parts a piece from its edge",
            id="a colon in a name",
        ),
        pytest.param(
            '["45 in"]',
            '"45 in"',
            "apron.toml, line 5 (fabric 'print'): widths cannot be '45 in'; "
            "write a list in square brackets, one entry in it or several",
            id="a width where a list is meant",
        ),
        pytest.param(
            'cut = "print"',
            'cut = ["print", 4]',
            "apron.toml, line 8 (piece 'panel'): "
            "cut cannot be '4'; write a table of keys and values",
            id="a number among the fabrics",
        ),
        pytest.param(
            'name = "apron"',
            'name = "apron"\nunit = "inch"',
            "apron.toml, line 3: unit: 'inch' is not a unit for a plan; write in, cm or mm",
            id="unknown unit of a plan",
        ),
        pytest.param(
            'name = "apron"',
            "",
            "apron.toml, line 1: 'name' is missing; add name",
            id="a garment without a name",
        ),
    ],
)
def test_a_fault_is_told_with_its_line_and_its_remedy(old: str, new: str, complaint: str) -> None:
    assert spoilt(old, new) == [complaint]


@pytest.mark.parametrize(
    ("tables", "line", "told"),
    [
        ("quantiy = 4", 11, "there is no key 'quantiy' here; did you mean 'quantity'?"),
        ('edges.bottom = { finsh = "raw" }', 11, "'finsh' here; did you mean 'finish'?"),
        ('takes_up = [\n  { kind = "tuck", depth = "1/4", cuont = 3 },\n]', 12,
         "'cuont' here; did you mean 'count'?"),
        ('[[piece.takes_up]]\nkind = "tuck"\ndepth = "1/4"\nacros = "width"', 14,
         "'acros' here; did you mean 'across'?"),
        ('[[piece]]\nname = "p"\nwidth = "3"\nlength = "3"\ncut = [{ fabric = "print",'
         ' cutto = "cut size" }]', 15, "'cutto' here; did you mean 'cut_to'?"),
        ('[[seam]]\nedges = ["panel: left", "panel: right"]\ngatherd = "panel: left"', 13,
         "'gatherd' here; did you mean 'gathered'?"),
        ('[[trim]]\nname = "braid"\nlength = "12"\nfulness = 2', 14,
         "'fulness' here; did you mean 'fullness'?"),
        ('[[trim]]\nname = "braid"\nlength = "12"\nsold = [{ putup = "card of 3 yd" }]', 14,
         "'putup' here; did you mean 'put_up'?"),
        ('[[elastic]]\nname = "e"\nmeasure = "28"\nstrech = "10 %"', 14,
         "'strech' here; did you mean 'stretch'?"),
        ('[[notion]]\nname = "buttons"\nquanity = 6', 13,
         "'quanity' here; did you mean 'quantity'?"),
        ('[[trimm]]\nname = "braid"', 11,
         "there is no table 'trimm' in a plan; did you mean 'trim'?"),
        ('[[fabric]]\nname = "net"\nwidths = [{ width = "54", usabel = "50" }]', 13,
         "'usabel' here; did you mean 'usable'?"),
    ],
)  # fmt: skip
def test_an_unknown_key_gets_the_nearest_key_wherever_it_stands(
    tables: str, line: int, told: str
) -> None:
    found = [one for one in complaints(APRON + tables) if "there is no" in one]
    assert len(found) == 1
    assert re.match(
        rf"apron\.toml, line {line}( \((piece|seam|trim|elastic|notion|fabric) '.*'\))?: ", found[0]
    )
    assert found[0].endswith(told)


@pytest.mark.parametrize(
    ("size", "right"),
    [
        ("waist", 'write { from = "waist" }'),
        ("waist / 2 + 1 in", 'write { from = "waist / 2 + 1 in" }'),
        ("waist + 10", 'write { from = "waist + 10 in" }'),
        ("half of waist", 'write it like { from = "waist / 4 + 1 in" }'),
        ("wasit", "a length is written like 17 1/2"),
    ],
)
def test_a_measure_in_the_place_of_a_size_is_told_how_sizes_come_from_measures(
    size: str, right: str
) -> None:
    text = APRON.replace('"20 1/4"', f'"{size}"') + '[measures]\nwaist = "28"\n'
    (found,) = complaints(text)
    assert f"width: '{size}' is not a length; {right}" in found


@pytest.mark.parametrize(
    ("tables", "told"),
    [
        ('[[trim]]\nname = "t"\nlength = "9"\ncasing_for = "bones"', "it is a key of [[boning]]"),
        ('[[trim]]\nname = "t"\nlength = "9"\nelastic_stretch = 0', "it is a key of [garment]"),
        ('[[elastic]]\nname = "e"\nmeasure = "9"\nsize = "9"', "it is a key of [[notion]]"),
        ('[[loops]]\nname = "l"\nbuttons = "b"\nedges = []', "it is a key of [[piece]], [[seam]]"),
    ],
)
def test_a_key_of_another_table_is_told_which_table_has_it(tables: str, told: str) -> None:
    (found,) = [one for one in complaints(APRON + tables) if "there is no key" in one]
    assert found.endswith(f" here; {told}")


def test_an_unknown_key_of_the_garment_gets_the_nearest_key() -> None:
    assert spoilt('name = "apron"', 'name = "apron"\nseam_alowance = "1/2"') == [
        "apron.toml, line 3: there is no key 'seam_alowance' here; did you mean 'seam_allowance'?"
    ]


def test_a_misspelt_key_in_a_fabric_of_a_piece_is_one_complaint() -> None:
    found = spoilt('cut = "print"', 'cut = [{ fabric = "print", cutto = "cut size" }]')
    assert found == [
        "apron.toml, line 8 (piece 'panel'): there is no key 'cutto' here; did you mean 'cut_to'?"
    ]


def test_a_plan_without_a_garment_is_told_how_to_start() -> None:
    assert complaints("") == [
        'apron.toml: the plan has no [garment] table; start it with [garment] and name = "..."'
    ]


def test_one_table_where_a_list_is_meant_is_told_its_heading() -> None:
    found = spoilt("[[piece]]", "[piece]")
    assert found[0] == (
        "apron.toml, line 6: [piece] is one table where a list is meant; head each with [[piece]]"
    )


def test_two_pieces_of_one_name_are_told_of_each_other() -> None:
    twin = '[[piece]]\nname = "Panel"\ncut = "print"\nwidth = "3"\nlength = "4"\n'
    assert complaints(APRON + twin) == [
        "apron.toml, line 12 (piece 'Panel'): a second piece is named 'Panel', as is the one in "
        "line 6; give each its own name"
    ]


def test_complaints_of_the_reader_and_of_the_cutting_come_together() -> None:
    found = complaints(
        APRON
        + """\
[[piece]]
name = "tie"
cut = "pint"
width = "1 kg"
length = "-34"
[[piece]]
name = "pocket"
cut = "print"
width = "6 1/4"
length = "7"
edges = { top = "hem 9" }
[[trim]]
name = "braid"
along = "pocket: botom"
[[notion]]
name = "buttons"
quantity = 0
"""
    )
    lines = [int(one.removeprefix("apron.toml, line ").split(" ")[0]) for one in found]
    assert sorted(lines) == [14, 15, 21, 24, 27]


def test_what_refers_to_an_unread_piece_is_not_complained_of_as_well() -> None:
    # The trim names a piece that is there, though its width cannot be read.
    trim = '[[trim]]\nname = "braid"\nalong = "panel: bottom"\n'
    found = complaints(APRON.replace("20 1/4", "20 kg") + trim)
    assert [one.split(":")[0] for one in found] == ["apron.toml, line 9 (piece 'panel')"]


def test_places_follow_the_entries_after_one_that_cannot_be_read() -> None:
    second = '[[piece]]\nname = "tie"\ncut = "pint"\nwidth = "3"\nlength = "34"\n'
    found = complaints(APRON.replace("20 1/4", "20 kg") + second)
    told = "apron.toml, line 13 (piece 'tie'): the plan has no fabric 'pint'; did you mean 'print'?"
    assert told in found


def test_a_curve_of_no_known_part_is_told_which_parts_there_are() -> None:
    neck = 'cut = "print"\nedges = { neck = { length = "11", curve = "hollow 1/8" } }'
    (told,) = spoilt('cut = "print"', neck)
    assert told.endswith(
        "neck curve cannot be 'hollow 1/8'; choose from hollow 1/4, hollow 1/2, hollow 3/4, "
        "hollow 1, rounded 1/4, rounded 1/2, rounded 3/4, rounded 1"
    )
