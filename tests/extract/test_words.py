"""Words: how a line of talk is cut, what stays with a figure, and which pause stands before a word."""

from __future__ import annotations

import random
import time

import pytest

from worklog_tui.extract.heard.words import split


def lows(text: str) -> list[str]:
    return [w.low for w in split(text)]


def gaps(text: str) -> list[str]:
    return [w.gap for w in split(text)]


@pytest.mark.parametrize(
    "text",
    ["0.025", ".018", "1/4-20", "5/16-18", "1,200", "m8x1.25", "10w30", "15w/40", "3.5k", "9:40", "24703l202", "6204",
     "m8", "g1/4", "-5", "1½", "14:1", "3x8", "1/4x20", "2nd", "7.3.1"],
)  # fmt: skip
def test_figures_and_codes_that_stay_one_word(text: str) -> None:
    assert lows(f"it {text} is") == ["it", text, "is"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("12v", "12 v"), ("200lbs", "200 lbs"), (".018in", ".018 in"), ("45°C", "45 °c"), ("45 ° C", "45 °c"),
        ("10mm", "10 mm"), ("1.4qt", "1.4 qt"), ("3x8mm", "3x8 mm"), ("250mls", "250 mls"), ("10A", "10 a"),
        ("1½in", "1½ in"), ("5/16-18UNC", "5/16-18 unc"), ("2BA", "2 ba"), ("24m2", "24 m2"), ("4.7kΩ", "4.7 kω"),
        ("12V/24V", "12 v 24 v"), ("20 [kg]", "20 kg"), ("20 <kg>", "20 kg"),
    ],
)  # fmt: skip
def test_a_unit_that_touches_its_figure_is_cut_off(text: str, words: str) -> None:
    assert lows(text) == words.split()


@pytest.mark.parametrize("text", ["3M", "14K8", "2F/DRIVE", "2721B", "5S", "step 2a", "the 60's", "18+2's"])
def test_codes_keep_their_letters(text: str) -> None:
    assert "".join(lows(text)).isascii()
    assert len(split(text)[-1].low) > 1


def test_the_text_as_said_can_be_found_again() -> None:
    text = "Isn’t the “main jet” 0.8mm?  No. 2 plug's at 25 thou…"
    for word in split(text):
        said = text[word.start : word.end].lower().replace("’", "").replace("'", "")
        assert said == word.low


def test_apostrophes_inside_words_are_dropped() -> None:
    assert lows("isn't it’s o'clock") == ["isnt", "its", "oclock"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("7'10\"", ["7", "'", "10", '"']),
        ('a 1/4" drive', ["a", "1/4", '"', "drive"]),
        ('10 " long', ["10", '"', "long"]),
        ('he said "set it to 12" and left', ["he", "said", "set", "it", "to", "12", "and", "left"]),
    ],
)
def test_inch_and_foot_marks_are_told_from_quotation_marks(text: str, words: list[str]) -> None:
    assert lows(text) == words


def test_signs_that_are_words() -> None:
    assert lows("~5 & #2 @ 50% <3 >4") == ["about", "5", "and", "#", "2", "at", "50", "%", "under", "3", "over", "4"]


@pytest.mark.parametrize("text", ["a/c", "l/h", "km/h", "ft/lb", "w/shop", "drops/min"])
def test_shorthand_with_a_slash_is_one_word(text: str) -> None:
    assert lows(text) == [text]


def test_a_slash_between_long_words_is_a_pause() -> None:
    assert [(w.low, w.gap) for w in split("inlet/exhaust")] == [("inlet", ""), ("exhaust", ",")]


@pytest.mark.parametrize(
    ("text", "gap"),
    [
        ("one two", ""), ("half-inch", "-"), ("100-125", "-"), ("18–20", "-"), ("10 - 12", "-"), ("two, three", ","),
        ("plug - wet", ","), ("plug (wet", "("), ("comp; dry", ";"), ("comp: dry", ":"), ("done. next", "."),
        ("done? next", "."), ("done\nnext", "."), ("four... seventy", ","), ("four... Seventy", "."),
        ("yes >> no", "."),
        ("cyl. 3", ""), ("No. 2", ""), ("no. it", "."), ("ten. It", "."), ("in. long", ""), ("in. The", "."),
        ("3 in. long", ""), ("plug in. gap", "."),
    ],
)  # fmt: skip
def test_the_pause_before_the_second_word(text: str, gap: str) -> None:
    assert gaps(text)[-1] == gap


def test_thousands_decimal_commas_and_lists_of_figures() -> None:
    assert lows("1,200 rpm 4,5 bar") == ["1,200", "rpm", "4,5", "bar"]
    assert [(w.low, w.gap) for w in split("cyls 1,2,3")][1:] == [("1", ""), ("2", ","), ("3", ",")]


def test_a_caption_mark_is_one_word() -> None:
    assert lows("ten [Music] volts") == ["ten", "[music]", "volts"]


@pytest.mark.parametrize(
    "piece",
    ["one ", "1 ", "twenty and a ", "1,", "1.", "1/", "a'", "-", '"1', "x/", "[", "<", ">", ".", "'", "1x", "1-", "_",
     "a1.",
     "°", "½", "\n", "[a", "1/1-", "no.", "1.5k"],
)  # fmt: skip
def test_a_long_line_is_cut_in_linear_time(piece: str) -> None:
    text = piece * (200_000 // len(piece))
    half = text[: len(text) // 2]
    took = [_seconds(half), _seconds(text)]
    assert took[1] < 1.0
    assert took[1] < 4 * took[0] + 0.1


def _seconds(text: str) -> float:
    start = time.process_time()
    split(text)
    return time.process_time() - start


def test_any_text_is_cut_without_loss_of_order() -> None:
    signs = "ab1 2.5,/-'\"½°%#&[]<>()\n:;_xXmM…’é\x1b\u202e𝟙"
    dice = random.Random(7)
    for _ in range(3000):
        text = "".join(dice.choice(signs) for _ in range(dice.randrange(30)))
        at = 0
        for word in split(text):
            assert at <= word.start < word.end <= len(text)
            assert word.low
            at = word.end
