"""Metric and pipe threads that begin with a code: M8, em eight by one and a quarter, M10 fine, G1/4."""

from __future__ import annotations

import re

from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.numerals import numeral_at
from worklog_tui.extract.numbers.thread_words import Thread, near, word_at
from worklog_tui.rulebook.threads import ThreadTable
from worklog_tui.rulebook.units import Numerals

_METRIC = re.compile(r"m(\d{1,2}(?:\.5)?)(?:[x×*](\d(?:[.,]\d{1,2})?))?")
_PIPE = re.compile(r"(g|r|rc|rp)(\d(?:/\d{1,2})?)")


def metric_thread(words: list[Word], i: int, n: Numerals, table: ThreadTable) -> Thread | None:
    """ "M8", "M8x1.25", "M10-1.5", "m eight by one point two five"."""
    whole = _METRIC.fullmatch(words[i].low)
    if whole:
        size, end = float(whole[1]), i + 1
        if whole[2]:
            pitch = float(whole[2].replace(",", "."))
            return sized(size, pitch, end, table)
    elif words[i].low in table.words["metric"] and word_at(words, i + 1):
        spoken = numeral_at(words, i + 1, n)
        if spoken is None or spoken.form not in ("words", "digits") or spoken.parts:
            return None
        if len(words[i].low) > 2 and not near(words, i, spoken.end, table.words["about"]):
            return None  # `the metric eight spanner`
        size, end = spoken.value, spoken.end
    else:
        return None
    if size not in table.metric:
        return None
    return metric_pitch(words, size, end, n, table) or Thread(f"M{size:g}", end)


def metric_pitch(words: list[Word], size: float, end: int, n: Numerals, table: ThreadTable) -> Thread | None:
    """The pitch that may follow a metric size."""
    at = end
    if word_at(words, at) in table.words["mm"]:
        at += 1
    if word_at(words, at) in table.words["by"] or word_at(words, at) in table.words["fineness"]:
        at += 1
    elif not (at < len(words) and words[at].gap == "-"):
        return None
    pitch = numeral_at(words, at, n) if at < len(words) and words[at].gap in ("", "-", "(") else None
    return sized(size, pitch.value, pitch.end, table) if pitch else None


def sized(size: float, pitch: float, end: int, table: ThreadTable) -> Thread | None:
    """A metric size with its pitch, where the standard has it."""
    if pitch not in table.metric.get(size, ()):
        return None
    return Thread(f"M{size:g}x{pitch:g}", end)


def pipe_code(words: list[Word], i: int) -> Thread | None:
    """ "G1/4", "Rc 1/8"."""
    found = _PIPE.fullmatch(words[i].low)
    if found and found[2] in ("1/16", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "1"):
        return Thread(found[1].capitalize() + found[2], i + 1)
    return None
