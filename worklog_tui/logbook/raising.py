"""What raises a matter, and when two tellings are of one matter."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.deeds import LOOK
from worklog_tui.logbook.headed import NEAR
from worklog_tui.logbook.matters import Matter
from worklog_tui.logbook.mending import is_makeshift
from worklog_tui.logbook.same_thing import Thing, holds, same, thing
from worklog_tui.logbook.spelling import written_out
from worklog_tui.logbook.words import raw_words, stem
from worklog_tui.model import Again, Finding, FollowUp, Reading, Suspect, Work

_WEIGHT = {"question": 0, "fallback": 1, "to do": 2, "fault": 3, "part needed": 4, "temporary": 5}
AGAIN = frozenset({"again", "still", "already"})
"What is said of a trouble that is there once more."
_APART = frozenset({"question", "fallback"})
_NO_PART = frozenset(
    {stem(w) for w in ("part", "parts", "bits", "stuff", "thing", "one", "lot", "kit", "set", "order")}
)
SHORT = 5
"Words of a condition that are shown with a part."


def raised(said: Said) -> Matter | None:
    """The matter that a fact raises; None for most facts."""
    fact = said.fact
    told: dict[str, Any] = {"raised": said.place, "line": said.line, "told": said.place.session, "quote": fact.quote}
    match fact:
        case FollowUp():
            return Matter(
                thing(fact.topic, fact.name), written_out(fact.topic, fact.name), fact.reason, (fact.key,), **told
            )
        case Finding(verdict="bad"):
            about = " ".join([written_out(fact.part, fact.name), *fact.condition.split()[:SHORT]])
            part = thing(fact.part, fact.name)
            return Matter(part, about, "fault", (fact.key,), firm=False, bad=fact.condition, **told)
        case Suspect(standing="suspected" | "confirmed"):
            cause = thing(fact.cause, fact.name)
            return Matter(
                cause, written_out(fact.cause, fact.name), "question", (fact.key,), firm=False, suspected=True, **told
            )
        case Reading() if said.compares in ("low", "high") and fact.role == "measured" and not fact.doubtful:
            whose = f" ({said.limits.borrowed})" if said.limits and said.limits.borrowed else ""
            about = f"{_with_quantity(fact)} too {said.compares}{whose}"
            what = thing(fact.subject, fact.name)
            bad, quantity = f"too {said.compares}", fact.quantity
            told |= {"bad": bad, "quantity": quantity, "limits": said.limits}
            return Matter(what, about, "fault", (fact.key,), firm=False, **told)
    return None


def renewed(said: Said) -> Matter | None:
    """What was replaced for good: it was no longer fit, though nobody said so; raised and dealt with in one."""
    fact = said.fact
    if not isinstance(fact, Work) or fact.action != "replace" or is_makeshift(fact):
        return None
    part = thing(fact.part, fact.name)
    done = Matter(part, written_out(fact.part, fact.name), "fault", (fact.key,), said.place, said.line,
                  said.place.session, firm=False, quote=fact.quote, state="done", closed=said.place,
                  closed_by=fact.key)  # fmt: skip
    return done if part.words else None


def sent_for(said: Said) -> Matter | None:
    """What was ordered, which nobody has said is needed: it is awaited."""
    fact = said.fact
    if not isinstance(fact, Work) or fact.action != "order" or not fact.part:
        return None
    part = thing(fact.part, fact.name)
    if not part.words or part.words <= _NO_PART:
        return None
    return Matter(part, written_out(fact.part, fact.name), "part needed", (fact.key,), said.place, said.line,
                  said.place.session, quote=fact.quote, state="awaited")  # fmt: skip


def _with_quantity(reading: Reading) -> str:
    quantity = reading.quantity.replace("_", " ")
    subject = written_out(reading.subject, reading.name)
    return subject if quantity in raw_words(subject) else f"{subject} {quantity}".strip()


def one_matter(old: Matter, new: Matter) -> bool:
    """Whether a telling is of a matter that stands already."""
    if old.state == "merged" or old.suspected != new.suspected or old.quantity != new.quantity:
        return False
    if not old.open and (old.by_hand or not old.firm or not (new.firm or back_again(old, new))):
        return False
    if not same(old.thing, new.thing):
        return _for_now_and_for_good(old, new) or _one_question(old, new)
    if not new.firm and not old.open:
        return True
    if not new.firm:
        return (old.reason not in _APART or old.suspected) and _same_trouble(old, new)
    if not old.firm:
        return old.open and new.reason not in _APART
    return _akin(old, new)


def back_again(old: Matter, new: Matter) -> bool:
    """Whether a bad finding is the trouble that was dealt with before: of the same kind, or said to be there still."""
    if new.suspected or old.reason != "fault":
        return False
    words = set(raw_words(new.bad))
    return bool(words & AGAIN or {stem(w) for w in words} & {stem(w) for w in raw_words(f"{old.bad} {old.about}")})


def _one_question(old: Matter, new: Matter) -> bool:
    """Whether both are halves of one question: is it this or that?"""
    asked = old.firm and new.firm and old.open and old.reason == new.reason == "question"
    return asked and bool(old.anchors) and old.anchors[-1].note == new.anchors[0].note


def _same_trouble(old: Matter, new: Matter) -> bool:
    return old.firm or not is_whole(old.thing) or bool(set(raw_words(old.bad)) & set(raw_words(new.bad)))


def _akin(old: Matter, new: Matter) -> bool:
    """A question or a fallback is a matter of its own beside the part that it is about; so is a look at it."""
    if old.reason != new.reason and _APART & {old.reason, new.reason}:
        return False
    before, now = old.thing.deed.actions, new.thing.deed.actions
    if not old.open and before != now:
        return False
    looks = bool(before) and before <= LOOK, bool(now) and now <= LOOK
    if looks[0] != looks[1]:
        return old.reason == new.reason or "fault" in (old.reason, new.reason)
    return not before or not now or bool(before & now)


def _for_now_and_for_good(old: Matter, new: Matter) -> bool:
    """What is used for now and what is needed for good, told in one breath: vinyl tube for the fuel line, fuel line."""
    if {old.reason, new.reason} != {"temporary", "part needed"} or not old.open or old.told != new.told:
        return False
    shared = holds(old.thing.words, new.thing.words) or holds(new.thing.words, old.thing.words)
    return new.line - old.line <= NEAR and shared and bool(old.thing.words and new.thing.words)


def again(old: Matter, new: Matter) -> Again:
    """Why what was dealt with is open again, when it is told once more."""
    how = "told again" if new.firm else "measured again" if new.quantity else "found again"
    return Again(how, new.raised, " ".join(new.bad.split()[:SHORT]), old.closed)


def _tells_more(new: Thing, old: Thing) -> bool:
    """Whether a name has all that the other tells, and more: which one, or of what."""
    ours, theirs = new.words | new.marks, old.words | old.marks
    return theirs < ours


def told_again(old: Matter, new: Matter) -> Matter:
    """The matter after one more telling; what was done with is open again."""
    merged = replace(old, anchors=(*old.anchors, *new.anchors), told=new.told, line=new.line, bad=old.bad or new.bad)
    if new.firm and not old.firm:
        merged = replace(merged, about=new.about, thing=new.thing, reason=new.reason, firm=True, quote=new.quote)
    elif new.firm:
        if _tells_more(new.thing, old.thing) and new.reason not in _APART and not (old.by_hand or old.suspected):
            merged = replace(merged, about=new.about, thing=new.thing)  # `gasket` is the exhaust gasket
        if _WEIGHT[new.reason] > _WEIGHT[old.reason]:
            merged = replace(merged, reason=new.reason, quote=new.quote)
    if not old.open:
        firm = old.firm or new.firm or not new.quantity
        merged = replace(merged, state="open", closed=None, closed_by=None, firm=firm, again=again(old, new))
    return merged
