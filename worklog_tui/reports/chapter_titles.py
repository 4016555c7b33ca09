"""The title of a chapter from its facts: the thing that is in hand, and what became of it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from worklog_tui.logbook.same_thing import FASTENERS, thing
from worklog_tui.logbook.spelling import written_out
from worklog_tui.logbook.words import COUNTED, raw_words, word_set
from worklog_tui.model import Fact, Finding, Reading, Suspect, Work
from worklog_tui.reports.chapter_phrases import OF_A_PERSON, tells
from worklog_tui.reports.chapter_phrases import phrases as phrases_of

LONGEST = 49
"Letters of a title; what is longer is cut off where the pointer rests on it."
_WEIGHTS: dict[type[Fact], float] = {Work: 3.0, Finding: 2.0, Reading: 2.0, Suspect: 1.5}
_FOUND = 3.0
"That the cause was found in it."
_NOT_IN_A_TITLE = re.compile(r"[<>\[\]{}|\\#*_`~…\"“”]+|https?:\S*|www\.\S*|\b\d{1,2}:\d\d\b")
_TWICE = re.compile(r"\b(\w+) and (?:the |a )?\1\b", re.IGNORECASE)
_TRAILING = re.compile(r"(?<=[a-z])\s\d+$")
"The number of one of several behind a name that has none: glow plugs 2."
_SHORT_NAME = 28
"Letters that a name may have."


def title_of(facts: Sequence[Fact], otherwise: str = "", first: bool = False) -> str:
    """The title, at most LONGEST letters; empty when nothing can be said.

    `otherwise` names the machine. What is told of it as a whole stands under its name where a film begins
    (`first`), later under trying it.
    """
    chosen = _in_hand(facts)
    if chosen is None:
        return _fitted(_clean(otherwise), ())
    key, said = chosen
    about = [fact for fact in facts if in_hand(fact) == key]
    cleaned = (_clean(p).removeprefix(f"{said.lower()} ") for p in phrases_of(about))
    phrases = tuple(dict.fromkeys(p for p in cleaned if tells(p)))
    if said.lower() in _WHOLE or key == in_words(otherwise):
        name = "Trying it" if not first else _clean(otherwise) if len(otherwise) <= _SHORT_NAME else "As it came"
        return _fitted(name, phrases) if phrases else ""
    return _fitted(_clean(_small_letters(said)), phrases)


_WHOLE = frozenset({"engine", "machine", "motor", "unit"})
"Names of the machine as a whole."


def _small_letters(said: str) -> str:
    """The name with capitals only where they say something: Inlet Tappets as inlet tappets, but PTO guard."""
    return " ".join(word.lower() if word[1:].islower() else word for word in said.split())


def in_words(name: str) -> str:
    """A name as the thing in hand is called."""
    about = thing(name)
    return about.name or about.head or name.lower()


def _in_hand(facts: Sequence[Fact]) -> tuple[str, str] | None:
    """The thing that most is said about, and how it is called."""
    weights: Counter[str] = Counter()
    names: dict[str, Counter[str]] = {}
    for fact in facts:
        key = in_hand(fact)
        if key:
            weight = _weight(fact) * (_SMALL_SHARE if _small(key, fact) else 1.0)
            weights[key] += weight  # type: ignore[assignment]
            names.setdefault(key, Counter())[_called(fact)] += weight  # type: ignore[assignment]
    if not weights:
        return None
    best = max(weights, key=lambda key: weights[key])
    return best, max(names[best], key=lambda name: names[best][name])


_SMALL_SHARE = 0.6
"What a small part weighs, of which a machine has many: a bolt, a gasket; a title is rather of what it belongs to."
_SMALL = FASTENERS | word_set(
    "washer pin end face leg side cap tape brick part bit hole clip key bracket plate line gasket cover pipe gauge"
)
_CONTRACTED = ("'ve", "'ll", "'re", "'d", "'m", "n't")
"Endings of what is no name: they've."
_SETTING = re.compile(r" (?:gap|adjustment)$")
"What is set on a part is that part in hand: the clutch adjustment is the clutch."
_TRIALS = frozenset({"compression"})
"Tests that are a turn of the work by themselves, whatever they are read on."


def _small(key: str, fact: Fact) -> bool:
    return key in _SMALL or (len(raw_words(fact.about)) == 1 and thing(fact.about).head in _SMALL)


def _weight(fact: Fact) -> float:
    found = isinstance(fact, Suspect) and fact.standing == "confirmed"
    return _FOUND if found else _WEIGHTS.get(type(fact), 0.5)


def in_hand(fact: Fact) -> str:
    """The thing that a fact is about, by one name; empty when it is about nothing."""
    if isinstance(fact, Reading) and fact.quantity in _TRIALS:
        return fact.quantity
    said = fact.about.lower().replace("’", "'").split()
    if any(word in OF_A_PERSON or word.endswith(_CONTRACTED) for word in said):
        return ""
    about = thing(fact.about, getattr(fact, "name", ""))
    return _SETTING.sub("", about.name) or about.head or fact.about.lower()


def _called(fact: Fact) -> str:
    """The thing as it was called, or by its name in the vocabulary where that says more and is short."""
    if isinstance(fact, Reading) and fact.quantity in _TRIALS:
        return fact.quantity
    name = thing(fact.about, getattr(fact, "name", "")).name
    said = written_out(fact.about, name)
    if name and any(len(one) > len(word) > 4 and one.rstrip("s").endswith(word.rstrip("s").lower())
                    for one in name.split() for word in said.split()):  # fmt: skip
        said = name  # its beginning was lost: jectors
    if name and (len(said) > _SHORT_NAME or len(name.split()) > len(said.split())):
        said = name if len(name) <= _SHORT_NAME else said
    return said if thing(said).head in COUNTED and not said.split()[-2:][0].endswith("s") else _TRAILING.sub("", said)


def _fitted(name: str, phrases: Sequence[str]) -> str:
    """The name, and as many of the phrases as there is room for."""
    title = _cut(name[:1].upper() + name[1:])
    for number, phrase in enumerate(phrases):
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
    return _TWICE.sub(r"\1", " ".join(_NOT_IN_A_TITLE.sub(" ", text).split())).strip(" -–,.:;")
