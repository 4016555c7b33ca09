"""Acts of the person: signed, kept, and what they alter worked out anew, all in one transaction."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from worklog_tui import store
from worklog_tui.bench.taking_in import pen
from worklog_tui.model import Act
from worklog_tui.model.acts import FACT_VERBS, NOTE_VERBS, PLACE_VERBS

if TYPE_CHECKING:
    from collections.abc import Iterator

    from worklog_tui.bench.desk import Desk


class CannotAct(ValueError):
    """The act makes no sense as things stand; the message is a plain sentence."""


@dataclass(frozen=True, slots=True)
class Done:
    """An act that was done, and what it did in one plain sentence."""

    act: Act
    says: str


@contextmanager
def acting(desk: Desk) -> Iterator[store.Connection]:
    """One transaction for an act and all that follows from it.

    Raises CannotAct, LockedOut and the other refusals of the store; then nothing has changed.
    """
    with pen(desk) as connection:
        yield connection


def sign(desk: Desk, connection: store.Connection, verb: str, target: str, value: Mapping[str, Any] | None) -> Act:
    """Keep one act of this device, then work out anew what it alters."""
    act = _signed(desk, connection, verb, target, value)
    work_out(desk, connection, [act])
    return act


def sign_each(desk: Desk, connection: store.Connection, verb: str, targets: Sequence[str]) -> list[Act]:
    """Keep the same act on each of several targets, then work out anew what they alter together."""
    acts = [_signed(desk, connection, verb, target, None) for target in targets]
    work_out(desk, connection, acts)
    return acts


def _signed(
    desk: Desk, connection: store.Connection, verb: str, target: str, value: Mapping[str, Any] | None
) -> Act:  # fmt: skip
    act = Act(
        desk.uid(), desk.device, store.acts.next_counter(connection), desk.instant(), verb, target,
        store.acts.seen_on(connection, target), None if value is None else dict(value),
    )  # fmt: skip
    store.acts.add(connection, act)
    return act


def work_out(desk: Desk, connection: store.Connection, acts: Iterable[Act]) -> None:
    """Bring notes, sessions, cards and facts to what these acts, and all others that stand, make of them."""
    from worklog_tui.bench import carrying_out

    row = [root for act in acts if (root := root_of(connection, act)) is not None]
    carrying_out.erasures(desk, connection, [act.target for act in row if act.verb == "erase"])
    carrying_out.cards(connection, [act for act in row if act.verb == "set card"])
    carrying_out.places(desk, connection, [act for act in row if act.verb in PLACE_VERBS])
    carrying_out.words(desk, connection, notes_of([act for act in row if act.verb in NOTE_VERBS]))
    carrying_out.facts(desk, connection, notes_of([act for act in row if act.verb in FACT_VERBS]))


def root_of(connection: store.Connection, act: Act) -> Act | None:
    """The act itself, or the one that an undo, or the undo of an undo, is about; None when it is not known yet."""
    found: Act | None = act
    while found is not None and found.verb == "undo":
        found = store.acts.by_uid(connection, found.target)
    return found


def notes_of(acts: Sequence[Act]) -> list[str]:
    """The notes that acts on words or facts are about."""
    found: dict[str, None] = {}
    for act in acts:
        listed = act.value.get("notes") if isinstance(act.value, dict) else None
        found.update(dict.fromkeys(listed if listed else [act.target.split("/", 1)[0]]))
    return list(found)
