"""Whether a step reads as a job at all: what was cut badly out of talk is not put before a person."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log, proves_good
from worklog_tui.diagnosis.words import tokens

_ENDS_BADLY = re.compile(
    r"\b(?:on|until|till|with|the|a|an|and|or|but|of|for|to|from|at|if|is|are|was|my|his|there|that|it['’]s|i|we|you"
    r"|they|which|who|as|be|been|has|have|not|go|the (?:weak|other|same|left|right|first|last|back|old|bad|good)"
    r"|(\w+) \1)$",
    re.IGNORECASE,
)
_TALKS = re.compile(
    r"\b(?:isn['’]?t|ain['’]?t|wasn['’]?t|aren['’]?t|['’]s not|is not|doesn['’]?t|don['’]?t|wouldn['’]?t|i|you|they"
    r"|he|she|it is|it was|anybody|anyone|somebody|em|till|until)\b"
    r"|\bthe \w+ the\b|\bthe (?:the|those|these|that|this|it|a|an|in|on|see|go|get|for|and)\b"
    r"|\bnew (?:in|on|the|those|of|it)\b|\b(?:stem|valve|pump|seat) the\b",
    re.IGNORECASE,
)
_POINTS = frozenset({
    "that", "those", "these", "this", "it", "them", "one", "ones", "away", "new", "old", "proper", "right", "wrong",
    "thing", "stuff", "lot", "both", "other", "rest", "see", "order", "fit", "put", "send", "get", "look",
    "clean", "check", "do", "make", "find", "cause", "replace", "real", "good", "bad", "left",
})  # fmt: skip
TWICE = 2
LATER = 1e6
"Puts what was only noticed behind the person's own causes."
WEIGHED = (Tier.LISTED, Tier.HOLDS_UP, Tier.PART, Tier.NOTICED)
_REMARK = re.compile(r"\s*\([^)]*\)$")


def is_sound(step: str) -> bool:
    """Whether the words of a step name something to work on, and end where a job ends."""
    plain = _REMARK.sub("", step)
    if _ENDS_BADLY.search(plain) or _TALKS.search(plain):
        return False
    if plain.split()[0].lower() in ("try", "run", "test") and len(plain.split()) > 1:
        return True
    return any(w not in _POINTS and len(w) > 1 for w in tokens(plain))


def weighed(candidates: list[Candidate], log: Log) -> list[Candidate]:
    """The candidates, each with whether its thing was spoken of in one note only."""
    counted: Counter[str] = Counter()
    for note in log.last_notes:
        counted.update(set(tokens(note.words)))
    return [replace(c, alone=_times(c, counted) < TWICE) if c.tier in WEIGHED else c for c in candidates]


def _times(candidate: Candidate, counted: Counter[str]) -> int:
    words = [w for w in tokens(_REMARK.sub("", candidate.step.step)) if w not in _POINTS]
    return max((counted[w] for w in words[-2:]), default=0)


def before_general(candidates: list[Candidate], log: Log) -> list[Candidate]:
    """The candidates, with a fault that was told more than once before what is tried on any machine with a trouble."""
    good = {e.name for e in log.findings if proves_good(e.fact) and e.place.session == log.last_session}
    return [
        replace(c, tier=Tier.OWN_CAUSE, order=c.order + LATER) if _is_firm(c) and c.name not in good else c
        for c in candidates
    ]


def _is_firm(candidate: Candidate) -> bool:
    told = bool(candidate.name) and not candidate.alone and bool(candidate.notes)
    return candidate.tier is Tier.NOTICED and told and bool(candidate.step.aim)


def sifted(candidates: list[Candidate]) -> list[Candidate]:
    """The candidates, with those that do not read as a job behind all others; a danger keeps its place."""
    return [c if c.tier is Tier.DANGER or is_sound(c.step.step) else replace(c, tier=Tier.DOUBTFUL) for c in candidates]
