"""The person's own suspicions: what he thought it might be, and neither proved nor ruled out since."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.hearing import NOT, is_whole
from worklog_tui.diagnosis.kin import full_name, placed
from worklog_tui.diagnosis.kinds import Kinds
from worklog_tui.diagnosis.laid_to_rest import laid_to_rest
from worklog_tui.diagnosis.log import Event, Log, settles, shows_no_effect
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Finding, Step, Suspect, Work
from worklog_tui.rulebook.faults import FaultBook

MOST = 3
NEAR = 3
"So many notes after a fault a suspicion is about it (judgement)."
STATES = (("low",), ("high",), ("weak",), ("poor",), ("too",), ("full",), ("empty",), ("hot",), ("little",))
"What begins so tells how something is, and is a trouble itself: low oil pressure is no part to look at."
_TELLS = re.compile(r"\b(?:is|are|was|were|has|have|could|might|may|not)\b|['’]s\s")
_TRIED = ("replace", "clean", "adjust", "repair", "fit", "make", "free", "tighten", "check", "test")


@dataclass(frozen=True, slots=True)
class Trouble:
    """A trouble of the whole machine that was not heard cured."""

    words: str
    event: Event


def trouble(log: Log, book: FaultBook) -> Trouble | None:
    """The last bad finding of the machine itself, unless it was found good afterwards."""
    wholes = tuple(book.words.get("wholes", ()))
    last: Event | None = None
    for event in log.findings:
        fact = event.fact
        if isinstance(fact, Finding) and fact.verdict in ("good", "bad") and is_whole(fact.name, fact.part, wholes):
            last = event
    if last is None or not isinstance(last.fact, Finding) or last.fact.verdict != "bad":
        return None
    return Trouble(f"{last.fact.part}: {last.fact.condition}", last)


def own_suspects(
    log: Log, book: FaultBook, safety: Safety, belongs: Callable[[Event], bool] = lambda _: False
) -> list[Candidate]:
    """A check for each suspicion since the open trouble came up, that nothing has settled, the latest first.

    `belongs`: whether a suspicion may explain the complaint that the fault files know.
    """
    heard = trouble(log, book)
    since = heard.event.when - 1 if heard else float("inf")
    found: dict[str, Candidate] = {}
    kinds = Kinds(book.kinds.values())
    for event in sorted(log.suspects, key=lambda e: (-e.place.order, e.when)):
        fact = event.fact
        if not isinstance(fact, Suspect) or fact.standing == "ruled out":
            continue
        if event.place.session != log.last_session or log.is_old(event.place):
            continue
        fact = replace(fact, cause=log.as_said(fact.cause, (fact.key,)))
        told = log.has_said(fact.cause) or (bool(fact.name) and log.has_said(fact.name))
        firm = (
            told
            and fact.standing == "suspected"
            and (event.when >= since or belongs(event) or _after_a_fault(log, event))
        )
        thing = _thing(log, fact)
        where = placed(log, thing, (fact.key,))
        thing = f"{where} {thing}" if where else full_name(log, thing, (fact.key,))
        step = f"{'find' if tokens(thing)[-1:] == ('leak',) else 'check'} the {thing}"
        vague = (
            (tokens(fact.cause)[:1] in STATES and not (fact.cause.startswith("little ") and kinds.of(fact.cause)))
            or NOT.intersection(tokens(fact.cause))
            or fact.cause in found
            or _is_doing(fact)
            or not _names_a_thing(log, fact, book, kinds)
        )
        if vague or _settled(log, event, fact) or safety.never(step):
            continue
        why = f"You suspected it yourself at {log.said(event.place)}, and nothing has settled it since."
        cautions = safety.cautions(f"{step} {fact.name}")
        made = Step(step, why, 10, cautions, (), (), "own plan", "", thing, "look")
        tier = Tier.COMPLAINT if firm else Tier.OWN_CAUSE
        said = frozenset({fact.main.note})
        found[fact.cause] = Candidate(tier, len(found) / 10, made, fact.name, fact.cause, said)
    return laid_to_rest(list(found.values())[:MOST], log, book.words)


def _is_doing(suspect: Suspect) -> bool:
    """Whether a cause tells what goes on, such as running lean or making oil: there is nothing there to look at."""
    first = tokens(suspect.cause)[:1]
    return bool(first) and first[0].endswith("ing") and first[0] not in tokens(suspect.name)


def _thing(log: Log, suspect: Suspect) -> str:
    """What is suspected: the cause, or the part that it is said of where the cause only tells a state."""
    states = bool(suspect.name) and not set(tokens(suspect.name)) & set(tokens(suspect.cause))
    part = " ".join(w for w in suspect.name.split() if log.has_said(w)) if states else ""
    if part and not log.has_said(f"the {suspect.cause}"):
        return part
    return _bare(suspect.name if suspect.name and _TELLS.search(suspect.cause) else suspect.cause)


def _names_a_thing(log: Log, suspect: Suspect, book: FaultBook, kinds: Kinds) -> bool:
    """Whether a suspicion names something to look at: a known part, or what other facts are about; dirt is no thing."""
    parts = (tokens(p) for fault in book.faults.values() for p in fault.heard.parts)
    others = (e for e in log.events if getattr(e.fact, "cause", "") != suspect.cause)
    named = (tokens(text) for e in others for text in (e.name, str(getattr(e.fact, "part", ""))))
    heads = {words[-1] for words in (*parts, *named) if words}
    if any(kinds.of(text) for text in (suspect.cause, suspect.name) if text):
        return True
    return any(words[-1] in heads for words in (tokens(suspect.cause), tokens(suspect.name)) if words)


def _after_a_fault(log: Log, event: Event) -> bool:
    """Whether a suspicion of the last session follows a fault that nothing settled since, a few notes before it."""
    for before in reversed(log.before(event.when, NEAR)):
        fact = before.fact
        if isinstance(fact, Finding) and fact.verdict == "bad" and fact.state and fact.name:
            last = log.verdict(fact.name, fact.part)
            worked = log.work_on(fact.name, fact.part, before.when, _TRIED)
            return worked is None and last is not None and last.when <= before.when
    return False


def _settled(log: Log, event: Event, suspect: Suspect) -> bool:
    """Whether anything said later settles a suspicion: a verdict on the thing, or work on it."""
    for later in log.about(suspect.name, suspect.cause):
        if later.when <= event.when:
            continue
        if (
            settles(later.fact)
            or shows_no_effect(later.fact)
            or (isinstance(later.fact, Work) and later.fact.action in _TRIED)
        ):
            return True
    return False


def _bare(text: str) -> str:
    words = text.split()
    return " ".join(words[1:]) if words and words[0].lower() in ("the", "a", "an", "my", "that") else text
