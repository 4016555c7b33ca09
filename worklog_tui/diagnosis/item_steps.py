"""Steps from what the person said himself: his plan in its order, what he listed as left, and the other open items."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.closing import closing_of
from worklog_tui.diagnosis.kin import full_name, meant
from worklog_tui.diagnosis.log import Event, Log, proves_good, shows_no_effect
from worklog_tui.diagnosis.phrases import bare
from worklog_tui.diagnosis.put_right import cure_of
from worklog_tui.diagnosis.safety import Safety, is_slight
from worklog_tui.diagnosis.whole import is_the_machine
from worklog_tui.diagnosis.worded import Worded
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import holds, spoken, tokens
from worklog_tui.model import Finding, OpenItem, Step, Work
from worklog_tui.rulebook.fault_nouns import WordSets

LATER = 1e6
"Puts the stop-gaps on what lasts behind those on hoses, gaskets and the like, which fail first."
AT_ONCE = 4
"Within so many notes work is taken as the answer to a leak, a smell or a noise (judgement)."

CLOSE = 12
"So many characters behind a finding may say that it is so now."

_DUE = re.compile(r"\b(?:after|aftr|in|every)\s+(?:\w+\s+){0,3}(?:hours?|hrs?|km|ks|kilometres|miles|months?|weeks)\b")
_NEW = re.compile(r"\b(?:new|proper|real)\b", re.IGNORECASE)
_OF = re.compile(r"\bfor (?:the |that |a )?(\w[\w ]*)$")
_REPLACED = ("replace", "fit")
_DEALT = ("replace", "repair", "adjust", "clean", "free", "fit", "tighten", "make", "flush", "fill", "connect")


class ItemSteps:
    """Ranks the open items by what they hold up, and words each as a step."""

    def __init__(self, log: Log, wording: Wording, safety: Safety) -> None:
        self.log, self.wording, self.safety = log, wording, safety
        self.closing = closing_of(log, wording)
        self._foreign, self._until = safety.foreign, wording.talk.pattern("until")
        self._last_notes = frozenset(n.uid for n in log.ending_notes)

    def candidates(self, items: Sequence[OpenItem]) -> list[Candidate]:
        """A candidate for every item that a step can deal with."""
        found = []
        for item in items:
            if item.state not in ("open", "awaited", "noticed"):
                continue
            if item.reason == "temporary" and (self._is_tool(item) or self._until.match(item.quote)):
                continue
            full = self._full(item)
            worded = self.wording.worded(full)
            if worded.say and not self.safety.never(worded.say):
                found.append(self._candidate(item, full, worded))
        return found

    def _is_tool(self, item: OpenItem) -> bool:
        """Whether only a tool was borrowed: it goes back, nothing of the machine waits for it."""
        said = tokens(f"{item.name or item.about}")
        return any(holds(said, tokens(w)) for w in self.wording.lists.get("tools", ()))

    def _full(self, item: OpenItem) -> OpenItem:
        """The item under its full name, where a bare word was said of something named just before."""
        word = bare(item.name if item.state == "noticed" and item.name else item.about)
        if item.reason == "to do" and (said := meant(self.log, word, item.anchors)) != word:
            return replace(item, about=said, name="")
        full = full_name(self.log, word, item.anchors)
        return replace(item, about=full, name="") if full != word else item

    def _candidate(self, item: OpenItem, full: OpenItem, worded: Worded) -> Candidate:
        step = worded.say
        moments = sorted(m for m in map(self.log.when, item.anchors) if m >= 0)
        danger = self.safety.danger(full, self.log.around(item.anchors))
        if danger and (self._cleared(danger, moments) or is_slight(item) or self._only_named(item, danger)):
            danger = None
        tier, order = self._tier(item, moments, danger is not None, full.about)
        why = self._why(item, tier)
        if tier is Tier.DANGER and danger:
            why, step = f"{danger.says} {why}", danger.say or step
        tags = danger.cautions if tier is Tier.DANGER and danger else ()
        cautions = self.safety.cautions(f"{step} {item.name}", tags)
        source = "own plan" if tier in (Tier.PLAN, Tier.PLAN_FALLBACK) else "open item"
        minutes, aim = self.wording.minutes(step), "" if worded.aimless else self.wording.aim(step)
        thing = worded.thing if step == worded.say else ""
        made = Step(step, why, minutes, cautions, self._outcomes(item), (), source, "", thing, aim)
        notes = frozenset(a.note for a in item.anchors)
        return Candidate(tier, order, made, item.name, item.about, notes, reason=item.reason)

    def _tier(self, item: OpenItem, moments: list[float], danger: bool, full: str) -> tuple[Tier, float]:
        last = moments[-1] if moments else -1.0
        said = next((m for m in moments if m >= self.closing.start), last)
        if item.name in self._foreign or self.seems_done(item, last, full):
            return Tier.DOUBTFUL, -last
        if item.raised is None:
            return Tier.WAITS, last  # what a viewer says is an idea: never before what the log itself asks for
        if item.state == "noticed" and (not self._is_defect(item) or self.safety.does_its_work(item)):
            return Tier.DOUBTFUL, -last
        if danger and item.reason != "fallback":
            return Tier.DANGER, -last
        planned = any(a.note in self.closing.plan for a in item.anchors)
        if any(a.note in self.closing.listed for a in item.anchors) and not self._hangs(item):
            return Tier.PLAN, said
        if item.state == "noticed":
            return Tier.NOTICED, -last
        if item.reason == "fallback":
            return (Tier.PLAN_FALLBACK if self._follows_plan(item) else Tier.FALLBACK), said
        if self._hangs(item) or self._comes_last(item):
            return Tier.WAITS, said
        if planned and item.reason == "to do":
            return Tier.PLAN, min(m for m, a in self._anchored(item) if a in self.closing.plan)
        if moments and said >= self.closing.start:
            return Tier.LISTED, said
        if self.wording.step(item).startswith("see to "):
            return Tier.PART, -last
        if item.reason == "temporary" and not self.wording.is_consumable(item.about):
            return Tier.STOP_GAP, LATER - last
        tier = {"to do": Tier.HOLDS_UP, "fault": Tier.HOLDS_UP, "temporary": Tier.STOP_GAP}.get(item.reason, Tier.PART)
        return tier, -last

    def _only_named(self, item: OpenItem, danger: WordSets) -> bool:
        """Whether what was merely noticed is a danger by its name alone: a lever that was said is no stop lever."""
        if item.state != "noticed" or not item.anchors:
            return False
        last = max(item.anchors, key=self.log.when).note
        said = set(tokens(f"{self.log.words_before(last)} {self.log.words_of(last)}"))
        return not any(words <= said for words in self.safety.words_of(danger))

    def _cleared(self, danger: WordSets, moments: list[float]) -> bool:
        """Whether what the danger is about was found good since."""
        later = (self.log.verdict(name, name) for name in danger.cleared_by)
        return any(e is not None and proves_good(e.fact) and moments and e.when > moments[-1] for e in later)

    def _is_defect(self, item: OpenItem) -> bool:
        """Whether what was only noticed is a fault to put right: a known part, in a known bad state, this time."""
        wholes = self.wording.lists.get("wholes", ())
        for key in item.anchors:
            event = self.log.at(key)
            fact = event.fact if event else None
            if not isinstance(fact, Finding) or fact.verdict != "bad" or not fact.state or fact.name in (*wholes, ""):
                continue
            if is_the_machine(self.log.history.machine, fact.part):
                continue
            named = set(tokens(fact.part)) & set(tokens(self.log.words_of(key.note)))
            if named and key.note in self._last_notes:
                return not (self._dealt_with_at_once(item) or self._is_well_now(fact) or self._was_cleaned(fact))
        return False

    def _dealt_with_at_once(self, item: OpenItem) -> bool:
        """Whether a leak, a smell or a noise was followed within a few notes by work that mends such things."""
        said = tokens(item.name or item.about)
        if not said or said[-1] not in self.wording.trouble:
            return False
        last = max(self.log.when(a) for a in item.anchors)
        return any(last < e.when <= last + AT_ONCE and isinstance(e.fact, Work) and e.fact.action in _DEALT
                   for e in self.log.works)  # fmt: skip

    def _was_cleaned(self, fault: Finding) -> bool:
        """Whether what was found dirty was cleaned in the same breath: cleaned the knife edges, full of dried egg."""
        here = (e.fact for e in self.log.works if e.fact.main.note == fault.main.note)
        cleaned = any(isinstance(w, Work) and w.action == "clean" and tokens(w.part)[-1:] == tokens(fault.part)[-1:]
                      for w in here)  # fmt: skip
        return cleaned and cure_of(fault.condition, self.wording.lists.get("cures", {})).startswith("clean")

    def _is_well_now(self, fault: Finding) -> bool:
        """Whether the same note goes on to say that it is well now: dry; nine strokes of grease; turns freely now."""
        here = (e.fact for e in self.log.findings if e.fact.main.note == fault.main.note)
        well = [f for f in here if f.main.start > fault.main.end and proves_good(f)]
        words = self.log.words_of(fault.main.note)
        return any(" now" in words[f.main.start : f.main.end + CLOSE].lower() for f in well)

    def _follows_plan(self, item: OpenItem) -> bool:
        """Whether the fallback was said within two notes of a note that tells the plan."""
        places = [self.log.history.place(uid).order for uid in self.closing.plan]
        return any(0 <= int(self.log.when(a)) - p <= 2 for a in item.anchors for p in places)

    def _anchored(self, item: OpenItem) -> list[tuple[float, str]]:
        return [(self.log.when(a), a.note) for a in item.anchors]

    def _hangs(self, item: OpenItem) -> bool:
        """Whether the words put it off until something else is done, or until some hours or miles have gone by."""
        text = f" {spoken(self.log.around(item.anchors, 40) or item.quote)} "
        if any(f" {w} " in text for w in self.wording.lists.get("later", ())):
            return True
        return _DUE.search(f"{text} {spoken(item.about)}") is not None

    def _comes_last(self, item: OpenItem) -> bool:
        said = tokens(item.about)
        return item.reason == "to do" and any(holds(said, tokens(w)) for w in self.wording.lists.get("last", ()))

    def seems_done(self, item: OpenItem, last: float, full: str = "") -> bool:
        """Whether later words deal with an item that nobody closed: replaced, mended, proved good, of no effect."""
        if last < 0:
            return False
        names = [(item.name, item.about), *([("", full)] if full and full != item.about else [])]
        if item.reason == "part needed" and (of := _OF.search(item.about)):
            names.append(("", of[1]))
        return any(
            event.when > last + 0.5 and self._deals_with(item, event, last)
            for name, about in names
            for event in self.log.about(name, about)
        )

    def _deals_with(self, item: OpenItem, event: Event, last: float) -> bool:
        fact = event.fact
        if shows_no_effect(fact):
            return True
        if proves_good(fact) and item.reason in ("fault", "part needed", "fallback"):
            return True
        if not isinstance(fact, Work):
            return False
        if item.reason == "temporary":
            another = event.place.session > self.log.session_at(last)
            new = bool(_NEW.search(self.log.around((fact.key,), 20)))
            return fact.action == "replace" or (fact.action == "fit" and (another or new))
        return fact.action in (_REPLACED if item.reason == "part needed" else _DEALT)

    def _why(self, item: OpenItem, tier: Tier) -> str:
        if item.raised is None:
            many = f"{item.people} viewers" if item.people > 1 else "A viewer"
            return f"{many} put it forward, and nothing in the log deals with it."
        at = self.log.said(item.raised)
        if tier is Tier.DOUBTFUL:
            return f"It was raised at {at}; later work may have dealt with it, but nobody said so."
        if tier in (Tier.PLAN, Tier.LISTED):
            anchor = max(item.anchors, key=self.log.when)
            when = self.log.said(self.log.history.place(anchor.note))
            return f"You named it yourself as what is left to do ({when})."
        if item.reason == "fallback":
            return f"Your own way on from {at}, if what comes before it does not help."
        ordered = ", and it is on order" if self.wording.is_ordered(item) else ""
        reasons = {
            "temporary": f"What is there now was fitted as a stop-gap at {at}.",
            "part needed": f"The part was found to be needed at {at}{ordered}.",
            "fault": f"It was found at {at} and not put right since.",
            "to do": f"It was put on the list at {at} and not heard done since.",
        }
        why = reasons.get(item.reason, f"It has been open since {at}.")
        return why + " It waits for something else first." if tier is Tier.WAITS and item.state != "noticed" else why

    def _outcomes(self, item: OpenItem) -> tuple[str, ...]:
        if item.reason != "to do" and item.reason != "fault":
            return ()
        facts = [e.fact for e in self.log.about(item.name, item.about)]
        bad = [f for f in facts if isinstance(f, Finding) and f.verdict == "bad"]
        return (f"Put right when this is no longer so: {bad[-1].condition}.",) if bad else ()
