"""Commands that look a machine over: parts, left, before-start, closing-up, odd, compression, reread, search."""

from __future__ import annotations

from worklog_tui.cli.calls import Call
from worklog_tui.cli.looking import desk_of, units_of
from worklog_tui.cli.output import say, say_json, width
from worklog_tui.cli.refusing import BadInput


def parts(call: Call) -> None:
    """Prints what is to be got, what became of parts, and their sizes."""
    from worklog_tui.bench.looking_over import parts as look
    from worklog_tui.reports.json_over import parts as plain
    from worklog_tui.reports.plain_over import parts_text

    found = look(desk_of(call), call.machine, " ".join(call.words))
    if call.json:
        say_json(plain(found.states, found.shopping, found.fits, found.sums))
    else:
        say(parts_text(found.states, found.shopping, found.fits, width(), found.sums))


def left(call: Call) -> None:
    """Prints what is off the machine and how it was left."""
    from worklog_tui.bench.looking_over import left as look
    from worklog_tui.reports.json_over import left as plain
    from worklog_tui.reports.plain_over import left_text

    found = look(desk_of(call), call.machine)
    if call.json:
        say_json(plain(found.forbidden, found.left, found.off, found.as_found))
    else:
        say(left_text(found.forbidden, found.left, found.off, found.as_found, width()))


def before_start(call: Call) -> None:
    """Prints what to go through before a start."""
    from worklog_tui.bench.looking_over import before_start as look
    from worklog_tui.reports.json_over import before_start as plain
    from worklog_tui.reports.plain_over import before_start_text

    found, cautions = look(desk_of(call), call.machine)
    if call.json:
        say_json(plain(found, cautions))
    else:
        say(before_start_text(found, cautions, width()))


def closing_up(call: Call) -> None:
    """Prints what was begun and not heard finished; with a number and an answer, answers it."""
    from worklog_tui.bench.answering import answer
    from worklog_tui.bench.looking_over import closing_up as look
    from worklog_tui.reports.json_over import closing_up as plain
    from worklog_tui.reports.plain_over import closing_up_text

    desk = desk_of(call)
    asked = look(desk, call.machine, call.session)
    if call.question is not None:
        if not 1 <= call.question <= len(asked.questions):
            raise BadInput(f"There is no question {call.question}; there are {len(asked.questions)}.")
        say(answer(desk, call.machine, asked.questions[call.question - 1], " ".join(call.words)).says)
    elif call.json:
        say_json(plain(asked))
    else:
        say(closing_up_text(asked, width()))


def odd(call: Call) -> None:
    """Prints what does not add up."""
    from worklog_tui.bench.looking_over import oddities as look
    from worklog_tui.reports.json_over import odd as plain
    from worklog_tui.reports.plain_over import odd_text

    found = look(desk_of(call), call.machine)
    if call.json:
        say_json(plain(found))
    else:
        say(odd_text(found, width()))


def compression(call: Call) -> None:
    """Prints the compression tests, and readings before and after work."""
    from worklog_tui.bench.looking_over import compression as look
    from worklog_tui.reports.json_over import compression as plain
    from worklog_tui.reports.plain_compression import compression_text

    desk = desk_of(call)
    tests, pairs = look(desk, call.machine)
    if call.json:
        say_json(plain(tests, pairs))
    else:
        say(compression_text(tests, pairs, units_of(call, desk), width()))


def reread(call: Call) -> None:
    """Shows what reading the notes again would change; with --apply, does it."""
    from worklog_tui.bench.history import reread as again
    from worklog_tui.bench.history import would_change
    from worklog_tui.reports.lines import wrapped
    from worklog_tui.reports.sentence import sentence

    desk = desk_of(call)
    found = again(desk, call.machine) if call.apply else would_change(desk, call.machine)
    if call.json:
        rows = {"applied": bool(call.apply)} | {
            name: [{"note": f.main.note, "kind": f.kind, "says": sentence(f)} for f in facts]
            for name, facts in (("added", found.added), ("gone", found.gone))
        }
        say_json(rows)
        return
    rows_of_text = [line for f in found.gone for line in wrapped(f"no longer: {sentence(f)}", width(), "  - ", "    ")]
    rows_of_text += [line for f in found.added for line in wrapped(f"now: {sentence(f)}", width(), "  + ", "    ")]
    if not rows_of_text:
        say("Reading the notes again changes nothing.")
        return
    last = "That is done." if call.apply else "Nothing was changed yet; add --apply to do it."
    say("\n".join([*rows_of_text, last]))


def search(call: Call) -> None:
    """Finds notes by their words and by what was read from them, and items."""
    from worklog_tui.bench.search import find_items, find_notes
    from worklog_tui.reports.found import found_json, found_text

    desk, words = desk_of(call), " ".join(call.words)
    notes = find_notes(desk, words, call.machine, call.most, call.best)
    listed = find_items(desk, words, call.machine, call.most)
    if call.json:
        say_json(found_json(notes, listed))
    else:
        say(found_text(notes, listed, words, width()))


def waits(call: Call) -> None:
    """Prints what is waited for."""
    from worklog_tui.bench.waiting_for import waits as look
    from worklog_tui.reports.plain_waits import waits_json, waits_text

    desk = desk_of(call)
    found = look(desk, call.machine, call.over)
    if call.json:
        say_json(waits_json(found, desk.now()))
    else:
        say(waits_text(found, desk.now(), width()))


def card(call: Call) -> None:
    """Prints what is known of the machine, and what is worth finding out."""
    from worklog_tui.bench.machine_card import machine_card
    from worklog_tui.reports.plain_card import card_json, card_text

    found = machine_card(desk_of(call), call.machine)
    missing = [(one.fact, one.steps) for one in found.missing]
    if call.json:
        say_json(card_json(found.machine, found.told, found.figures, missing))
    else:
        say(card_text(found.machine, found.told, found.figures, missing, width()))
