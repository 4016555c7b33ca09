"""Commands that look after the logbook: check, backup, restore, export, merge, salvage."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from worklog_tui.cli.calls import Call
from worklog_tui.cli.files import named_file
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import complain, say, say_json

if TYPE_CHECKING:
    from worklog_tui.bench.exchange import Merged


def check(call: Call) -> int:
    """Looks the logbook over; 1 when something is wrong with it."""
    from worklog_tui.bench.looking_after import check as look

    found = look(desk_of(call))
    if call.json:
        say_json(asdict(found))
    else:
        for problem in found.problems:
            complain(problem)
        rows = ["The logbook is whole."] if not found.problems else []
        rows.append(f"{_count(found.machines, 'machine')}, {_count(found.notes, 'note')}, {found.size} bytes.")
        if found.waiting:
            rows.append(f"{_count(found.waiting, 'note')} waiting beside it; the next entry takes them in.")
        if found.stale:
            rows.append(f"Newer grammars may read differently, see reread: {', '.join(found.stale)}.")
        say("\n".join(rows))
    return 1 if found.problems else 0


def backup(call: Call) -> None:
    """Copies the logbook, also while it is in use."""
    from worklog_tui.bench.backups import back_up

    to = back_up(desk_of(call), Path(call.file).expanduser() if call.file else None)
    _told(call, {"backup": str(to)}, f"The logbook was copied to {to}.")


def restore(call: Call) -> None:
    """Puts a backup in the place of the logbook; the logbook as it was is copied first."""
    from worklog_tui.bench.backups import put_back

    aside = put_back(desk_of(call), named_file(call.file))
    was = f" The logbook as it was lies in {aside}." if aside.exists() else ""
    done = {"restored": call.file, "as_it_was": str(aside) if aside.exists() else None}
    _told(call, done, f"The logbook is what the backup was.{was}")


def export(call: Call) -> None:
    """Writes the logbook to a file that another computer can merge."""
    from worklog_tui.bench.exchange import export as write

    count = write(desk_of(call), Path(call.file).expanduser())
    _told(call, {"file": call.file, "records": count}, f"{_count(count, 'record')} written to {call.file}.")


def merge(call: Call) -> None:
    """Takes an exported file, or another logbook, in."""
    from worklog_tui.bench.exchange import merge as take

    _brought(call, take(desk_of(call), named_file(call.file)))


def salvage(call: Call) -> None:
    """Takes what a damaged logbook still holds into a new file."""
    from worklog_tui.bench.looking_after import salvage as take

    _brought(call, take(desk_of(call), named_file(call.file), Path(call.to).expanduser()))


def same_machine(call: Call) -> None:
    """Says that two machines are one."""
    from worklog_tui.bench.session_acts import same_machine as one

    done = one(desk_of(call), call.other, call.machine)
    _told(call, {"says": done.says, "act": done.act.uid}, done.says)


def _told(call: Call, data: dict[str, Any], says: str) -> None:
    if call.json:
        say_json(data)
    else:
        say(says)


def _brought(call: Call, found: Merged) -> None:
    if call.json:
        say_json(asdict(found))
        return
    counts = ((found.machines, "machine"), (found.sessions, "session"), (found.notes, "note"),
              (found.comments, "comment"), (found.acts, "correction"))  # fmt: skip
    brought = [_count(number, what) for number, what in counts if number]
    if brought:
        say(f"{', '.join(brought)} taken in; what was there already was not doubled.")
    else:
        say("There was nothing new in it; what was there already was not doubled.")
    if found.left_out:
        complain(f"{_count(found.left_out, 'record')} left out: what they are of is missing.")
    for name in found.alike:
        complain(f"Two machines are called “{name}” now; if they are one, say so with same-machine.")


def _count(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"
