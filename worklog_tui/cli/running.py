"""Runs a command: 0 done, 1 the input was bad, 2 the call was wrong; never a traceback."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from importlib import import_module

from worklog_tui.cli.calls import Call, parse
from worklog_tui.cli.output import complain
from worklog_tui.cli.refusing import BadInput, WrongCall

DONE, BAD_INPUT, WRONG_CALL = 0, 1, 2
REFUSALS = frozenset({
    "Refused", "Unreadable", "GrammarMistake", "BadCard", "UnknownMachine", "NoWords", "NoSuchSession", "Missing",
    "NoFilm", "CannotAct", "Unmergeable", "Unsalvageable",
})  # fmt: skip
"""Faults whose own words are meant for people; by name, so that no room is loaded for them."""
TRACE = "WORKLOG_TUI_TRACE"
"Set it to see where in the program something went wrong."


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command that the arguments name, and gives its exit status."""
    try:
        call = parse(list(sys.argv[1:] if arguments is None else arguments))
        return _run(call)
    except WrongCall as wrong:
        complain(str(wrong))
        return WRONG_CALL
    except BadInput as bad:
        complain(str(bad))
        return BAD_INPUT
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE
    except KeyboardInterrupt:
        return BAD_INPUT
    except Exception as fault:
        if os.environ.get(TRACE):
            raise
        complain(_refusal(fault))
        return BAD_INPUT


def _run(call: Call) -> int:
    room, function = call.runs.split(":")
    status = getattr(import_module(f"worklog_tui.cli.{room}"), function)(call)
    sys.stdout.flush()  # here, where a reader that went away is no fault
    return DONE if status is None else int(status)


def _refusal(fault: Exception) -> str:
    """A refusal in its own words; anything else as a fault of the program."""
    kinds = {kind.__name__ for kind in type(fault).__mro__}
    if "UnknownMachine" in kinds and "SeveralMachines" not in kinds:
        return f"{fault} Make its card in the recorder (worklog-tui, then n), or name its machine.toml here."
    if kinds & REFUSALS:
        return str(fault)
    if isinstance(fault, OSError):
        name = f"{fault.filename}: " if fault.filename else ""
        return f"{name}{(fault.strerror or str(fault)).lower()}; check the name and that it can be read."
    what = f"{type(fault).__name__}: {fault}"
    return f"Something went wrong inside the program ({what}); set {TRACE}=1 and run it again to see where."
