"""The title of a chapter from its facts: the thing that is in hand, and what became of it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence

from worklog_tui.logbook.same_thing import thing
from worklog_tui.model import Fact, Finding, FollowUp, Reading, Suspect, Work
from worklog_tui.reports.log_rows import quantity
from worklog_tui.reports.sentence import DONE, amount

LONGEST = 49
"Letters of a title; what is longer is cut off where the pointer rests on it."
_WEIGHTS: dict[type[Fact], float] = {Work: 3.0, Finding: 2.0, Reading: 2.0, Suspect: 1.5}
_NOT_IN_A_TITLE = re.compile(r"[<>\[\]{}|\\#*_`~…\"“”]+|https?:\S*|www\.\S*|\b\d{1,2}:\d\d\b")
_FURTHER = re.compile(r"\s*[,;]\s*|\s+(?:and|but|so|because|when|which|that's|it's)\s+")
_SHORT_NAME = 24
"From so many letters on a thing goes by what it was called."


def title_of(facts: Sequence[Fact], otherwise: str = "") -> str:
    """The title, at most LONGEST letters; empty when nothing can be said."""
    chosen = _in_hand(facts)
    if chosen is None:
        return _fitted(_clean(otherwise), ())
    key, said = chosen
    about = [fact for fact in facts if in_hand(fact) == key]
    return _fitted(_clean(said), tuple(dict.fromkeys(p for p in map(_clean, _phrases(about)) if p)))


def _in_hand(facts: Sequence[Fact]) -> tuple[str, str] | None:
    """The thing that most is said about, and how it is called."""
    weights: Counter[str] = Counter()
    names: dict[str, str] = {}
    for fact in facts:
        key = in_hand(fact)
        if key:
            weights[key] += _WEIGHTS.get(type(fact), 0.5)  # type: ignore[assignment]
            name = thing(fact.about, getattr(fact, "name", "")).name
            names.setdefault(key, name if name and len(name) <= _SHORT_NAME else fact.about)
    if not weights:
        return None
    best = max(weights, key=lambda key: weights[key])
    return best, names[best]


def in_hand(fact: Fact) -> str:
    """The thing that a fact is about, by one name; empty when it is about nothing."""
    about = thing(fact.about, getattr(fact, "name", ""))
    return about.name or about.head or fact.about.lower()


def _phrases(facts: Sequence[Fact]) -> Iterator[str]:
    """What became of it, the most telling first: what is wrong, what was done, what was measured."""
    for fact in facts:
        if isinstance(fact, Finding) and fact.verdict == "bad":
            yield _briefly(fact.condition)
    for fact in facts:
        if isinstance(fact, Suspect) and fact.standing != "suspected":
            yield "this was it" if fact.standing == "confirmed" else "ruled out"
    for fact in facts:
        if isinstance(fact, Work):
            yield DONE.get(fact.action, fact.action)
        elif isinstance(fact, Reading) and fact.role in ("measured", "set"):
            yield _measured(fact)
    for fact in facts:
        if isinstance(fact, Finding) and fact.verdict == "good":
            yield _briefly(fact.condition)
        elif isinstance(fact, FollowUp):
            yield {"part needed": "needed", "temporary": "for now only"}.get(fact.reason, "")
        elif isinstance(fact, Suspect) and fact.standing == "suspected":
            yield "suspected"


def _briefly(condition: str) -> str:
    """The first thing that a condition says, without a capital: sooty, of "Sooty, and it's damp"."""
    first = _FURTHER.split(condition.strip(), maxsplit=1)[0]
    return first[:1].lower() + first[1:] if first[1:2].islower() or len(first) == 1 else first


def _measured(fact: Reading) -> str:
    what = quantity(fact.quantity)
    named = what in f"{fact.subject} {fact.name}".lower() or what in ("amount", "time", "length")
    how = "set to " if fact.role == "set" else ""
    return ("" if named else f"{what} ") + how + amount(fact.value, fact.unit)


def _fitted(name: str, phrases: Sequence[str]) -> str:
    """The name, and as many of the phrases as there is room for, three at most."""
    title = _cut(name[:1].upper() + name[1:])
    for number, phrase in enumerate(phrases[:3]):
        longer = f"{title}{', ' if number else ': '}{phrase}"
        if len(longer) > LONGEST:
            break
        title = longer
    return title


def _cut(text: str) -> str:
    if len(text) <= LONGEST:
        return text
    return text[:LONGEST].rsplit(" ", 1)[0] if " " in text[:LONGEST] else text[:LONGEST]


def _clean(text: str) -> str:
    """The text without what a platform takes for something else."""
    return " ".join(_NOT_IN_A_TITLE.sub(" ", text).split()).strip(" -–,.:;")
