"""Commands that correct: notes, facts, lines, sessions, items; and take back what was done."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from worklog_tui.cli.calls import Call
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import say, say_json, width
from worklog_tui.cli.refusing import WrongCall

if TYPE_CHECKING:
    from worklog_tui.bench.acting import Done


def correct(call: Call) -> None:
    """Corrects a note, a fact or a run of lines."""
    from worklog_tui.bench import fact_acts, note_acts, session_acts
    from worklog_tui.bench.history import history
    from worklog_tui.bench.lines import fact_in, line, lines, moment, seconds

    desk = desk_of(call)
    known = history(desk, call.machine)
    words = " ".join(call.words)
    match call.what:
        case "edit":
            done = note_acts.edit_note(desk, line(known, call.line).uid, words)
        case "fact":
            one = fact_in(known, line(known, call.line), call.which, call.kind or "")
            done = fact_acts.correct_fact(desk, one.key, given(call.words))
        case "drop":
            one = fact_in(known, line(known, call.line), call.which, call.kind or "")
            done = fact_acts.strike_fact(desk, one.key)
        case "add":
            if not call.kind:
                raise WrongCall("Say with --kind what is to be added, such as --kind finding.")
            note = line(known, call.line)
            done = fact_acts.add_fact(desk, note.uid, call.kind, given(call.words), call.quote or "")
        case _:
            notes = [note.uid for note in lines(known, call.line)]
            match call.what:
                case "strike":
                    done = note_acts.strike_notes(desk, notes)
                case "word":
                    done = note_acts.mend_word(desk, notes, *_two(call.words))
                case "subject":
                    done = fact_acts.set_subject(desk, notes, words)
                case "shift":
                    done = session_acts.shift_lines(desk, notes, seconds(words))
                case "machine":
                    done = session_acts.move_lines(desk, notes, words)
                case _:
                    done = session_acts.date_lines(desk, notes, moment(desk, words))
    _told(call, done)


def session(call: Call) -> None:
    """Splits, joins, moves or dates a session."""
    from worklog_tui.bench import session_acts
    from worklog_tui.bench.history import history
    from worklog_tui.bench.lines import line, moment
    from worklog_tui.bench.lines import session as numbered

    desk = desk_of(call)
    known = history(desk, call.machine)
    words = " ".join(call.words)
    match call.what:
        case "split":
            done = session_acts.split_session(desk, line(known, call.session).uid)
        case "join":
            one, other = (numbered(known, number).session.uid for number in (call.session, words))
            done = session_acts.join_sessions(desk, one, other)
        case "move":
            done = session_acts.move_session(desk, numbered(known, call.session).session.uid, words)
        case "film":
            from worklog_tui.bench.filming import places_from_file
            from worklog_tui.cli.files import named_file

            done = places_from_file(desk, numbered(known, call.session).session.uid, named_file(words))
        case _:
            start = moment(desk, words)
            done = session_acts.date_session(desk, numbered(known, call.session).session.uid, start)
    _told(call, done)


def item(call: Call) -> None:
    """Changes an open item, or adds one."""
    from worklog_tui.bench import item_acts
    from worklog_tui.bench.lines import item_called
    from worklog_tui.bench.review import open_items
    from worklog_tui.model import Due

    desk, words = desk_of(call), " ".join(call.words)
    due = Due(call.day or "", call.hours, call.event or "") if call.day or call.event or call.hours else None
    if call.what == "add":
        _told(call, item_acts.add_item(desk, call.machine, words, call.reason or "to do", due))
        return
    items = open_items(desk, call.machine)
    one = item_called(items, words)
    match call.what:
        case "done":
            done = item_acts.mark_done(desk, call.machine, one)
        case "reopen":
            done = item_acts.reopen(desk, call.machine, one)
        case "awaited":
            done = item_acts.set_awaited(desk, call.machine, one)
        case "left-so":
            done = item_acts.leave_so(desk, call.machine, one)
        case "due":
            done = item_acts.set_due(desk, call.machine, one, due)
        case "change":
            done = item_acts.change_item(desk, call.machine, one, call.call or "", call.reason or "")
        case _:
            done = item_acts.merge_items(desk, call.machine, one, item_called(items, call.other or ""))
    _told(call, done)


def erase(call: Call) -> int:
    """Erases the words of lines for good; 1 when it only shows what would be erased."""
    from worklog_tui.bench.erasing import ELSEWHERE, erase_notes, to_erase
    from worklog_tui.reports.lines import wrapped

    desk = desk_of(call)
    found = to_erase(desk, call.machine, call.lines)
    if call.for_good:
        _told(call, erase_notes(desk, [note.uid for note in found]))
        return 0
    if call.json:
        say_json({"erased": False, "lines": [{"at": n.said_at, "words": n.words, "uid": n.uid} for n in found]})
        return 1
    rows = ["This would be erased for good, with every wording and correction of it:"]
    for note in found:
        rows += wrapped(f"{note.said_at} {note.words}{' (struck out)' if note.struck else ''}", width(), "  ", "    ")
    rows += wrapped(f"Nothing is erased yet. To do it, add --for-good; it cannot be undone. {ELSEWHERE}", width())
    say("\n".join(rows))
    return 1


def undo(call: Call) -> None:
    """Takes back the last act of this computer."""
    from worklog_tui.bench.undoing import undo as take_back

    _told(call, take_back(desk_of(call)))


def redo(call: Call) -> None:
    """Does again what was taken back last."""
    from worklog_tui.bench.undoing import redo as again

    _told(call, again(desk_of(call)))


def acts(call: Call) -> None:
    """Lists what a person did to the log of a machine."""
    from worklog_tui.bench.act_list import acts as listed
    from worklog_tui.reports.lines import wrapped

    found = listed(desk_of(call), call.machine)
    if call.json:
        say_json([
            {"at": one.act.instant.utc, "act": one.act.verb, "says": one.says, "stands": one.stands, "ours": one.ours,
             "clashes": one.clashes, "uid": one.act.uid}
            for one in found
        ])  # fmt: skip
        return
    rows = []
    for one in found:
        marks = [] if one.stands else ["taken back"]
        marks += ["clashes with what another computer did; the later counts"] if one.clashes else []
        rows += wrapped(
            f"{one.act.instant.moment():%Y-%m-%d %H:%M}  {one.says}" + (f" ({'; '.join(marks)})" if marks else ""),
            width(), "", "    ",
        )  # fmt: skip
    say("\n".join(rows) or "Nothing has been corrected yet.")


def given(pairs: list[str]) -> dict[str, Any]:
    """FIELD=VALUE pairs: numbers where the field holds one, `90..95` for a range, yes or no for doubt."""
    found: dict[str, Any] = {}
    for pair in pairs:
        name, equals, text = pair.partition("=")
        if not equals:
            raise WrongCall(f"“{pair}” must be FIELD=VALUE, such as part=“left valve”.")
        name = {"with": "used", "about": "topic"}.get(name.strip(), name.strip())
        found[name] = _value(text.strip()) if name == "value" else text.strip()
        if name == "doubtful":
            found[name] = text.strip().casefold() in ("yes", "true", "1")
    return found


def _value(text: str) -> float | list[float] | str:
    try:
        return [float(end) for end in text.split("..")] if ".." in text else float(text)
    except ValueError:
        return text


def _two(words: list[str]) -> tuple[str, str]:
    if len(words) != 2:
        raise WrongCall("Name the word that was heard and the word that was meant, each in quotes when it is several.")
    return words[0], words[1]


def _told(call: Call, done: Done) -> None:
    if call.json:
        say_json({"says": done.says, "act": done.act.uid})
        return
    say(done.says)
