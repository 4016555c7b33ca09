"""Whether two tellings mean one thing: words alike, but numbers, sides and denials exactly alike."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from worklog_tui.logbook.deeds import Deed, asked
from worklog_tui.logbook.words import COUNTED, DENIALS, FILLER, NUMBERS, ORDINALS, SIDES, one_form, raw_words, word_set

ALIKE = 88
"Likeness, of 100, from which two words of five letters or more are one word and a slip of the pen."
_APART = (frozenset({"magnet", "magneto"}), frozenset({"stator", "starter"}), frozenset({"bush", "brush"}))
_PIECES = re.compile(
    r"\b(?:of|on|in|for|at|from|to|behind|between|under|with|by|near|off|into|inside|after|before|if|when)\b|[,;()]"
)
_WEAK_HEADS = word_set("assembl gap clearanc level set kit size end problem fault troubl connection")


@dataclass(frozen=True, slots=True)
class Thing:
    """A thing as it is compared."""

    words: frozenset[str]
    "Its words without filler, each in one form; a denied one with '!' in front."
    head: str
    "The word that says what it is: gasket of 'new gasket for the sump'."
    marks: frozenset[str]
    "What tells it from its like: number, left or right, inlet or exhaust."
    name: str = ""
    "Its name in the vocabulary, in lower case."
    deed: Deed = Deed()
    "What is asked to be done with it."


@lru_cache(maxsize=20_000)
def thing(text: str, name: str = "") -> Thing:
    """The thing that a few words name."""
    deed = asked(text)
    words, marks = _read(text, deed.word)
    first = next((p for p in _PIECES.split(text.lower()) if _read(p, deed.word)[0]), "")
    ends = [w for w in _read(first, deed.word)[0] if not w.startswith("!")] or [w.lstrip("!") for w in words]
    strong = [w for w in ends if w not in _WEAK_HEADS] or ends
    return Thing(frozenset(words), strong[-1] if strong else "", frozenset(marks), name.lower(), deed)


def _read(text: str, skip: str) -> tuple[list[str], set[str]]:
    words: list[str] = []
    marks: set[str] = set()
    raws = raw_words(text)
    denied = False
    for place, raw in enumerate(raws):
        before = raws[place - 1] if place else ""
        after = raws[place + 1] if place + 1 < len(raws) else ""
        if raw in DENIALS and not (raw == "no" and (after.isdigit() or after in NUMBERS)):
            denied = True
        elif raw in SIDES:
            marks.add(SIDES[raw])
        elif _numbers(raw, before, after):
            marks.add(NUMBERS.get(raw, ORDINALS.get(raw, raw)))
        elif raw not in FILLER and raw != skip and not raw[0].isdigit() and raw not in NUMBERS:
            words.append(("!" if denied else "") + one_form(raw))
            denied = False
    return words, marks


def _numbers(raw: str, before: str, after: str) -> bool:
    counted = one_form(before) in COUNTED or before == "number" or one_form(after) in COUNTED
    return (raw.isdigit() or raw in NUMBERS or raw in ORDINALS) and counted


def same_word(a: str, b: str) -> bool:
    """Whether two words in one form are one word."""
    if a == b:
        return True
    if a[:2] != b[:2] or min(len(a), len(b)) < 5 or "!" in (a[0], b[0]) or frozenset({a, b}) in _APART:
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
    """Whether two tellings mean the same thing."""
    if not marks_agree(a, b):
        return False
    if a.name and a.name == b.name:
        return True
    if not a.words or not b.words:
        return False
    if not same_word(a.head, b.head) and not (a.name and b.name and a.name == b.name):
        return False
    return holds(a.words, b.words) or holds(b.words, a.words)


def speaks_of(telling: Thing, topic: Thing) -> bool:
    """Whether a telling about a part is a telling about the topic: the part is its head, or what it is on."""
    if same(telling, topic):
        return True
    if not marks_agree(telling, topic) or not telling.words or not topic.words:
        return False
    if telling.name and topic.name and telling.name != topic.name:
        return False
    return len(telling.words) >= 2 and holds(topic.words, telling.words)
