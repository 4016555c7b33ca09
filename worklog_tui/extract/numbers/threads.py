"""Finds a thread at a word: "quarter twenty", "five sixteenths Whit", "M8 by one and a quarter"; only real sizes."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

from worklog_tui.extract.heard.figures import VULGAR
from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.broken_numbers import and_fraction
from worklog_tui.extract.numbers.metric_threads import metric_pitch, metric_thread, pipe_code, sized
from worklog_tui.extract.numbers.numerals import Numeral, numeral_at
from worklog_tui.extract.numbers.thread_words import Thread, near, word_at
from worklog_tui.rulebook.threads import ThreadTable, standard_threads
from worklog_tui.rulebook.units import Numerals

_SIZE_PITCH = re.compile(r"(\d{1,2}/\d{1,2}|\d{1,2})[-x×](\d{1,2})")
_METRIC_PAIR = re.compile(r"(\d{1,2})[x×](\d\.\d{1,2})")
_TIME_LIKE = frozenset({"half"})
_HEADS, _HOW_LONG = frozenset({"thread", "thd"}), frozenset({"long", "deep", "of", "left", "engaged", "in"})
CODES = "mgre"
"What the codes of metric and pipe threads begin with."
_PLAIN_SERIES = ("UNC", "UNF", "UNEF")


def thread_at(words: list[Word], i: int, numerals: Numerals, number: Numeral | None = None) -> Thread | None:
    """The thread that begins at word i, or None; with the `number` there, where it was read already."""
    low = words[i].low
    table = standard_threads()
    first = low[0]
    if first in CODES and (found := metric_thread(words, i, numerals, table) or pipe_code(words, i)):
        return found
    if first.isdigit() or first in VULGAR or low in numerals.starts:
        return _Sized(words, i, numerals, table).read(i, number)
    if low in table.words["inch"]:
        return _Sized(words, i, numerals, table).read_inch(i)
    if low in table.words["number"] and i + 1 < len(words) and words[i + 1].gap in ("", "-"):
        return _Sized(words, i, numerals, table, numbered=True).read(i + 1)
    return None


def _inches(value: float) -> str:
    """A size in inches as it is written: "5/16", "1 1/4", "1"."""
    whole, rest = divmod(Fraction(value).limit_denominator(64), 1)
    return " ".join(str(part) for part in (whole, rest) if part)


class _Sized:
    """A thread that begins with its size."""

    def __init__(
        self, words: list[Word], begin: int, numerals: Numerals, table: ThreadTable, numbered: bool = False
    ) -> None:
        self.words, self.begin, self.n, self.table, self.numbered = words, begin, numerals, table, numbered

    def read(self, i: int, number: Numeral | None = None) -> Thread | None:
        low = self.words[i].low
        if number is not None and number.loose and low in self.n.article:
            return None
        figures = low[0].isdigit()
        if figures and (written := _SIZE_PITCH.fullmatch(low)):
            return self._pitched(written[1], float(written[2]), i + 1, sure=True)
        if figures and (metric := _METRIC_PAIR.fullmatch(low)):
            found = sized(float(metric[1]), float(metric[2]), i + 1, self.table)
            return found if found and self._near_threads(found.end) else None
        number = number or numeral_at(self.words, i, self.n)
        if number is None or number.value < 0 or (number.loose and low in self.n.article):
            return None
        if number.form == "ordinal":
            return self._inch(replace(number, value=1 / number.value), bare=False) if number.value in (8, 16) else None
        if number.form == "fraction":
            return self._inch(number, bare=True)
        if number.value == 0:
            return self._none(number.end)
        return self._whole(number) if number.value == int(number.value) else None

    def read_inch(self, i: int) -> Thread | None:
        """ "inch and a quarter BSP", "inch Whitworth": the one is not said."""
        more = and_fraction(self.words, i + 1, self.n)
        value, end = (1 + more[0], more[1]) if more else (1.0, i + 1)
        if series := self._series(end):
            return self._of_series(_inches(value), *series)
        pitch = self._count(end) if more else None
        return self._pitched(_inches(value), pitch.value, pitch.end, sure=False) if pitch else None

    def _near_threads(self, end: int) -> bool:
        return near(self.words, self.begin, end, self.table.words["about"])

    # ---- inches

    def _inch(self, number: Numeral, bare: bool) -> Thread | None:
        """A size in inches with a series, or (when `bare`) with its threads an inch only."""
        end = number.end
        said_inch = word_at(self.words, end) in self.table.words["inch"]
        end += said_inch
        if series := self._series(end):
            return self._of_series(_inches(number.value), *series)
        if not bare:
            return None
        if counted := self._per_inch(end):
            return self._pitched(_inches(number.value), *counted, sure=True)
        pitch = self._count(end + (word_at(self.words, end) in self.table.words["by"]))
        if pitch is None:
            return None
        doubtful = self.words[number.end - 1].low in _TIME_LIKE or number.value >= 0.75 or said_inch
        holds = said_inch and near(self.words, self.begin, pitch.end, self.table.words["threaded_parts"])
        return self._pitched(_inches(number.value), pitch.value, pitch.end, sure=holds or not doubtful)

    def _count(self, i: int) -> Numeral | None:
        """The bare number at word i."""
        found = numeral_at(self.words, i, self.n) if word_at(self.words, i) else None
        return found if found and found.form in ("words", "digits") and not found.parts else None

    def _per_inch(self, i: int) -> tuple[float, int] | None:
        """The threads an inch that are said in full at word i, also behind a comma: `, sixteen threads to the inch`."""
        i += word_at(self.words, i) in self.table.words["by"] or word_at(self.words, i) in ("at", "with")
        if i >= len(self.words) or self.words[i].gap not in ("", "-", ","):
            return None
        count = numeral_at(self.words, i, self.n)
        if count is None or count.form not in ("words", "digits") or count.parts:
            return None
        if word_at(self.words, count.end) == "tpi":
            return count.value, count.end + 1
        told = word_at(self.words, count.end) in ("threads", "thread")
        ends = (at for at in range(count.end + 2, count.end + 4) if word_at(self.words, at) == "inch")
        end = next(ends, None) if told else None
        return (count.value, end + 1) if end else None

    def _series(self, i: int) -> tuple[str, int] | None:
        """The series that is said at word i, and the index after it."""
        low = word_at(self.words, i)
        for words, name in self.table.series.get(low, ()):
            if all(word_at(self.words, i + k) == w for k, w in enumerate(words)):
                return name, i + len(words)
        return None

    def _of_series(self, size: str, series: str, end: int) -> Thread | None:
        pitches = self.table.pitches(series, size)
        if not pitches:
            return None
        if series in _PLAIN_SERIES:
            return Thread(f"{size}-{pitches[0]:g}", end)
        return Thread(f"{size} {series}", end)

    def _pitched(self, size: str, pitch: float, end: int, sure: bool) -> Thread | None:
        """A size with its threads an inch, when a series has them; a doubtful one needs a word of threads near by."""
        if series := self._series(end):
            named, after = series
            return self._of_series(size, named, after) if pitch in self.table.pitches(named, size) else None
        found = self.table.series_of(size, pitch)
        other = word_at(self.words, end) in self.table.words["no_pitch_before"]
        if not found or other or found[0] in ("BSP", "NPT", "CEI"):
            return None
        if not (sure or self._near_threads(end)):
            return None
        plain = any(name in _PLAIN_SERIES for name in found)
        return Thread(f"{size}-{pitch:g}" if plain else f"{size} {found[0]}", end)

    # ---- whole numbers

    def _whole(self, number: Numeral) -> Thread | None:
        """BA and numbered screws, whole inches, metric sizes without the M."""
        if len(number.parts) == 2 and number.form == "words":
            size, pitch = number.parts
            return self._pitched(f"{size:g}", pitch, number.end, sure=self.numbered and size >= 10)
        inch = word_at(self.words, number.end) in self.table.words["inch"]
        if series := self._series(number.end + inch):
            return self._whole_of_series(number, inch, *series)
        if inch and (count := self._per_inch(number.end + 1) or self._plain_count(number.end + 1)):
            return self._pitched(f"{number.value:g}", *count, sure=False)
        return self._numbered_pair(number) or self._bare_metric(number)

    def _plain_count(self, i: int) -> tuple[float, int] | None:
        found = self._count(i)
        return (found.value, found.end) if found else None

    def _none(self, end: int) -> Thread | None:
        """ "0 BA", "nought BA": the largest of its series."""
        series = self._series(end)
        return Thread("0 BA", series[1]) if series and series[0] == "BA" else None

    def _whole_of_series(self, number: Numeral, inch: bool, series: str, end: int) -> Thread | None:
        if series == "BA":
            return Thread(f"{number.value:g} BA", end) if number.value in self.table.ba and not inch else None
        if inch or number.value == 1 or series in ("BSP", "NPT") or self.numbered:
            return self._of_series(f"{number.value:g}", series, end)
        return None

    def _numbered_pair(self, number: Numeral) -> Thread | None:
        """ "10-32", "#8-32", "6 32 screw"."""
        end = number.end
        if number.value > 12 or not word_at(self.words, end):
            return None
        pitch = self._count(end + (self.words[end].low in self.table.words["by"]))
        if pitch is None:
            return None
        hyphen = self.words[end].gap == "-" and number.form == "digits"
        sure = hyphen and (self.numbered or number.value >= 10)
        return self._pitched(f"{number.value:g}", pitch.value, pitch.end, sure)

    def _bare_metric(self, number: Numeral) -> Thread | None:
        """ "ten by one point two five thread", "14 mm plug thread"."""
        if number.value not in self.table.metric:
            return None
        about = self.table.words["metric_about"]
        pitched = metric_pitch(self.words, number.value, number.end, self.n, self.table)
        if pitched:
            end = pitched.end + (word_at(self.words, pitched.end) in self.table.words["mm"])
            known = self._near_threads(end) or near(self.words, self.begin, end, about)
            return Thread(pitched.designation, end) if known else None
        if word_at(self.words, number.end) in self.table.words["mm"]:
            following = (word_at(self.words, number.end + 1), word_at(self.words, number.end + 2))
            behind = self.begin > 0 and self.words[self.begin - 1].low in _HEADS and following[0] not in _HOW_LONG
            if "thread" in following or following[0] == "metric" or behind:
                return Thread(f"M{number.value:g}", number.end + 1)
        return None
