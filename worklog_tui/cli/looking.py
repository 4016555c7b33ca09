"""Commands that look at the logbook: timeline, readings, open items, recap, next step."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.cli.calls import Call
from worklog_tui.cli.output import say, say_json, width

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def desk_of(call: Call) -> Desk:
    """The desk on the logbook that the call names."""
    from worklog_tui.bench.desk import open_desk

    return open_desk(Path(call.logbook).expanduser() if call.logbook else None)


def timeline(call: Call) -> None:
    """Prints what happened, session by session."""
    from worklog_tui.bench.review import timeline as look

    found = look(desk_of(call), call.machine)
    if call.json:
        from worklog_tui.reports.json_log import timeline as plain

        say_json(plain(found))
        return
    from worklog_tui.reports.plain_timeline import timeline_text

    say(timeline_text(found, width()))


def readings(call: Call) -> None:
    """Prints the readings over time."""
    from worklog_tui.bench.review import readings as look

    desk = desk_of(call)
    found = look(desk, call.machine)
    if call.json:
        from worklog_tui.reports.json_log import readings as plain

        say_json(plain(found))
        return
    from worklog_tui.reports.plain_readings import readings_text

    say(readings_text(found, width(), units_of(call, desk)))


def units_of(call: Call, desk: Desk) -> str:
    """The units that the call names, else those that the person chose in the recorder; empty: as they were said."""
    from worklog_tui.bench.settings import units

    return units(desk) if call.units is None else call.units.replace("said", "")


def open_items(call: Call) -> None:
    """Prints what must be come back to."""
    from worklog_tui.bench.review import review

    seen = review(desk_of(call), call.machine)
    if call.json:
        from worklog_tui.reports.json_out import open_items as plain

        say_json(plain(seen.items, seen.history))
        return
    from worklog_tui.reports.plain_items import items_text

    say(items_text(seen.items, width(), seen.history))


def recap(call: Call) -> None:
    """Prints where things stand."""
    from worklog_tui.bench.looking_over import left_of
    from worklog_tui.bench.review import advice_for, review
    from worklog_tui.logbook.recap import recap as since

    desk = desk_of(call)
    seen = review(desk, call.machine)
    found, advice, state = since(seen.history, seen.items), advice_for(desk, seen), left_of(seen)
    if call.json:
        from worklog_tui.reports.json_log import recap as plain
        from worklog_tui.reports.json_over import left as plain_left

        how = plain_left(state.forbidden, state.left, (), ())
        say_json(plain(found, seen.history, advice) | {"do_not_start": how["do_not_start"], "left": how["left"]})
        return
    from worklog_tui.reports.plain_over import left_head
    from worklog_tui.reports.plain_recap import recap_text

    head = left_head(state.forbidden, state.left, width())
    say("\n".join([*head, recap_text(found, advice, width())]))


def next_step(call: Call) -> None:
    """Prints what to do next, and why."""
    from worklog_tui.bench.review import next_step as look

    advice = look(desk_of(call), call.machine)
    if call.json:
        from worklog_tui.reports.json_log import advice as plain

        say_json(plain(advice))
        return
    from worklog_tui.reports.plain_steps import steps_text

    say(steps_text(advice, width()))
