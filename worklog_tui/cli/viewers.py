"""The command on viewers' comments."""

from __future__ import annotations

import sys
from pathlib import Path

from worklog_tui.cli.calls import Call
from worklog_tui.cli.files import named_file
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import complain, width, write_out


def comments(call: Call) -> None:
    """Takes viewers' comments in, and shows them in groups beside what the log says."""
    from worklog_tui.bench.viewers import take_comments

    text = None if call.file is None else _text(call.file)
    taken = take_comments(desk_of(call), call.machine, text, call.keep_names, call.only_look)
    if text is not None and not call.only_look:
        complain(f"{taken.fresh} of {taken.read} comments are new.")
    if call.json:
        import json

        from worklog_tui.reports.viewers import viewers_json

        write_out(json.dumps(viewers_json(taken.viewers), ensure_ascii=False, indent=1) + "\n", call.to)
        return
    from worklog_tui.reports.plain_viewers import viewers_text

    write_out(viewers_text(taken.viewers, width()) + "\n", call.to)


def _text(name: str) -> str:
    data = sys.stdin.buffer.read() if name == "-" else Path(named_file(name)).read_bytes()
    return data.decode("utf-8-sig", errors="replace")
