"""Amounts: numbers with units as they are said in a workshop, by family, and what must never be one."""

from __future__ import annotations

import random
import time

import pytest

from worklog_tui import places
from worklog_tui.extract.heard.words import split
from worklog_tui.extract.numbers.amounts import Amount, amount_at
from worklog_tui.extract.numbers.numerals import numeral_at
from worklog_tui.rulebook.units import load_numerals, load_units

NUMERALS = load_numerals(places.grammars() / "numerals.toml")
UNITS = load_units(places.grammars() / "units.toml")

Expected = tuple[float | tuple[float, float], str]


def amounts(text: str) -> list[Amount]:
    """All amounts of a text, each taken from the first word that begins one."""
    words, found, i = split(text), [], 0
    while i < len(words):
        amount = amount_at(words, i, NUMERALS, UNITS)
        if amount:
            found.append(amount)
        taken = amount or numeral_at(words, i, NUMERALS)
        i = taken.end if taken else i + 1
    return found


def plain(amount: Amount) -> Expected:
    return (amount.low if amount.low == amount.high else (amount.low, amount.high)), amount.unit


FAMILIES: dict[str, list[tuple[str, float | tuple[float, float], str]]] = {
    "a number and its unit": [
        ("twelve volts", 12, "V"), ("12 volt battery", 12, "V"), ("12v", 12, "V"), (".018 in", 0.018, "in"),
        ("a hundred and ten psi", 110, "psi"), ("sixty two hundred ohms", 6200, "ohm"), ("5.2 k", 5.2, "kohm"),
        ("5.2k", 5.2, "kohm"), ("ten meg", 10, "Mohm"), ("4,5 bar", 4.5, "bar"),
        ("one forty r p m", 140, "rpm"), ("fourteen twenty revs", 1420, "rpm"), ("3.5k rpm", 3500, "rpm"),
        ("thirty five foot pounds", 35, "ft_lb"), ("20 ft-lbs", 20, "ft_lb"), ("20 ft/lb", 20, "ft_lb"),
        ("ninety inch pounds", 90, "in_lb"), ("40 Nm", 40, "N*m"), ("forty newton metres", 40, "N*m"),
        ("eight percent", 8, "percent"), ("8 %", 8, "percent"), ("sixty drops a minute", 60, "drops/min"),
        ("five litres", 5, "L"), ("250mls", 250, "ml"), ("two quarts", 2, "qt"), ("1.4qt", 1.4, "qt"),
        ("250 cc", 250, "ml"),
        ("two hundred watts", 200, "W"), ("five horsepower", 5, "hp"), ("sixty amp hours", 60, "Ah"),
        ("fifty hertz", 50, "Hz"),
        ("point two two microfarads", 0.22, "uF"), ("three hours", 3, "h"), ("20 (kg)", 20, "kg"),
        ("ten pounds", 10, "psi"),
        ("two full turns", 2, "turn"), ("a three amp fuse", 3, "A"), ("a two inch hose", 2, "in"),
        ("120 lbs/in2", 120, "psi"),
        ("plus or minus five thou", 0.005, "in"), ("2 extra minutes", 2, "min"),
        ("nought point one of a volt", 0.1, "V"),
        ("thirty miles an hour", 30, "mph"), ("four square feet", 4, "ft2"), ("10A fuse", 10, "A"),
        ("5 a fuse", 5, "A"), ("it draws 1.5 a", 1.5, "A"),
        ("919 HR SERVICE", 919, "h"),
    ],
    "small lengths": [
        ("five thou", 0.005, "in"), ("a thou", 0.001, "in"), ("fifteen thousandths", 0.015, "in"),
        ("fifteen thousandths of an inch", 0.015, "in"), ("thou and a half", 0.0015, "in"), ("a tenth", 0.0001, "in"),
        ("one and a half thou", 0.0015, "in"), ("half a thou", 0.0005, "in"), ("six tenths of a thou", 0.0006, "in"),
        ("eighteen tenths", 0.0018, "in"), ("two hundredths", 0.02, "mm"), ("twelve thousands", 0.012, "in"),
        ("a sixteenth of an inch", 0.0625, "in"), ("five sixteenths of an inch", 0.3125, "in"),
        ("half-inch", 0.5, "in"),
        ("a quarter of an inch", 0.25, "in"), ("three eighths inch", 0.375, "in"), ("inch and a quarter", 1.25, "in"),
        ("an inch and three quarters", 1.75, "in"), ("fourteen inches and thirty thou", 14.03, "in"),
        ("1 1/2 in", 1.5, "in"),
        ("2-1/2 inch", 2.5, "in"), ("seven mil", 7, "mm"), ("half a mil", 0.5, "mm"), ("forty microns", 40, "um"),
        ('1/4" drive', 0.25, "in"), ("7'10\"", 94, "in"), ("7 feet 10 inches", 94, "in"), ("six foot two", 74, "in"),
        ("half of an inch", 0.5, "in"), ("sixteenth of an inch", 1 / 16, "in"),
        ("sixty-fourth of an inch", 1 / 64, "in"), ("eighth inch", 0.125, "in"),
        ("thirty two and a hundredth mil", 32.01, "mm"),
        ("quarter of inch", 0.25, "in"),
    ],
    "ranges": [
        ("eighteen to twenty foot pounds", (18, 20), "ft_lb"), ("100-125 psi", (100, 125), "psi"),
        ("between two and three mil", (2, 3), "mm"), ("ten or twelve foot pounds", (10, 12), "ft_lb"),
        ("eleven twelve foot pounds", (11, 12), "ft_lb"), ("six to eight weeks", (6, 8), "week"),
        (".7-.8 mm", (0.7, 0.8), "mm"),
        ("six seven thou", (0.006, 0.007), "in"), ("thirty forty psi", (30, 40), "psi"),
        ("ten fifteen minutes", (10, 15), "min"),
        ("two to three thousand rpm", (2000, 3000), "rpm"), ("nineteen to twenty one hundred rpm", (1900, 2100), "rpm"),
        ("a day or two", (1, 2), "day"), ("a thou or two under", (0.001, 0.002), "in"),
        ("a hundred to a hundred and ten psi", (100, 110), "psi"), ("12 volts to 14", (12, 14), "V"),
        ("5 mm to 8 mm", (5, 8), "mm"),
        ("10 - 12 psi", (10, 12), "psi"), ("one ten to one twenty psi", (110, 120), "psi"), ("2 -7 l", (2, 7), "L"),
        ("one and a half to two turns", (1.5, 2), "turn"), ("ten to maybe twelve volts", (10, 12), "V"),
        ("800 ml to 1 litre", (0.8, 1), "L"), ("thirteen point eight to fourteen point four volts", (13.8, 14.4), "V"),
        ("-5 to 40 degrees c", (-5, 40), "degC"), ("five sixteenths to three eighths inch", (0.3125, 0.375), "in"),
    ],
    "times": [
        ("an hour", 1, "h"), ("half an hour", 0.5, "h"), ("an hour and a half", 1.5, "h"),
        ("two and a half hours", 2.5, "h"),
        ("three quarters of an hour", 0.75, "h"), ("four minutes twenty seconds", 260, "s"),
        ("an hour twenty", 80, "min"),
        ("1 hr 30 min", 90, "min"), ("a five second ramp", 5, "s"), ("a twenty second burst", 20, "s"),
        ("a thirty second run", 30, "s"), ("another hour", 1, "h"), ("a minute", 1, "min"),
        ("two hours and ten minutes", 130, "min"),
        ("ten minutes or so", 10, "min"), ("three weeks", 3, "week"),
        ("1 day 2 hours 5 minutes", 1565, "min"),
    ],
    "turns": [
        ("quarter turn", 0.25, "turn"), ("half a turn", 0.5, "turn"), ("turn and a half", 1.5, "turn"),
        ("two and a quarter turns", 2.25, "turn"), ("one turn and an eighth", 1.125, "turn"),
        ("a full turn", 1, "turn"),
        ("three quarters of a turn", 0.75, "turn"), ("an eighth of a turn", 0.125, "turn"),
    ],
    "volts and ohms in talk": [
        ("a volt seven", 1.7, "V"), ("one volt two", 1.2, "V"), ("a volt and a half", 1.5, "V"),
        ("half a volt", 0.5, "V"),
        ("volt seven on the meter", 1.7, "V"), ("point eight of an ohm", 0.8, "ohm"),
        ("nought point four of a meg", 0.4, "Mohm"), ("two tenths of a volt", 0.2, "V"),
        ("a tenth of an ohm", 0.1, "ohm"), ("six point three volts", 6.3, "V"),
    ],
    "volumes": [
        ("half a pint", 0.5, "pint"), ("a pint and a half", 1.5, "pint"), ("pint and a half", 1.5, "pint"),
        ("1 gallon 3 pints", 11, "pint"), ("two thirds of a litre", 2 / 3, "L"), ("half-litre", 0.5, "L"),
    ],
    "warm and cold": [
        ("45°C", 45, "degC"), ("45 degrees C", 45, "degC"), ("one eighty fahrenheit", 180, "degF"),
        ("90 f", 90, "degF"),
        ("eighty degrees", 80, "deg"), ("-5 C", -5, "degC"), ("minus ten degrees", -10, "deg"),
        ("37 celcius", 37, "degC"),
        ("two degrees below zero", -2, "deg"), ("ten below zero", -10, "deg"), ("thirty below", -30, "deg"),
        ("twelve degrees btdc", 12, "deg"), ("six degrees before top dead centre", 6, "deg"), ("50 deg.", 50, "deg"),
    ],
    "what a recogniser makes of units": [
        ("point three bolts", 0.3, "V"), ("two twelve bolts", 212, "V"), ("fifty nine point four hurts", 59.4, "Hz"),
    ],
}  # fmt: skip


@pytest.mark.parametrize(("text", "value", "unit"), [case for cases in FAMILIES.values() for case in cases])
def test_an_amount_is_read(text: str, value: float | tuple[float, float], unit: str) -> None:
    found = [plain(a) for a in amounts(text)]
    assert len(found) == 1
    assert found[0][1] == unit
    assert found[0][0] == pytest.approx(value)


NEVER = [
    "a meg", "a second",
    "put 2 in the hole", "thirty in all", "3 in cylinder four", "16 in total", "the second gear", "number two",
    "a couple of minutes",
    "a few days", "#4 CYL COMPRESSION 15/80", "#2 & 4 CYL & LEAK", "A/C", "3 AFT", "2 bolts", "200 bolts", "24703L202",
    "16-bit", "L/H", "four homes", "it cost twenty pounds", "paid 40 lbs for it", "£20", "$5 m", "twenty quid",
    "12 bucks",
    "nine dollars", "13 v belt", "a v8", "2721A Mech", "3M test", "SCP-173C", "OIL 15W/40", "a bar", "four bar linkage",
    "one foot on the brake", "a foot pedal", "at 9:40 pm", "back in a minute", "wait a minute", "hang on a minute",
    "5 o'clock", "M8 x 30", "five litres an hour",
    "ten pounds per inch", "two per cylinder", "the points", "i second that", "secretary",
    "in days", "second hand", "quarter past", "half past four", "60 grit", "number 8 jet", "800,000 F-Series",
    "two stroke", "2 a day", "45 a piece",
    "a night before", "two hundred holes an hour", "twelve fifty a month", "back 2day", "three eighths bolts",
    "060 W chord", "one or two", "five and a half", "three quarters", "a turn signal",
]  # fmt: skip


@pytest.mark.parametrize("text", NEVER)
def test_what_is_never_an_amount(text: str) -> None:
    assert [plain(a) for a in amounts(text) if a.unit_said] == []


@pytest.mark.parametrize(
    ("text", "bound", "rough"),
    [
        ("under one bar", "under", False), ("at most 5 bar", "under", False), ("no more than two thou", "under", False),
        ("anything over ten thou", "over", False), ("at least 12 volts", "over", False),
        ("about 12.6 volts", "about", True),
        ("~5 mm", "about", True), ("a hair over ten thou", "over", True), ("just shy of ten thou", "under", True),
        ("call it fourteen ohms", "about", True), ("ten minutes or so", "about", True),
        ("two hundred rpm tops", "under", False),
        ("sixty psi or more", "over", False), ("12 volts", "", False), ("up to 40 psi", "under", False),
        ("<0.5 ohm", "under", False), ("not over three thou", "under", False), ("roughly a pint", "about", True),
        ("it went over. ten psi", "", False),
    ],
)  # fmt: skip
def test_the_bound_is_read_from_the_words_beside(text: str, bound: str, rough: bool) -> None:
    (amount,) = amounts(text)
    assert (amount.bound, amount.rough) == (bound, rough)


@pytest.mark.parametrize(
    ("text", "said", "quantities"),
    [
        ("five thou", "thou", ("gap", "length")),
        ("seven mil", "mil", ("length", "gap")),
        ("40 psi", "psi", ("pressure", "compression")),
        ("forty pounds", "pounds", ("pressure", "mass", "torque")),
        ("eighty degrees", "degrees", ("temperature", "angle")),
        ("ten degrees btdc", "degrees of timing", ("angle",)),
        ("three hours", "hours", ("duration", "run_time")),
        ("35 ft lbs", "foot pounds", ("torque",)),
    ],
)
def test_the_said_unit_and_what_it_can_be(text: str, said: str, quantities: tuple[str, ...]) -> None:
    (amount,) = amounts(text)
    assert (amount.said, amount.quantities) == (said, quantities)


def test_an_amount_tells_its_words() -> None:
    text = "set it between eighteen and twenty foot pounds, dry"
    (amount,) = amounts(text)
    words = split(text)
    assert text[words[amount.start].start : words[amount.end - 1].end] == "between eighteen and twenty foot pounds"


def test_a_list_gives_its_unit_to_the_last_only() -> None:
    assert [plain(a) for a in amounts("ten, twelve and fourteen psi")] == [(14, "psi")]


def test_two_numbers_before_a_unit_of_which_nobody_has_thousands_are_two() -> None:
    assert [plain(a) for a in amounts("frame forty one twelve volt motor")] == [(12, "V")]


def test_inches_and_millimetres_side_by_side_are_no_sum() -> None:
    assert [plain(a) for a in amounts("one inch, 25 mm")] == [(1, "in"), (25, "mm")]


TALK = (
    "so we pulled the plug and it was twenty five thou and then the second one read about a hundred and ten psi "
    "with the throttle open so it went back in the head at fifteen foot pounds on a new washer "
    "and I left it an hour and a half "
)


def seconds(text: str) -> float:
    words = split(text)
    start = time.process_time()
    for i in range(len(words)):
        amount_at(words, i, NUMERALS, UNITS)
    return time.process_time() - start


def test_an_hour_of_talk_is_looked_at_in_sixty_milliseconds() -> None:
    words = TALK.split()
    text = " ".join(words * (9000 // len(words) + 1))
    assert min(seconds(text) for _ in range(3)) < 0.06


@pytest.mark.parametrize("piece", ["one ", "1 ", "twenty and a "])
def test_a_megabyte_of_one_word_takes_less_than_a_second(piece: str) -> None:
    assert seconds(piece * (1_000_000 // len(piece))) < 1.0


@pytest.mark.parametrize(
    "piece",
    ["a ", "1,", "between ", "point ", "one hundred ", "half ", "second ", "minus ", "1/2 ", "one to ", "and ",
     "twenty second ", "another ", "5.2k ", "of a ", "ten or ", "turn and a half ", "five thou ", "an hour and ",
     "12v"],
)  # fmt: skip
def test_any_long_line_is_looked_at_in_linear_time(piece: str) -> None:
    """Also one that holds nothing but amounts: at most 5 us a character, twice as long at most thrice the time."""
    once, twice = (seconds(piece * (size // len(piece))) for size in (100_000, 200_000))
    assert twice < 1.0
    assert twice < 3 * once + 0.05


def test_any_words_are_survived() -> None:
    vocabulary = sorted(NUMERALS.within | {w for forms in UNITS.by_head.values() for f in forms for w in f.words})
    vocabulary += [
        "to",
        "or",
        "of",
        "between",
        "another",
        "1/2",
        "12",
        ".5",
        "5.2k",
        "1,5",
        "-",
        ",",
        ".",
        "below",
        "x",
        "½",
    ]
    dice = random.Random(11)
    for _ in range(4000):
        text = " ".join(dice.choice(vocabulary) for _ in range(dice.randrange(1, 14)))
        words = split(text)
        for i in range(len(words)):
            amount = amount_at(words, i, NUMERALS, UNITS)
            if amount:
                assert amount.start == i < amount.end <= len(words)
                assert amount.low <= amount.high
                assert amount.end - i <= 24
