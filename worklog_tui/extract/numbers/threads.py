"""Finds a thread at a word: "quarter twenty", "five sixteenths Whit", "M8 by one and a quarter"; only real sizes."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from worklog_tui.extract.heard.figures import VULGAR
from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.broken_numbers import and_fraction
from worklog_tui.extract.numbers.numerals import Numeral, numeral_at
from worklog_tui.rulebook.threads import ThreadTable, standard_threads
from worklog_tui.rulebook.units import Numerals


@dataclass(frozen=True, slots=True)
class Thread:
    """A thread as designated ("1/4-20", "5/16 BSW", "M8x1.25", "2 BA") and the index of the word after it."""

    designation: str
    end: int


_METRIC = re.compile(r"m(\d{1,2}(?:\.5)?)(?:[x×*](\d(?:[.,]\d{1,2})?))?")
_PIPE = re.compile(r"(g|r|rc|rp)(\d(?:/\d{1,2})?)")
_SIZE_PITCH = re.compile(r"(\d{1,2}/\d{1,2}|\d{1,2})[-x×](\d{1,2})")
_METRIC_PAIR = re.compile(r"(\d{1,2})[x×](\d\.\d{1,2})")
_TIME_LIKE = frozenset({"half"})
_NEAR = 3
CODES = "mgre"
"What the codes of metric and pipe threads begin with."
_PLAIN_SERIES = ("UNC", "UNF", "UNEF")


def thread_at(words: list[Word], i: int, numerals: Numerals, number: Numeral | None = None) -> Thread | None:
    """The thread that begins at word i, or None; with the `number` there, where it was read already."""
    low = words[i].low
    table = standard_threads()
    first = low[0]
    if first in CODES and (found := _metric(words, i, numerals, table) or _pipe_code(words, i)):
        return found
    if first.isdigit() or first in VULGAR or low in numerals.starts:
        return _Sized(words, i, numerals, table).read(i, number)
    if low in table.words["inch"]:
        return _Sized(words, i, numerals, table).read_inch(i)
    if low in table.words["number"] and i + 1 < len(words) and words[i + 1].gap in ("", "-"):
        return _Sized(words, i, numerals, table, numbered=True).read(i + 1)
    return None


def _low(words: list[Word], i: int) -> str:
    return words[i].low if i < len(words) and words[i].gap in ("", "-") else ""


def _near(words: list[Word], i: int, end: int, wanted: frozenset[str]) -> bool:
    """One of these words stands within three words of the thread."""
    around = (*words[max(i - _NEAR, 0) : i], *words[end : end + _NEAR])
    return any(w.low in wanted for w in around)


def _inches(value: float) -> str:
    """A size in inches as it is written: "5/16", "1 1/4", "1"."""
    whole, rest = divmod(Fraction(value).limit_denominator(64), 1)
    return " ".join(str(part) for part in (whole, rest) if part)


def _metric(words: list[Word], i: int, n: Numerals, table: ThreadTable) -> Thread | None:
    """ "M8", "M8x1.25", "M10-1.5", "m eight by one point two five"."""
    whole = _METRIC.fullmatch(words[i].low)
    if whole:
        size, end = float(whole[1]), i + 1
        if whole[2]:
            pitch = float(whole[2].replace(",", "."))
            return _metric_thread(size, pitch, end, table)
    elif words[i].low in table.words["metric"] and _low(words, i + 1):
        spoken = numeral_at(words, i + 1, n)
        if spoken is None or spoken.form not in ("words", "digits") or spoken.parts:
            return None
        size, end = spoken.value, spoken.end
    else:
        return None
    if size not in table.metric:
        return None
    return _metric_pitch(words, size, end, n, table) or Thread(f"M{size:g}", end)


def _metric_pitch(words: list[Word], size: float, end: int, n: Numerals, table: ThreadTable) -> Thread | None:
    """The pitch that may follow a metric size."""
    at = end
    if _low(words, at) in table.words["mm"]:
        at += 1
    if _low(words, at) in table.words["by"]:
        at += 1
    elif not (at < len(words) and words[at].gap == "-"):
        return None
    pitch = numeral_at(words, at, n) if _low(words, at) else None
    return _metric_thread(size, pitch.value, pitch.end, table) if pitch else None


def _metric_thread(size: float, pitch: float, end: int, table: ThreadTable) -> Thread | None:
    if pitch not in table.metric.get(size, ()):
        return None
    return Thread(f"M{size:g}x{pitch:g}", end)


def _pipe_code(words: list[Word], i: int) -> Thread | None:
    """ "G1/4", "Rc 1/8"."""
    found = _PIPE.fullmatch(words[i].low)
    if found and found[2] in ("1/16", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "1"):
        return Thread(found[1].capitalize() + found[2], i + 1)
    return None


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
            found = _metric_thread(float(metric[1]), float(metric[2]), i + 1, self.table)
            return found if found and self._near_threads(found.end) else None
        number = number or numeral_at(self.words, i, self.n)
        if number is None or number.value <= 0 or (number.loose and low in self.n.article):
            return None
        if number.form == "ordinal":
            return self._inch(replace(number, value=1 / number.value), bare=False) if number.value in (8, 16) else None
        if number.form == "fraction":
            return self._inch(number, bare=True)
        return self._whole(number) if number.value == int(number.value) else None

    def read_inch(self, i: int) -> Thread | None:
        """ "inch and a quarter BSP", "inch Whitworth": the one is not said."""
        more = and_fraction(self.words, i + 1, self.n)
        value, end = (1 + more[0], more[1]) if more else (1.0, i + 1)
        series = self._series(end)
        return self._of_series(_inches(value), *series) if series else None

    def _near_threads(self, end: int) -> bool:
        return _near(self.words, self.begin, end, self.table.words["about"])

    # ---- inches

    def _inch(self, number: Numeral, bare: bool) -> Thread | None:
        """A size in inches with a series, or (when `bare`) with its threads an inch only."""
        size, end = _inches(number.value), number.end
        said_inch = _low(self.words, end) in self.table.words["inch"]
        end += said_inch
        if series := self._series(end):
            return self._of_series(size, *series)
        if not bare:
            return None
        end += _low(self.words, end) in self.table.words["by"]
        pitch = numeral_at(self.words, end, self.n) if _low(self.words, end) else None
        if pitch is None or pitch.form not in ("words", "digits") or pitch.parts:
            return None
        doubtful = self.words[number.end - 1].low in _TIME_LIKE or number.value >= 0.75 or said_inch
        return self._pitched(size, pitch.value, pitch.end, sure=not doubtful)

    def _series(self, i: int) -> tuple[str, int] | None:
        """The series that is said at word i, and the index after it."""
        low = _low(self.words, i)
        for words, name in self.table.series.get(low, ()):
            if all(_low(self.words, i + k) == w for k, w in enumerate(words)):
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
        other = _low(self.words, end) in self.table.words["no_pitch_before"]
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
        inch = _low(self.words, number.end) in self.table.words["inch"]
        if series := self._series(number.end + inch):
            return self._whole_of_series(number, inch, *series)
        return self._numbered_pair(number) or self._bare_metric(number)

    def _whole_of_series(self, number: Numeral, inch: bool, series: str, end: int) -> Thread | None:
        if series == "BA":
            return Thread(f"{number.value:g} BA", end) if number.value in self.table.ba and not inch else None
        if inch or number.value == 1 or series in ("BSP", "NPT") or self.numbered:
            return self._of_series(f"{number.value:g}", series, end)
        return None

    def _numbered_pair(self, number: Numeral) -> Thread | None:
        """ "10-32", "#8-32", "6 32 screw"."""
        end = number.end
        if number.value > 12 or not _low(self.words, end):
            return None
        at = end + (self.words[end].low in self.table.words["by"])
        pitch = numeral_at(self.words, at, self.n) if _low(self.words, at) else None
        if pitch is None or pitch.form not in ("words", "digits") or pitch.parts:
            return None
        hyphen = self.words[end].gap == "-" and number.form == "digits"
        sure = hyphen and (self.numbered or number.value >= 10)
        return self._pitched(f"{number.value:g}", pitch.value, pitch.end, sure)

    def _bare_metric(self, number: Numeral) -> Thread | None:
        """ "ten by one point two five thread", "14 mm plug thread"."""
        if number.value not in self.table.metric:
            return None
        about = self.table.words["metric_about"]
        pitched = _metric_pitch(self.words, number.value, number.end, self.n, self.table)
        if pitched:
            end = pitched.end + (_low(self.words, pitched.end) in self.table.words["mm"])
            known = self._near_threads(end) or _near(self.words, self.begin, end, about)
            return Thread(pitched.designation, end) if known else None
        if _low(self.words, number.end) in self.table.words["mm"]:
            following = (_low(self.words, number.end + 1), _low(self.words, number.end + 2))
            if "thread" in following or following[0] == "metric":
                return Thread(f"M{number.value:g}", number.end + 1)
        return None
