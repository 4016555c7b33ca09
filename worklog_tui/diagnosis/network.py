"""The faults of a machine as a network: their priors, and the pieces of evidence that the signs of its log make.

A fault whose parts were worked on is two: the one that was there before, which still explains the older signs, and the
one that may be there now. Trust is a mixture: w L(sign | faults) + (1 - w) base, with a fixed base.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from functools import cached_property

from worklog_tui.diagnosis.noisy_or import MOST_BRANCHES, Piece, Posterior, absent, outcome, posterior, present
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.rulebook.faults import Check, Symptom

AFTER_REPAIR = 0.12
"The share of a fault's prior that is left once its parts were worked on (a repair cures with about 0.9; judgement)."
DISTURBED = 0.5
"""The prior that a work between a proof that all was well and the trouble brought a fault (the cap of priors); several
that it can have brought share it.
"""
LOOK_SEES, LOOK_WRONG = 0.95, 0.03
"How often a look finds a fault that is there, and one that is not (judgement)."
HUNCH = 5.0
"What a suspicion of the person who has the machine before him does to the odds (judgement)."
HINT = 12.0
"What words that point at a fault do to its odds, fully trusted (judgement)."
WEIGHING = 256
"The limit of the sum when signs are weighed one by one for the explanation."
BEFORE, OTHER = "/before", "other/"
"A fault as it was before its parts were worked on; whatever causes a complaint and is not in the list (its leak)."


class Network:
    """All faults that apply, with the evidence for and against each."""

    def __init__(self, signs: Signs) -> None:
        self.signs = signs
        self.ids: list[str] = []
        self.priors: list[float] = []
        by_work = Counter(work.when for work in signs.disturbed.values())
        for fault in signs.faults.values():
            mended = fault.id in signs.mended
            now = fault.prior * (AFTER_REPAIR if mended else 1.0)
            brought = signs.disturbed.get(fault.id)
            share = 1 - (1 - DISTURBED) ** (1 / by_work[brought.when]) if brought else 0.0
            self._add(fault.id, max(share, fault.prior) if brought else now)
            if mended or brought:
                self._add(fault.id + BEFORE, fault.prior)
        for symptom in signs.symptoms.values():
            self._add(OTHER + symptom.id, symptom.leak)
        self.index = {name: i for i, name in enumerate(self.ids)}
        self.evidence = [(sign, self.piece(sign)) for sign in signs.all() if sign.trust > 0]

    def _add(self, name: str, prior: float) -> None:
        self.ids.append(name)
        self.priors.append(prior)

    def variable(self, fault: str, when: float) -> int:
        """The fault that a sign of that moment speaks of: as it is now, or as it was before it was worked on."""
        before = when < self.signs.touched(fault)
        return self.index[fault + BEFORE if before else fault]

    def piece(self, sign: Sign) -> Piece:
        """The evidence that a sign is."""
        when = sign.event.when
        if sign.sort == "symptom":
            return self.symptom_piece(self.signs.symptoms[sign.of], sign.shows == "present", sign.trust, when)
        if sign.sort == "check":
            check = self.signs.checks[sign.of]
            return self.check_piece(check, check.outcomes.index(sign.shows), sign.trust, when)
        i = self.variable(sign.of, when)
        if sign.sort in ("hunch", "hint"):
            raises = HUNCH if sign.sort == "hunch" else HINT
            return Piece(((1.0, {i: sign.trust * raises + 1 - sign.trust}),))
        bad = sign.shows == "bad"
        seen, wrong = (LOOK_SEES, LOOK_WRONG) if bad else (1 - LOOK_SEES, 1 - LOOK_WRONG)
        rate = self.priors[i] * seen + (1 - self.priors[i]) * wrong
        with_fault, without = (sign.trust * x + (1 - sign.trust) * rate for x in (seen, wrong))
        return Piece(((without, {i: with_fault / without}),))

    def symptom_piece(self, symptom: Symptom, there: bool, trust: float, when: float) -> Piece:
        """A complaint that is there or not."""
        links = {self.variable(f, when): q for f, q in symptom.causes.items() if f in self.signs.faults}
        links[self.index[OTHER + symptom.id]] = 1.0
        rate = 1 - math.prod(1 - self.priors[i] * q for i, q in links.items())
        return (present if there else absent)(links, 0.0, trust, rate)

    def check_piece(self, check: Check, seen: int, trust: float, when: float) -> Piece:
        """The outcome of a check; a trust of 1 gives its plain likelihood."""
        rows = {self.variable(f, when): row for f, row in check.likelihood.items() if f in self.signs.faults}
        return outcome(rows, check.base, seen, trust, self._rate(rows, check.base, seen))

    def _rate(self, rows: Mapping[int, Sequence[float]], base: Sequence[float], seen: int) -> float:
        def upto(k: int) -> float:
            whole = math.fsum(base[: k + 1])
            if k < 0 or whole <= 0:
                return 0.0
            shares = ((i, min(1.0, math.fsum(row[: k + 1]) / whole)) for i, row in rows.items())
            return whole * math.prod(1 - self.priors[i] * (1 - share) for i, share in shares)

        return upto(seen) - upto(seen - 1)

    @cached_property
    def result(self) -> Posterior:
        """The chance of every fault, given all signs."""
        return self._solve([piece for _, piece in self.evidence])

    def _solve(self, pieces: list[Piece], limit: int = MOST_BRANCHES) -> Posterior:
        try:
            return posterior(self.priors, pieces, limit)
        except ValueError:
            return Posterior(tuple(self.priors), 0.0)

    def chance(self, fault: str) -> float:
        """The chance that a fault is there now."""
        return self.result.chances[self.index[fault]]

    def chance_at(self, fault: str, when: float) -> float:
        """The chance that a fault was there at a moment, given all signs."""
        return self.result.chances[self.variable(fault, when)]

    def weights(self, fault_ids: Sequence[str]) -> list[tuple[Sign, dict[str, float]]]:
        """What every sign adds to the log odds of some faults: all signs against all but this one."""
        whole = self._solve([piece for _, piece in self.evidence], WEIGHING)
        now = {f: _logit(whole.chances[self.index[f]]) for f in fault_ids}
        found = []
        for n, (sign, piece) in enumerate(self.evidence):
            if not any(self.index[f] in piece.touches() for f in fault_ids) and sign.sort == "look":
                continue
            rest = self._solve([p for k, (_, p) in enumerate(self.evidence) if k != n], WEIGHING)
            found.append((sign, {f: now[f] - _logit(rest.chances[self.index[f]]) for f in fault_ids}))
        return found


def _logit(p: float) -> float:
    p = min(max(p, 1e-9), 1 - 1e-9)
    return math.log(p / (1 - p))
