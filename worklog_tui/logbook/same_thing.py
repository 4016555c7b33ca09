"""Whether two tellings mean one thing: words alike, but numbers and sides exactly alike."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from worklog_tui.logbook.deeds import Deed, asked
from worklog_tui.logbook.words import (
    COUNTED,
    DENIALS,
    FILLER,
    NUMBERS,
    ORDINALS,
    SIDES,
    one_form,
    raw_words,
    word_set,
)

ALIKE = 88
"Likeness, of 100, from which two words of five letters or more are one word and a slip of the pen."
_APART = (frozenset({"magnet", "magneto"}), frozenset({"stator", "starter"}), frozenset({"bush", "brush"}))
_PIECES = re.compile(
    r"\b(?:of|on|in|for|at|from|to|behind|between|under|with|by|near|off|into|inside|after|before|if|when|instead)\b|[,;()]"
)
_ONE_OF_SEVERAL = re.compile(r"(?:cylinder|number|no\.?) ?\w+")
"Words that name nothing but which one: the name is then that of the thing talked of, not of the cylinder."
_PURPOSE = re.compile(r"\b(?:for|if|when|once|before|after|because|until|till)\b")
_WEAK_HEADS = word_set("assembl gap clearanc level set kit size end problem fault troubl connection height setting")
_HOW = word_set("flush properly hot cold square true tight")
FASTENERS = word_set("bolt nut screw stud")


@dataclass(frozen=True, slots=True)
class Thing:
    """A thing as it is compared."""

    words: frozenset[str]
    "Its words without filler, each in one form."
    head: str
    "The word that says what it is: gasket of 'new gasket for the sump'."
    marks: frozenset[str]
    "What tells it from its like: number, left or right, inlet or exhaust, hot or cold."
    name: str
    "Its name in the vocabulary, in lower case; empty when it has none."
    deed: Deed
    "What is asked to be done with it."
    core: frozenset[str]
    "Its words without what the deed is for."


@lru_cache(maxsize=20_000)
def thing(text: str, name: str = "") -> Thing:
    """The thing that a few words name."""
    if _ONE_OF_SEVERAL.fullmatch(text.lower()):
        name = ""
    deed = asked(text)
    words, marks = _read(text, deed.word)
    pieces = [read for p in _PIECES.split(text.lower()) if (read := _read(p, deed.word)[0])]
    ends = next((read for read in pieces if set(read) - _WEAK_HEADS), pieces[0] if pieces else words)
    strong = [w for w in ends if w not in _WEAK_HEADS] or ends
    core = frozenset(_read(_PURPOSE.split(text.lower(), maxsplit=1)[0], deed.word)[0]) if deed.actions else frozenset()
    head = strong[-1] if strong else ""
    return Thing(frozenset(words), head, frozenset(marks), name.lower(), deed, core or frozenset(words))


def _read(text: str, skip: str) -> tuple[list[str], set[str]]:
    words: list[str] = []
    marks: set[str] = set()
    raws = raw_words(text)
    for place, raw in enumerate(raws):
        before = raws[place - 1] if place else ""
        after = raws[place + 1] if place + 1 < len(raws) else ""
        if raw in SIDES:
            marks.add(SIDES[raw])
        elif _numbers(raw, before, after) or (before and not after and _is_one_of(raw)):
            marks.add(NUMBERS.get(raw, ORDINALS.get(raw, raw)))
        elif raw in ("hot", "cold"):
            marks.add(raw)
        elif _tells(raw, skip) and not (raw in _HOW and place == len(raws) - 1 and place):
            words.append(one_form(raw))
    return words, marks


def _tells(raw: str, skip: str) -> bool:
    return raw not in FILLER and raw not in DENIALS and raw != skip and not raw[0].isdigit() and raw not in NUMBERS


def _is_one_of(last: str) -> bool:
    """Whether the last word of a name tells which one, whatever the thing is: jectors 2."""
    return last.isdigit() and len(last) <= 2


def _numbers(raw: str, before: str, after: str) -> bool:
    counted = one_form(before) in COUNTED or before == "number" or one_form(after) in COUNTED
    return (raw.isdigit() or raw in NUMBERS or raw in ORDINALS) and counted


def same_word(a: str, b: str) -> bool:
    """Whether two words in one form are one word."""
    if a == b:
        return True
    if a[:2] != b[:2] or min(len(a), len(b)) < 5 or frozenset({a, b}) in _APART:
        return False
    from rapidfuzz import fuzz

    return bool(fuzz.ratio(a, b) >= ALIKE)


def holds(whole: frozenset[str], part: frozenset[str]) -> bool:
    """Whether each word of `part` is one of `whole`."""
    return part <= whole or all(any(same_word(w, p) for w in whole) for p in part)


def marks_agree(a: Thing, b: Thing) -> bool:
    """Whether they can be the same one of several: one of them may leave it unsaid."""
    return not a.marks or not b.marks or a.marks <= b.marks or b.marks <= a.marks


def same(a: Thing, b: Thing) -> bool:
    """Whether two tellings mean the same thing; the vaguer one may not say which one where the other does not."""
    if not marks_agree(a, b):
        return False
    if a.name and a.name == b.name:
        return True
    if not a.words or not b.words or not same_word(a.head, b.head):
        return False
    return _vaguer(a, b) or _vaguer(b, a)


def _vaguer(a: Thing, b: Thing) -> bool:
    """Whether `a` says no more than `b`."""
    if not holds(b.words, a.core):
        return False
    return a.marks <= b.marks or holds(a.core, b.core)


def speaks_of(telling: Thing, topic: Thing) -> bool:
    """Whether a telling about a part is a telling about the topic: the part is its head, or what it is on."""
    if same(telling, topic):
        return True
    if not marks_agree(telling, topic) or not telling.words or not topic.words:
        return False
    if "tighten" in topic.deed.actions and telling.head in FASTENERS:
        rest = telling.words - FASTENERS
        return bool(rest) and holds(topic.words, rest)
    if telling.name and topic.name and telling.name != topic.name:
        return False
    return len(telling.words) >= 2 and holds(topic.words, telling.words)


def of_one_head(a: Thing, b: Thing) -> bool:
    """Whether both are called by the same last word, and can be the same one of several: drive belt, fan belt."""
    return bool(a.head) and a.head == b.head and marks_agree(a, b)


def one_thing(a: Thing, b: Thing) -> bool:
    """Whether both may be one thing, or one is on the other."""
    return of_one_head(a, b) or speaks_of(a, b) or speaks_of(b, a)
