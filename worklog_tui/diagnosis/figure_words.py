"""How a figure outside its limits is put into words, and whether it may be held against them at all.

The words stand in grammars/diagnosis/off-figures.toml.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from worklog_tui.diagnosis.log import Event
from worklog_tui.diagnosis.words import SIDES, holds, spoken, tokens
from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.outcomes import Limits
from worklog_tui.logbook.spelling import written_out
from worklog_tui.model import OpenItem, Reading

ONE_SIDED = 3
"A bare limit, such as `under one`, is passed by more (judgement)."
AHEAD = 6
"Whose figure it is, is said at most so many words before it (judgement)."


@dataclass(frozen=True, slots=True)
class OffFigure:
    """A reading outside its limits."""

    event: Event
    reading: Reading
    limits: Limits
    too: str
    "high or low."
    told: Reading | None
    "The saying that the limits come from; None for the card."
    item: OpenItem
    around: str = ""
    "The words before and behind the figure in its note."

    @property
    def alike(self) -> tuple[str, ...]:
        """What several of one kind share that are set to one figure: the clearances of the valves."""
        bare = (w for w in tokens(self.reading.subject) if w not in SIDES)
        return self.reading.quantity, self.too, self.limits.text, *sorted(bare)


@dataclass(frozen=True, slots=True)
class Rule:
    """What a kind of figure asks for; see grammars/diagnosis/off-figures.toml."""

    quantities: frozenset[str]
    of: tuple[str, ...]
    ends: tuple[str, ...]
    told: tuple[str, ...]
    measured: tuple[str, ...]
    unless: tuple[str, ...]
    too: str
    say: str
    minutes: int
    times: float
    "So many times too high or too low a figure may be before it is not believed."

    @property
    def seeks(self) -> bool:
        """Whether no hand sets it: its cause has to be found."""
        return self.say.startswith("find ")


def _rule(data: Mapping[str, Any]) -> Rule:
    of, ends, told, measured, unless = (
        tuple(data.get(key, ())) for key in ("of", "ends", "told", "measured", "unless")
    )
    too, say, minutes, times = data.get("too", ""), data["say"], data["minutes"], data["times"]
    return Rule(frozenset(data["quantities"]), of, ends, told, measured, unless, too, say, minutes, times)


class FigureWords:
    """Words figures with the lists of the fault files."""

    def __init__(self, lists: Mapping[str, Any]) -> None:
        self._rules = [_rule(r) for r in lists.get("off_figures", ())]
        self._lists: Mapping[str, Any] = lists.get("off_figure_words", {})

    def rule(self, off: OffFigure) -> Rule | None:
        """The first entry that fits a figure; None where nothing is known to do about it."""
        return next((r for r in self._rules if self._fits(r, off)), None)

    def asks(self, off: OffFigure) -> bool:
        """Whether anything is to be done about a figure; what is many times off was more often heard wrong."""
        rule = self.rule(off)
        if rule is None:
            return False
        ends = bounds_in(off.reading.value, off.reading.unit, off.limits.unit)
        limits = off.limits
        end = limits.nominal or (limits.low if off.too == "low" else limits.high)
        if ends is None or not end:
            return ends is not None
        times = max(abs(ends[0] / end), abs(end / (ends[1] or end)))
        return times <= (rule.times * ONE_SIDED if limits.low is None or limits.high is None else rule.times)

    def compares(self, off: OffFigure) -> bool:
        """Whether it was taken as the wanted one is meant: hot or cold, the slack of a belt and not its width."""
        mine, theirs = _own(off), f"{off.limits.text} {off.told.condition if off.told else ''}"
        if any(_has(off.reading.condition, [w]) and not _has(theirs, [w]) for w in self._lists.get("passing", ())):
            return False
        for ways in self._lists.get("apart", ()):
            ours = {n for n, way in enumerate(ways) if _has(off.reading.condition, way)}
            meant = {n for n, way in enumerate(ways) if _has(theirs, way)}
            if ours and meant and ours.isdisjoint(meant):
                return False
        moves, sizes = self._lists.get("moves", ()), self._lists.get("sizes", ())
        return off.reading.quantity != "length" or not (
            (_has(mine, sizes) and not _has(mine, moves) and _has(theirs, moves))
            or (_has(theirs, sizes) and not _has(theirs, moves) and _has(mine, moves))
        )

    def is_anothers(self, before: str) -> bool:
        """Whether the words just before a figure say that it is of another machine."""
        near = " ".join(before.split()[-AHEAD:])
        return _has(near, self._lists.get("others", ()))

    def is_distrusted(self, after: str) -> bool:
        """Whether the words that follow a figure take it back: the gauge is out, he read it wrong."""
        return _has(after, self._lists.get("distrusted", ()))

    def say(self, rule: Rule, several: Sequence[OffFigure]) -> str:
        """The step for figures of one kind; for several the sides and numbers of each are left to the reason."""
        off = several[-1]
        thing, part = self.thing(off), self.part(off)
        if len(several) > 1:
            thing, part = (" ".join(w for w in t.split() if not SIDES.intersection(tokens(w))) for t in (thing, part))
        wanted = self.wanted(off)
        limit = wanted.removeprefix("at least ").removeprefix("at most ")
        return rule.say.format(thing=thing, part=part, found=self.found(off), wanted=wanted, limit=limit)

    def thing(self, off: OffFigure) -> str:
        """What was measured: its part, and the word of the measure where the part does not name it."""
        subject = written_out(off.reading.subject, off.reading.name)
        subject = subject[:1].lower() + subject[1:] if subject[1:2].islower() else subject
        if self._measure(subject):
            return subject
        quantity, told = off.reading.quantity, off.told.quote if off.told else ""
        if quantity == "length":
            return f"{subject} {self._measure(f'{off.reading.quote} {told}')}".strip()
        if quantity == "gap":
            return f"{subject} {self._measure(off.reading.quote) or quantity}"
        return subject if quantity in ("angle", "turns", "volume") else f"{subject} {quantity.replace('_', ' ')}"

    def found(self, off: OffFigure) -> str:
        """The figure as it was measured."""
        value = off.reading.value
        if isinstance(value, str):
            return value
        ends = value if isinstance(value, tuple) else (value, value)
        return self._shown(min(ends), max(ends), off.reading.unit)

    def wanted(self, off: OffFigure) -> str:
        """The figure that is wanted, or the limit that it must keep."""
        limits = off.limits
        if limits.nominal is not None:
            return self._shown(limits.nominal, limits.nominal, limits.unit)
        if limits.low is None or limits.high is None:
            end = limits.low if limits.low is not None else limits.high or 0.0
            return f"{'at least' if limits.high is None else 'at most'} {self._shown(end, end, limits.unit)}"
        return self._shown(limits.low, limits.high, limits.unit)

    def _shown(self, low: float, high: float, unit: str) -> str:
        named = self._lists.get("units", {}).get(unit, unit)
        return f"{low:g} to {high:g} {named}".strip() if low != high else f"{low:g} {named}".strip()

    def _measure(self, text: str) -> str:
        said = tokens(text)
        return next((m for m in self._lists.get("measures", ()) if holds(said, tokens(m))), "")

    def part(self, off: OffFigure) -> str:
        """The part alone: the belt of the belt deflection."""
        subject = written_out(off.reading.subject, off.reading.name)
        for measure in self._lists.get("measures", ()):
            if spoken(subject).endswith(f" {measure}"):
                subject = subject[: -len(measure)].strip()
        return subject[:1].lower() + subject[1:] if subject[1:2].islower() else subject

    def _fits(self, rule: Rule, off: OffFigure) -> bool:
        reading, told = off.reading, off.told
        if reading.quantity not in rule.quantities or rule.too not in ("", off.too) or not reading.subject:
            return False
        thing = f"{reading.subject} | {reading.name}"
        head = " ".join(tokens(self.part(off))[-1:])
        said = f"{thing} | {_own(off)} | {off.limits.text} | {told.condition if told else ''}"
        if (rule.of and not _has(thing, rule.of)) or (rule.ends and not _has(head, rule.ends)):
            return False
        if _has(said, rule.unless):
            return False
        near = f"{thing} | {_own(off)} | {off.around}"
        return (not rule.told or _has(f"{said} | {near}", rule.told)) and (
            not rule.measured or _has(near, rule.measured)
        )


def _own(off: OffFigure) -> str:
    return f"{off.reading.subject} | {off.reading.quote} | {off.reading.condition}"


def _has(text: str, phrases: Iterable[str]) -> bool:
    """Whether a text has one of the phrases, in the singular or the plural."""
    said, plain = f" {spoken(text)} ", f" {' '.join(tokens(text))} "
    return any(f" {spoken(p)} " in said or (_is_whole(p) and f" {' '.join(tokens(p))} " in plain) for p in phrases)


def _is_whole(phrase: str) -> bool:
    """Whether no small word is lost when a phrase is compared by its telling words: `gauge is out` is no gauge."""
    return len(tokens(phrase)) == len(spoken(phrase).split())
