"""What a machine has: an engine, a spindle, hydraulics … from its card, else from the parts that its log speaks of."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from worklog_tui.diagnosis.words import holds, tokens
from worklog_tui.model import Machine
from worklog_tui.rulebook.fault_nouns import Has

Table = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Makeup:
    """A machine with the names of what it has."""

    machine: Machine
    has: frozenset[str]

    def fits(self, table: Table) -> bool:
        """Whether a table of the fault files is about this machine; what is not known excludes nothing."""
        if (fuels := table.get("fuel")) and self.machine.fuel and self.machine.fuel not in fuels:
            return False
        if (ignitions := table.get("ignition")) and self.machine.ignition and self.machine.ignition not in ignitions:
            return False
        if not self.has.issuperset(table.get("has", ())) or self.has.intersection(table.get("lacks", ())):
            return False
        kind = tokens(self.machine.kind)
        if kinds := table.get("kind"):
            return _named(kind, kinds)
        return not _named(kind, table.get("not_kind", ()))


def makeup(machine: Machine, table: Iterable[Has], parts: Iterable[str] = ()) -> Makeup:
    """What a machine has; `parts` are the vocabulary's names of all that its log speaks of."""
    said = frozenset(parts)
    return Makeup(machine, frozenset(one.id for one in table if _is_there(machine, one, said)))


def _is_there(machine: Machine, one: Has, said: frozenset[str]) -> bool:
    """The card's fuel and ignition tell first, then its kind; a kind that rules it out stands against mere talk.

    A word inside a longer name that rules it out does not count: the mill of an apple mill is no milling machine.
    """
    kind = tokens(machine.kind)
    if _named(kind, one.never) and not _named(kind, one.kind):
        return False
    if machine.fuel in one.fuel or machine.ignition in one.ignition:
        return True
    if _named(_without(kind, one.not_kind), (*one.kind, *one.kind_alone)):
        return True
    if _named(kind, one.not_kind):
        return False
    if said.intersection(one.said):
        return True
    return one.unless_told and machine.fuel != "none"


def _without(kind: tuple[str, ...], names: Iterable[str]) -> tuple[str, ...]:
    """The words of a kind without the longer names in it."""
    left = list(kind)
    for name in map(tokens, names):
        size = len(name)
        at = next((i for i in range(len(left) - size + 1) if size > 1 and tuple(left[i : i + size]) == name), None)
        if at is not None:
            left[at : at + size] = []
    return tuple(left)


def _named(kind: tuple[str, ...], words: Iterable[str]) -> bool:
    return any(holds(kind, tokens(w)) for w in words)
