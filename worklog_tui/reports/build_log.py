"""From what is known of a machine to the repair log that is published."""

from __future__ import annotations

from worklog_tui.logbook.outcomes import Series
from worklog_tui.logbook.readings import readings
from worklog_tui.model import Number, Step, Trait
from worklog_tui.reports.charts import charts
from worklog_tui.reports.left_out import Gate, LeftOut
from worklog_tui.reports.log_cautions import cautions
from worklog_tui.reports.log_items import dealt_with, for_now, left_so, open_groups
from worklog_tui.reports.log_left import forbidden, left, off, starts
from worklog_tui.reports.log_parts import parts
from worklog_tui.reports.log_proof import not_proved, settled, systems
from worklog_tui.reports.log_rows import reading_rows, sessions, work_rows
from worklog_tui.reports.log_standing import span, standing
from worklog_tui.reports.material import Material
from worklog_tui.reports.repair_log import RepairLog, Told


def repair_log(of: Material, gate: Gate, left_out: LeftOut) -> RepairLog:
    """The log; `of` came through the gate already, which looks once more at what our own sentences made of it."""
    groups, stopgaps, unproved = open_groups(of), for_now(of), not_proved(of)
    machine = of.history.machine
    made = RepairLog(
        machine=machine.name, kind=machine.kind, span=span(of), made=of.made, whole=of.whole, card=card(of),
        where_it_stands=standing(of, groups, stopgaps, unproved), cautions=cautions(of), open_items=groups,
        for_now=stopgaps, left_so=left_so(of), not_proved=unproved, dealt_with=dealt_with(of),
        next_steps=next_steps(of), forbidden=forbidden(of), left=left(of), off=off(of), starts=starts(of),
        charts=charts(told_series(of)), readings=reading_rows(of), work=work_rows(of), parts=parts(of),
        settled=settled(of), systems=systems(of), sessions=sessions(of), left_out=left_out,
    )  # fmt: skip
    return gate.words_only(made)


def next_steps(of: Material) -> tuple[Told, ...]:
    """What to do next and why; nothing when the log went on after the span."""
    if not of.whole:
        return ()
    return tuple(Told(s.step, _impersonal(s.why) + _minutes(s)) for s in of.advice.steps[:3])


def _minutes(step: Step) -> str:
    return f" About {step.minutes} minutes." if step.minutes else ""


def _impersonal(why: str) -> str:
    """Our own reason, told to somebody who was not there."""
    for mine, theirs in _TO_OTHERS:
        if why.startswith(mine):
            return theirs + why[len(mine) :]
    return why


_TO_OTHERS = (("You named it yourself", "Named at the bench"), ("You suspected it yourself", "Suspected at the bench"),
              ("Your own way on", "The way on that was told"))  # fmt: skip


def told_series(of: Material) -> list[Series]:
    """The readings over time of everything that was measured within the span."""
    return [one for one in readings(of.history) if one.last.place.session >= of.first]


def card(of: Material) -> tuple[tuple[str, str], ...]:
    """What the machine is, by its card and by what was said."""
    machine = of.history.machine
    rows = [("Kind", machine.kind), ("Fuel", _if_any(machine.fuel)), ("Ignition", _if_any(machine.ignition))]
    rows.append(("Cylinders", str(machine.cylinders or "")))
    order = machine.firing_order if len(machine.firing_order) > 1 else ()
    rows.append(("Firing order", "-".join(map(str, order))))
    for value in machine.specified:
        name = value.subject.replace("_", " ").strip() or value.quantity.replace("_", " ")
        rows.append((f"Specified {name}", value.text))
    for _, fact in of.everything():
        if isinstance(fact, Trait):
            rows.append((fact.trait[:1].upper() + fact.trait[1:], _said(fact.value, fact.source, fact.doubtful)))
        elif isinstance(fact, Number):
            rows.append((f"Number of the {fact.of}" if fact.of else "Number", _said(fact.number, fact.source)))
    return tuple(dict.fromkeys((name, text) for name, text in rows if text))


def _if_any(text: str) -> str:
    return "" if text == "none" else text


def _said(text: str, source: str, doubtful: bool = False) -> str:
    return text + (f" ({source})" if source else "") + (", doubtful" if doubtful else "")
