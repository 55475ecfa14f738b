"""What a TOML plan says in its comments, for its form."""

from estimator.readers.remarks import opening_remarks, remarks_in

PLAN = """\
# Skirt of two panels.
#
# Measure: the waist,
# and the length.
#
# Change the lines marked CHANGE.

[garment]                # what holds for all
name = "skirt # 2"       # its name
[measures]
waist = "28"             # CHANGE

# ---- Pieces: what is cut ----

[[piece]]
name = "panel"
# Two of them,
# with a # in the comment.
width = "20"
edges = { bottom = "hem 1" }   # a deep hem
"""


def test_the_opening_is_told_in_paragraphs_without_what_is_about_the_text_file() -> None:
    assert opening_remarks(PLAN) == ["Skirt of two panels.", "Measure: the waist, and the length."]
    assert opening_remarks("[garment]\n") == []


def test_a_comment_belongs_to_the_key_on_its_line_or_below_it() -> None:
    assert remarks_in(PLAN) == {
        ("garment",): "what holds for all",
        ("garment", "name"): "its name",
        ("measures", "waist"): "CHANGE",
        ("piece", 0, "width"): "Two of them, with a # in the comment.",
        ("piece", 0, "edges"): "a deep hem",
    }


def test_a_remark_above_the_first_entry_of_a_table_is_about_that_entry() -> None:
    text = '[garment]\nname = "x"\n# from the chest\n[[fabric]]\nname = "a"\n# new\n[[fabric]]\n'
    assert remarks_in(text) == {("fabric", 0): "from the chest", ("fabric", 1): "new"}
