"""What a reading should be, by the card or by what was said, and whether it is."""

from __future__ import annotations

from bisect import bisect_left

from worklog_tui.logbook.amounts import bounds, bounds_in
from worklog_tui.logbook.compressions import oiled, taken_wet
from worklog_tui.logbook.outcomes import Limits
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.logbook.words import word_set
from worklog_tui.model import History, Reading, SpecifiedValue

_LEAST = word_set("minimum min over least above")
_MOST = word_set("maximum max under most below")
_LIMIT = word_set("limit wear scrap")
_BETTER_HIGH = word_set("compression pressure voltage density length mass")
MEASURES = word_set("gap clearance setting limit deflection")
"What is measured, said with the part: the gap of the clutch gap is that of the clutch."
NOMINAL = 0.1
"How far a reading may be from a single figure of a handbook, as a share of it (judgement)."


class Judge:
    """Lays readings beside what they should be: by the card, else by what is said nearest to them."""

    def __init__(self, history: History) -> None:
        self._history = history
        self._wet: list[tuple[int, int]] | None = None
        self._card = [value for value in history.machine.specified if value.quantity]
        self._said: dict[str, list[tuple[int, Reading]]] = {}
        self._known: dict[tuple[str, Thing], tuple[Limits | None, list[tuple[int, Reading]]]] = {}
        for fact in history.facts():
            if isinstance(fact, Reading) and fact.role == "specified":
                self._said.setdefault(fact.quantity, []).append((history.place(fact.main.note).order, fact))

    def limits(self, reading: Reading) -> Limits | None:
        """The limits for a reading; None when nothing tells, and for what only topped a fluid up."""
        found = self._limits(reading)
        return None if found is not None and _tops_up(reading, found) else found

    def _limits(self, reading: Reading) -> Limits | None:
        about = _subject(reading)
        key = (reading.quantity, about)
        if key not in self._known:
            card = self._by_card(reading.quantity, about)
            said = self._said.get(reading.quantity, ()) if card is None else ()
            self._known[key] = card, [row for row in said if _same_subject(_subject(row[1]), about)]
        card, rows = self._known[key]
        if card is not None or not rows:
            return card
        here = self._history.place(reading.main.note).order
        after = bisect_left(rows, here, key=lambda row: row[0])
        near = rows[max(after - 1, 0) : after + 1]
        return _from_talk(min(near, key=lambda row: abs(row[0] - here))[1])

    def compares(self, reading: Reading) -> str:
        """low, high or good for what was measured or set; empty when nothing tells, or with oil in the bores."""
        taken = reading.role in ("measured", "set") and not self._is_wet(reading)
        return verdict(reading, self.limits(reading)) if taken else ""

    def _is_wet(self, reading: Reading) -> bool:
        if reading.quantity != "compression":
            return False
        if self._wet is None:
            self._wet = oiled(self._history)
        return taken_wet(reading, self._history.place(reading.main.note).order, self._wet)

    def _by_card(self, quantity: str, about: Thing) -> Limits | None:
        best: tuple[int, Limits] | None = None
        for value in self._card:
            if value.quantity == quantity:
                shared = _fits(thing(value.subject.replace("_", " ")), about, quantity)
                found = _from_card(value) if shared is not None else None
                if shared is not None and found is not None and (best is None or shared > best[0]):
                    best = shared, found
        return best[1] if best else None


def verdict(reading: Reading, limits: Limits | None) -> str:
    """low, high or good against the limits; empty when that cannot be said."""
    if limits is None:
        return ""
    found = bounds_in(reading.value, reading.unit, limits.unit)
    if found is None:
        return ""
    if limits.low is not None and limits.high is not None and found[0] < limits.low and found[1] > limits.high:
        return ""  # `from twenty to a hundred and eighty`: a way that it went through
    slack = 1e-9 + 1e-6 * max(abs(found[0]), abs(found[1]))
    if limits.low is not None and found[1] < limits.low - slack:
        return "low"
    if limits.high is not None and found[0] > limits.high + slack:
        return "high"
    return "good"


def _tops_up(reading: Reading, limits: Limits) -> bool:
    """Whether so little went in that it was no fill: half a litre into a tank of nine says nothing of its level."""
    holds = limits.nominal if limits.nominal is not None else limits.low
    if reading.quantity != "volume" or reading.role != "set" or holds is None:
        return False
    went = bounds_in(reading.value, reading.unit, limits.unit)
    return went is not None and went[1] < TOPPED_UP * holds


TOPPED_UP = 0.5
"Share of what it holds up to which a fluid was only topped up (judgement)."


def _subject(reading: Reading) -> Thing:
    return thing(reading.subject, reading.name)


def _same_subject(said: Thing, subject: Thing) -> bool:
    """A figure for all cylinders holds for each."""
    if same(said, subject):
        return True
    return said.words == subject.words and (not said.marks or said.marks == subject.marks)


def _fits(specified: Thing, subject: Thing, quantity: str) -> int | None:
    """How many words a value of the card shares with a subject that it is for; None when it is for another.

    A value for all cylinders holds for each; 'points gap' for the points; a bare 'compression' for whatever has one. A
    key without any word of a thing, such as 'cut in', is for nothing that is known here.
    """
    if specified.marks and subject.marks and not specified.marks & subject.marks:
        return None
    ours = specified.words - {quantity} - thing(quantity).words - MEASURES
    if ours <= subject.words:
        return len(ours) if specified.words else None
    beside = bool(subject.words) and subject.words <= ours and specified.head == subject.head
    return len(subject.words) if beside else None


def _from_card(value: SpecifiedValue) -> Limits | None:
    low, high = value.low, value.high
    if value.nominal is not None and low is None and high is None:
        if value.limit not in ("min", "max"):
            return _near(value.nominal, value.unit, value.text, value.source)
        low, high = (value.nominal, None) if value.limit == "min" else (None, value.nominal)
    return None if low is None and high is None else Limits(low, high, value.unit, value.text, source=value.source)


def _from_talk(said: Reading) -> Limits | None:
    found = bounds(said.value)
    if found is None:
        return None
    low, high = found
    how, given = said.taken_words, (said.unit, said.quote, None, said.source)
    if how & _LEAST or (how & _LIMIT and said.quantity in _BETTER_HIGH):
        return Limits(low, None, *given)
    if how & (_MOST | _LIMIT):
        return Limits(None, high, *given)
    return _near(low, said.unit, said.quote, said.source) if low == high else Limits(low, high, *given)


def _near(figure: float, unit: str, text: str, source: str) -> Limits:
    """What is near enough to a single figure."""
    ends = sorted((figure * (1 - NOMINAL), figure * (1 + NOMINAL)))
    return Limits(ends[0], ends[1], unit, text, figure, source)
