"""Cuts a line of talk into words, each with its place in the text and the pause before it: in one pass of one pattern
whose parts cannot give a character back, so that time grows with the length of the line only.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from worklog_tui.extract.heard.figures import VULGAR, pieces_of
from worklog_tui.extract.heard.glued import UNITS, figure_end
from worklog_tui.extract.heard.short_forms import ABBREVIATED, FIGURE, is_and, with_end
from worklog_tui.rulebook.contractions import SPELT_OUT


class Word(NamedTuple):
    """A word: `text[start:end]` as said, `low` for comparing, `gap` for what stands between it and the word before.

    `gap` is "" (nothing or a space), "-" (joined by a hyphen), one of , ; : ( for a pause, or "." for a new sentence.
    """

    low: str
    start: int
    end: int
    gap: str


_new = tuple.__new__  # makes a Word at half the cost of calling it
_VULGAR = "".join(VULGAR)
_TOKEN = re.compile(
    rf"""
      (?P<run> (?: [a-z]++ [ ] )++ (?: [a-z]{{2,}}+ (?= [.,;:!?] | \Z ) )?+ | [a-z]{{2,}}+ (?= [.,;:!?] | \Z ) )
    | (?P<word> [^\W\d_]++ (?: ['’][^\W\d_]++ )*+ (?: \d\w*+ (?: [./,]\d\w*+ )*+ )?+ ) [ ]*+
    | (?P<plain> \d++ ) (?: [ ]++ | \Z )
    | (?P<number> [+\-−]?+ (?: \d++ | \.\d++ ) (?: [.,/:]\d++ )*+ (?: [x×*]\d++ (?: [.,/]\d++ )*+ )*+ [{_VULGAR}]?+
                | [{_VULGAR}] )
    | (?P<mark> \[[^\[\]\n]{{1,40}}\] )
    | (?P<sign> >> | [°%\#&@$£€~≈<>"'′″’] )
    | (?P<space> [^\S\n]++ | _++ )
    | (?P<stop> [.!?…\n]++ )
    | (?P<other> . )
    """,
    re.VERBOSE | re.DOTALL,
)
_FIGURES = frozenset("0123456789~≈")
_SUSPENDED = re.compile(r"(?<=\d)- (?=(?:to|or|and) \d)")
'A hyphen that waits for its unit: "8- to 16-inch".'
_BRACKETED = re.compile(r"[\[<]([^\W\d_]{1,4})[\]>]")
_DEGREE = re.compile(r"[ ]?[cCfF](?![^\W_])")
_SLASHED = re.compile(r"/[^\W\d_]{1,3}\d?(?!\w)")
_SLASHED_LONG = re.compile(r"/[^\W\d_]{1,12}(?!\w)")
_BEFORE_SLASH = frozenset({"drops", "kgf", "rev", "lbs", "lbf", "strokes", "beats", "blows", "cycles", "revs"})
_SIGNS = {"&": "and", "@": "at", "~": "about", "≈": "about", "<": "under", ">": "over", "′": "'", "’": "'", "″": '"'}
_OVER = re.compile(r"(?<![=-])[<>] ?\d")  # `>5`, and no head of an arrow: `0.6 -> 4`
_RANK = {"": 0, "-": 1, ",": 2, "(": 3, ":": 4, ";": 5, ".": 6}
_PAUSES = {**dict.fromkeys("-–·*−", "-"), **dict.fromkeys("—,)]/=|→", ","), ";": ";", ":": ":", "(": "(", "[": "("}


class _Cutter:
    """The state of one pass: the words so far, the gap that is growing, whether a quotation is open."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.words: list[Word] = []
        self.gap = ""
        self.quoted = False

    def pause(self, gap: str) -> None:
        if _RANK[gap] > _RANK[self.gap]:
            self.gap = gap

    def add(self, start: int, end: int, low: str) -> None:
        self.words.append(_new(Word, (low, start, end, self.gap)))
        self.gap = ""

    def run(self, at: int, said: str) -> None:
        """Adds plain words in lower case, each with one space behind it; the last may end at a stop instead."""
        words, gap = self.words, self.gap
        for low in said.split():
            short = low == "w" and with_end(self.text, at, at + 1, words[-1].low if words else "")
            words.append(_new(Word, ("with" if short else low, at, at + len(low), gap)))
            gap, at = "", at + len(low) + 1
        self.gap = ""

    def touches(self, start: int) -> bool:
        """The word before ends exactly here and is a number."""
        return bool(self.words) and self.words[-1].end == start and _is_number(self.words[-1].low)

    def number(self, start: int, end: int) -> int:
        """Adds the number that begins here with what belongs to it, and returns its end."""
        text = self.text
        if text[start] in "+-−" and not self._is_sign(start):
            self.pause("-")
            start += 1
        if text[start] == "." and start and text[start - 1].isalnum() and text[start + 1] != "0":
            self.pause("" if self.words and self.words[-1].low in ABBREVIATED else ".")  # "No.2", "done.2 more"
            start += 1
        last = figure_end(text, start, end)
        if "," in text[start:last] or "/" in text[start:last]:
            self._in_pieces(start, last)
        else:
            self.add(start, last, text[start:last].lower().replace("−", "-"))
        return last

    def _is_sign(self, at: int) -> bool:
        """Plus or minus, no dash: something else than a word stands before it, and no figure ("2 -7 l" is a range)."""
        if self.touches(at - 1) and not self.gap:
            return False
        return at == 0 or self.text[at - 1] in " \t\n(,~@=:"

    def _in_pieces(self, start: int, end: int) -> None:
        """A number with thousands or a decimal comma is one word; a list or a pair without spaces is several."""
        for piece in pieces_of(self.text[start:end].lower()):
            self.add(start, start + len(piece), piece)
            self.pause(",")
            start += len(piece) + 1
        self.gap = ""

    def word(self, start: int, end: int) -> int:
        """Adds the word, with the other half of one such as "km/h", and returns its end."""
        text, low = self.text, self.text[start:end].lower()
        if low == "w" and (short := with_end(text, start, end, self.words[-1].low if self.words else "")):
            self.add(start, short, "with")
            return short
        if text.startswith("/", end) and (end - start <= 2 or low in _BEFORE_SLASH):
            slashed = (_SLASHED_LONG if end - start == 1 else _SLASHED).match(text, end)
            if slashed:
                end = slashed.end()
                low = text[start:end].lower()
        if "'" in low or "’" in low:
            low = SPELT_OUT.get(low.replace("’", "'")) or low.replace("'", "").replace("’", "")
        self.add(start, end, low)
        return end

    def mark(self, kind: str, start: int, end: int) -> int:
        """Anything but words, numbers and spaces; returns where it ends."""
        if (kind == "mark" or self.text[start] == "<") and (after := self._bracketed_unit(start)):
            return after
        if kind == "mark":
            self.add(start, end, self.text[start:end].lower())
        elif kind == "sign":
            return self._sign(start, end)
        elif kind == "stop":
            self._stop(start, end)
        elif self.words and not self.gap and is_and(self.text, start, self.words[-1].low):
            self.add(start, end, "and")
        else:
            self._pause_sign(start)
        return end

    def _pause_sign(self, at: int) -> None:
        """A dash without spaces joins, and so does one between figures ("10 - 12"); others pause."""
        gap = _PAUSES.get(self.text[at], "")
        if gap == "-":
            before, after = self.text[max(at - 2, 0) : at], self.text[at + 1 : at + 3]
            tight = before[-1:].strip() and after[:1].strip()
            figures = before.strip()[-1:].isdigit() and after.strip()[:1] in _FIGURES
            gap = "-" if tight or figures or _SUSPENDED.match(self.text, at) else ","
        self.pause(gap)

    def _bracketed_unit(self, start: int) -> int:
        """The end of "[kg]" or "<kg>" behind a number, taken as a unit in brackets; 0 for anything else."""
        unit = _BRACKETED.match(self.text, start)
        if not unit or not self.touches(start - (self.text[start - 1 : start] == " ")) or unit[1].lower() not in UNITS:
            return 0
        self.pause("(")
        self.add(unit.start(1), unit.end(1), unit[1].lower())
        return unit.end()

    def _sign(self, start: int, end: int) -> int:
        said = self.text[start:end]
        if said == ">>":
            self.pause(".")
        elif said in "\"'′″’":
            self._quote(start, said)
        elif said == "°":
            scale = _DEGREE.match(self.text, end)
            end = scale.end() if scale else end
            self.add(start, end, "°" + self.text[start + 1 : end].strip().lower())
        elif said not in "<>" or _OVER.match(self.text, start):
            self.add(start, end, _SIGNS.get(said, said))
        else:
            self.pause(",")
        return end

    def _quote(self, start: int, said: str) -> None:
        """A mark right after a number is inch or foot, unless it closes a quotation."""
        after = self.text[start + 1 : start + 2]
        spaced = said in '"″' and self.text[start - 1 : start] == " " and not after.strip()
        if said == '"' and self.quoted:
            self.quoted = False
        elif (self.touches(start) or (spaced and self.touches(start - 1))) and not after.isalpha():
            self.add(start, start + 1, _SIGNS.get(said, said))
        elif said == '"':
            self.quoted = True

    def _stop(self, start: int, end: int) -> None:
        """A full stop, or dots that only make a pause, or the dot of an abbreviation."""
        dots = self.text[start:end]
        ahead = self.text[end : end + 2].lstrip(" ")[:1]
        if "\n" in dots:
            self.quoted = False
            self.pause(".")
        elif dots == "." and self._is_abbreviated(start, ahead):
            return
        elif (dots.startswith("..") or dots == "…") and not ahead.isupper():
            self.pause(",")
        else:
            self.pause(".")

    def _is_abbreviated(self, at: int, ahead: str) -> bool:
        if not self.words or self.words[-1].end != at or ahead.isupper():
            return False
        low = self.words[-1].low
        if low == "in":  # inches, not "plug in. new lead on"
            return len(self.words) == 1 or not self.words[-2].low.strip(FIGURE)
        return low in ABBREVIATED and (low != "no" or ahead.isdigit())


def _is_number(low: str) -> bool:
    return low[-1].isdigit() or low[-1] in VULGAR


def split(text: str) -> list[Word]:
    """The words of a text in order; figures keep what belongs to them, units glued to figures are cut off."""
    cut = _Cutter(text)
    at, size = 0, len(text)
    while at < size:
        token = _TOKEN.match(text, at)
        assert token is not None
        kind, end = token.lastgroup, token.end()
        if kind == "run":
            cut.run(at, text[at:end])
        elif kind == "word":
            end = max(cut.word(at, token.end("word")), end)
        elif kind == "plain":
            cut.add(at, token.end("plain"), token["plain"])
        elif kind == "number":
            end = cut.number(at, end)
        elif kind != "space":
            end = cut.mark(kind or "", at, end)
        at = end
    return cut.words
