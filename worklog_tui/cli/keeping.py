"""Commands that keep: import, note, machines."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.cli.calls import Call
from worklog_tui.cli.files import named_file
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import complain, say, say_json, width

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import Machine


def take_in(call: Call) -> int:
    """Takes session files into the logbook; 1 when a file could not be read."""
    from worklog_tui.bench.filming import shot_on, undated
    from worklog_tui.bench.lines import moment
    from worklog_tui.bench.record import import_sessions

    desk = desk_of(call)
    paths = [named_file(p) for p in call.sessions]
    machine = machine_of(desk, call.machine)
    known = undated(desk, machine.uid)
    shot = moment(desk, call.shot) if call.shot else None
    found = import_sessions(desk, machine, paths)
    fresh = [one for one in undated(desk, machine.uid) if one not in known]
    if fresh and not shot_on(desk, fresh, shot) and call.shot is None:
        complain("It is not known when this was shot; say so with --shot, or later with session date.")
    for complaint in found.complaints:
        complain(complaint)
    if not found.notes and not found.doubled:
        return 1
    again = f" {found.doubled} were in the logbook already." if found.doubled else ""
    brought = (_count(found.sessions, "session"), _count(found.notes, "note"), _count(found.facts, "fact"))
    say(f"{', '.join(brought)} taken in.{again}")
    return 0


def note(call: Call) -> None:
    """Keeps one note, and says what was understood."""
    from worklog_tui.bench.record import keep_note
    from worklog_tui.reports.lines import wrapped
    from worklog_tui.reports.sentence import sentence

    desk = desk_of(call)
    kept = keep_note(desk, machine_of(desk, call.machine).name, " ".join(call.words))
    rows = ["Kept."]
    for fact in kept.facts:
        rows += wrapped(sentence(fact), width(), "  ", "    ")
    for fact in kept.questions:
        rows += wrapped(f"perhaps: {sentence(fact)}", width(), "  ", "    ")
    if kept.unread:
        rows += wrapped(f"It could not be read yet: {kept.unread}", width(), "  ", "  ")
    elif len(rows) == 1:
        rows.append("  Nothing new was read in it.")
    say("\n".join(rows))


def machines(call: Call) -> None:
    """Lists the machines of the logbook."""
    from worklog_tui.bench.machines import machines as known
    from worklog_tui.reports.lines import table
    from worklog_tui.reports.when import day

    found = known(desk_of(call))
    if call.json:
        say_json([_plain(m) for m in found])
        return
    rows = [(m.name, m.kind, _count(m.sessions, "session"), day(m.last_worked)) for m in found]
    head = ("machine", "kind", "", "last worked on")
    none = "There is no machine yet. Start the recorder (worklog-tui) and press n: its name is enough."
    say("\n".join(table(head, rows, width())) or none)


def machine_of(desk: Desk, said: str) -> Machine:
    """The machine that is meant: by its card file, which adds it, or by its name."""
    from worklog_tui.bench.machines import add_machine, find_machine

    if said.lower().endswith(".toml"):
        from worklog_tui.cli.files import read_card

        return add_machine(desk, read_card(Path(said)))
    return find_machine(desk, said)


def _count(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"


def _plain(line: object) -> dict[str, object]:
    from dataclasses import asdict

    data: dict[str, object] = asdict(line)  # type: ignore[call-overload]
    worked = data.pop("last_worked")
    return data | {"last_worked": worked["utc"] if isinstance(worked, dict) else None}
