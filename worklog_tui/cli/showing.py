"""The command that prints what a place of the recorder shows."""

from __future__ import annotations

from worklog_tui.cli.calls import Call
from worklog_tui.cli.looking import desk_of, units_of
from worklog_tui.cli.output import say, say_json, width
from worklog_tui.cli.refusing import WrongCall


def show(call: Call) -> None:
    """Prints a place as the recorder shows it, or what was read from one line."""
    from worklog_tui.screens.as_text import NAMES, note_text, place_text

    desk = desk_of(call)
    if call.place == "note":
        if not call.line:
            raise WrongCall("Say which line, as the timeline prints it, such as: show note 2/14:05.")
        text = note_text(desk, call.machine, call.line, width())
    elif call.place in NAMES:
        text = place_text(desk, call.machine, call.place, units_of(call, desk), width())
    else:
        raise WrongCall(f"There is no place “{call.place}”; there are {', '.join(NAMES)} and note.")
    if call.json:
        say_json({"place": call.place, "lines": text.split("\n")})
    else:
        say(text)
