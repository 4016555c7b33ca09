"""What was told wrong a line or two ago and is told right now, though the talk names another part for it, or none."""

from __future__ import annotations

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.cured_words import cured_words, is_akin_to, is_of
from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.deeds import RENEW
from worklog_tui.logbook.limits import verdict
from worklog_tui.logbook.matters import Matter
from worklog_tui.logbook.same_thing import Thing, marks_agree, same_word, thing
from worklog_tui.logbook.stays_open import is_of_another
from worklog_tui.logbook.words import DENIALS, raw_words, stem
from worklog_tui.model import Finding, Reading, Work

OF_ONE_PART = frozenset({"voltage", "current", "resistance"})
"What is its own on every part: the volts of the lamps put nothing right that was low at the battery."
LEAST = 4
"Letters of a word of the fault that is told again with a denial."


def puts_right(matter: Matter, said: Said) -> bool:
    """Whether the fact, told right after the fault, says that it is gone."""
    if is_of_another(matter, said):
        return False
    match said.fact:
        case Finding(verdict="good") as finding:
            return _settled(finding) or (not matter.quantity and _is_well(matter, finding))
        case Reading() as reading:
            return _is_right_now(matter, reading) or _set_right(matter, reading)
        case Work() as work:
            return _sealed(matter, work) or _fits(matter, work)
    return False


def _settled(finding: Finding) -> bool:
    """Whether the good outcome is of whatever was wrong: that's fixed, that's that sorted, job done."""
    return is_of(raw_words(finding.condition), "settled")


def _is_well(matter: Matter, finding: Finding) -> bool:
    """Whether the opposite is told of the same one: of a stuck left one it tells nothing that the right one turns."""
    return marks_agree(thing(finding.part, finding.name), matter.thing) and opposite(matter.bad, finding.condition)


def _sealed(matter: Matter, work: Work) -> bool:
    """Whether a leak was told and what seals was renewed: the pump weeps, new gasket on it."""
    seal = is_akin_to({thing(work.part, work.name).head}, "seals")
    return seal and work.action in RENEW and is_of(raw_words(matter.bad), "leaks")


def _fits(matter: Matter, work: Work) -> bool:
    """Whether the work is what puts such a fault right: slack and tightened, blocked and cleaned."""
    was = set() if matter.quantity else set(map(stem, raw_words(matter.bad)))
    return any(was & bad and work.action in actions for bad, actions in cured_words().by)


def opposite(bad: str, good: str) -> bool:
    """Whether the one is said when the other is gone: stuck and turns; won't prime and pulling; leaks and no leaks."""
    was, now = raw_words(bad), raw_words(good)
    if set(now) & DENIALS:
        return any(same_word(stem(a), stem(b)) for a in was for b in now if len(a) >= LEAST)
    before, after = set(map(stem, was)), set(map(stem, now))
    if set(was) & DENIALS and before & after - set(map(stem, DENIALS)):
        return True
    return any(before & theirs and after & ours for theirs, ours in cured_words().opposites)


def _set_right(matter: Matter, reading: Reading) -> bool:
    """Whether what was told to be slack or late is set to a figure next, of a thing that has another name or none."""
    out = is_of(raw_words(matter.bad), "out_of_set") and not matter.quantity
    return out and reading.role == "set" and not reading.doubtful and marks_agree(_thing(reading), matter.thing)


def _thing(reading: Reading) -> Thing:
    return thing(reading.subject, reading.name)


def _is_right_now(matter: Matter, reading: Reading) -> bool:
    """Whether the same is measured or set as it should be, of a thing that has another name or none."""
    if reading.doubtful or matter.quantity != reading.quantity or reading.role not in ("measured", "set"):
        return False
    about = _thing(reading)
    if reading.quantity in OF_ONE_PART and about.words and about.words.isdisjoint(matter.thing.words):
        return False
    other = about.marks != matter.thing.marks or (about.head == matter.thing.head and not is_whole(about))
    return not other and verdict(reading, matter.limits) == "good"
