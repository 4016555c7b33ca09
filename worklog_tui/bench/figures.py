"""What the numbers of a machine should be, put on its card one by one."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done
from worklog_tui.bench.machines import change_card
from worklog_tui.model import SpecifiedValue

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


class Figure(NamedTuple):
    """What a number of a machine should be, as a person types it."""

    what: str
    text: str
    source: str = ""
    "Who says so, in the person's words."


def set_figure(desk: Desk, machine: str, figure: Figure, was: str = "") -> Done:
    """Put a figure on the card of a machine (its uid), in place of the one that `was` is called; no text takes it off.

    By an act that can be taken back. CannotAct when there is nothing to put there, or it stands there already.
    """
    with store.reading(desk.logbook) as connection:
        card = store.machines.by_uid(connection, machine)
    what, text = " ".join(figure.what.split()), " ".join(figure.text.split())
    gone = {_called(what), _called(was or what)}
    kept = tuple(value for value in card.specified if _called(value.subject) not in gone)
    if not what or (not text and len(kept) == len(card.specified)):
        raise CannotAct("Say which figure it is, such as plug gap, and how much it should be.")
    fresh = (SpecifiedValue("", _called(what), text, source=" ".join(figure.source.split())),) if text else ()
    done = change_card(desk, replace(card, specified=(*kept, *fresh)))
    return replace(done, says=f"{what} should be {text}." if text else f"{what} is off the card.")


def _called(what: str) -> str:
    """What a figure is called as the key of a card."""
    return "_".join(what.replace("_", " ").casefold().split())
