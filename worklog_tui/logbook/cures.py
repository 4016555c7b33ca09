"""Troubles of the whole machine, and what a later look says about them."""

from __future__ import annotations

import re

from worklog_tui.logbook.same_thing import Thing, same_word
from worklog_tui.logbook.words import DENIALS, one_form, raw_words, stem, word_set

_KINDS = "engine machine motor it she unit mower tiller saw truck drill lathe boat outboard bike tractor mill press van"
WHOLE = frozenset(map(one_form, _KINDS.split()))
"""Words for the machine itself, in one form."""
_RUNS_WELL = re.compile(
    r"\b(runs?|running|idles?|idling|going|goes) (\w+ )?(fine|well|lovely|sweet|nice|smooth|perfect|clean)"
)
_STARTS = re.compile(
    r"\b(start(s|ed)?|fire[sd]?|runs?|ran|running|go|goes|going|catch|caught|sign of life|turn over|dead|quit)\b"
)
_DEAD = word_set("dead quit stops dies stalls nothing")
_WELL = word_set("cured fixed gone smooth sorted sweet lovely perfect stays steady settled")


def is_whole(part: Thing) -> bool:
    """Whether the part is the machine itself."""
    return part.head in WHOLE and len(part.words) == 1


def cures(bad: str, good: str) -> bool:
    """'runs' cures 'no start'; 'no hunting' cures 'hunts'; 'starts first pull' does not cure 'smokes'."""
    was, now = raw_words(bad), raw_words(good)
    if _STARTS.search(good) and set(was) & _DEAD:
        return True
    if _STARTS.search(bad) and _STARTS.search(good) and set(was) & DENIALS:
        return True
    if set(now) & DENIALS:
        return any(same_word(stem(a), stem(b)) for a in was for b in now if len(a) > 3)
    return bool(set(now) & _WELL) or bool(_RUNS_WELL.search(good))
