"""What a reading should be, by the card or by what was said, and whether it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.model import Machine, Reading, SpecifiedValue

NOMINAL = 0.1
"How far a reading may be from a single figure of a handbook, as a share of it (judgement)."


@dataclass(frozen=True, slots=True)
class Limits:
    """The range that a reading should lie in; None where there is no end to it."""

    low: float | None
    high: float | None
    unit: str
    text: str
    "As the card or the person gave it."


def limits_for(machine: Machine, reading: Reading, said: Sequence[Reading] = ()) -> Limits | None:
    """The limits for a reading: from the card, else the last that was said before."""
    about = _subject(reading)
    for value in machine.specified:
        if value.quantity == reading.quantity and _fits(
            thing(value.subject.replace("_", " ")), about, reading.quantity
        ):
            found = _from_card(value)
            if found is not None:
                return found
    for one in reversed(said):
        if one.quantity == reading.quantity and _same_subject(_subject(one), about):
            return _from_talk(one)
    return None


def verdict(reading: Reading, limits: Limits | None) -> str:
    """low, high or good against the limits; empty when that cannot be said."""
    if limits is None:
        return ""
    found = bounds_in(reading.value, reading.unit, limits.unit)
    if found is None:
        return ""
    slack = 1e-9 + 1e-6 * max(abs(found[0]), abs(found[1]))
    if limits.low is not None and found[1] < limits.low - slack:
        return "low"
    if limits.high is not None and found[0] > limits.high + slack:
        return "high"
    return "good"


def _subject(reading: Reading) -> Thing:
    return thing(reading.subject, reading.name)


def _same_subject(a: Thing, b: Thing) -> bool:
    return same(a, b) or (not a.words and not b.words and a.marks == b.marks)


def _fits(specified: Thing, subject: Thing, quantity: str) -> bool:
    """A value for all cylinders holds for each; 'points gap' for the points."""
    if specified.marks and subject.marks and not specified.marks & subject.marks:
        return False
    ours = specified.words - {quantity, "gap", "clearanc", "setting", "limit"}
    return not ours or bool(ours & subject.words) or same(specified, subject)


def _from_card(value: SpecifiedValue) -> Limits | None:
    low, high = value.low, value.high
    if value.nominal is not None and low is None and high is None:
        if value.limit == "min":
            low = value.nominal
        elif value.limit == "max":
            high = value.nominal
        else:
            low, high = value.nominal * (1 - NOMINAL), value.nominal * (1 + NOMINAL)
    if low is None and high is None:
        return None
    return Limits(low, high, value.unit, value.text)


def _from_talk(said: Reading) -> Limits | None:
    from worklog_tui.logbook.amounts import bounds

    found = bounds(said.value)
    if found is None:
        return None
    low, high = found
    if said.condition in ("under", "maximum", "max", "limit"):
        return Limits(None, high, said.unit, said.quote)
    if said.condition in ("over", "minimum", "min"):
        return Limits(low, None, said.unit, said.quote)
    if low == high:
        low, high = low * (1 - NOMINAL), high * (1 + NOMINAL)
    return Limits(low, high, said.unit, said.quote)
