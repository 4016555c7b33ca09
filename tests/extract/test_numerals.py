"""Numbers as they are spoken and written: the families, their limits, and how much they look ahead."""

from __future__ import annotations

import pytest

from worklog_tui import places
from worklog_tui.extract.heard.words import split
from worklog_tui.extract.numbers.numerals import Numeral, numeral_at
from worklog_tui.rulebook.units import load_numerals

NUMERALS = load_numerals(places.grammars() / "numerals.toml")


def first(text: str) -> Numeral | None:
    return numeral_at(split(text), 0, NUMERALS)


def all_in(text: str) -> list[float]:
    words, found, i = split(text), [], 0
    while i < len(words):
        number = numeral_at(words, i, NUMERALS)
        if number:
            found.append(number.value)
        i = number.end if number else i + 1
    return found


FAMILIES: dict[str, list[tuple[str, float | None]]] = {
    "figures": [
        ("12", 12), ("1,200", 1200), ("0.025", 0.025), (".018", 0.018), ("-5", -5), ("3.5k", 3500), ("4,5", 4.5),
    ],
    "whole": [
        ("forty two", 42), ("twenty-five", 25), ("a hundred and forty", 140), ("hundred and fifteen", 115),
        ("twelve hundred", 1200), ("eleven hundred and forty two", 1142), ("seven thousand", 7000),
        ("two thousand five hundred", 2500), ("two thousand and fifty", 2050), ("a thousand", 1000),
        ("seven thousand two hundred and fifty", 7250), ("five hundred and twenty thousand", 520000),
        ("one hundred thousand five hundred", 100500), ("nine hundred ninety nine", 999), ("3 hundred", 300),
        ("one million two hundred thousand", 1200000), ("one zero five", 105), ("seven-zero", 70),
        ("a hundred and... sixty-five", 165),
    ],
    "said as a pair": [
        ("one twenty", 120), ("one-fourteen", 114), ("two ten", 210), ("one oh five", 105), ("three ninety five", 395),
        ("twenty two fifty", 2250), ("seventeen sixty", 1760), ("fourteen ninety", 1490), ("eleven forty two", 1142),
        ("one twenty point five", 120.5), ("two twenty and a half", 220.5),
    ],
    "decimals": [
        ("three point five", 3.5), ("point three five", 0.35), ("nought point nought four", 0.04),
        ("zero point six", 0.6),
        ("oh point oh one five", 0.015), ("point oh one eight", 0.018), ("point oh eighteen", 0.018),
        ("1 point 5", 1.5),
        ("point oh twenty five", 0.025), ("three point seventy five", 3.75), ("point 77", 0.77), ("one point oh", 1.0),
        ("point seven eight seven four", 0.7874), ("1.5 million", 1500000), ("two point five thousand", 2500),
    ],
    "fractions": [
        ("three quarters", 0.75), ("seven eighths", 0.875), ("a half", 0.5), ("half", 0.5), ("five sixteenths", 0.3125),
        ("five sixteenth", 0.3125), ("a thirty-second", 1 / 32), ("one thirty second", 1 / 32), ("an eighth", 0.125),
        ("nine sixty-fourths", 9 / 64), ("two thirds", 2 / 3), ("3/32", 3 / 32), ("½", 0.5),
    ],
    "whole and fraction": [
        ("one and a half", 1.5), ("two and three quarters", 2.75), ("seven and a half", 7.5), ("1 1/2", 1.5),
        ("1-1/2", 1.5), ("1½", 1.5), ("2 and 3/4", 2.75), ("two and a half thousand", 2500),
        ("sixty one and a half", 61.5),
        ("one and an eighth", 1.125), ("two and a quarter", 2.25),
    ],
    "dozens": [("a dozen", 12), ("half a dozen", 6), ("two dozen", 24), ("half a million", 500000)],
    "below nothing": [("minus ten", -10), ("negative two point five", -2.5), ("minus a half", None)],
    "order": [("first", 1), ("twenty first", 21), ("2nd", 2), ("seventh", 7)],
}  # fmt: skip


@pytest.mark.parametrize(("text", "value"), [case for cases in FAMILIES.values() for case in cases])
def test_a_number_is_read_whole(text: str, value: float | None) -> None:
    number = first(text)
    if value is None:
        assert number is None
        return
    assert number is not None
    assert number.value == pytest.approx(value)
    assert number.end == len(split(text))


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("one twenty one forty", [120, 140]),
        ("three four ten", [3, 410]),
        ("twelve point six one fifteen", [12.6, 115]),
        ("twelve point six twelve point four", [12.6, 12.4]),
        ("twelve point six to twelve point eight", [12.6, 12.8]),
        ("six two fifty", [6, 250]),
        ("five twelve hundred", [5, 1200]),
        ("one, twenty", [1, 20]),
        ("ten minus two", [10, 2]),
        ("one. twenty", [1, 20]),
    ],
)
def test_numbers_said_one_after_the_other_are_kept_apart(text: str, values: list[float]) -> None:
    assert all_in(text) == pytest.approx(values)


@pytest.mark.parametrize(
    "text", ["9:40", "15/80", "M8", "24703L202", "060", "1/4-20", "3x8", "6204ZZ", "at", "ought to"]
)
def test_codes_times_and_other_words_are_no_numbers(text: str) -> None:
    assert first(text) is None


@pytest.mark.parametrize("text", ["at that point two of them", "the points for it", "the weak point one finds"])
def test_a_point_in_talk_is_no_decimal_point(text: str) -> None:
    assert all(v == int(v) for v in all_in(text))


@pytest.mark.parametrize(
    ("text", "value"),
    [("one point for", 1.4), ("one point to five", 1.25), ("nought point oh ate", 0.08), ("two point tree", 2.3)],
)
def test_slips_of_a_recogniser_count_behind_a_point(text: str, value: float) -> None:
    number = first(text)
    assert number is not None
    assert number.value == pytest.approx(value)


@pytest.mark.parametrize("text", ["for", "to", "won", "ate", "tree", "to five"])
def test_slips_of_a_recogniser_are_words_elsewhere(text: str) -> None:
    assert first(text) is None


@pytest.mark.parametrize(
    "text", ["one", "a", "second", "quarter", "half", "single", "couple", "oh", "nought", "a couple"]
)
def test_words_that_are_numbers_only_with_a_unit_are_loose(text: str) -> None:
    number = first(text)
    assert number is not None
    assert number.loose


@pytest.mark.parametrize("text", ["two", "one twenty", "seven eighths", "a hundred", "zero", "10"])
def test_other_numbers_are_not_loose(text: str) -> None:
    number = first(text)
    assert number is not None
    assert not number.loose


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("one twenty five", (1, 25)),
        ("two ten", (2, 10)),
        ("one oh five", (1, 5)),
        ("eleven twelve", (11, 12)),
        ("forty", ()),
    ],
)
def test_a_pair_keeps_its_two_numbers(text: str, parts: tuple[float, ...]) -> None:
    number = first(text)
    assert number is not None
    assert number.parts == parts


@pytest.mark.parametrize(
    ("text", "form"),
    [("12", "digits"), ("twelve", "words"), ("a half", "fraction"), ("1.5", "decimal"), ("first", "ordinal"),
     ("one and a half", "fraction"), ("two point five", "decimal")],
)  # fmt: skip
def test_the_form_tells_how_it_was_said(text: str, form: str) -> None:
    number = first(text)
    assert number is not None
    assert number.form == form


@pytest.mark.parametrize(
    "piece", ["one ", "hundred ", "point ", "oh ", "a ", "twenty and a ", "1 ", "half ", "thousand and "]
)
def test_a_number_takes_at_most_twelve_words(piece: str) -> None:
    words = split(piece * 60)
    for i in range(len(words)):
        number = numeral_at(words, i, NUMERALS)
        assert number is None or number.end - i <= 12


ONES = """zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen
sixteen seventeen eighteen nineteen"""
TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety"


def english(value: int) -> str:
    """A whole number below a million in British English, written from the grammar books' rule, not from the reader."""
    ones, tens = ONES.split(), TENS.split()
    if value < 20:
        return ones[value]
    if value < 100:
        return tens[value // 10] + (f"-{ones[value % 10]}" if value % 10 else "")
    if value < 1000:
        return f"{ones[value // 100]} hundred" + (f" and {english(value % 100)}" if value % 100 else "")
    rest = value % 1000
    link = " and " if 0 < rest < 100 else " "
    return f"{english(value // 1000)} thousand" + (link + english(rest) if rest else "")


@pytest.mark.parametrize("step", [1, 7, 101, 997])
def test_every_whole_number_in_words_is_read_back(step: int) -> None:
    for value in range(1, min(1_000_000, step * 3000), step):
        number = first(english(value))
        assert number is not None
        assert (number.value, number.end) == (value, len(split(english(value))))
