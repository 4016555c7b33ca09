"""The command that prints the keys of the recorder."""

from __future__ import annotations

from worklog_tui.cli.calls import Call
from worklog_tui.cli.output import say, say_json, width


def keys(call: Call) -> None:
    """Prints every key of the recorder, and how to give it another one."""
    from worklog_tui import places
    from worklog_tui.screens.all_keys import every_key
    from worklog_tui.screens.own_keys import own_keys

    own, wrong = own_keys(places.own_keys())
    told = every_key(own)
    if call.json:
        say_json([{"place": title, "keys": [one._asdict() for one in keys]} for title, keys in told])
        return
    from worklog_tui.reports.plain_keys import keys_text

    say(keys_text(told, str(places.own_keys()), wrong, width()))
