"""Complaints are values: where, what is wrong, and what would be right; and they come together."""

import pytest

from estimator.faults import Fault, Faults, NamesAnUnread, Places, Refused, Wrong, nearest


def test_a_complaint_prints_its_place_what_is_wrong_and_what_would_be_right() -> None:
    fault = Fault("skirt.toml, line 4", "'hemm' is no finish", "did you mean 'hem'?")
    assert str(fault) == "skirt.toml, line 4: 'hemm' is no finish; did you mean 'hem'?"
    assert str(Fault("", "two currencies", "use one")) == "two currencies; use one"


def test_work_goes_on_after_a_complaint_and_all_are_refused_together() -> None:
    faults = Faults()
    places = Places("skirt.toml", {("piece",): 3, ("piece", 1, "width"): 9})
    for number, at in ((0, ()), (1, ("width",))):
        with faults.at(places, ("piece", number)):
            raise Wrong("too wide", "take less", at)
    with pytest.raises(Refused) as refused:
        faults.refuse_if_any()
    assert str(refused.value) == (
        "skirt.toml, line 3: too wide; take less\nskirt.toml, line 9: too wide; take less"
    )


def test_nothing_is_refused_without_a_complaint() -> None:
    Faults().refuse_if_any()


def test_the_same_complaint_is_made_once() -> None:
    fault = Fault("skirt.toml", "too wide", "take less")
    assert Refused([fault, fault]).faults == (fault,)


def test_what_hangs_on_an_unread_entry_adds_no_complaint() -> None:
    faults = Faults()
    with faults.at(Places(), ()):
        raise NamesAnUnread("panel")
    assert faults.found == []


def test_complaints_of_work_refused_as_a_whole_join_the_others() -> None:
    faults = Faults()
    with faults.about("row 3"):
        raise Wrong("no such item", "add it")
    with faults.of_others():
        raise Refused([Fault("row 4", "no price", "add one")])
    assert [fault.where for fault in faults.found] == ["row 3", "row 4"]


def test_our_own_mistakes_are_not_caught_as_complaints() -> None:
    with pytest.raises(KeyError), Faults().at(Places(), ()):
        raise KeyError("panel")


@pytest.mark.parametrize(
    ("word", "right"),
    [
        ("widht", "did you mean 'width'?"),
        ("WIDTH", "did you mean 'width'?"),
        ("Repeats", "did you mean 'repeat'?"),
        ("xyz", "choose from length, repeat, width"),
        ("", "choose from length, repeat, width"),
    ],
)
def test_an_unknown_word_gets_the_nearest_known_one_or_the_choices(word: str, right: str) -> None:
    assert nearest(word, ["width", "length", "repeat"]) == right


def test_where_nothing_is_known_there_is_nothing_to_choose() -> None:
    assert nearest("lawn", []) == "there is none to choose from"


def test_of_very_many_choices_the_first_dozen_are_told() -> None:
    told = nearest("zzz", [f"item {number:02}" for number in range(40)])
    assert told.count("item") == 12
    assert told.endswith("item 11, ...")


def test_a_complaint_names_the_entry_in_which_it_is() -> None:
    places = Places("skirt.toml", {("piece", 1, "width"): 9}, {("piece", 1): "piece 'skirt panel'"})
    faults = Faults()
    with faults.at(places, ("piece", 1)):
        raise Wrong("too wide", "take less", ("width",))
    assert str(faults.found[0]) == ("skirt.toml, line 9 (piece 'skirt panel'): too wide; take less")
    assert places.of(("piece", 1, "width")) == "skirt.toml, line 9"


def test_the_nearest_name_is_found_among_hundreds_that_are_much_alike() -> None:
    known = [f"good piece {number}" for number in range(800)]
    assert nearest("good pice 617", known) == "did you mean 'good piece 617'?"


def test_letters_that_changed_places_are_still_alike() -> None:
    # A buyer's slip of the keys, among more names than are compared letter by letter.
    known = ["lawn", *(f"linen {number}" for number in range(100))]
    assert nearest("lwan", known) == "did you mean 'lawn'?"


def test_among_thousands_of_names_none_is_searched_for() -> None:
    told = nearest("itme 1", [f"item {number}" for number in range(2000)])
    assert told.startswith("choose from item 0, ")
