"""Pages: what stands together, and how high rows have to be."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from estimator import estimate
from estimator.measure import Unit
from estimator.reports.printing import Rows, height_of, keep_together, print_setup, room_on_a_page
from estimator.reports.row_heights import lines_needed
from estimator.reports.workbook import workbook_of
from tests.plans import plan


def sheet_of(heights: list[float]) -> Worksheet:
    """A sheet of one narrow column whose rows are as high as is said."""
    sheet = Workbook().active
    assert isinstance(sheet, Worksheet)
    sheet.column_dimensions["A"].width = 40
    for row, height in enumerate(heights, start=1):
        sheet.cell(row, 1, "text")
        sheet.row_dimensions[row].height = height
    print_setup(sheet, Unit.IN, landscape=False)
    return sheet


def pages(sheet: Worksheet) -> list[Rows]:
    """The first and last row between page breaks."""
    ends = [one.id for one in sheet.row_breaks.brk] + [sheet.max_row]
    starts = [1, *(end + 1 for end in ends)]
    return list(zip(starts, ends, strict=False))


def test_a_page_of_letter_paper_takes_its_height_less_the_margins() -> None:
    # 11 in less 0.4 in above and 0.6 in below, in points of 1/72 in.
    assert room_on_a_page(sheet_of([15]), 1) == pytest.approx((11 - 1) * 72)


def test_a_wide_sheet_is_made_smaller_and_takes_more_rows_on_a_page() -> None:
    sheet = sheet_of([15])
    sheet.column_dimensions["A"].width = 211.2  # 15.4 in, which is twice 8 1/2 less 2 x 0.4
    assert room_on_a_page(sheet, 1) == pytest.approx(2 * (11 - 1) * 72)


def test_a_table_that_would_be_cut_by_the_end_of_a_page_begins_a_new_one() -> None:
    # 720 points a page: two tables of 300 fill one, the third goes over.
    sheet = sheet_of([100] * 12)
    keep_together(sheet, 1, [(1, 3), (4, 6), (7, 9), (10, 12)])
    assert pages(sheet) == [(1, 6), (7, 12)]


def test_what_is_hardly_more_than_a_page_is_made_small_enough_for_one() -> None:
    sheet = sheet_of([100] * 8)
    keep_together(sheet, 1, [(1, 4), (5, 8)])
    assert sheet.page_setup.fitToHeight == 1
    assert pages(sheet) == [(1, 8)]


@given(st.lists(st.integers(1, 60), min_size=1, max_size=30))
def test_no_page_is_overfull_unless_one_table_alone_is_higher_than_a_page(sizes: list[int]) -> None:
    sheet = sheet_of([12.0] * sum(sizes))
    blocks, first = [], 1
    for size in sizes:
        blocks.append((first, first + size - 1))
        first += size
    keep_together(sheet, 1, blocks)
    if sheet.page_setup.fitToHeight == 1:
        return
    room = room_on_a_page(sheet, 1)
    starts = {first for first, _ in blocks}
    for page in pages(sheet):
        assert page[0] in starts
        assert height_of(sheet, page) <= room or any(
            height_of(sheet, block) > room for block in blocks if page[0] <= block[0] <= page[1]
        )


def test_no_layout_is_parted_by_the_end_of_a_page() -> None:
    fabrics = "".join(
        f'[[fabric]]\nname = "cloth {number}"\nwidths = ["45 in"]\n'
        f'[[piece]]\nname = "panel {number}"\nquantity = 19\ncut = ["cloth {number}"]\n'
        f'width = "29"\nlength = "{20 + number}"\n'
        for number in range(4)
    )
    sheet = workbook_of(estimate(plan(f'[garment]\nname = "sails"\n{fabrics}')))["Layout"]
    titles = [row[0].row for row in sheet.iter_rows() if str(row[0].value).startswith("cloth")]
    drawn = [image.anchor._from.row + 1 for image in sheet._images]
    assert {one.id + 1 for one in sheet.row_breaks.brk} <= {*titles, *drawn}
    for page in pages(sheet):
        assert height_of(sheet, page) <= room_on_a_page(sheet, 7)
    assert len(pages(sheet)) > 1


@pytest.mark.parametrize(
    ("text", "room", "lines"),
    [("", 10, 1), ("1234567890", 10, 1), ("12345 67890", 10, 2), ("1" * 25, 10, 3),
     ("1\n2", 10, 2), ("MMMM MMMM", 10, 2), ("illi illi", 10, 1)],
    ids=["nothing", "just fits", "a word too much", "a long word is broken", "lines of its own",
         "capitals are wide", "some letters are narrow"],
)  # fmt: skip
def test_a_text_takes_as_many_lines_as_its_letters_are_wide(
    text: str, room: float, lines: int
) -> None:
    assert lines_needed(text, room) == lines
