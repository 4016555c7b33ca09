"""What the fault files advise about an open complaint: the suspects, and the checks that save the most work."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from functools import cached_property

from worklog_tui.diagnosis.field import DEAR, Field
from worklog_tui.diagnosis.option import Choice, Option, rank
from worklog_tui.diagnosis.order import (
    Look,
    after_repair,
    best_order,
    expected_after,
    quick_cost,
)  # fmt: skip
from worklog_tui.diagnosis.suspect_sets import has, normal, over
from worklog_tui.rulebook.faults import Check, Fault

EXACT = 4
"So many options, the best by a quick order, are rated by the exact one."
FREE_MINUTES, FREE_CHANCE = 2.0, 0.03
"A look that takes no more than this, at a suspect of at least this chance, comes first: it shifts the odds by far."
OUTSHONE = 0.25
"A free look at a suspect less likely than this share of the likeliest does not come first (judgement)."
NEAR = 2.0
"Within so many minutes of the best, the simple checks of the fault tables come first."
SLACK = 0.05
"What costs this share more than the best order without it is no worse than a part of that order."
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
        if not self.suspects or not sum(self.belief) > 0:
            return []
        plan = best_order(self.belief, self.parts, self.minutes)
        found = [self._rated(option, plan.cost) for option in self._shortlist()]
        top = self.standout
        found = [o for o in found if o.saves >= -SLACK * plan.cost or o.sort == "repair" or (o.sort, o.id) == top]
        if not found:
            return []
        best = min(o.expected for o in found)
        return sorted(found, key=lambda o: ((o.sort, o.id) != top, not self._comes_first(o, best), *rank(o, best)))

    @cached_property
    def standout(self) -> tuple[str, str]:
        """What to do about the one suspect that all points to: look at it, or mend what was seen or is cheap."""
        if not self.suspects:
            return "", ""
        chances = sorted((self.network.chance(f) for f in self.suspects), reverse=True)
        if chances[0] < STANDS_OUT or (len(chances) > 1 and chances[0] < APART * chances[1]):
            return "", ""
        name = next(f for f in self.suspects if self.network.chance(f) == chances[0])
        fault, seen = self.signs.faults[name], self.signs.look_signs.get(name)
        cheap = fault.look is None or fault.repair.minutes + fault.repair.parts_cost <= fault.look.minutes
        if (seen is None or seen.shows != "bad") and not cheap and self._worth(name):
            return "look", name
        return "repair", name

    def _shortlist(self) -> list[Choice]:
        """The options that may come first: the best by a quick order, and those that are put first all the same."""
        found = [(self._expected(c, quick_cost), c) for c in self._candidates()]
        found.sort(key=lambda f: f[0])
        return [
            c for n, (_, c) in enumerate(found)
            if n < EXACT or (c.sort, c.id) == self.standout
            or (c.id in self.symptom.first and c.minutes <= FREE_MINUTES)
        ]  # fmt: skip

    def _candidates(self) -> Iterable[Choice]:
        where, size = {self.network.index[f]: n for n, f in enumerate(self.suspects)}, len(self.belief)
        for check in self.signs.checks.values():
            fits = not check.only_for or self.symptom.id in check.only_for
            if fits and self._worth(check.id) and any(f in self.suspects for f in check.likelihood):
                pieces = [self.network.check_piece(check, k, 1.0, math.inf) for k in range(len(check.outcomes))]
                among = self._among_rest(check)
                chances = normal([over(piece, where, r) for piece, r in zip(pieces, among, strict=True)])
                yield Choice("check", check.id, check.job, tuple(zip(check.outcomes, chances, strict=True)))
        for n, name in enumerate(self.suspects):
            fault = self.signs.faults[name]
            if name in self.vetoed:
                continue
            if fault.look and self._worth(name):
                seen = (("bad", has(n, True, size)), ("good", has(n, False, size)))
                yield Choice("look", name, fault.look, seen)
            if self._worth_mending(fault):
                yield Choice("repair", name, fault.repair)

    def _among_rest(self, check: Check) -> list[float]:
        """How likely each outcome of a check is when none of the suspects is the cause, but one of the rest is."""
        whole = self.symptom.leak + sum(chance for _, chance in self.rest)
        rows = [(check.likelihood.get(f, check.base), chance) for f, chance in self.rest]
        rows.append((check.base, self.symptom.leak))
        return [sum(row[k] * chance for row, chance in rows) / whole for k in range(len(check.outcomes))]

    def _worth(self, name: str) -> bool:
        """Whether a check or look was not made already since the thing was last worked on."""
        if name in self.vetoed:
            return False
        sign = self.signs.check_signs.get(name) or self.signs.look_signs.get(name)
        check = self.signs.checks.get(name)
        answered = self.signs.symptom_signs.get(check.answers) if check else None
        if answered and answered.shows == "present":
            return False
        return sign is None or sign.trust < VOIDED or sign.event.when < self._disturbed_at(name)

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

    def _rated(self, option: Choice, base: float) -> Option:
        expected = self._expected(option, lambda *known: best_order(*known).cost)
        after = tuple((o, *self._after(likelihood)) for o, likelihood in option.outcomes)
        first = option.id in self.symptom.first
        return Option(option.sort, option.id, option.job, expected, base - expected, after, first)

    def _expected(self, option: Choice, cost: Callable[..., float]) -> float:
        """The expected minutes to a working machine when an option is done first; `cost`: of what follows."""
        covers = self._covers(option.job)

        def follow(belief: list[float], opened: int) -> float:
            return cost(belief, self.parts, self.minutes, opened)

        if option.sort == "repair":
            way = sum(m for k, m in enumerate(self.minutes) if covers >> k & 1)
            rest = after_repair(self.belief, self.suspects.index(option.id))
            return option.job.minutes + option.job.parts_cost + way + follow(rest, covers)
        mends = self.idle[option.id] if option.sort == "look" else 0.0
        look = Look(option.job.minutes + mends, covers, tuple(likelihood for _, likelihood in option.outcomes))
        return expected_after(look, self.belief, follow, 0, self.minutes)

    def _after(self, likelihood: Sequence[float]) -> tuple[float, str]:
        joint = [b * x for b, x in zip(self.belief, likelihood, strict=True)]
        mass = sum(joint)
        chances = [sum(j for bits, j in enumerate(joint) if bits >> n & 1) for n in range(len(self.suspects))]
        best = max(range(len(chances)), key=lambda n: chances[n])
        return mass, self.suspects[best]

    def _comes_first(self, option: Option, best: float) -> bool:
        return option.first and (self._is_free(option) or option.expected <= best + NEAR)

    def _is_free(self, option: Option) -> bool:
        """Whether an option takes no time to speak of and can still move the odds."""
        if option.sort == "repair" or option.job.minutes > FREE_MINUTES or option.job.access:
            return False
        if option.sort == "look":
            return self.network.chance(option.id) >= max(FREE_CHANCE, OUTSHONE * self.top)
        return len({fault for _, _, fault in option.after}) > 1
