"""Commands on files: extract, explain, grammar."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.cli.calls import Call
from worklog_tui.cli.output import complain, say, say_json, width
from worklog_tui.cli.refusing import BadInput, WrongCall

if TYPE_CHECKING:
    from worklog_tui.model import Machine
    from worklog_tui.rulebook import Rulebook
    from worklog_tui.rulebook.faults import FaultBook


def extract(call: Call) -> None:
    """Reads session files and prints the log."""
    from worklog_tui.bench.extract_files import extract as read
    from worklog_tui.reports.json_out import extraction

    card = read_card(Path(call.machine))
    paths = [named_file(p) for p in call.sessions]
    comments = named_file(call.comments) if call.comments else None
    found = read(rulebook(), fault_book(), card, paths, comments)
    for complaint in found.complaints:
        complain(complaint)
    if call.json:
        say_json(extraction(found.history, found.items, found.advice, found.comments))
        return
    from worklog_tui.reports.plain import whole_log

    say(whole_log(found.history, found.items, found.advice, found.comments, width()))


def explain(call: Call) -> None:
    """Says how a line is read."""
    from worklog_tui.bench.explain import trail
    from worklog_tui.model import Machine

    card = read_card(Path(call.machine)) if call.machine else Machine("machine")
    say("\n".join(trail(rulebook(), card, call.line)))


def grammar(call: Call) -> None:
    """Checks the grammar files; tries a line on them; makes up wordings of a pattern."""
    if call.what == "check":
        _check()
        return
    if not call.words:
        raise WrongCall(f"grammar {call.what}: give {'a line' if call.what == 'try' else 'a pattern'} in quotes.")
    from worklog_tui.bench import grammar_tries
    from worklog_tui.model import Machine

    card = read_card(Path(call.machine)) if call.machine else Machine("machine")
    shows = grammar_tries.tried if call.what == "try" else grammar_tries.sampled
    try:
        say("\n".join(shows(rulebook(), card, call.words)))
    except grammar_tries.NoPattern as wrong:
        raise BadInput(str(wrong)) from wrong


def _check() -> None:
    from worklog_tui.bench.grammar_files import mistakes, warnings

    found = mistakes(folders())
    if found:
        raise BadInput("\n".join(found))
    for warning in warnings(folders()):
        complain(warning)
    say("The grammar files are in order.")


def folders() -> list[Path]:
    """The shipped grammars, and the person's own if there are any."""
    from worklog_tui import places

    own = places.own_grammars()
    return [places.grammars(), *([own] if own.is_dir() else [])]


def rulebook() -> Rulebook:
    """The rulebook, kept between runs."""
    from worklog_tui import places
    from worklog_tui.rulebook import load

    return load(folders(), places.cache())


def fault_book() -> FaultBook:
    """The fault files."""
    from worklog_tui.rulebook.faults import load_faults

    return load_faults(folders())


def read_card(path: Path) -> Machine:
    """A machine card; what is odd in it is told and passed over."""
    from worklog_tui.bench.machines import read_card as read

    card, warnings = read(named_file(str(path)))
    for warning in warnings:
        complain(warning)
    return card


def named_file(name: str) -> Path:
    """The file of that name; BadInput when there is none."""
    path = Path(name)
    if path.is_dir():
        raise BadInput(f"{name} is a folder; choose one file in it.")
    if not path.exists():
        raise BadInput(f"There is no file {name}; check its name and folder.")
    return path
