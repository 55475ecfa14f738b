"""The sheets of a form follow the tables of a plan: a key that is new needs no code."""

from __future__ import annotations

from enum import Enum
from typing import Annotated, Literal

import pytest
from pydantic import BeforeValidator

from estimator.edges import EdgeRef
from estimator.fields import Count, Entry, Name, Note, Share, Size
from estimator.form import sheets
from estimator.form.cells import Kind
from estimator.form.sheets import Sheet, plan_sheets
from estimator.plan import Garment


class Colour(Enum):
    RED = "red"
    BLUE = "blue"


class Feather(Entry):
    kind: Name
    long: Size


class Hat(Entry):
    name: Name
    brim: Size | None = None
    feathers: tuple[Feather, ...] = ()
    band_colour: Colour | None = None
    worn: Literal["straight", "tilted"] = "straight"
    pins: Count = 1
    stretch: Share | None = None
    sewn_to: Annotated[EdgeRef, BeforeValidator(lambda one: one)] | None = None
    goes_with: tuple[Name, ...] = ()
    note: Note = ""


class Outfit(Entry):
    garment: Garment
    hat: tuple[Hat, ...] = ()


@pytest.fixture
def outfit(monkeypatch: pytest.MonkeyPatch) -> dict[str, Sheet]:
    monkeypatch.setattr(sheets, "Plan", Outfit)
    plan_sheets.cache_clear()
    found = {sheet.title: sheet for sheet in plan_sheets()}
    monkeypatch.undo()
    plan_sheets.cache_clear()
    return found


def test_a_table_that_is_new_has_a_sheet_with_a_column_for_each_key(
    outfit: dict[str, Sheet],
) -> None:
    assert list(outfit) == ["Garment", "Hat", "Hat feathers"]
    columns = {column.heading: column for column in outfit["Hat"].columns}
    assert {heading: column.kind for heading, column in columns.items()} == {
        "Name": Kind.TEXT, "Brim": Kind.SIZE, "Band colour": Kind.AMOUNT, "Worn": Kind.AMOUNT,
        "Pins": Kind.COUNT, "Stretch": Kind.AMOUNT, "Sewn to": Kind.EDGE, "Goes with": Kind.LIST,
        "Note": Kind.TEXT,
    }  # fmt: skip
    assert columns["Band colour"].choices == ("red", "blue")
    assert columns["Worn"].choices == ("straight", "tilted")
    assert columns["Worn"].closed


def test_entries_of_a_key_have_a_sheet_whose_rows_name_what_they_belong_to(
    outfit: dict[str, Sheet],
) -> None:
    feathers = outfit["Hat feathers"]
    assert [column.heading for column in feathers.all_columns] == ["Hat", "Kind", "Long"]
    assert feathers.parents == ("hat",)


def test_titles_of_sheets_are_short_enough_and_each_its_own() -> None:
    titles = [sheet.title for sheet in plan_sheets()]
    assert len({title.casefold() for title in titles}) == len(titles)
    assert all(0 < len(title) <= 31 and not set(title) & set("[]:*?/\\") for title in titles)
