"""Parts seen bad on a machine that no table of its own knows, in the bare words: `the belt is shiny underneath`.

A part of a known kind with a word of its ill state in one sentence. What is denied, supposed or asked is passed over,
and so is what a fact was read of, what was found good, and what was worked on since.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier, same_step
from worklog_tui.diagnosis.kin import is_no_name
from worklog_tui.diagnosis.kinds import Kinds
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.put_right import put_right
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sayings import Saying
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.worded import aim_of
from worklog_tui.diagnosis.words import SIDES, tokens
from worklog_tui.model import Finding, Step

REACH = 6
"So many words may stand between a part and its state."
LEAD = 2
"So many words before a kind's word may belong to the part's name."
MENDED = (
    "replace", "repair", "clean", "adjust", "free", "fit", "make", "tighten", "fill", "flush", "connect", "lubricate",
)  # fmt: skip
_WORD = re.compile(r"[\w'’-]+")


def seen_bad(log: Log, signs: Signs, safety: Safety, lists: Mapping[str, Sequence[str]]) -> list[Candidate]:
    """A step for each such part of the last session, the worst first; none for a machine with an engine."""
    if "engine" in signs.makeup.has:
        return []
    unsure = signs.talk.pattern("unsure")
    found: dict[str, Candidate] = {}
    for line in signs.lines:
        if line.asks or line.past or line.event.place.session != log.last_session:
            continue
        for thing, ill in _told(own_words(log, line.event), signs.kinds, lists.get("ill", ()), unsure):
            if not is_dealt_with(log, thing, ill, line.event.when):
                kind = signs.kinds.of(thing)
                measured = kind is not None and kind.measured
                found[tokens(thing)[-1]] = _candidate(log, thing, ill, line.event, safety, lists, measured)
    return list(found.values())


def with_seen(
    candidates: Sequence[Candidate], log: Log, signs: Signs, safety: Safety, lists: Mapping[str, Sequence[str]]
) -> list[Candidate]:
    """The candidates; without an engine a part of a known kind that was found bad comes before general looks.

    What the person said himself of the same part, such as that a new one is on its way, stands.
    """
    if "engine" in signs.makeup.has:
        return list(candidates)
    said = [c for c in candidates if c.tier not in (Tier.NOTICED, Tier.DOUBTFUL)]

    def is_free(one: Candidate) -> bool:
        return not any(same_step(one, other) for other in said)

    raised = [_raised(c, signs, lists) if c.tier is Tier.NOTICED and is_free(c) else c for c in candidates]
    return [*raised, *filter(is_free, seen_bad(log, signs, safety, lists))]


def _raised(candidate: Candidate, signs: Signs, lists: Mapping[str, Sequence[str]]) -> Candidate:
    thing, aim = candidate.step.thing, candidate.step.aim
    kind = signs.kinds.of(thing) if aim in ("mend", "tend") else None
    if kind is None:
        return candidate
    if kind.measured and aim == "mend":
        candidate = replace(candidate, step=replace(candidate.step, step=f"check the {thing}", aim="look"))
    told = f"{candidate.step.step} {' '.join(candidate.step.outcomes)}"
    ill = list(lists.get("ill", ()))
    worst = next((n for n, state in enumerate(ill) if re.search(rf"\b{re.escape(state)}\b", told)), len(ill))
    return replace(candidate, tier=Tier.OWN_CAUSE, order=worst + candidate.order / 1e6)


def own_words(log: Log, event: Event) -> str:
    """The words of one sentence as they stand in its own note."""
    return log.words_of(event.fact.main.note)[event.fact.main.start : event.fact.main.end]


def _told(text: str, kinds: Kinds, ill: Sequence[str], unsure: Saying) -> Iterator[tuple[str, str]]:
    """(the part as it was said, its state) for each part of a known kind with an ill word behind it."""
    for clause in re.split(r",|\bbut\b|\balthough\b", text):
        words = _WORD.findall(clause)
        for at in range(len(words)):
            state = _ill_at(words[at + 1 : at + 1 + REACH], ill)
            kind = kinds.of(words[at])
            if state and kind and state not in kind.not_ill and not unsure.search(_before_state(clause, state)):
                yield full_part(words, at), state
                break


def full_part(words: Sequence[str], at: int) -> str:
    """A kind's word with the words before it that belong to the part's name."""
    start = at
    while start > max(0, at - LEAD) and not is_no_name(words[start - 1]):
        start -= 1
    return " ".join(words[start : at + 1]).lower()


def _ill_at(words: Sequence[str], ill: Sequence[str]) -> str:
    said = " ".join(words).lower()
    return next((state for state in ill if re.search(rf"\b{re.escape(state)}\b", said)), "")


def _before_state(clause: str, state: str) -> str:
    return clause.lower().split(state)[0]


def is_dealt_with(log: Log, thing: str, ill: str, when: float) -> bool:
    """Whether a fact was read of it, or it was found good or worked on later."""
    head = tokens(thing)[-1]
    here = (e.fact for e in log.findings if int(e.when) == int(when))
    if ill and any(f.verdict == "bad" and ill in f.quote for f in here if isinstance(f, Finding)):
        return True
    for event in log.events:
        same = head in tokens(f"{event.fact.about} {event.name}") and int(event.when) >= int(when)
        if not same:
            continue
        if isinstance(event.fact, Finding) and int(event.when) == int(when) and event.fact.verdict == "bad":
            return True
        if getattr(event.fact, "action", "") == "clean" and int(event.when) == int(when):
            return True
        if int(event.when) > int(when) and (
            getattr(event.fact, "verdict", "") == "good" or getattr(event.fact, "action", "") in MENDED
        ):
            return True
    return False


def _table(lists: Mapping[str, Sequence[str]], name: str) -> Mapping[str, Sequence[str]]:
    table: object = lists.get(name, {})
    return table if isinstance(table, Mapping) else {}


def _candidate(
    log: Log, thing: str, ill: str, event: Event, safety: Safety, lists: Mapping[str, Sequence[str]], measured: bool
) -> Candidate:
    wears = any(tokens(w)[-1:] == tokens(thing)[-1:] for w in lists.get("consumable", ()))
    step = f"check the {thing}" if measured else put_right(thing, ill, wears, _table(lists, "cures"))
    aim = aim_of(step, _table(lists, "aims"))
    why = f'You saw it at {log.said(event.place)} ("{ill}"), and it was not put right since.'
    worst = list(lists.get("ill", ())).index(ill)
    made = Step(step, why, 20, safety.cautions(step), (f"Put right when it is no longer {ill}.",), (), "open item", "",
                thing, aim)  # fmt: skip
    bare = " ".join(w for w in thing.split() if w not in SIDES)
    notes = frozenset({event.fact.main.note})
    return Candidate(Tier.OWN_CAUSE, worst - event.when / 1e6, made, "", bare or thing, notes)
