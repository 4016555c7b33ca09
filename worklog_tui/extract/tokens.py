"""Tokens: the text cut into terms of the vocabulary, amounts, numbers, threads, markers of which one, and other
words.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from worklog_tui.extract.heard.clean import clean
from worklog_tui.extract.heard.words import Word, split
from worklog_tui.extract.met import counting, meet
from worklog_tui.extract.numbers.amounts import Amount, amount_at
from worklog_tui.extract.numbers.measures import SHARES
from worklog_tui.extract.numbers.numerals import Numeral, numeral_at
from worklog_tui.extract.numbers.thread_words import Thread
from worklog_tui.extract.numbers.threads import CODES, thread_at
from worklog_tui.extract.numbers.unit_ahead import INSIDE
from worklog_tui.extract.terms import longest_term
from worklog_tui.extract.which import which_at
from worklog_tui.rulebook import Met, Rulebook, Sense
from worklog_tui.rulebook.classes import amount_classes

STOPS = {".": "stop", ",": "comma", ";": "comma", ":": "comma", "(": "comma"}


@dataclass(slots=True)
class Thing:
    """A mention of a part, a fluid, a machine or a quality, with which one it is."""

    words: str
    name: str
    kind: str
    which: str = ""
    own: str = ""
    "Its words without what it belongs to or is named with."
    per: str = ""
    quantities: tuple[str, ...] = ()
    system: str = ""
    known: bool = True
    loose: bool = False
    "Named by a word that is often no part at all."
    of: Thing | None = None
    "The thing that it belongs to: in `gasket on the sump`, the sump."
    also: tuple[Thing, ...] = ()
    "Further things named in one breath: `rings and valves`."


@dataclass(slots=True)
class Token:
    """A piece of the text. Characters start to end (exclusive); `low` is what was said, in lower case."""

    kind: str
    "word, term, amount, number, thread, which, thing, stop or comma."
    low: str
    start: int
    end: int
    classes: frozenset[str]
    senses: tuple[Sense, ...] = ()
    amount: Amount | None = None
    value: float | None = None
    high: float | None = None
    "The upper end of a range of bare numbers: `sixty to seventy`."
    pairs: tuple[float, ...] = ()
    thread: Thread | None = None
    which: str = ""
    thing: Thing | None = None
    stances: frozenset[str] = frozenset()
    clause: int = 0

    def sense(self, *classes: str) -> Sense | None:
        """The first sense of one of the classes, in the order of the classes."""
        if self.senses:
            for cls in classes:
                if cls in self.classes:
                    for s in self.senses:
                        if s.cls == cls:
                            return s
        return None


STOP, ASKS, COMMA = frozenset({"stop"}), frozenset({"stop", "asks"}), frozenset({"comma"})
COLON = frozenset({"comma", "colon"})
RATIO = frozenset({"ratio"})
_RATIO = re.compile(r"(\d{1,3}(?:\.\d+)?):1")
NUMBER, LOOSE, THREAD, WHICH = frozenset({"number"}), frozenset({"loose"}), frozenset({"thread"}), frozenset({"which"})


def chunk(text: str, book: Rulebook, cylinders: int = 0, around: frozenset[str] = frozenset()) -> list[Token]:
    """The tokens of a text, in order; time grows linearly with its length. `around`: words of the machine's kind."""
    words = clean(split(text), book.misheard, around)
    tokens: list[Token] = []
    i, size, known = 0, len(words), book.met
    while i < size:
        low, start, upto, gap = words[i]
        if gap and gap in STOPS and tokens:
            tokens.append(_pause(text, gap, tokens[-1].end, start))
        term = known.get(low) or meet(low, book)
        if term.counts and not _is_article(words, i, book):
            token, i = _counted(words, i, book, cylinders)
        elif term.goes_on and i + 1 < size and words[i + 1].low in term.goes_on:
            term, after = longest_term(words, i, book)
            token, i = _word(words, i, after, term), after
        else:
            token, i = Token(term.kind, low, start, upto, term.classes, term.senses), i + 1
        tokens.append(token)
    if tokens and (end := text[tokens[-1].end :].strip()) and end[-1] in ".!?\u2026":
        tokens.append(_pause(text, ".", tokens[-1].end, len(text)))
    return tokens


ARROW, ARROWS = "->", frozenset({"->", "=>", "-->", "\u2192", "\u21d2"})
"How a comma is called that was typed as an arrow, and how arrows are typed: `0.6 -> 0.4`, `cable seized => new one`."


def _pause(text: str, gap: str, start: int, end: int) -> Token:
    """A stop or a comma; a stop that ends a question says so."""
    kind = STOPS[gap]
    if kind == "comma":
        low = ARROW if gap == "," and text[start:end].strip() in ARROWS else gap
        return Token(kind, low, start, end, COLON if gap == ":" else COMMA)
    asks = "?" in text[start:end]
    return Token(kind, "?" if asks else gap, start, end, ASKS if asks else STOP)


def _is_article(words: list[Word], i: int, book: Rulebook) -> bool:
    """Whether `a` or `an` only stands before a name: what follows belongs to no number and no amount."""
    if words[i].low not in book.numerals.article or i + 1 == len(words):
        return False
    low = words[i + 1].low
    return low.isalpha() and not (
        low in counting(book) or low in book.numerals.within or low in INSIDE or low in SHARES or low == "below"
    )


def _counted(words: list[Word], i: int, book: Rulebook, cylinders: int) -> tuple[Token, int]:
    """The longest token at word i, with which a number may begin, and the word after it; of equally long ones, an
    amount comes before a term.
    """
    first = words[i]
    term, after = longest_term(words, i, book)
    if found := which_at(words, i, cylinders):
        name, end = found
        numbered = thread_at(words, i, book.numerals)  # `number two BA`, `#10-32`
        if numbered and numbered.end > max(end, after - 1):
            until = words[numbered.end - 1].end
            return Token("thread", first.low, first.start, until, THREAD, thread=numbered), numbered.end
        if end >= after:
            return Token("which", first.low, first.start, words[end - 1].end, WHICH, which=name), end
    if ratio := _RATIO.fullmatch(first.low):
        return Token("ratio", first.low, first.start, first.end, RATIO, value=float(ratio[1])), i + 1
    numeral = numeral_at(words, i, book.numerals)
    none = numeral is None and first.low in book.numerals.starts  # it begins none here: that is not worked out again
    thread = thread_at(words, i, book.numerals, numeral) if not none or first.low[0] in CODES else None
    amount = amount_at(words, i, book.numerals, book.units, numeral) if not none else None
    if thread and thread.end >= after and thread.end >= (amount.end if amount else 0):
        return Token("thread", first.low, first.start, words[thread.end - 1].end, THREAD, thread=thread), thread.end
    if amount and amount.end >= after:
        classes = amount_classes(amount.quantities, book.named)
        return Token("amount", first.low, first.start, words[amount.end - 1].end, classes, amount=amount), amount.end
    if numeral and 5 <= numeral.value <= 120 and (end := _to_one(words, numeral.end)):
        return Token("ratio", first.low, first.start, words[end - 1].end, RATIO, value=numeral.value), end
    if numeral and numeral.form != "ordinal" and numeral.end >= after:
        upper = _upper(words, numeral.end, numeral.value, book) if not numeral.loose or first.low == "one" else None
        if numeral.end == after and numeral.loose and term.senses and upper is None:
            return _word(words, i, after, term), after
        classes = NUMBER if upper or not numeral.loose or _of_an_inch(numeral, words) else LOOSE
        end = upper.end if upper else numeral.end
        token = Token("number", first.low, first.start, words[end - 1].end, classes, value=numeral.value,
                      high=upper.value if upper else None, pairs=numeral.parts)  # fmt: skip
        return token, end
    return _word(words, i, after, term), after


def _word(words: list[Word], i: int, after: int, term: Met) -> Token:
    """The words from i up to `after` as a term of the vocabulary, or as a word that it lacks."""
    return Token(term.kind, term.low, words[i].start, words[after - 1].end, term.classes, term.senses)


def _of_an_inch(numeral: Numeral, words: list[Word]) -> bool:
    """`A sixteenth`, `an eighth`, with nothing that it is a share of: nobody divides anything else so finely."""
    share = numeral.form == "fraction" and numeral.value in FINE
    return share and (numeral.end >= len(words) or words[numeral.end].low != "of" or bool(words[numeral.end].gap))


FINE = frozenset({1 / 8, 1 / 16, 1 / 32, 1 / 64})
"Shares of an inch (common practice)."


def _upper(words: list[Word], end: int, low: float, book: Rulebook) -> Numeral | None:
    """The upper end of a range of bare numbers that begins at word `end`: `to seventy`, `-125`, `or nine` behind an
    eight; it must be above the lower.
    """
    if end >= len(words):
        return None
    joined = words[end].low if words[end].gap == "" else ""
    start = end if words[end].gap == "-" else end + 1 if joined in ("to", "or") else None
    if start is None or start >= len(words):
        return None
    numeral = numeral_at(words, start, book.numerals)
    if numeral is None or numeral.loose or not low < numeral.value <= (low + 1 if joined == "or" else 10 * low):
        return None
    return numeral


def _to_one(words: list[Word], k: int) -> int:
    """The word after `to one` that makes a ratio of the number before it, as in `fifty to one`; 0 when it does not."""
    if k + 1 >= len(words) or words[k].low != "to" or words[k + 1].low not in ("one", "1") or words[k + 1].gap:
        return 0
    return k + 2
