"""Which later fact deals with a matter: fitting work on the same thing, or a look that found it good."""

from __future__ import annotations

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.cures import cures, is_whole
from worklog_tui.logbook.deeds import LOOK, MEND, RENEW
from worklog_tui.logbook.matters import Matter
from worklog_tui.logbook.same_thing import Thing, holds, marks_agree, same, speaks_of, thing
from worklog_tui.logbook.words import raw_words, stem, word_set
from worklog_tui.model import Fact, Finding, Reading, Suspect, Work

NEAR = 2
"Lines within which a matter is still being told."
MAKESHIFT = word_set(
    "tape string tie twine cardboard cereal rag sock tights goo sealer sealant putty croc clamp bottle jug jumper "
    "bandage borrowed wedge packet bodge"
)
"Words of what is used for a repair that is for now only (common practice)."
FOREIGN = word_set(
    "nest dirt rust sludge crud chaff grass mud slime water scale dust fluff varnish swarf debris leaves rag burr "
    "straw hay goo gunk grit seeds feathers paint blockage lump bug spider cobweb carbon"
)
"What is put right by taking it away."
_MAKESHIFT = frozenset(map(stem, MAKESHIFT))
_FOREIGN = frozenset(map(stem, FOREIGN))
_HELPED = word_set("wet oil charger choke")
"Words of how a reading is taken when it is helped along: it shows what is wrong, not that it was put right."
_EMPTY = word_set("flat low dead discharged down empty")
_BROKEN = word_set("cracked split broken snapped stripped perished torn tore worn missing gone rotten chipped broke")
"What no cleaning, adjusting or tightening puts right."
_OUT_OF_SET = word_set(
    "slack loose tight out early late low high wide narrow fast slow retarded advanced off wrong close"
)
"What is put right by setting it to a figure."
CURES = RENEW | word_set("adjust free")
"What, done to a suspected thing, deals with the suspicion; what is blocked or dirty is cleaned."
DONE_AGAIN = word_set("adjust fill drain")
"What, done in a later session, ends what was set or filled for the time being."
_CLOGGED = word_set("blocked plugged clogged dirty gummed sooted choked air water rust sludge coked carbon oily fouled")
_SETTLES = LOOK | word_set("tighten adjust")


def deals_with(matter: Matter, said: Said) -> bool:
    """Whether the fact deals with the matter, told earlier."""
    if matter.raised is None or said.place.order < matter.raised.order or matter.by_hand:
        return False
    match said.fact:
        case Work():
            return _work(matter, said.fact, said)
        case Finding():
            return _finding(matter, said.fact, said)
        case Reading():
            return _reading(matter, said.fact, said)
        case Suspect():
            return _suspect(matter, said.fact, said)
    return False


def things_of(fact: Fact) -> tuple[Thing, ...]:
    """The things that a fact is about: the part, and what was put in."""
    first = thing(fact.about, getattr(fact, "name", ""))
    if isinstance(fact, Work) and fact.used:
        return first, thing(fact.used)
    return (first,)


def _work(matter: Matter, work: Work, said: Said) -> bool:
    part, *used = things_of(work)
    if ends_stop_gap(work) and matter.reason == "temporary" and part.head in {stem(w) for w in raw_words(matter.quote)}:
        return not _same_spot(matter, said)
    told = speaks_of(part, matter.thing) or any(same(u, matter.thing) for u in used)
    if not (told or _kit(matter, work, part) or _in_its_place(matter, work, part) or _set_by(matter, work, part)):
        return False
    match matter.reason:
        case "part needed":
            return work.action in RENEW and not _makeshift(work) and not _put_back(work)
        case "temporary":
            again = matter.told < said.place.session and work.action in DONE_AGAIN and part.name == matter.thing.name
            return _later(matter, said, work) and (_undoes(matter, work, part) or (again and not _makeshift(work)))
        case "fallback":
            return work.action in matter.thing.deed.actions and not _same_spot(matter, said)
        case "question" if not matter.suspected:
            return work.action == "replace" and matter.told < said.place.session and part.name == matter.thing.name
        case "question":
            return _settles(matter, work)
        case "to do":
            return _does(matter, work, said)
        case _:
            return _mends(matter, work)


def _later(matter: Matter, said: Said, work: Work) -> bool:
    """Whether work is told after a stop-gap, not of it: a new one is none, though it is told in the next line."""
    if not _same_spot(matter, said):
        return True
    return said.line > matter.line and "new" in raw_words(f"{work.used} {work.quote}")


def ends_stop_gap(fact: Fact) -> bool:
    """Whether what was taken off is something that only stop-gaps are made of: tape, a clamp, a bottle."""
    return isinstance(fact, Work) and fact.action == "remove" and thing(fact.part, fact.name).head in _MAKESHIFT


def _settles(matter: Matter, work: Work) -> bool:
    """Whether the work deals with a suspicion of what it was done to."""
    if work.action in ("clean", "flush", "bleed", "drain"):
        return bool(set(raw_words(matter.about)) & _CLOGGED)
    return work.action in CURES and not _makeshift(work) and not _put_back(work)


def _put_back(work: Work) -> bool:
    """Whether the old one only went back on."""
    said = raw_words(work.quote)
    return work.action == "fit" and "back" in said and "new" not in said and not work.used


def _in_its_place(matter: Matter, work: Work, part: Thing) -> bool:
    """Whether what was bad in a place went with what was done to the place: old fuel in the tank, tank drained."""
    emptied = work.action in ("drain", "flush", "clean") and matter.bad and not matter.quantity
    return (
        bool(emptied)
        and len(matter.thing.words) > 1
        and part.words < matter.thing.words
        and marks_agree(part, matter.thing)
    )


def _set_by(matter: Matter, work: Work, part: Thing) -> bool:
    """Whether what was out of set was set by a part of it: the screw of the regulator."""
    out = bool(set(raw_words(matter.bad)) & _OUT_OF_SET)
    whole = bool(matter.thing.words) and holds(part.words, matter.thing.words)
    return out and work.action == "adjust" and whole and marks_agree(part, matter.thing)


def _kit(matter: Matter, work: Work, part: Thing) -> bool:
    """Whether the thing that a kit is for was repaired."""
    rest = matter.thing.words - {"kit"}
    return rest != matter.thing.words and work.action == "repair" and bool(rest) and holds(part.words, rest)


def _does(matter: Matter, work: Work, said: Said) -> bool:
    asked = matter.thing.deed.actions
    if asked:
        return work.action in asked
    return work.action in MEND or (work.action in LOOK and not _same_spot(matter, said))


def _mends(matter: Matter, work: Work) -> bool:
    if not matter.firm and _makeshift(work):
        return False
    if work.action == "remove":
        return bool(work.used or matter.thing.words & _FOREIGN or {stem(w) for w in raw_words(matter.bad)} & _FOREIGN)
    bad = set(raw_words(matter.bad))
    if work.action == "charge" and not matter.quantity:
        return bool(bad & _EMPTY)
    if bad & _BROKEN:
        return work.action in RENEW
    return work.action in MEND


def _undoes(matter: Matter, work: Work, part: Thing) -> bool:
    if work.action == "remove":
        return bool(matter.thing.words & _MAKESHIFT) and same(part, matter.thing)
    return work.action in RENEW | {"connect"} and not _makeshift(work) and not _put_back(work)


def _makeshift(work: Work) -> bool:
    used = set(raw_words(work.used))
    return work.action in RENEW | {"connect"} and bool(used & MAKESHIFT) and "new" not in used


def _same_spot(matter: Matter, said: Said) -> bool:
    return said.place.session == matter.told and said.line - matter.line <= NEAR


def _finding(matter: Matter, finding: Finding, said: Said) -> bool:
    part = thing(finding.part, finding.name)
    if matter.quantity or (not same(part, matter.thing) and not (is_whole(part) and is_whole(matter.thing))):
        return False
    looked = bool(matter.thing.deed.actions & LOOK)
    if matter.reason == "to do" and looked:
        return not _same_spot(matter, said) and finding.verdict != "noted"
    if finding.verdict != "good":
        return False
    if matter.suspected:
        return not _same_spot(matter, said)
    if matter.reason == "fallback":
        return looked and not _same_spot(matter, said)
    if matter.reason != "fault":
        return matter.reason == "to do" and not matter.thing.deed.actions - LOOK
    return cures(matter.bad, finding.condition) if matter.bad and is_whole(matter.thing) else True


def _reading(matter: Matter, reading: Reading, said: Said) -> bool:
    if reading.role not in ("measured", "set") or not same(thing(reading.subject, reading.name), matter.thing):
        return False
    set_so = reading.role == "set" and said.compares not in ("low", "high")
    if matter.quantity:
        helped = set(raw_words(reading.condition)) & _HELPED
        return matter.quantity == reading.quantity and (said.compares == "good" or set_so) and not helped
    if said.compares == "good" and matter.reason == "fault" and not is_whole(matter.thing):
        return not (_same_spot(matter, said) or set(raw_words(matter.bad)) & _BROKEN)
    if set_so and matter.reason == "fault":
        return bool(set(raw_words(matter.bad)) & _OUT_OF_SET) or "adjust" in matter.thing.deed.actions
    if matter.reason == "to do" and matter.thing.deed.actions & _SETTLES:
        return not _same_spot(matter, said)
    return False


def _suspect(matter: Matter, suspect: Suspect, said: Said) -> bool:
    """A cause ruled out ends its suspicion and what was meant for it; either way it answers a question about it."""
    if suspect.standing == "suspected" or not same(thing(suspect.cause, suspect.name), matter.thing):
        return False
    if suspect.standing == "ruled out" and (matter.reason == "fallback" or matter.suspected):
        return True
    return matter.reason == "question" and not matter.suspected and not _same_spot(matter, said)
