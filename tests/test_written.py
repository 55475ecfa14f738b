import datetime
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.measure import INCH, Length, Unit
from estimator.quoting import NotReadable
from estimator.written import read_length, read_money, read_share


@pytest.mark.parametrize(
    "written",
    ["17 1/2", "17-1/2 in", '17½"', "17 ½ in", "17 1/2 inches", "17.5", "17,5", "17 1/2″", "17½”",
     "  17  1/2  in. ", "17 1/2 IN", "35/2 in", "17 1⁄2 in", "17-½", "17 -½ in", "1 ft 5 1/2 in",
     "1' 5½''", "1'5 1/2\"", "444.5 mm", "44.45 cm", "44,45 cm", "0.4445 m", "700 lignes",
     "17\u00a01/2\u202fin"],
)  # fmt: skip
def test_seventeen_and_a_half_inches_however_they_are_written(written: str) -> None:
    assert read_length(written, Unit.IN).ticks == INCH.ticks // 2 * 35


@pytest.mark.parametrize(
    ("written", "millimetres"),
    [
        ("1 yd 4 in", "1016"),
        ("2 yd 1 ft 3 1/4 in", "2216.15"),  # 1828.8 + 304.8 + 82.55
        ("44.5 cm", "445"),
        ("44,5 cm", "445"),
        ("445 mm", "445"),
        ("1.2 m", "1200"),
        ("1 m 20 cm 5 mm", "1205"),
        ("2 3/8 yd", "2171.7"),
        (".5 in", "12.7"),
        ("7/8 yd", "800.1"),
        ("0,125 m", "125"),
        ("1000,5 mm", "1000.5"),
        ("24 ligne", "15.24"),
        ("⅝ in", "15.875"),
        ("3 yards", "2743.2"),
        ("3 metres", "3000"),
        ("3 meters", "3000"),
    ],
)
def test_every_spelling_of_a_length_is_exact(written: str, millimetres: str) -> None:
    assert read_length(written, None).ticks == Fraction(millimetres) * 8000


def test_a_bare_number_is_in_the_plans_own_unit() -> None:
    assert read_length("26", Unit.CM) == read_length("260 mm", None)
    assert read_length(26, Unit.IN) == read_length("26 in", None)
    assert read_length(0.1, Unit.CM) == read_length("1 mm", None)
    assert read_length(Decimal("0.3"), Unit.CM) == read_length("3 mm", None)


def test_a_length_already_read_stays_as_it_is() -> None:
    assert read_length(Length(7), None) == Length(7)


def test_zero_is_read_since_an_allowance_may_be_zero() -> None:
    assert read_length("0", Unit.IN) == Length(0)


NUMBER_AND_UNIT = 'a length is written like 17 1/2, 17-1/2 in, 17½", 1 yd 4 in, 44.5 cm or 1.2 m'


@pytest.mark.parametrize(
    ("written", "wrong"),
    [
        ("", "the length is empty"),
        ("   ", "the length is empty"),
        ("abc", "'abc' is not a length"),
        ("wide 40", "'wide 40' is not a length"),
        ("about 12 in", "'about 12 in' is not a length"),
        ("1/0 in", "'1/0 in' divides by zero"),
        ("12 in, or so", "'12 in, or so' is not a length"),
        (None, "'None' is not a length"),
        ([12], "a list is not a length"),
        ({"inches": 3}, "a table is not a length"),
    ],
)
def test_what_is_not_a_length_is_quoted_and_told_how_a_length_is_written(
    written: object, wrong: str
) -> None:
    with pytest.raises(NotReadable) as refused:
        read_length(written, Unit.IN)
    assert (refused.value.wrong, refused.value.right) == (wrong, NUMBER_AND_UNIT)


@pytest.mark.parametrize(
    ("written", "wrong", "right"),
    [
        ("-3 in", "'-3 in' is negative", "a length is zero or more"),
        ("−3 in", "'−3 in' is negative", "a length is zero or more"),
        (-3, "'-3' is negative", "write zero or more"),
        (-0.5, "'-0.5' is negative", "write zero or more"),
        (float("nan"), "nan is not a number", "write a finite number"),
        (float("inf"), "inf is not a number", "write a finite number"),
        (True, "true is not a number", "write a number"),
        ("1,234 mm", "'1,234 mm' may mean 1234 or 1.234",
         "write 1234 or 1.234, whichever it is"),
        ("17 3/2", "'17 3/2' has 3/2 after a whole number",
         "the fraction of a mixed number is less than one, as in 17 1/2"),
        ("4 in 1 yd", "'4 in 1 yd' does not go from larger units to smaller ones",
         "write yards before inches, as in 1 yd 4 in"),
        ("4 in 4 in", "'4 in 4 in' does not go from larger units to smaller ones",
         "write yards before inches, as in 1 yd 4 in"),
        ("1 yd 4", "'1 yd 4' has a number without a unit beside one with a unit",
         "give each number its unit, as in 1 yd 4 in"),
        ("12 - 14", "'12 - 14' is two numbers", "write the one that is meant, 12 or 14"),
        ("1½–2", "'1½–2' is two numbers", "write the one that is meant, 1 1/2 or 2"),
        ("1 1/2 1/4", "'1 1/2 1/4' is more than one number",
         "write one number, as in 17 1/2 or 17-1/2"),
        ("1_1/2", "'1_1/2' has _ between its numbers",
         "write one number, as in 17 1/2 or 17-1/2"),
        ("12 34", "'12 34' is more than one number",
         "write one number, as in 17 1/2 or 17-1/2"),
        ("12 kg", "'kg' in '12 kg' measures mass, not a length",
         "use in, ft, yd, mm, cm, m or ligne"),
        ("12 hours", "'hours' in '12 hours' measures time, not a length",
         "use in, ft, yd, mm, cm, m or ligne"),
        ("12 esu", "'esu' in '12 esu' measures something else, not a length",
         "use in, ft, yd, mm, cm, m or ligne"),
        ("3 acres", "'acres' in '3 acres' measures something else, not a length",
         "use in, ft, yd, mm, cm, m or ligne"),
        ("12 flurbs", "'flurbs' in '12 flurbs' is not a unit",
         "use in, ft, yd, mm, cm, m or ligne"),
        ("5-", "'5-' is not a length",
         'a length is written like 17 1/2, 17-1/2 in, 17½", 1 yd 4 in, 44.5 cm or 1.2 m'),
        ("1 yd 5?", "'1 yd 5?' is not a length",
         'a length is written like 17 1/2, 17-1/2 in, 17½", 1 yd 4 in, 44.5 cm or 1.2 m'),
        ("44-45 in", "'44-45 in' has a number without a unit beside one with a unit",
         "give each number its unit, as in 1 yd 4 in"),
        ("3 microns", "'microns' in '3 microns' is no unit for cloth",
         "use in, ft, yd, mm, cm, m or ligne"),
        ("3 lightyear", "'lightyear' in '3 lightyear' is no unit for cloth",
         "use in, ft, yd, mm, cm, m or ligne"),
        ("11000 m", "'11000 m' is longer than 10 km", "check the number and its unit"),
        ("1e9", "'1e9' has an exponent, as no tape has", NUMBER_AND_UNIT),
        ("2.5E-3 m", "'2.5E-3 m' has an exponent, as no tape has", NUMBER_AND_UNIT),
        (1e30, "'1e+30' is longer than 10 km", "check the number and its unit"),
    ],
)  # fmt: skip
def test_a_length_that_cannot_be_is_refused_with_what_was_read(
    written: object, wrong: str, right: str
) -> None:
    with pytest.raises(NotReadable) as refused:
        read_length(written, Unit.IN)
    assert (refused.value.wrong, refused.value.right) == (wrong, right)


def test_a_number_too_long_to_print_is_refused_as_a_length() -> None:
    with pytest.raises(NotReadable, match="a number of more than 4000 digits is longer than 10 km"):
        read_length(16**5000, Unit.IN)
    with pytest.raises(NotReadable, match="a number of more than 4000 digits is negative"):
        read_length(-(16**5000), Unit.IN)


def test_a_bare_number_without_a_unit_of_its_own_is_refused_in_a_catalog() -> None:
    with pytest.raises(NotReadable, match="'44' has no unit; write the unit, as in 3 yd or 25 mm"):
        read_length("44", None)


@pytest.mark.parametrize(
    "written", [datetime.date(2024, 1, 2), datetime.time(1, 2), datetime.datetime(2024, 3, 4)]
)
def test_a_date_where_a_size_was_meant_is_refused(written: object) -> None:
    with pytest.raises(NotReadable, match="is a date or a time, not a size; write fractions in"):
        read_length(written, Unit.IN)


@pytest.mark.parametrize(
    ("written", "share"),
    [("5 %", "1/20"), ("5%", "1/20"), ("12,5 %", "1/8"), ("12.5%", "1/8"), ("0", "0"), (0, "0"),
     ("100 %", "1")],
)  # fmt: skip
def test_a_share_is_written_as_a_percentage(written: object, share: str) -> None:
    assert read_share(written) == Fraction(share)


@pytest.mark.parametrize("written", ["5", "0.05", 0.05, 5, "five %", "-5 %", "%", "5 % of it"])
def test_a_share_without_its_sign_could_mean_two_things_and_is_refused(written: object) -> None:
    with pytest.raises(NotReadable, match='is not a share; write a percentage, as in "5 %"'):
        read_share(written)


@pytest.mark.parametrize(
    ("written", "amount"), [("8.50", "8.5"), ("8,50", "8.5"), ("0", "0"), ("0.0125", "0.0125")]
)
def test_money_is_an_exact_decimal(written: str, amount: str) -> None:
    assert read_money(written) == Decimal(amount)


@pytest.mark.parametrize("written", ["$8.50", "-1", "8.5.0", "free", "", True, "1e3"])
def test_what_is_no_amount_of_money_is_refused(written: object) -> None:
    with pytest.raises(NotReadable, match=r"is not an amount of money; write it like 8\.50"):
        read_money(written)


def test_a_thousands_comma_in_a_price_is_asked_about() -> None:
    with pytest.raises(NotReadable, match=r"'1,250' may mean 1250 or 1\.250"):
        read_money("1,250")


def test_a_comma_after_a_leading_zero_is_a_decimal_one() -> None:
    assert read_money("0,125") == Decimal("0.125")


@given(
    whole=st.integers(0, 200),
    top=st.integers(1, 63),
    unit=st.sampled_from([Unit.IN, Unit.FT, Unit.YD]),
    joint=st.sampled_from([" ", "-", "  "]),
)
def test_a_mixed_number_is_its_whole_and_its_fraction(
    whole: int, top: int, unit: Unit, joint: str
) -> None:
    read = read_length(f"{whole}{joint}{top}/64 {unit.symbol}", None)
    assert read.ticks == (whole * 64 + top) * unit.length.ticks // 64


@given(st.integers(0, 99_999), st.sampled_from([".", ","]), st.sampled_from([Unit.CM, Unit.M]))
def test_a_decimal_comma_and_a_decimal_point_are_the_same(
    hundredths: int, point: str, unit: Unit
) -> None:
    whole, rest = divmod(hundredths, 100)
    read = read_length(f"{whole}{point}{rest:02d} {unit.symbol}", None)
    assert read.ticks == hundredths * unit.length.ticks // 100


@given(st.integers(0, 50), st.integers(0, 2), st.integers(0, 11))
def test_yards_feet_and_inches_add_up(yards: int, feet: int, inches: int) -> None:
    read = read_length(f"{yards} yd {feet} ft {inches} in", None)
    assert read.ticks == (yards * 36 + feet * 12 + inches) * INCH.ticks


def reading_of(text: str) -> Length | NotReadable:
    try:
        return read_length(text, Unit.IN)
    except NotReadable as refused:
        return refused


@given(st.text(max_size=70) | st.from_regex(r"[-0-9/ .,½]{0,12} ?(in|cm|yd|'|\")?", fullmatch=True))
def test_any_text_is_a_length_or_refused_with_a_reason_and_a_remedy(text: str) -> None:
    read = reading_of(text)
    assert read >= Length(0) if isinstance(read, Length) else read.wrong and read.right


@pytest.mark.parametrize("text", ["1'234 mm", "1 yd 20 cm", "1 m 4 in"])
def test_feet_and_millimetres_are_not_mixed(text: str) -> None:
    with pytest.raises(NotReadable, match="mixes metric units with others"):
        read_length(text, Unit.IN)
