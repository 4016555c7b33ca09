"""Which larger thing a bare word belongs to: the seal of the gearbox that the same note speaks of."""

from __future__ import annotations

import re
from collections.abc import Iterable

from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.words import SIDES, tokens
from worklog_tui.model import FactKey, Finding, Reading, Work

BARE = frozenset({
    "seal", "gasket", "bearing", "hose", "spring", "bolt", "cable", "nut", "pin", "filter", "belt", "kit", "pump",
    "valve", "switch", "ring", "washer", "shaft", "cover", "oil", "screw", "bush", "band", "element", "diaphragm",
    "pad", "shoe", "lining", "clip", "wire", "connector", "terminal", "guard", "knob", "handle", "o ring", "boot",
    "rubber", "chain", "fan", "motor", "box",
})  # fmt: skip
"""Words that name hundreds of parts: alone they say little (judgement)."""
OF_A_THING = frozenset({
    "level", "pressure", "temperature", "clearance", "tension", "play", "speed", "oil", "noise", "current",
    "resistance", "timing", "gap", "compression", "start", "smoke", "idle", "bleeding", "alignment",
})  # fmt: skip
"""Words that end the name of what is measured on a thing: the gearbox of a gearbox level."""
CARRIED = 3
"How many notes before a carried subject the fault may stand that is meant (judgement)."
NEAR = 1
"How many notes before a bare word its thing may have been named."


FLUIDS = frozenset({
    "fuel", "petrol", "diesel", "oil", "water", "coolant", "grease", "paraffin", "air", "gas", "spark", "engine",
    "machine",
})  # fmt: skip
"""What flows through everything, and the whole, owns no part."""
_NO_NAME = frozenset({
    "new", "proper", "real", "good", "old", "right", "wrong", "same", "other", "another", "whole", "first", "last",
    "next", "little", "big", "small", "few", "bit", "no", "any", "all", "both", "every", "which", "what", "or",
    "if", "then", "but", "not", "only", "more", "need", "needs", "want", "wants", "order", "get", "fit", "fitted",
    "put", "got", "had", "has", "have", "off", "back", "again", "still", "can", "will", "wont", "dont", "i", "you",
    "he", "we", "they", "them", "me", "im", "ive", "thats", "theres", "because", "where", "when", "than", "into",
    "onto", "like", "about", "tight", "loose", "dirty", "clean", "worn", "broken", "split", "bare", "dry", "wet",
    "oily", "rotten", "cracked", "borrowed", "spare", "cheap", "take", "took", "pull", "waiting", "list", "do",
    "did", "does", "per", "see", "look", "make", "made", "find", "found", "one", "two", "three", "four", "five",
    "six", "hundred", "thou", "mil", "mm", "inch", "must", "should", "could", "would", "yes", "well", "ok", "okay",
    "ah", "oh", "just", "too", "very", "through", "by", "before", "after", "under", "over", "left", "between",
    "round", "around", "behind", "went", "going", "gone", "come", "came",
})  # fmt: skip
_ENDS_WITH = re.compile(r"\bthe ([a-z][a-z-]+)\W*$", re.IGNORECASE)
_PLACED = re.compile(r"\b(?:off|from|of|on|in|at|round|behind) the ([a-z][a-z-]+ [a-z][a-z-]+)\b", re.IGNORECASE)


def said_with(log: Log, words: str, anchors: tuple[FactKey, ...]) -> str:
    """A bare word with what stood before it where it was told: 'still waiting for the load check kit'."""
    said = tokens(words)
    if len(said) != 1 or said[0] not in BARE:
        return ""
    best = ""
    for key in anchors:
        told = re.findall(r"[\w'-]+|[.,;:!?]", log.words_of(key.note).lower())
        for at in (n for n, w in enumerate(told) if tokens(w) == said):
            start = at
            while start > max(0, at - 2) and _names(told[start - 1]):
                start -= 1
            found = " ".join(told[start : at + 1])
            if len(found) > len(best) and start < at:
                best = found
    return best


def is_no_name(word: str) -> bool:
    """Whether a word cannot be part of a thing's name."""
    return not _names(word.lower())


def _names(word: str) -> bool:
    """Whether a word may be part of a thing's name."""
    plain = word.replace("'", "")
    return word[0].isalpha() and len(plain) > 2 and bool(tokens(plain)) and plain not in _NO_NAME and "'" not in word


def owner(log: Log, words: str, anchors: tuple[FactKey, ...]) -> str:
    """The thing that a bare part belongs to, by what was spoken of just before it; empty when nothing tells."""
    said = [w for w in tokens(words) if w not in SIDES]
    if len(said) != 1 or said[0] not in BARE:
        return ""
    for key in anchors:
        if topic := _topic(log, said[0], key.note):
            return topic
        at = log.when(key)
        begins = said[0] in tokens(log.words_of(key.note))[:1]
        near = 0 if begins else NEAR  # a note that begins with it has a topic of its own
        before = [e for e in log.before(at, near) if isinstance(e.fact, (Finding, Work, Reading)) and e.name]
        for event in reversed(before):
            named = _thing(event.name)
            if named and said[0] not in tokens(named) and not set(tokens(named)) <= BARE | FLUIDS:
                return named
    return ""


def _topic(log: Log, word: str, note: str) -> str:
    """What the note before ended with, where this one begins with the word: 'except the handbrake. Cable moved'."""
    if word not in tokens(log.words_of(note))[:2]:
        return ""
    ends = _ENDS_WITH.search(log.words_before(note))
    return ends[1].lower() if ends and _names(ends[1].lower()) and tokens(ends[1])[-1:] != (word,) else ""


def placed(log: Log, words: str, anchors: tuple[FactKey, ...]) -> str:
    """Where a bare part was said to be, in two words: the side cover of 'a drip off the side cover'."""
    if len(tokens(words)) != 1:
        return ""
    for key in anchors:
        for told in (log.words_of(key.note), log.words_before(key.note)):
            for found in _PLACED.findall(told):
                one, two = found.lower().split()
                if _names(one) and _names(two) and tokens(two) != tokens(words):
                    return str(found.lower())
    return ""


def meant(log: Log, words: str, anchors: tuple[FactKey, ...]) -> str:
    """What words that were not said in their own note stand for: the last fault just before; the words if none."""
    said = set(tokens(words))
    if any(said & set(tokens(log.words_of(k.note))) for k in anchors):
        return words
    for key in anchors:
        for event in reversed(log.before(log.when(key), CARRIED)):
            fact = event.fact
            if isinstance(fact, Finding) and fact.verdict == "bad" and fact.state and fact.name:
                return fact.part
    return words


def full_name(log: Log, words: str, anchors: tuple[FactKey, ...]) -> str:
    """A bare word under the fullest name that the talk gives it; the word itself when nothing tells."""
    if found := said_with(log, words, anchors):
        return found
    of = " ".join(w for w in owner(log, words, anchors).split() if log.has_said(w))
    one = of[:-1] if of.endswith("s") and not of.endswith("ss") else of
    return f"{one} {words}" if tokens(of) and tokens(of)[-1] not in _TESTS else words


_TESTS = frozenset({"test", "check", "trial", "run"})
"What owns no part: the guard told beside a steam test is not that of the test."


def by_card(log: Log, thing: str, names: Iterable[str]) -> str:
    """A bare part under its name, where the card tells the rest: the guard of a belt-driven saw is its belt guard.

    `names`: those that the fault files know, beside those of the log.
    """
    said = tokens(thing)
    lead, _, last = thing.rpartition(" ")
    if len(said) != 1 or tokens(last) != said:
        return thing  # the bottom bearing of a drill with a motor need not be the motor's
    machine = log.history.machine
    card = set(tokens(f"{machine.name} {machine.kind}"))
    fitting = set()
    for name in (*(e.name for e in log.events), *names):
        named = tokens(name)
        if len(named) == 2 and named[-1] == said[0] and named[0] in card:
            fitting.add(name)
    return f"{lead} {fitting.pop()}".strip() if len(fitting) == 1 else thing


def _thing(name: str) -> str:
    words = name.split()
    return " ".join(words[:-1]) if len(words) > 1 and words[-1] in OF_A_THING else name
