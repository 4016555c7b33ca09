"""Commands of fault finding: where the systems stand, and what may cause the open trouble."""

from __future__ import annotations

from worklog_tui.cli.calls import Call
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import say, say_json, width
from worklog_tui.model import Advice


def systems(call: Call) -> None:
    """Prints one plain line a system, with its evidence."""
    advice = _advice(call)
    if call.json:
        from worklog_tui.reports.json_finding import systems as plain

        say_json(plain(advice, call.figures))
        return
    from worklog_tui.reports.plain_finding import systems_text

    say(systems_text(advice, width(), call.figures))


def causes(call: Call) -> None:
    """Prints the causes in plain grades, with what speaks for and against."""
    advice = _advice(call)
    if call.json:
        from worklog_tui.reports.json_finding import causes as plain

        say_json(plain(advice, call.figures))
        return
    from worklog_tui.reports.plain_finding import causes_text

    say(causes_text(advice, width(), call.figures))


def _advice(call: Call) -> Advice:
    from worklog_tui.bench.review import next_step

    return next_step(desk_of(call), call.machine)
