"""What the fault files advise about an open complaint: the suspects, and the checks that save the most work."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cached_property

from worklog_tui.diagnosis.field import DEAR, Field
from worklog_tui.diagnosis.good_order import NOTHING, minutes_of
from worklog_tui.diagnosis.option import Choice, Option, rank
from worklog_tui.diagnosis.spread import Spread
from worklog_tui.rulebook.faults import Check, Fault, Job

LOOKED_AT = 25
"So many of the likeliest causes may be looked at next."
FREE_MINUTES, FREE_CHANCE = 2.0, 0.03
"A look that takes no more than this, at a suspect of at least this chance, comes first: it shifts the odds by far."
OUTSHONE = 0.25
"A free look at a suspect less likely than this share of the likeliest does not come first (judgement)."
NEAR = 2.0
"Within so many minutes of the best, a search begins with the simple checks of the fault tables."
STANDS_OUT, APART = 0.5, 1.6
"From this chance on, and so many times the next one, a suspect stands out: it is dealt with first (judgement)."
SURE, SEEN = 0.5, 0.2
"From these chances on a repair is named: unseen, and seen bad."
VOIDED = 0.15
"A sign that is trusted less was voided by a discovery: the look is worth making again."


class Engine(Field):
    """The advice of the fault files for one complaint."""

    @cached_property
    def top(self) -> float:
        """The chance of the likeliest fault."""
        return max((self.network.chance(f) for f in self.suspects), default=0.0)

    def options(self) -> list[Option]:
        """What can be done about it, best first; empty when nothing is suspected."""
        if not self.suspects or not self.spread.mass > 0:
            return []
        base = minutes_of(self.spread, self.parts, self.minutes)
        found = [self._rated(choice, base) for choice in self._choices()]
        if not found:
            return []
        best, top = min(o.expected for o in found), self.standout
        return sorted(found, key=lambda o: ((o.sort, o.id) != top, not self._comes_first(o, best), *rank(o, best)))

    @cached_property
    def standout(self) -> tuple[str, str]:
        """What to do about the one suspect that all points to: look at it, or mend what was seen or is cheap."""
        if not self.suspects:
            return "", ""
        chances = sorted((self.network.chance(f) for f in self.suspects), reverse=True)
        if chances[0] < STANDS_OUT:
            return "", ""
        name = next(f for f in self.suspects if self.network.chance(f) == chances[0])
        apart = 1.0 if self._costs_nothing(self.signs.faults[name].look) else APART
        if (len(chances) > 1 and chances[0] < apart * chances[1]) or not self._is_pointed_at(name):
            return "", ""
        fault, seen = self.signs.faults[name], self.signs.look_signs.get(name)
        cheap = fault.look is None or fault.repair.minutes + fault.repair.parts_cost <= fault.look.minutes
        if (seen is None or seen.shows != "bad") and not cheap and self._worth(name):
            return "look", name
        return "repair", name

    def _is_pointed_at(self, fault: str) -> bool:
        """Whether the person's own words or eyes point at it, and not figures alone."""
        signs = self.signs
        seen = signs.look_signs.get(fault)
        pointed = fault in signs.hint_signs or fault in signs.hunch_signs or fault in signs.disturbed
        return pointed or (seen is not None and seen.shows == "bad")

    def _choices(self) -> Iterator[Choice]:
        """What could be done: the checks that speak of a cause, a look at each cause, the repairs that can be named."""
        planned = set(self.causes)
        for check in self.signs.checks.values():
            fits = not check.only_for or self.symptom.id in check.only_for
            if fits and self._worth(check.id) and not planned.isdisjoint(check.likelihood):
                yield Choice("check", check.id, check.job, tuple(self._after_check(check)))
        for n, name in enumerate(self.causes):
            fault = self.signs.faults[name]
            if fault.look and n < LOOKED_AT and self._worth(name):
                yield Choice("look", name, fault.look)
            if self._worth_mending(fault):
                yield Choice("repair", name, fault.repair)

    def _after_check(self, check: Check) -> Iterator[tuple[str, Spread]]:
        for k, outcome in enumerate(check.outcomes):
            yield outcome, self.spread.given(self.fold(self.network.check_piece(check, k, 1.0, math.inf)))

    def _worth(self, name: str) -> bool:
        """Whether a check or look was not made already since the thing was last worked on."""
        if name in self.vetoed:
            return False
        sign = self.signs.check_signs.get(name) or self.signs.look_signs.get(name)
        check = self.signs.checks.get(name)
        answered = self.signs.symptom_signs.get(check.answers) if check else None
        if answered and answered.shows == "present":
            return False
        touched = max((self.signs.mended.get(f, -1.0) for f in check.likelihood), default=-1.0) if check else -1.0
        return sign is None or sign.trust < VOIDED or sign.event.when < max(self._disturbed_at(name), touched)

    def _disturbed_at(self, name: str) -> float:
        work = self.signs.disturbed.get(name)
        return work.when if work else -1.0

    def _worth_mending(self, fault: Fault) -> bool:
        """Whether a repair can be named at all: seen bad and still likely, or as good as sure and not dear."""
        sign = self.signs.look_signs.get(fault.id)
        chance = self.network.chance(fault.id)
        if sign is not None and sign.shows == "bad":
            return chance >= SEEN
        return chance >= SURE and fault.repair.parts_cost <= DEAR

    def _rated(self, choice: Choice, base: float) -> Option:
        """A choice with the expected minutes to a working machine when it is done first and a good order follows."""
        covers = self._covers(choice.job)
        spent = choice.minutes + self.way(covers)
        if choice.sort == "check":
            spent += sum(self._left(s, covers) for _, s in choice.outcomes)
            after = tuple((o, s.mass, self._likeliest(s)) for o, s in choice.outcomes)
        else:
            n, repair = self.causes.index(choice.id), self.signs.faults[choice.id].repair
            mends = repair.minutes + repair.parts_cost
            if choice.sort == "repair":
                spent += repair.parts_cost + self._left(self.spread.mended(n), covers)
                after = ()
            else:
                bad, good, more = self.spread.found(n), self.spread.cleared(n), self._covers(repair) & ~covers
                spent += self.idle[choice.id] + bad.mass * (mends + self.way(more))
                spent += self._left(bad, covers | more) + self._left(good, covers)
                after = (("bad", bad.mass, choice.id), ("good", good.mass, self._likeliest(good)))
        return Option(choice.sort, choice.id, choice.job, spent, base - spent, after, choice.id in self.symptom.first)

    def _left(self, spread: Spread, opened: int) -> float:
        return minutes_of(spread, self.parts, self.minutes, opened) if spread.mass > NOTHING else 0.0

    def _likeliest(self, spread: Spread) -> str:
        chances = spread.chances[:-1]
        return self.causes[max(range(len(chances)), key=lambda n: chances[n])]

    def _comes_first(self, option: Option, best: float) -> bool:
        near = 0.0 if self._is_begun else NEAR
        return option.first and (self._is_free(option) or option.expected <= best + near)

    @cached_property
    def _is_begun(self) -> bool:
        """Whether one of the simple checks was made already: from then on minutes alone decide."""
        signs = {**self.signs.check_signs, **self.signs.look_signs}
        return any(name in signs for name in self.symptom.first)

    @staticmethod
    def _costs_nothing(job: Job | None) -> bool:
        """Whether a look takes no time to speak of, with nothing to take off."""
        return job is not None and job.minutes <= FREE_MINUTES and not job.access

    def _is_free(self, option: Option) -> bool:
        """Whether an option takes no time to speak of and can still move the odds."""
        if option.sort == "repair" or not self._costs_nothing(option.job):
            return False
        if option.sort == "look":
            return self.network.chance(option.id) >= max(FREE_CHANCE, OUTSHONE * self.top)
        return len({fault for _, _, fault in option.after}) > 1
