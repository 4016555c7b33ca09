"""Machines: their cards, the list of them, and finding one by its name."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, sign
from worklog_tui.bench.card import BadCard, read_card
from worklog_tui.bench.taking_in import pen
from worklog_tui.logbook.standing import standing
from worklog_tui.model import Instant, Machine, SpecifiedValue

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

__all__ = [
    "BadCard", "MachineLine", "UnknownMachine", "add_machine", "change_card", "find_machine", "machines", "read_card",
    "with_specified",
]  # fmt: skip


class UnknownMachine(LookupError):
    """No machine goes by that name; the message is a plain sentence that names those that come close."""


class SeveralMachines(UnknownMachine):
    """More than one machine goes by that name; the message names them."""


@dataclass(frozen=True, slots=True)
class MachineLine:
    """A machine in the list."""

    uid: str
    name: str
    kind: str
    sessions: int
    notes: int
    last_worked: Instant | None
    "None when no date is known."
    open_items: int | None
    "None when they were not worked out since the last change."


def add_machine(desk: Desk, card: Machine) -> Machine:
    """Add a machine; one of the same name gets the new card, by an act that can be undone, and keeps its uid."""
    card = with_specified(desk, card)
    with pen(desk) as connection:
        known = [one for one in store.machines.all_machines(connection) if one.name.casefold() == card.name.casefold()]
        kept = replace(card, uid=known[0].uid if known else card.uid or desk.uid())
        if known and kept != known[0]:
            store.machines.keep_first_card(connection, kept.uid)
            sign(desk, connection, "set card", kept.uid, asdict(kept))
        elif not known:
            store.machines.save(connection, kept)
    return kept


def change_card(desk: Desk, card: Machine) -> Done:
    """Give a machine (its uid) another card, by an act that can be taken back. CannotAct when it is the same."""
    card = with_specified(desk, card)
    with pen(desk) as connection:
        if store.machines.by_uid(connection, card.uid) == card:
            raise CannotAct("The card says that already.")
        store.machines.keep_first_card(connection, card.uid)
        act = sign(desk, connection, "set card", card.uid, asdict(card))
    return Done(act, "The machine card is changed.")


def machines(desk: Desk) -> list[MachineLine]:
    """Every machine, the one that was last worked on first."""
    with store.reading(desk.logbook) as connection:
        found = known_machines(connection)
        tallies = store.machines.tallies(connection)
        counts = store.items.open_counts(connection)
    lines = [MachineLine(one.uid, one.name, one.kind, *tallies[one.uid], counts[one.uid]) for one in found]
    return sorted(lines, key=lambda line: line.last_worked.utc if line.last_worked else "", reverse=True)


def known_machines(connection: store.Connection) -> list[Machine]:
    """Every machine, without those of which a person said that they are another one."""
    gone = aliases(connection)
    return [one for one in store.machines.all_machines(connection) if one.uid not in gone]


def aliases(connection: store.Connection) -> dict[str, str]:
    """For each machine of which a person said that it is another one: the uid of that other."""
    acts = standing(store.acts.of_verbs(connection, ("same machine",)))
    return {act.target: str(act.value["as"]) for act in acts if act.value["as"] != act.target}


def find_machine(desk: Desk, name: str) -> Machine:
    """The machine with that name, else without regard to case, else the only one that begins so or has these words in
    its name; or UnknownMachine.
    """
    with store.reading(desk.logbook) as connection:
        return named(connection, name)


def named(connection: store.Connection, name: str) -> Machine:
    """As `find_machine`, in an open logbook."""
    exactly = store.machines.called(connection, name)
    if len(exactly) == 1 and exactly[0].uid not in aliases(connection):
        return exactly[0]
    known = known_machines(connection)
    wanted = " ".join(name.split()).casefold()
    exact = [one for one in known if one.name == name]
    alike = [one for one in known if one.name.casefold() == wanted]
    begin = [one for one in known if one.name.casefold().startswith(wanted)] if wanted else []
    within = [one for one in known if wanted in one.name.casefold()] if wanted else []
    for found in (exact, alike, begin, within):
        if len(found) == 1:
            return found[0]
    if len(within) > 1:
        raise SeveralMachines(f"More than one machine is meant by “{name}”: {_listed(within)}. Say more of its name.")
    raise UnknownMachine(_cure(known, name))


def _cure(known: list[Machine], name: str) -> str:
    """What to say when a name leads to no machine."""
    import difflib

    if not known:
        return f"There is no machine “{name}” yet."
    by_name = {one.name.casefold(): one for one in known}
    close = [by_name[key] for key in difflib.get_close_matches(name.casefold()[:200], by_name, n=3)]
    if close:
        return f"There is no machine “{name}”; did you mean {_listed(close)}?"
    more = f" and {len(known) - 5} more" if len(known) > 5 else ""
    return f"There is no machine “{name}”: the logbook holds {_listed(known[:5])}{more}."


def _listed(found: list[Machine]) -> str:
    return ", ".join(f"“{one.name}”" for one in found)


def with_specified(desk: Desk, card: Machine) -> Machine:
    """The card with its specified texts read into numbers, as far as they can be; the text is kept in any case."""
    unread = [value for value in card.specified if not value.quantity and value.text]
    if not unread:
        return card
    from worklog_tui.extract import read_specified

    book = desk.book()

    def read(value: SpecifiedValue) -> SpecifiedValue:
        if value.quantity or not value.text:
            return value
        return replace(read_specified(book, value.subject, value.text), source=value.source)

    return replace(card, specified=tuple(read(value) for value in card.specified))
