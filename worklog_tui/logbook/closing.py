"""Which later fact deals with a matter: fitting work on the same thing, or a look that found it good."""

from __future__ import annotations

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.cured_words import is_akin_to, is_of
from worklog_tui.logbook.cures import cures, is_whole
from worklog_tui.logbook.deeds import LOOK, MEND, RENEW
from worklog_tui.logbook.headed import WAITED, headed, same_spot
from worklog_tui.logbook.matters import Matter
from worklog_tui.logbook.mending import ends_stop_gap, is_makeshift, only_put_back, things_of
from worklog_tui.logbook.reopening import is_back
from worklog_tui.logbook.same_thing import FASTENERS, Thing, holds, marks_agree, same, speaks_of, thing
from worklog_tui.logbook.stays_open import stays_open
from worklog_tui.logbook.words import BUILT_WITH, one_form, raw_words, stem, word_set
from worklog_tui.model import Finding, Reading, Suspect, Work

CURES = RENEW | word_set("adjust free")
"What, done to a suspected thing, deals with the suspicion; what is blocked or dirty is cleaned."
DONE_AGAIN = word_set("adjust fill drain")
"What, done in a later session, ends what was set or filled for the time being."
SHIFTS_WHAT_IS_IN_IT, CLEANS = word_set("drain fill"), word_set("clean flush lubricate")
"Deeds that leave what has grown on a part, and that alter no measured value by themselves."
_BUILT_WITH = frozenset(map(one_form, BUILT_WITH))
_SETTLES = LOOK | word_set("tighten adjust")


def deals_with(matter: Matter, said: Said) -> bool:
    """Whether the fact deals with the matter, told earlier."""
    if matter.raised is None or said.place.order < matter.raised.order or matter.by_hand:
        return False
    if stays_open(matter, said):
        return False
    if headed(matter, said):
        return True
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


def _work(matter: Matter, work: Work, said: Said) -> bool:
    part = things_of(work)[0]
    if ends_stop_gap(work) and matter.reason == "temporary" and _of_stop_gap(matter, part):
        return not same_spot(matter, said)
    if is_back(matter, work):
        return True
    if not _done_to_it(matter, work, said):
        return False
    match matter.reason:
        case "part needed":
            fitted = RENEW if matter.told == said.place.session else MEND
            return work.action in fitted and not is_makeshift(work) and not only_put_back(work)
        case "temporary":
            again = matter.told < said.place.session and work.action in DONE_AGAIN and part.name == matter.thing.name
            return _later(matter, said, work) and (_undoes(matter, work, part) or (again and not is_makeshift(work)))
        case "fallback":
            return work.action in matter.thing.deed.actions and not same_spot(matter, said)
        case "question" if not matter.suspected:
            return work.action == "replace" and matter.told < said.place.session and part.name == matter.thing.name
        case "question":
            return _settles(matter, work)
        case "to do":
            return _does(matter, work, said)
        case _:
            return _mends(matter, work)


def _of_stop_gap(matter: Matter, part: Thing) -> bool:
    """Whether what was taken off was told with the stop-gap, or is called after what it was on: the hose clamp."""
    return part.head in {stem(w) for w in raw_words(matter.quote)} or matter.thing.head in part.words


def _done_to_it(matter: Matter, work: Work, said: Said) -> bool:
    """Whether the work was done to what the matter is about, or to what stands for it."""
    part, *used = things_of(work)
    if speaks_of(part, matter.thing) or any(same(u, matter.thing) for u in used):
        return True
    ways = (_kit, _in_its_place, _set_by, _whole_renewed)
    return _come(matter, work, part, said) or any(way(matter, work, part) for way in ways)


def _come(matter: Matter, work: Work, part: Thing, said: Said) -> bool:
    """Whether what was wanted, or held for now only, is fitted another day, called by its last word: the hoses."""
    waited = matter.reason in WAITED and matter.told < said.place.session and work.action in RENEW
    return waited and bool(part.head) and part.head == matter.thing.head and marks_agree(part, matter.thing)


def _later(matter: Matter, said: Said, work: Work) -> bool:
    """Whether work is told after a stop-gap, not of it: a new one is none, though it is told in the next line."""
    if not same_spot(matter, said):
        return True
    return said.line > matter.line and "new" in raw_words(f"{work.used} {work.quote}")


def _settles(matter: Matter, work: Work) -> bool:
    """Whether the work deals with a suspicion of what it was done to."""
    if work.action in ("clean", "flush", "bleed", "drain"):
        return is_of(raw_words(matter.about), "clogged")
    return work.action in CURES and not is_makeshift(work) and not only_put_back(work)


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
    out = is_of(raw_words(matter.bad), "out_of_set")
    whole = bool(matter.thing.words) and holds(part.words, matter.thing.words)
    return out and work.action == "adjust" and whole and marks_agree(part, matter.thing)


def _whole_renewed(matter: Matter, work: Work, part: Thing) -> bool:
    """Whether what the thing is of was renewed: the seam of the filter, a new filter; a brush, a new brush box."""
    renewed = work.action == "replace" or (work.action in RENEW and "new" in raw_words(f"{work.used} {work.quote}"))
    if not renewed or not part.words or not marks_agree(part, matter.thing):
        return False
    mine = matter.thing.words
    larger = mine < part.words and mine and part.words - mine <= _BUILT_WITH
    return bool(larger) or (part.words < mine and part.head in mine and part.head != matter.thing.head)


def _kit(matter: Matter, work: Work, part: Thing) -> bool:
    """Whether the thing that a kit is for was repaired."""
    rest = matter.thing.words - {"kit"}
    return rest != matter.thing.words and work.action == "repair" and bool(rest) and holds(part.words, rest)


def _does(matter: Matter, work: Work, said: Said) -> bool:
    asked = matter.thing.deed.actions
    if asked:
        return work.action in asked
    return work.action in MEND or (work.action in LOOK and not same_spot(matter, said))


def _mends(matter: Matter, work: Work) -> bool:
    if not matter.firm and is_makeshift(work):
        return False
    if work.action == "remove":
        return bool(work.used) or is_akin_to(matter.thing.words | {stem(w) for w in raw_words(matter.bad)}, "foreign")
    bad = raw_words(matter.bad)
    if work.action == "charge" and not matter.quantity:
        return is_of(bad, "empty")
    if is_of(bad, "broken"):
        return work.action in RENEW
    if work.action in SHIFTS_WHAT_IS_IN_IT and is_of(bad, "grown"):
        return False
    if work.action == "fill" and not matter.quantity:
        return not is_of(bad, "leaks")
    return work.action in (MEND - CLEANS if matter.quantity else MEND)


def _undoes(matter: Matter, work: Work, part: Thing) -> bool:
    if work.action == "remove":
        return is_akin_to(matter.thing.words, "makeshift") and same(part, matter.thing)
    return work.action in RENEW | {"connect"} and not is_makeshift(work) and not only_put_back(work)


def _finding(matter: Matter, finding: Finding, said: Said) -> bool:
    part = thing(finding.part, finding.name)
    if matter.quantity or (not same(part, matter.thing) and not (is_whole(part) and is_whole(matter.thing))):
        return False
    looked = bool(matter.thing.deed.actions & LOOK)
    if matter.reason == "to do" and looked:
        return not same_spot(matter, said) and finding.verdict != "noted"
    if finding.verdict != "good":
        return False
    if matter.reason == "part needed":
        return matter.told < said.place.session
    if matter.suspected:
        return not same_spot(matter, said)
    if matter.reason == "fallback":
        return looked and not same_spot(matter, said)
    if matter.reason != "fault":
        return matter.reason == "to do" and not matter.thing.deed.actions - LOOK
    return cures(matter.bad, finding.condition) if matter.bad and is_whole(matter.thing) else True


def _reading(matter: Matter, reading: Reading, said: Said) -> bool:
    if reading.role not in ("measured", "set") or not same(thing(reading.subject, reading.name), matter.thing):
        return False
    if matter.reason == "part needed":
        any_one = matter.thing.words <= FASTENERS
        return matter.told < said.place.session and not any_one and said.compares not in ("low", "high")
    set_so = reading.role == "set" and said.compares not in ("low", "high")
    if matter.suspected:
        return set_so
    if matter.quantity:
        helped = is_of(raw_words(reading.condition), "helped")
        return matter.quantity == reading.quantity and (said.compares == "good" or set_so) and not helped
    if said.compares == "good" and matter.reason == "fault" and not is_whole(matter.thing):
        return not (same_spot(matter, said) or is_of(raw_words(matter.bad), "broken"))
    if set_so and matter.reason == "fault":
        return is_of(raw_words(matter.bad), "out_of_set") or "adjust" in matter.thing.deed.actions
    if matter.reason == "to do" and matter.thing.deed.actions & _SETTLES:
        return not same_spot(matter, said)
    return False


def _suspect(matter: Matter, suspect: Suspect, said: Said) -> bool:
    """A cause ruled out ends its suspicion and what was meant for it; either way it answers a question about it."""
    if suspect.standing == "suspected" or not same(thing(suspect.cause, suspect.name), matter.thing):
        return False
    if suspect.standing == "ruled out" and (matter.reason == "fallback" or matter.suspected):
        return True
    return matter.reason == "question" and not matter.suspected and not same_spot(matter, said)
