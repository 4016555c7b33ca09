"""Cuts a line of talk into words, each with its place in the text and the pause before it.

One pass of one pattern whose parts cannot give a character back, so that time grows with the length of the line only.
"""

from __future__ import annotations

import re
from typing import NamedTuple


class Word(NamedTuple):
    """A word: `text[start:end]` as said, `low` for comparing, `gap` for what stands between it and the word before.

    `gap` is one of "" (nothing or a space), "-" (joined by a hyphen), "," ";" ":" "(" (a pause) and "." (a new sentence).
    """

    low: str
    start: int
    end: int
    gap: str


_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}
_FRACTIONS = "".join(_VULGAR)

GLUED = frozenset(
    'v volt volts a amp amps ma mv kv ah lb lbs in ins inch ft foot c f °c °f ° mm cm m km um µm μm qt qts pt pts gal l ml cc '
    "ltr litre litres liter liters kg g mg oz psi bar kpa mpa hz khz rpm w kw hp nm h hr hrs min mins s sec secs ms deg degc degf "
    "thou mil uf µf nf ohm ohms ω kω mω kohm mohm gpm cfm mph ba bsf bsw bsp unc unf npt day days wk wks t mbar x "
    "yd yds mi tpi pint pints quart quarts gallon gallons hour hours minute minutes second seconds mls ccs kgs gms kms cms mms "
    "gals ohms weeks month months rpms metre metres meter meters oz ozs".split()
)
"Letters that are cut from the digits before them: units and thread series."

_ABBREVIATED = frozenset(
    "approx cyl cyls in ins ft lb lbs hr hrs min mins sec secs dia qty temp max oz pt pts qt qts gal deg comp exh inl adj "
    "no nos fig vs ca assy".split()
)
"A full stop after these ends no sentence unless a capital follows."

_TOKEN = re.compile(
    rf"""
      (?P<word> [^\W\d_]+ (?: ['’][^\W\d_]+ )* (?: \d\w* (?: [./,]\d\w* )* )? ) [ ]*
    | (?P<plain> \d++ ) (?: [ ]++ | \Z )
    | (?P<number> [+\-−]? (?: \d+ | \.\d+ ) (?: [.,/:]\d+ )* (?: [x×*]\d+ (?: [.,/]\d+ )* )* [{_FRACTIONS}]? | [{_FRACTIONS}] )
    | (?P<mark> \[[^\[\]\n]{1,40}\] )
    | (?P<sign> >> | [°%\#&@$£€~≈<>"'′″’] )
    | (?P<space> [^\S\n]+ | _+ )
    | (?P<stop> [.!?…\n]+ )
    | (?P<other> . )
    """,
    re.VERBOSE | re.DOTALL,
)
_LOWER_ONLY = frozenset("MSGT")
'Capitals that are no sign of a unit: "3M" and "4S" are codes.'
_RAISED = re.compile(r"(?:mm|cm|in|ft|m)[23](?!\w)", re.IGNORECASE)
_BRACKETED = re.compile(r"[\[<]([^\W\d_]{1,4})[\]>]")
_LETTERS = re.compile(r"[^\W\d_]+")
_REST = re.compile(r"\w+(?:[./]\w+)*")
_DEGREE = re.compile(r"[ ]?[cCfF](?![^\W_])")
_SLASHED = re.compile(r"/(?:[^\W\d_]{1,3}\d?)(?!\w)")
_SLASHED_LONG = re.compile(r"/[^\W\d_]{1,12}(?!\w)")
_BEFORE_SLASH = frozenset({"drops", "kgf", "rev"})
_SIGNS = {"&": "and", "@": "at", "~": "about", "≈": "about", "<": "under", ">": "over", "′": "'", "’": "'", "″": '"'}
_RANK = {"": 0, "-": 1, ",": 2, "(": 3, ":": 4, ";": 5, ".": 6}
_OTHER = {"-": "-", "–": "-", "—": ",", "·": "-", "*": "-", ",": ",", ";": ";", ":": ":", "(": "(", ")": ",", "[": "(", "]": ",",
          "/": ",", "=": ",", "|": ",", "→": ",", "−": "-"}  # fmt: skip


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

    def add(self, start: int, end: int, low: str | None = None) -> None:
        if low is None:
            low = self.text[start:end].lower()
        self.words.append(Word(low, start, end, self.gap))
        self.gap = ""

    def touches(self, start: int) -> bool:
        """The word before ends exactly here and is a number."""
        return bool(self.words) and self.words[-1].end == start and _is_number(self.words[-1].low)

    def spaced(self, at: int) -> bool:
        """Nothing stands before, or something that is not part of a word."""
        return at == 0 or not (self.text[at - 1].isalnum() or self.text[at - 1] == ".")

    def _begins(self, at: int) -> bool:
        return at == 0 or self.text[at - 1] in " \t\n(,~@=:"

    def _after_figure(self, at: int) -> bool:
        """A sign that touches the figure behind it only: "2 -7 l" is a range."""
        return bool(self.words) and self.words[-1].end == at - 1 and _is_number(self.words[-1].low) and not self.gap

    def number(self, start: int, end: int) -> int:
        """Adds the number that begins here with what is glued to it, and returns where the next token begins."""
        text = self.text
        if text[start] in "+-−" and (self._after_figure(start) or not self._begins(start)):
            self.pause("-")
            start += 1
        if text[start] == "." and start and text[start - 1].isalnum() and text[start + 1] != "0":
            self._after_word_stop(start)
            start += 1
        last = end
        if text[end : end + 2] in ("'s", "’s") and not text[end + 2 : end + 3].isalpha():
            last = end + 2
        elif tail := _LETTERS.match(text, end):
            if not _RAISED.match(text, end) and not self._is_unit(tail, text[start:end]):
                rest = _REST.match(text, tail.start())
                last = rest.end() if rest else tail.end()
        elif text.startswith("-", end) and "/" in text[start:end]:
            last = self._thread_pitch(start, end)
        if "," in text[start:last]:
            self._with_commas(start, last)
        else:
            self.add(start, last, text[start:last].lower().replace("−", "-"))
        return last

    def _is_unit(self, tail: re.Match[str], figures: str) -> bool:
        """The letters behind figures are a unit, not the rest of a code: "12V", but not "2721B", "3M", "15W/40", "2F/drive"."""
        letters, after = tail.group(), self.text[tail.end() : tail.end() + 2]
        if letters.lower() not in GLUED or letters in _LOWER_ONLY or after[:1].isdigit() or after[:1] == "_":
            return False
        if len(letters) == 1 and after[:1] == "/":
            return after[1:].isdigit() and letters not in "Ww"
        if len(letters) == 1 and after[:1] == "-" and after[1:].isdigit() and letters in "Ww":
            return False
        return letters != "a" or figures not in "1234"

    def _after_word_stop(self, at: int) -> None:
        """A full stop between a word and digits: "No.2" has no pause, "done.2 more" has."""
        self.pause("" if self.words and self.words[-1].low in _ABBREVIATED else ".")

    def _thread_pitch(self, start: int, end: int) -> int:
        """The end of a size with its threads an inch ("1/4-20"), or of the number alone."""
        pitch = re.compile(r"\d{1,2}(?![\d./])").match(self.text, end + 1)
        return pitch.end() if pitch and int(pitch.group()) >= 4 and self.text.count("/", start, end) == 1 else end

    def _with_commas(self, start: int, end: int) -> None:
        """A number with thousands or a decimal comma is one word; a list without spaces is several."""
        pieces = self.text[start:end].split(",")
        thousands = len(pieces[0].lstrip("+-")) <= 3 and all(len(p.split(".")[0]) == 3 for p in pieces[1:])
        decimal = len(pieces) == 2 and pieces[0].lstrip("+-").isdigit() and pieces[1].isdigit() and len(pieces[1]) <= 2
        if thousands or decimal:
            self.add(start, end)
            return
        for piece in pieces:
            if piece:
                self.add(start, start + len(piece))
            self.pause(",")
            start += len(piece) + 1
        self.gap = ""

    def word(self, start: int, end: int) -> int:
        """Adds the word, with the other half of one such as "km/h", and returns its end."""
        text = self.text
        low = text[start:end].lower()
        if text.startswith("/", end) and (end - start <= 2 or low in _BEFORE_SLASH):
            slashed = (_SLASHED_LONG if end - start == 1 else _SLASHED).match(text, end)
            if slashed:
                end = slashed.end()
                low = text[start:end].lower()
        if "'" in low or "’" in low:
            low = low.replace("'", "").replace("’", "")
        self.words.append(Word(low, start, end, self.gap))
        self.gap = ""
        return end

    def sign(self, start: int, end: int) -> int:
        said = self.text[start:end]
        if said == ">>":
            self.pause(".")
        elif said in "\"'′″’":
            self._quote(start, said)
        elif said == "°":
            scale = _DEGREE.match(self.text, end)
            end = scale.end() if scale else end
            self.add(start, end, "°" + self.text[start + 1 : end].strip().lower())
        elif said in "<>" and not self.text[end : end + 2].strip()[:1].isdigit():
            self.pause(",")
        else:
            self.add(start, end, _SIGNS.get(said, said))
        return end

    def _quote(self, start: int, said: str) -> None:
        """A mark right after a number is inch or foot, unless it closes a quotation."""
        after = self.text[start + 1 : start + 2]
        spaced = said in '"″' and start and self.text[start - 1] == " " and not after.strip()
        if said == '"' and self.quoted:
            self.quoted = False
        elif (self.touches(start) or (spaced and self.touches(start - 1))) and not after.isalpha():
            self.add(start, start + 1, _SIGNS.get(said, said))
        elif said == '"':
            self.quoted = True

    def mark(self, kind: str, start: int, end: int) -> int:
        """Anything but words, numbers and spaces; returns where it ends."""
        if (kind == "mark" or self.text[start] == "<") and (unit := self._bracketed_unit(start)):
            return unit
        if kind == "mark":
            self.add(start, end)
        elif kind == "sign":
            return self.sign(start, end)
        elif kind == "stop":
            self.stop(start, end)
        else:
            self.pause(_OTHER.get(self.text[start], ""))
            if self.gap == "-" and self.text[start] in "-–*·" and not _joins(self.text, start):
                self.gap = ","
        return end

    def _bracketed_unit(self, start: int) -> int:
        """The end of "[kg]" or "<kg>" behind a number, taken as a unit in brackets; 0 for anything else."""
        unit = _BRACKETED.match(self.text, start)
        if not unit or not self.touches(start - (self.text[start - 1 : start] == " ")) or unit[1].lower() not in GLUED:
            return 0
        self.pause("(")
        self.add(unit.start(1), unit.end(1))
        return unit.end()

    def stop(self, start: int, end: int) -> None:
        """A full stop, or dots that only make a pause, or the dot of an abbreviation."""
        text = self.text
        dots = text[start:end]
        ahead = text[end : end + 2].lstrip(" ")[:1]
        if "\n" in dots:
            self.quoted = False
            self.pause(".")
        elif dots == "." and self._abbreviated(start, ahead):
            return
        elif (dots.startswith("..") or dots == "…") and not ahead.isupper():
            self.pause(",")
        else:
            self.pause(".")

    def _abbreviated(self, at: int, ahead: str) -> bool:
        if not self.words or self.words[-1].end != at or ahead.isupper():
            return False
        low = self.words[-1].low
        return low in _ABBREVIATED and (low != "no" or ahead.isdigit())


def _joins(text: str, at: int) -> bool:
    """A dash without spaces joins, and so does one between figures ("10 - 12")."""
    before, after = text[max(at - 2, 0) : at], text[at + 1 : at + 3]
    if before[-1:].strip() and after[:1].strip():
        return True
    return before.strip()[-1:].isdigit() and after.strip()[:1].isdigit()


def _is_number(low: str) -> bool:
    return low[-1].isdigit() or low[-1] in _VULGAR


def split(text: str) -> list[Word]:
    """The words of a text in order; figures keep what belongs to them, units glued to figures are cut off."""
    cut = _Cutter(text)
    at, size = 0, len(text)
    match, word = _TOKEN.match, cut.word
    while at < size:
        token = match(text, at)
        assert token is not None
        kind, end = token.lastgroup, token.end()
        if kind == "word":
            end = max(word(at, token.end("word")), end)
        elif kind == "plain":
            cut.words.append(Word(token["plain"], at, token.end("plain"), cut.gap))
            cut.gap = ""
        elif kind == "number":
            end = cut.number(at, end)
        elif kind != "space":
            end = cut.mark(kind or "", at, end)
        at = end
    return cut.words
