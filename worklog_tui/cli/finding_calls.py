"""The commands of fault finding and the shop sums, with their arguments."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import Any

from worklog_tui.trade.shop_sums import SUMS, Takes

Command = Callable[[Any, str, str, str], argparse.ArgumentParser]


def add_finding(commands: Any, command: Command) -> list[argparse.ArgumentParser]:
    """Adds systems, causes and sums, and returns those that work on a logbook."""
    found = []
    for name, what in (
        ("systems", "print where each system stands: proved good, in doubt, bad, not looked at"),
        ("causes", "print what may cause the open trouble, and what speaks for and against"),
    ):
        parser = command(commands, name, f"finding:{name}", what)
        parser.add_argument("--machine", metavar="NAME", required=True, help="a machine of the logbook")
        parser.add_argument("--figures", action="store_true", help="print the figures behind the words")
        parser.add_argument("--json", action="store_true", help="print JSON instead of text")
        found.append(parser)
    _sums(command(commands, "sums", "sums:list_sums", "work out a shop sum, with its formula, range and source"))
    return found


def _sums(parser: argparse.ArgumentParser) -> None:
    parser.set_defaults(json=False)
    kinds = parser.add_subparsers(title="sums", metavar="SUM", dest="sum", parser_class=type(parser))
    for name, one in SUMS.items():
        below = kinds.add_parser(name, help=one.what, description=f"{one.what[:1].upper()}{one.what[1:]}.")
        below.set_defaults(runs="sums:work_out")
        for value in one.takes:
            _takes(below, value)
        below.add_argument("--json", action="store_true", help="print JSON instead of text")


def _takes(parser: argparse.ArgumentParser, value: Takes) -> None:
    if value.many:
        parser.add_argument(value.name, nargs="+", metavar=value.metavar, help=value.help)
    elif value.name.startswith("--"):
        parser.add_argument(value.name, default=value.default, metavar=value.metavar, help=value.help)
    else:
        parser.add_argument(value.name, metavar=value.metavar, help=value.help)
