"""Commands that open the recorder or play the invented machines."""

from __future__ import annotations

import sys
from pathlib import Path

from worklog_tui.cli.calls import Call
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import complain, say, width
from worklog_tui.cli.refusing import WrongCall


def recorder(call: Call) -> int:
    """Opens the recorder."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        raise WrongCall("The recorder needs a terminal; name a command instead, see `worklog-tui --help`.")
    from worklog_tui.app import open_recorder

    return open_recorder(desk_of(call))


def demo(call: Call) -> int:
    """Plays the invented machines in a throw-away logbook."""
    from tempfile import TemporaryDirectory

    if sys.stderr.isatty():
        complain("Laying out the invented machines; the first time it takes a little longer …")
    with TemporaryDirectory(prefix="worklog-demo-") as folder:
        from worklog_tui.bench.demo import fill

        desk, names = fill(Path(folder) / "logbook.db")
        if call.plain or not (sys.stdin.isatty() and sys.stdout.isatty()):
            from worklog_tui.bench.review import advice_for, review
            from worklog_tui.reports.plain import whole_log

            for name in names:
                seen = review(desk, name)
                say(whole_log(seen.history, seen.items, advice_for(desk, seen), seen.comments, width()))
            return 0
        from worklog_tui.app import open_recorder

        return open_recorder(desk, names[0] if len(names) == 1 else None)
