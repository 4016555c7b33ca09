"""Compression tests: cylinders beside one another, dry beside wet, against the card's figure at this altitude."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.outcomes import own_source
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.starts import ran_at
from worklog_tui.logbook.trade_words import trade_words
from worklog_tui.model import History, Place, Reading, SpecifiedValue, Work
from worklog_tui.trade.compression import Verdict, compared, pressure_ratio, wet_test

_NUMBER = re.compile(r"(\d{1,2})\b")
_BORES = frozenset({"bore", "cylind", "plug"})
_OILED = frozenset({"lubricate", "fill", "soak"})
UNIT = "psi"
_SIZES = frozenset({"length", "mass", "volume", "duration", "run_time", "thread"})
"Of these a second figure is, as a rule, of something else: they show a repair only where something was adjusted."


@dataclass(frozen=True, slots=True)
class CylinderTest:
    """What one cylinder showed in a session, in psi."""

    cylinder: str
    dry: float | None
    wet: float | None
    verdict: Verdict | None
    "Dry beside the best one, or beside the card's figure."
    wet_says: str = ""
    "What the rise by oil tells: rings or bore, valves or gasket; empty without both figures."


@dataclass(frozen=True, slots=True)
class CompressionTest:
    """The test of one session."""

    session: int
    cylinders: tuple[CylinderTest, ...]
    lowest_share: float | None
    "The lowest dry figure as a share of the highest."
    should_be: float | None
    "The card's figure in psi, corrected for altitude where the card gives one."
    altitude: float = 0.0
    "Metres above the sea."
    places: tuple[Place, ...] = ()
    source: str = ""
    "Whose figure it is, where it is borrowed."


def compression_tests(history: History) -> tuple[CompressionTest, ...]:
    """One for each session in which compression was measured; a reading after oil in the bores counts as wet."""
    figure, altitude = card_figure(history), card_altitude(history)
    should = figure * pressure_ratio(altitude) if figure is not None else None
    wet_from = oiled(history)
    found = []
    for number, record in enumerate(history.sessions, 1):
        rows = [f for f in record.facts if isinstance(f, Reading) and f.quantity == "compression"]
        rows = [f for f in rows if f.role == "measured" and bounds_in(f.value, f.unit, UNIT) is not None]
        if rows:
            found.append(_test(history, number, rows, wet_from, should, altitude))
    return tuple(found)


def _test(
    history: History, number: int, rows: Sequence[Reading], wet_from: Sequence[tuple[int, int]],
    should: float | None, altitude: float,
) -> CompressionTest:  # fmt: skip
    dry: dict[str, float] = {}
    wet: dict[str, float] = {}
    for one in rows:
        found = bounds_in(one.value, one.unit, UNIT)
        assert found is not None
        is_wet = taken_wet(one, history.place(one.main.note).order, wet_from)
        (wet if is_wet else dry)[cylinder_of(one)] = found[0]
    verdicts = compared(dry, should)
    low = {name for name, one in verdicts.items() if one.grade != "sound"}
    cylinders = []
    for name in sorted({*dry, *wet}, key=lambda text: (len(text), text)):
        both = name in dry and name in wet
        says = wet_test(dry[name], wet[name], _beside(name, low)) if both and name in low else ""
        cylinders.append(CylinderTest(name, dry.get(name), wet.get(name), verdicts.get(name), says))
    share = min(dry.values()) / max(dry.values()) if len(dry) > 1 and max(dry.values()) > 0 else None
    places = tuple(history.place(one.main.note) for one in rows)
    return CompressionTest(number, tuple(cylinders), share, should, altitude, places, _whose(history))


def taken_wet(reading: Reading, order: int, wet_from: Sequence[tuple[int, int]]) -> bool:
    """Whether a compression was taken with oil in the bores, by its words or by where it stands in the log."""
    if "wet" in reading.taken_words:
        return True
    said_dry = "dry" in reading.taken_words and "condition" not in reading.filled
    return not said_dry and any(start <= order <= end for start, end in wet_from)


def cylinder_of(reading: Reading) -> str:
    """The number of the cylinder that a reading is of; empty when only one is meant."""
    number = _NUMBER.search(reading.subject)
    return number[1] if number else ""


def _beside(name: str, low: set[str]) -> bool:
    """Whether a neighbour is low too: a gasket blown between the two."""
    return name.isdecimal() and bool({str(int(name) - 1), str(int(name) + 1)} & low)


def oiled(history: History) -> list[tuple[int, int]]:
    """From where to where readings are wet: from oil in the bores until the machine has run."""
    runs = ran_at(history)
    oil = next(state for state in trade_words().states if state.name == "oil in the bores")
    starts = {history.place(n.uid).order for r in history.sessions for n in r.notes if oil.says.search(n.words)}
    for fact in history.facts():
        oiled = isinstance(fact, Work) and fact.action in _OILED and "oil" in f"{fact.used} {fact.part}".casefold()
        if isinstance(fact, Work) and oiled and thing(f"{fact.part} {fact.used}").words & _BORES:
            starts.add(history.place(fact.main.note).order)
    return [(order, min((one for one in runs if one > order), default=1 << 40)) for order in sorted(starts)]


def card_figure(history: History) -> float | None:
    """The compression that the card gives, in psi; the lower end of a range."""
    value = _of_the_card(history)
    given = None if value is None else value.low if value.low is not None else value.nominal
    found = bounds_in(float(given), value.unit, UNIT) if value is not None and given is not None else None
    return found[0] if found else None


def _of_the_card(history: History) -> SpecifiedValue | None:
    values = (v for v in history.machine.specified if v.quantity == "compression")
    return next((v for v in values if v.low is not None or v.nominal is not None), None)


def _whose(history: History) -> str:
    """Whose figure the card's is, where it is borrowed."""
    value = _of_the_card(history)
    return "" if value is None or own_source(value.source) else value.source


def card_altitude(history: History) -> float:
    """The altitude that the card gives, in metres; 0 when it gives none."""
    for value in history.machine.specified:
        if value.subject.replace("_", " ").casefold() in ("altitude", "height above sea level") and value.nominal:
            found = bounds_in(float(value.nominal), value.unit, "m")
            return found[0] if found else 0.0
    return 0.0


@dataclass(frozen=True, slots=True)
class BeforeAfter:
    """A reading before and after work on the same thing."""

    work: Work
    before: Reading
    after: Reading
    places: tuple[Place, Place]


def before_and_after(history: History) -> tuple[BeforeAfter, ...]:
    """For each series the last figure before work on its thing and the first one after, alike taken."""
    from worklog_tui.logbook.mending import things_of
    from worklog_tui.logbook.readings import readings
    from worklog_tui.logbook.same_thing import same, speaks_of

    works = [
        (fact, history.place(fact.main.note).order, things_of(fact))
        for fact in history.facts()
        if isinstance(fact, Work) and fact.action in ("replace", "fit", "repair", "adjust", "clean", "charge", "make")
    ]
    found = []
    for series in readings(history):
        points = [one for one in series.points if one.reading.role == "measured"]
        size = series.quantity in _SIZES
        about = thing(series.subject, points[0].reading.name) if points else None
        for before, after in itertools.pairwise(points):
            between = [
                work for work, order, parts in works
                if before.place.order <= order <= after.place.order and (not size or work.action == "adjust")
                and about is not None and any(same(part, about) or speaks_of(part, about) for part in parts)
            ]  # fmt: skip
            if between and before.reading.ways == after.reading.ways:
                found.append(BeforeAfter(between[-1], before.reading, after.reading, (before.place, after.place)))
    return tuple(found)
