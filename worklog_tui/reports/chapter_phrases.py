"""What became of the thing in hand, in the few words of a chapter's title: what is wrong, what was done, a measure."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from worklog_tui.logbook.same_thing import FASTENERS, thing
from worklog_tui.model import Fact, Finding, FollowUp, Reading, Suspect, Work
from worklog_tui.reports.log_rows import quantity
from worklog_tui.reports.sentence import DONE, amount

_FURTHER = re.compile(r"\s*[,;]\s*|\s+(?:and(?! \w+$)|but|so|because|when|which|that's|it's)\s+")
_EMPTY = "as|of|a|an|the|to|in|on|like|with|for|is|it|at"
_DANGLING = re.compile(
    rf"^(?:(?:an?|the|just|kinda|kind of|really|very|all)\b\s*)+|(?:\s+(?:{_EMPTY}))+$", re.IGNORECASE
)
_FILLED = re.compile(r"\s+(?:kinda|kind of|sorta|sort of|just|really|pretty|basically)\s+")
"Words that say nothing at the beginning or the end of what is told briefly."

OF_A_PERSON = frozenset(
    "i you he she it we they him her them me us that this there i'm i'd i'll you'd you'll it'll it's that's".split()
)
_SAYS_NOTHING = frozenset(
    {"done", "bang", "sorted", "still", "thing", "going back", "stays there", "not dead", "like that", "bodge"}
    | {"lovely", "lovely job", "done and dusted", "near enough", "that'll do", "gone missing", "no earthly use"}
    | {"more", "go", "there", "back", "high", "not even", "started late", "stays", "pulled off", "taken off", "drip"}
)
"Words by which a phrase is a piece of a sentence; phrases that say nothing by themselves (closed lists, judgement)."


def tells(phrase: str) -> bool:
    """Whether a phrase can stand in a title: not a piece of a sentence, not single letters."""
    words = phrase.lower().split()
    pieces = any(word in OF_A_PERSON for word in words) or all(len(word) == 1 and word.isalpha() for word in words)
    return bool(words) and not pieces and phrase.lower() not in _SAYS_NOTHING


def phrases(facts: Sequence[Fact]) -> list[str]:
    """What became of it, the two that tell most: what is wrong, what was done, measured, as they came; then the cause.

    A good finding of one word stands only by itself: it is praise rather than news.
    """
    rows = [(rank, place, said) for place, fact in enumerate(facts) for rank, said in _told(fact)]
    told = [row for row in _as_ranges(rows, facts) if row[2] and tells(row[2])]
    bad = any(rank == 0 for rank, _, _ in told)
    was_set = any(said.startswith("set to ") for _, _, said in told)
    telling = any(rank < _LEADS_UP for rank, _, _ in told)
    telling_more = any(rank < _MEASURED for rank, _, _ in told)
    measured = False
    kept: dict[str, tuple[int, int]] = {}
    for rank, place, said in told:
        if (bad and rank == _GOOD) or (was_set and said == DONE["adjust"]) or (telling and rank >= _LEADS_UP):
            continue
        if rank == _MEASURED and (measured or ((telling_more or was_set) and not said.startswith("set to "))):
            continue
        measured |= rank == _MEASURED
        kept[said] = min(kept.get(said, (rank, place)), (rank, place))
    if _CAUSE in kept and not bad and len(kept) > 1:
        del kept[_CAUSE]
    for said, (rank, _) in tuple(kept.items()):
        praise = rank == _GOOD and " " not in said and len(kept) > 1
        led_up = said in _OFF and rank > 0 and any(other < rank for other, _ in kept.values())
        if praise or led_up or (rank > 0 and not _IMPLIED.get(said, frozenset()).isdisjoint(kept)):
            del kept[said]
    chosen = sorted(kept, key=lambda said: kept[said])[:_TOLD]
    return sorted(chosen, key=lambda said: (said in _LAST, kept[said][1]))


def _as_ranges(rows: Sequence[tuple[int, int, str]], facts: Sequence[Fact]) -> list[tuple[int, int, str]]:
    """Measures of several of a kind as one, from the lowest to the highest; of one thing the last: how it stands."""
    spans: dict[tuple[str, str], list[Reading]] = {}
    for fact in facts:
        if isinstance(fact, Reading) and fact.role == "measured" and isinstance(fact.value, int | float):
            spans.setdefault((fact.quantity, fact.unit), []).append(fact)
    made = []
    for rank, place, said in rows:
        fact = facts[place]
        if isinstance(fact, Reading) and fact.role == "measured" and (fact.quantity, fact.unit) in spans:
            said = _measured(_spanning(spans[fact.quantity, fact.unit]))
        made.append((rank, place, said))
    return made


def _spanning(readings: Sequence[Reading]) -> Reading:
    values = [one.value for one in readings if isinstance(one.value, int | float)]
    several = len({one.subject for one in readings}) > 1 or readings[0].quantity == "compression"
    return replace(readings[-1], value=(min(values), max(values)) if several and len(set(values)) > 1 else values[-1])


_CAUSE = "the cause"
"Of a suspect that was borne out; a title says so beside what was found wrong with it, or where it has no more to say."
_RULED_OUT = "ruled out"
_LAST = (_CAUSE, _RULED_OUT)
"What comes last, whenever it was told: stuck shut, the cause."
_OFF = frozenset(DONE[action] for action in ("remove", "strip", "disconnect"))
"What is left out beside all that tells more: what was cleaned, or found worn, was off."
_IMPLIED = {
    "needed": frozenset({DONE["order"], DONE["replace"]}),
    DONE["fit"]: frozenset({DONE["replace"]}),
}
"What goes without saying beside another: what is ordered was needed."
_GOOD, _MEASURED, _LEADS_UP = 6, 4, 7
"Ranks: a good finding is nothing beside a bad one, one measure is enough, a look or a start only leads up to more."
_TOLD = 2
"So many phrases are in a title."
_RANKS = {"remove": 5, "strip": 5, "disconnect": 5, "drain": 5, "check": 7, "test": 7, "start": 7}
"The ranks of work that only leads up to something."
_OF_A_FLUID = frozenset({"fill", "drain", "flush", "bleed", "charge"})
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
            yield 1, _RULED_OUT
        case Work() if not (fact.action in _OF_A_FLUID and holds_nothing(fact)):
            yield _RANKS.get(fact.action, 2), DONE.get(fact.action, fact.action)
        case Reading() if fact.role in ("measured", "set") and fact.quantity not in _RUNNING_ON:
            yield _MEASURED, _measured(fact)
        case Finding(verdict="good"):
            yield _GOOD, _briefly(fact.condition)
        case FollowUp():
            yield 3, {"part needed": "needed", "temporary": "for now only"}.get(fact.reason, "")
        case Suspect():
            yield 8, "suspected"


_SOLID = FASTENERS | {"washer", "gasket", "pin", "belt", "plug", "key", "clip", "spring", "seal", "valve"}


def holds_nothing(fact: Fact) -> bool:
    """Whether it is told of a thing that nothing can be filled into: it was said of what stood beside it."""
    return thing(fact.about).head in _SOLID


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
