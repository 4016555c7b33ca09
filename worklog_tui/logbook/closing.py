"""Which later fact deals with a matter: fitting work on the same thing, or a look that found it good."""

from __future__ import annotations

import re

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.deeds import LOOK, MEND, RENEW
from worklog_tui.logbook.matters import Matter
from worklog_tui.logbook.same_thing import Thing, marks_agree, same, same_word, speaks_of, thing
from worklog_tui.logbook.words import DENIALS, raw_words, stem, word_set
from worklog_tui.model import Fact, Finding, Reading, Suspect, Work

NEAR = 2
"Lines within which a temporary repair is still being told."
MAKESHIFT = word_set(
    "tape string wire tie twine cardboard cereal tin rag sock tights bung cork plug goo sealer sealant "
    "epoxy putty clip croc clamp hose-clamp bottle jug jumper bandage rope wedge shim borrowed"
)
FOREIGN = word_set(
    "nest dirt rust sludge crud chaff grass mud slime water scale dust fluff varnish swarf debris leaves"
)
_FOREIGN = frozenset(stem(w) for w in FOREIGN)
WHOLE = word_set("engine machine motor it she unit")
_STARTS = re.compile(
    r"\b(start(s|ed)?|fire[sd]?|runs?|ran|running|go|goes|going|catch|caught|sign of life|turn over|dead|quit)\b"
)


def deals_with(matter: Matter, said: Said) -> bool:
    """Whether the fact deals with the matter, told earlier."""
    if matter.raised is None or said.place.order < matter.raised.order or matter.by_hand:
        return False
    fact = said.fact
    if isinstance(fact, Work):
        return _work(matter, fact, said)
    if isinstance(fact, Finding):
        return _finding(matter, fact, said)
    if isinstance(fact, Reading):
        return _reading(matter, fact, said)
    return isinstance(fact, Suspect) and _suspect(matter, fact)


def things_of(fact: Fact) -> tuple[Thing, ...]:
    """The things that a fact is about: the part, and what was put in."""
    name = getattr(fact, "name", "")
    first = thing(fact.about, name)
    if isinstance(fact, Work) and fact.used:
        return first, thing(fact.used)
    return (first,)


def _work(matter: Matter, work: Work, said: Said) -> bool:
    part, *used = things_of(work)
    fits = speaks_of(part, matter.thing) or any(same(u, matter.thing) for u in used)
    if not fits:
        return False
    match matter.reason:
        case "part needed":
            return work.action in RENEW and not _makeshift(work)
        case "temporary":
            return not _same_spot(matter, said) and _undoes(matter, work, part)
        case "fallback":
            return (
                work.action in matter.thing.deed.actions and not _same_spot(matter, said) and same(part, matter.thing)
            )
        case "question":
            return False
        case "to do":
            return _does(matter, work, said)
        case _:
            return _mends(matter, work)


def _does(matter: Matter, work: Work, said: Said) -> bool:
    asked = matter.thing.deed.actions
    if asked:
        return work.action in asked
    return work.action in MEND or (work.action in LOOK and not _same_spot(matter, said))


def _mends(matter: Matter, work: Work) -> bool:
    if _makeshift(work) and not matter.firm:
        return False
    if work.action == "remove":
        return bool(matter.thing.words & _FOREIGN or {stem(w) for w in raw_words(matter.bad)} & _FOREIGN)
    return work.action in MEND


def _undoes(matter: Matter, work: Work, part: Thing) -> bool:
    if _makeshift(work):
        return False
    return work.action in RENEW | {"connect"} or (work.action == "remove" and same(part, matter.thing))


def _makeshift(work: Work) -> bool:
    return bool(set(raw_words(f"{work.used}")) & MAKESHIFT)


def _same_spot(matter: Matter, said: Said) -> bool:
    return said.place.session == matter.told and said.line - matter.line <= NEAR


def _finding(matter: Matter, finding: Finding, said: Said) -> bool:
    part = thing(finding.part, finding.name)
    if matter.reason == "to do" and matter.thing.deed.actions & LOOK and same(part, matter.thing):
        return not _same_spot(matter, said) and finding.verdict != "noted"
    if finding.verdict != "good" or matter.reason in ("temporary", "part needed", "question"):
        return False
    if matter.bad and _whole(matter.thing) and _whole(part):
        return _cured(matter.bad, finding.condition)
    return same(part, matter.thing) and (
        not matter.firm or matter.reason == "fault" or not matter.thing.deed.actions - LOOK
    )


def _whole(part: Thing) -> bool:
    return bool(part.words & WHOLE) or part.head in WHOLE


def _cured(bad: str, good: str) -> bool:
    """'runs' cures 'no start'; 'no hunting' cures 'hunts'; 'starts first pull' does not cure 'smokes'."""
    if (
        _STARTS.search(bad)
        and _STARTS.search(good)
        and set(raw_words(bad)) & (DENIALS | {"dead", "quit", "stops", "dies"})
    ):
        return True
    denied = set(raw_words(good)) & DENIALS
    shared = any(same_word(stem(a), stem(b)) for a in raw_words(bad) for b in raw_words(good) if len(a) > 3)
    return bool(denied and shared) or bool(set(raw_words(good)) & {"cured", "fixed", "gone", "smooth", "sorted"})


def _reading(matter: Matter, reading: Reading, said: Said) -> bool:
    if reading.role not in ("measured", "set") or _same_spot(matter, said):
        return False
    subject = thing(reading.subject, reading.name)
    if matter.reason == "to do" and matter.thing.deed.actions & (LOOK | {"tighten", "adjust"}):
        return same(subject, matter.thing)
    return False


def _suspect(matter: Matter, suspect: Suspect) -> bool:
    if suspect.standing != "ruled out" or matter.reason not in ("fallback", "suspicion"):
        return False
    return same(thing(suspect.cause, suspect.name), matter.thing) and marks_agree(thing(suspect.cause), matter.thing)
