"""Readings held against what they should be: by the machine card, by what was said, else by the best cylinder."""

from __future__ import annotations

from worklog_tui.diagnosis.hearing import is_part, trust
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.logbook.outcomes import own_source
from worklog_tui.model import Reading
from worklog_tui.rulebook.faults import Check, Measure

WET = frozenset({"wet", "oil"})
"Conditions of a compression that is no dry one."
Judged = tuple[str, Event, float, str]
"The outcome, the reading, its trust, and whose figure it was held against where that is borrowed."
SAME_UNIT = {"in": 25.4, "mm": 1.0, "um": 0.001, "psi": 6.894757, "bar": 100.0, "kPa": 1.0}
"""Millimetres and kilopascals: enough to hold two readings of one kind against each other."""


def number(reading: Reading) -> float | None:
    """A reading as one number in a unit that can be compared; the middle of a range; None for a thread."""
    value = reading.value
    if isinstance(value, str):
        return None
    middle = (value[0] + value[1]) / 2 if isinstance(value, tuple) else value
    return middle * SAME_UNIT.get(reading.unit, 1.0)


def should_be(log: Log, quantity: str, subjects: tuple[str, ...]) -> tuple[float | None, str]:
    """What a quantity should be, and whose figure that is where it is borrowed: from the card, else the last value in
    the log that was given as such.
    """
    for value in log.history.machine.specified:
        given = value.nominal if value.nominal is not None else value.low if value.low is not None else value.high
        if value.quantity == quantity and given is not None and (not subjects or is_part("", value.subject, subjects)):
            return given * SAME_UNIT.get(value.unit, 1.0), "" if own_source(value.source) else value.source
    for event in reversed(log.readings):
        fact = event.fact
        if isinstance(fact, Reading) and fact.role == "specified" and _of(fact, quantity, subjects):
            return number(fact), fact.source
    return None, ""


def _of(reading: Reading, quantity: str, subjects: tuple[str, ...]) -> bool:
    return reading.quantity == quantity and (not subjects or is_part(reading.name, reading.subject, subjects))


def judged(measure: Measure, log: Log) -> Judged | None:
    """Whether the last reading is as it should be (good) or not (bad); a value that was set counts as good."""
    last: Event | None = None
    for event in log.readings:
        if (
            isinstance(event.fact, Reading)
            and event.fact.role in ("measured", "set")
            and _of(event.fact, measure.quantity, measure.subjects)
        ):
            last = event
    if last is None or not isinstance(last.fact, Reading):
        return None
    if last.fact.role == "set":
        return "good", last, trust(last.fact), ""
    (wanted, whose), seen = should_be(log, measure.quantity, measure.subjects), number(last.fact)
    if not wanted or seen is None:
        return None
    off = abs(seen - wanted) > measure.within * abs(wanted)
    return ("bad" if off else "good"), last, trust(last.fact), whose


def outcome_of(check: Check, log: Log) -> Judged | None:
    """What the readings of a check amount to: the worst of the last reading of each subject, dry ones only.

    Several readings of one subject in one note are of several: ninety-five, ninety-two, forty of all cylinders.
    """
    latest: dict[str, Event] = {}
    for event in log.readings:
        fact = event.fact
        if (
            isinstance(fact, Reading)
            and fact.role == "measured"
            and _of(fact, check.quantity, check.subjects)
            and not WET.intersection(fact.taken_words)
        ):
            several = fact.subject in latest and latest[fact.subject].place.order == event.place.order
            latest[f"{fact.subject} {event.when}" if several else fact.subject] = event
    values = {s: n for s, e in latest.items() if isinstance(e.fact, Reading) and (n := number(e.fact)) is not None}
    if not values or not check.bands:
        return None
    given, whose = should_be(log, check.quantity, check.subjects)
    reference = given or (max(values.values()) if len(values) > 1 else None)
    worst, at = 0, next(reversed(values))
    for subject, value in values.items():
        outcome = _band(check, value, reference)
        if outcome is None:
            return None
        if check.outcomes.index(outcome) >= worst:
            worst, at = check.outcomes.index(outcome), subject
    return check.outcomes[worst], latest[at], trust(latest[at].fact), whose if given else ""


def _band(check: Check, value: float, reference: float | None) -> str | None:
    for test, limit, outcome in check.bands:
        if "of_reference" in test:
            if reference is None:
                return None
            ratio = value / reference
        else:
            ratio = value / SAME_UNIT.get(check.unit, 1.0)
        if (ratio < limit) if test.startswith("below") else (ratio > limit):
            return outcome
    return check.outcomes[0]
