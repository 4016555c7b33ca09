"""What a person types to put a fact right: a value with its unit or without, or what was done in plain words."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from worklog_tui.bench.acting import CannotAct
from worklog_tui.model import Fact, Reading, Work

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

_NUMBER = r"-?\d{1,12}(?:[.,]\d{1,12})?"
_PLAIN = re.compile(rf"({_NUMBER})(?: ?(?:to|-|–) ?({_NUMBER}))?")


def with_value(desk: Desk, fact: Fact, changes: Mapping[str, Any]) -> dict[str, Any]:
    """The changes with a `value` made a number and, where one was typed, a unit, and an `action` its name.

    CannotAct for what is no value.
    """
    wanted = dict(changes)
    if isinstance(fact, Work) and "action" in wanted:
        return wanted | {"action": action_of(str(wanted["action"]))}
    text = wanted.get("value")
    if not isinstance(fact, Reading) or not isinstance(text, str) or isinstance(fact.value, str):
        return wanted
    return wanted | value_of(desk, text)


def action_of(text: str) -> str:
    """What was done by its name in the log, such as clean for `cleaned`; other words stand as they are."""
    from worklog_tui.reports.sentence import DONE

    said = " ".join(text.split())
    return {done: name for name, done in DONE.items()}.get(said.casefold(), said)


def value_of(desk: Desk, text: str) -> dict[str, Any]:
    """`value` and, where one was typed, `unit`: of a number, a range or an amount. CannotAct for none of them."""
    plain = _PLAIN.fullmatch(text.strip())
    if plain is not None:
        low, high = _number(plain[1]), _number(plain[2] or plain[1])
        return {"value": low if low == high else (low, high)}
    from worklog_tui.extract import read_specified

    read = read_specified(desk.book(), "", text)
    ends = [end for end in (read.low, read.nominal, read.high) if end is not None]
    if not ends or not read.unit:
        raise CannotAct(f"“{text}” is no value; write a number with its unit, such as 0.018 in or 18 to 20 psi.")
    return {"value": ends[0] if len(ends) == 1 else (ends[0], ends[-1]), "unit": read.unit}


def _number(text: str) -> float:
    return float(text.replace(",", "."))
