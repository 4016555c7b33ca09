"""The title of a chapter from its facts: the thing that is in hand, and what became of it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence

from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.spelling import written_out
from worklog_tui.model import Fact, Finding, FollowUp, Reading, Suspect, Work
from worklog_tui.reports.log_rows import quantity
from worklog_tui.reports.sentence import DONE, amount

LONGEST = 49
"Letters of a title; what is longer is cut off where the pointer rests on it."
_WEIGHTS: dict[type[Fact], float] = {Work: 3.0, Finding: 2.0, Reading: 2.0, Suspect: 1.5}
_NOT_IN_A_TITLE = re.compile(r"[<>\[\]{}|\\#*_`~…\"“”]+|https?:\S*|www\.\S*|\b\d{1,2}:\d\d\b")
_FURTHER = re.compile(r"\s*[,;]\s*|\s+(?:and|but|so|because|when|which|that's|it's)\s+")
_EMPTY = "as|of|a|an|the|to|in|on|like|with|for|is|it|at"
_DANGLING = re.compile(
    rf"^(?:(?:an?|the|just|kinda|kind of|really|very|all)\b\s*)+|(?:\s+(?:{_EMPTY}))+$", re.IGNORECASE
)
_FILLED = re.compile(r"\s+(?:kinda|kind of|sorta|sort of|just|really|pretty|basically)\s+")
"Words that say nothing at the beginning or the end of what is told briefly."
_TWICE = re.compile(r"\b(\w+) and (?:the |a )?\1\b", re.IGNORECASE)
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
    phrases = tuple(dict.fromkeys(p for p in map(_clean, _phrases(about)) if _tells(p)))
    if said.lower() in _WHOLE or key == in_words(otherwise):
        name = "Trying it" if not first else _clean(otherwise) if len(otherwise) <= _SHORT_NAME else "As it came"
        return _fitted(name, phrases) if phrases else ""
    return _fitted(_clean(_small_letters(said)), phrases)


_WHOLE = frozenset({"engine", "machine", "motor", "unit"})
"Names of the machine as a whole."
_OF_A_PERSON = frozenset(
    "i you he she it we they him her them me us that this there i'm i'd i'll you'd you'll it'll it's that's".split()
)
_SAYS_NOTHING = frozenset(
    {"done", "bang", "sorted", "still", "thing", "going back", "stays there", "not dead", "like that", "bodge"}
)
"Words by which a phrase is a piece of a sentence; phrases that say nothing by themselves (closed lists, judgement)."


def _tells(phrase: str) -> bool:
    """Whether a phrase can stand in a title: not a piece of a sentence, not single letters."""
    words = phrase.lower().split()
    pieces = any(word in _OF_A_PERSON for word in words) or all(len(word) == 1 and word.isalpha() for word in words)
    return bool(words) and not pieces and phrase.lower() not in _SAYS_NOTHING


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
            weight = _WEIGHTS.get(type(fact), 0.5)
            weights[key] += weight  # type: ignore[assignment]
            names.setdefault(key, Counter())[_called(fact)] += weight  # type: ignore[assignment]
    if not weights:
        return None
    best = max(weights, key=lambda key: weights[key])
    return best, max(names[best], key=lambda name: names[best][name])


def in_hand(fact: Fact) -> str:
    """The thing that a fact is about, by one name; empty when it is about nothing."""
    about = thing(fact.about, getattr(fact, "name", ""))
    return about.name or about.head or fact.about.lower()


def _called(fact: Fact) -> str:
    """The thing as it was called, or by its name in the vocabulary where that says more and is short."""
    name = thing(fact.about, getattr(fact, "name", "")).name
    said = written_out(fact.about, name)
    if name and any(len(one) > len(word) > 4 and one.rstrip("s").endswith(word.rstrip("s").lower())
                    for one in name.split() for word in said.split()):  # fmt: skip
        said = name  # its beginning was lost: jectors
    if name and (len(said) > _SHORT_NAME or len(name.split()) > len(said.split())):
        return name if len(name) <= _SHORT_NAME else said
    return said


def _phrases(facts: Sequence[Fact]) -> list[str]:
    """What became of it, the two that tell most: what is wrong, the cause, what was done, measured; as they came."""
    told = [(rank, place, said) for place, fact in enumerate(facts) for rank, said in _told(fact) if said]
    bad = any(rank == 0 for rank, _, _ in told)
    was_set = any(said.startswith("set to ") for _, _, said in told)
    telling = any(rank < _LEADS_UP for rank, _, _ in told)
    telling_more = any(rank < _MEASURED for rank, _, _ in told)
    measured = False
    kept: dict[str, tuple[int, int]] = {}
    for rank, place, said in told:
        if (bad and rank == _GOOD) or (was_set and said == DONE["adjust"]) or (telling and rank >= _LEADS_UP):
            continue
        if rank == _MEASURED and (measured or (telling_more and not said.startswith("set to "))):
            continue
        if said == _CAUSE and not bad:
            continue
        measured |= rank == _MEASURED
        kept[said] = min(kept.get(said, (rank, place)), (rank, place))
    chosen = sorted(kept, key=lambda said: kept[said])[:_TOLD]
    return sorted(chosen, key=lambda said: kept[said][1])


_CAUSE = "the cause"
"Of a suspect that was borne out; a title says so only beside what was found wrong with it."
_GOOD, _MEASURED, _LEADS_UP = 6, 4, 7
"Ranks: a good finding is nothing beside a bad one, one measure is enough, a look or a start only leads up to more."
_TOLD = 2
"So many phrases are in a title."
_RANKS = {"remove": 5, "strip": 5, "disconnect": 5, "drain": 5, "check": 7, "test": 7, "start": 7}
"The ranks of work that only leads up to something."
_RUNNING_ON = ("run_time", "duration")
"Quantities that say nothing in a title."


def _told(fact: Fact) -> Iterator[tuple[int, str]]:
    """What a fact says in a title, with its rank: the smaller, the more it tells."""
    match fact:
        case Finding(verdict="bad"):
            yield 0, _briefly(fact.condition)
        case Suspect(standing="confirmed"):
            yield 1, _CAUSE
        case Suspect(standing="ruled out"):
            yield 1, "ruled out"
        case Work():
            yield _RANKS.get(fact.action, 2), DONE.get(fact.action, fact.action)
        case Reading() if fact.role in ("measured", "set") and fact.quantity not in _RUNNING_ON:
            yield _MEASURED, _measured(fact)
        case Finding(verdict="good"):
            yield _GOOD, _briefly(fact.condition)
        case FollowUp():
            yield 3, {"part needed": "needed", "temporary": "for now only"}.get(fact.reason, "")
        case Suspect():
            yield 8, "suspected"


def _briefly(condition: str) -> str:
    """The first thing that a condition says, without a capital: sooty, of "Sooty, and it's damp"."""
    first = _DANGLING.sub("", _FILLED.sub(" ", _FURTHER.split(condition.strip(), maxsplit=1)[0]))
    return first[:1].lower() + first[1:] if first[1:2].islower() or len(first) == 1 else first


def _measured(fact: Reading) -> str:
    what = quantity(fact.quantity)
    if fact.role == "set" and fact.quantity == "voltage":
        return f"at {amount(fact.value, fact.unit)}"
    if fact.role == "set" and fact.quantity != "volume":
        return f"set to {amount(fact.value, fact.unit)}"
    named = what in f"{fact.subject} {fact.name}".lower() or what in ("amount", "time", "length")
    return ("" if named else f"{what} ") + amount(fact.value, fact.unit)


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
