"""Threads as they are said and written; only sizes that the standards hold.

Sources: ASME B1.1 (unified), ISO 261 (metric), BS 84 and BS 93 (Whitworth, BSF, BA), ISO 228 (G), ASME B1.20.1 (NPT).
"""

from __future__ import annotations

import time

import pytest

from worklog_tui import places
from worklog_tui.extract.heard.words import split
from worklog_tui.extract.numbers.thread_words import Thread
from worklog_tui.extract.numbers.threads import thread_at
from worklog_tui.rulebook.threads import standard_threads
from worklog_tui.rulebook.units import load_numerals

NUMERALS = load_numerals(places.grammars() / "numerals.toml")


def threads(text: str) -> list[Thread]:
    words, found, i = split(text), [], 0
    while i < len(words):
        thread = thread_at(words, i, NUMERALS)
        if thread:
            found.append(thread)
        i = thread.end if thread else i + 1
    return found


FAMILIES = {
    "written": [
        ("1/4-20", "1/4-20"), ("3/8-16 UNC", "3/8-16"), ("1/4 x 20", "1/4-20"), ("1/2-13UNC", "1/2-13"),
        ("10-32", "10-32"),
        ("#8-32", "8-32"), ("#10-24", "10-24"), ("M8", "M8"), ("M8x1.25", "M8x1.25"), ("M8 x 1.25", "M8x1.25"),
        ("M10-1.5", "M10x1.5"), ("G1/4", "G1/4"), ("1/4 BSP", "1/4 BSP"), ("2 BA", "2 BA"), ("5/16 BSW", "5/16 BSW"),
        ("3/8 BSF", "3/8 BSF"), ("1-8 UNC", "1-8"), ("12x1.5 bolt", "M12x1.5"), ("1/2 NPT", "1/2 NPT"),
        ("3/8 CEI", "3/8 CEI"),
    ],
    "size and threads an inch": [
        ("quarter twenty", "1/4-20"), ("quarter twenty eight", "1/4-28"), ("three eighths sixteen", "3/8-16"),
        ("five sixteenths eighteen", "5/16-18"), ("seven sixteenths by fourteen", "7/16-14"),
        ("half thirteen bolt", "1/2-13"),
        ("the ten thirty-two screws", "10-32"), ("number ten thirty two", "10-32"),
        ("an eight thirty-two screw", "8-32"),
        ("six thirty two machine screw", "6-32"), ("tapped ten twenty-four", "10-24"),
        ("quarter twenty six", "1/4 BSF"),
        ("half twelve stud", "1/2 BSW"),
        ("the drain plug is half inch thirteen", "1/2-13"), ("tapping, a quarter inch twenty", "1/4-20"),
        ("three eighths, twenty four threads to the inch", "3/8-24"), ("five sixteenths at eighteen tpi", "5/16-18"),
        ("one inch eight thread", "1-8"), ("inch and an eighth seven thread", "1 1/8-7"),
    ],
    "size and series": [
        ("five sixteenths Whit", "5/16 BSW"), ("quarter BSF", "1/4 BSF"), ("half-inch NPT", "1/2 NPT"),
        ("half inch UNC", "1/2-13"),
        ("three eighths UNF", "3/8-24"), ("quarter inch whitworth", "1/4 BSW"), ("two BA", "2 BA"),
        ("half inch B S P", "1/2 BSP"),
        ("inch and a quarter BSP", "1 1/4 BSP"), ("inch whitworth", "1 BSW"),
        ("one and a quarter inch BSP", "1 1/4 BSP"), ("eighth BSP", "1/8 BSP"),
        ("one inch BSW", "1 BSW"), ("quarter national fine", "1/4-28"),
        ("three eighths British Standard Pipe", "3/8 BSP"), ("number two BA", "2 BA"), ("nought BA", "0 BA"),
        ("0 BA", "0 BA"),
    ],
    "metric": [
        ("m eight", "M8"), ("em ten bolt", "M10"), ("m eight by one point two five", "M8x1.25"),
        ("ten by one point two five thread", "M10x1.25"), ("eight by one and a quarter mil thread", "M8x1.25"),
        ("metric eight bolt", "M8"), ("plug thread 14 mm", "M14"), ("M10 fine (1.25)", "M10x1.25"),
        ("M12 coarse stud", "M12"), ("thd 12x1.5", "M12x1.5"),
        ("14 mm plug thread", "M14"), ("twelve mil thread", "M12"), ("m fourteen by one and a half", "M14x1.5"),
    ],
}  # fmt: skip


@pytest.mark.parametrize(("text", "designation"), [case for cases in FAMILIES.values() for case in cases])
def test_a_thread_is_designated(text: str, designation: str) -> None:
    assert [t.designation for t in threads(text)] == [designation]


@pytest.mark.parametrize(
    "text",
    [
        "half twelve", "ten thirty", "ten thirty two", "at half ten", "quarter past", "half inch", "five sixteenths",
        "M1", "M13",
        "M8x3", "1/4-21", "10-33", "3/8 BA", "half wit", "number four forty", "number six forty psi",
        "ten to twelve thou", "3-40",
        "20 BA", "quarter twenty minutes", "three quarters ten minutes", "half gas half oil", "m", "8 mm spanner",
        "half inch thirteen", "quarter inch twenty minutes on the plug", "metric ten spanner", "thread 14 mm long",
        "nought to sixty", "half inch, thirteen of them", "one inch eight",
        "ten by four", "two by four", "1/2 NPS", "G7", "eight thirty-two", "3/8 16 mm",
    ],
)  # fmt: skip
def test_what_is_no_thread(text: str) -> None:
    assert threads(text) == []


def test_the_thread_tells_where_it_ends() -> None:
    text = "it is a quarter twenty UNC hole"
    words = split(text)
    found = next(t for i in range(len(words)) if (t := thread_at(words, i, NUMERALS)))
    assert words[found.end].low == "hole"


@pytest.mark.parametrize(
    ("series", "size", "pitch"),
    [  # reference values: ASME B1.1 table 1; BS 84; ISO 228-1; ASME B1.20.1
        ("UNC", "1/2", 13), ("BSW", "1/2", 12), ("UNC", "1/4", 20), ("UNF", "1/4", 28), ("UNC", "5/16", 18),
        ("UNF", "7/16", 20),
        ("UNC", "10", 24), ("UNF", "10", 32), ("UNC", "12", 24), ("UNF", "12", 28), ("BSF", "1/4", 26),
        ("BSF", "3/8", 20),
        ("BSP", "1/8", 28), ("BSP", "1/4", 19), ("BSP", "1", 11), ("NPT", "1/8", 27), ("NPT", "1", 11.5),
        ("CEI", "1/4", 26),
    ],
)  # fmt: skip
def test_pitches_of_the_standards(series: str, size: str, pitch: float) -> None:
    assert standard_threads().pitches(series, size) == (pitch,)


@pytest.mark.parametrize(
    ("size", "coarse"),
    [(3, 0.5), (4, 0.7), (5, 0.8), (6, 1), (8, 1.25), (10, 1.5), (12, 1.75), (14, 2), (16, 2), (20, 2.5), (24, 3)],
)
def test_the_first_metric_pitch_is_the_coarse_one(size: float, coarse: float) -> None:
    """Source: ISO 261."""
    assert standard_threads().metric[size][0] == coarse


@pytest.mark.parametrize(
    "piece", ["quarter ", "ten thirty ", "m8 ", "1/4-20 ", "number ", "m ", "half inch ", "#", "1 "]
)
def test_a_long_line_is_looked_at_in_linear_time(piece: str) -> None:
    words = split(piece * (100_000 // len(piece)))
    start = time.process_time()
    for i in range(len(words)):
        thread_at(words, i, NUMERALS)
    assert time.process_time() - start < 1.0
