"""What may be called: the commands with their arguments, in trade words."""

from __future__ import annotations

import argparse
from typing import Any, NoReturn

from worklog_tui.cli.calls_acts import add_acts
from worklog_tui.cli.calls_over import add_over
from worklog_tui.cli.calls_storing import add_storing
from worklog_tui.cli.finding_calls import add_finding
from worklog_tui.cli.publishing_calls import add_publishing
from worklog_tui.cli.refusing import WrongCall


class Call(argparse.Namespace):
    """A call as it was understood; `runs` names the function, as `module:function`."""

    runs: str
    logbook: str | None
    json: bool

    def __getattr__(self, name: str) -> Any:
        raise AttributeError(name)


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        """One sentence instead of the usage; the caller prints it."""
        if message.startswith("argument COMMAND: invalid choice: "):
            message = f"there is no command {message.split(': ')[2].partition(' (choose')[0]}"
        raise WrongCall(f"{message[:1].upper()}{message[1:]}; see `{self.prog} --help`.")


def parse(arguments: list[str]) -> Call:
    """The call; a WrongCall says what is wrong with it. `--help` and `--version` print and end the program."""
    return build().parse_args(arguments, Call())


def build() -> argparse.ArgumentParser:
    """The parser of all commands."""
    top = _Parser(
        prog="worklog-tui", description="Turns the words of a working session on an old machine into a repair log.",
        epilog="Without a command the recorder opens.",
    )  # fmt: skip
    top.set_defaults(runs="playing:recorder")
    top.add_argument("--version", action=_Version)
    _logbook(top, None)
    commands = top.add_subparsers(title="commands", metavar="COMMAND", dest="command", parser_class=_Parser)
    _files(commands)
    _keeping(commands)
    _looking(commands)
    add_acts(commands, _command, _common)
    add_over(commands, _command, _common)
    add_storing(commands, _command, _common)
    for parser in (*add_publishing(commands, _command), *add_finding(commands, _command)):
        _logbook(parser)
    keys = _command(commands, "keys", "keys:keys", "print the keys of the recorder, and how to give it others")
    _json(keys)
    demo = _command(commands, "demo", "playing:demo", "play an invented machine in a throw-away logbook")
    demo.add_argument("--plain", action="store_true", help="print the log instead of opening the recorder")
    return top


class _Version(argparse.Action):
    def __init__(self, option_strings: list[str], dest: str) -> None:
        super().__init__(option_strings, dest, nargs=0, help="say which version this is")

    def __call__(self, parser: argparse.ArgumentParser, *_: Any) -> None:
        from worklog_tui import __version__

        print(f"worklog-tui {__version__}")
        parser.exit()


def _command(commands: Any, name: str, runs: str, what: str) -> argparse.ArgumentParser:
    parser: argparse.ArgumentParser = commands.add_parser(name, help=what, description=f"{what[:1].upper()}{what[1:]}.")
    parser.set_defaults(runs=runs)
    return parser


def _logbook(parser: argparse.ArgumentParser, default: Any = argparse.SUPPRESS) -> None:
    parser.add_argument(
        "--logbook",
        metavar="FILE",
        default=default,
        help="the logbook to use (else WORKLOG_TUI_LOGBOOK, else your own)",
    )


def _json(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--json", action="store_true", help="print JSON instead of text")


def _common(parser: argparse.ArgumentParser, machine: bool) -> None:
    """What commands on a logbook have in common."""
    if machine:
        parser.add_argument("--machine", metavar="NAME", required=True, help="a machine of the logbook")
    _json(parser)
    _logbook(parser)


def _files(commands: Any) -> None:
    extract = _command(commands, "extract", "files:extract", "read session files and print the log, without a logbook")
    extract.add_argument("--machine", metavar="machine.toml", required=True, help="the machine card")
    extract.add_argument("sessions", metavar="SESSION", nargs="+", help="session files in order")
    extract.add_argument("--comments", metavar="FILE", help="what viewers wrote after the last session")
    _json(extract)
    explain = _command(commands, "explain", "files:explain", "say how a line is read, step by step")
    explain.add_argument("line", metavar="LINE", help="the line, in quotes")
    explain.add_argument("--machine", metavar="machine.toml", help="the machine card")
    grammar = _command(commands, "grammar", "files:grammar", "look after the grammar files")
    grammar.add_argument(
        "what",
        choices=["check", "try", "sample"],
        help="check: find what must be mended in them; try: the patterns that a line meets; "
        "sample: wordings of a pattern, by its id or as a pattern",
    )
    grammar.add_argument("words", nargs="?", help="the line, or the pattern, in quotes")
    grammar.add_argument("--machine", metavar="machine.toml", help="the machine card")


def _keeping(commands: Any) -> None:
    take = _command(commands, "import", "keeping:take_in", "take session files into the logbook")
    take.add_argument("--machine", metavar="NAME", required=True, help="a machine of the logbook, or a machine.toml")
    take.add_argument("sessions", metavar="SESSION", nargs="+", help="session files in order")
    take.add_argument("--shot", metavar="DAY", help="when it was shot, where no date is given; or: unknown")
    note = _command(commands, "note", "keeping:note", "keep one note, and say what was understood")
    note.add_argument("--machine", metavar="NAME", required=True, help="a machine of the logbook, or a machine.toml")
    note.add_argument("words", metavar="TEXT", nargs="+", help="the note")
    follow = _command(commands, "follow", "following:follow", "keep the lines of another program as notes")
    follow.add_argument("--machine", metavar="NAME", required=True, help="a machine of the logbook, or a machine.toml")
    follow.add_argument("source", metavar="FILE", help="a file that grows, or - for standard input")
    follow.add_argument("--from-start", action="store_true", help="also what is in the file already")
    machines = _command(commands, "machines", "keeping:machines", "list the machines of the logbook")
    _json(machines)
    for parser in (take, note, follow, machines):
        _logbook(parser)


def _looking(commands: Any) -> None:
    for name, what in (
        ("timeline", "print what happened, session by session"),
        ("readings", "print the readings over time, beside what they should be"),
        ("open-items", "print what must be come back to"),
        ("recap", "print where things stand since the session before"),
        ("next-step", "print what to do next, and why"),
    ):
        parser = _command(commands, name, f"looking:{name.replace('-', '_')}", what)
        _common(parser, machine=True)
        if name == "readings":
            parser.add_argument("--units", choices=("metric", "inch", "said"), help="show figures in these units")
