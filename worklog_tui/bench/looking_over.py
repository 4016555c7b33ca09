"""Looking over a machine: parts, what is off it, how it was left, before a start, closing up, what does not add up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui.bench.review import Review, fault_book, review
from worklog_tui.logbook.before_start import before_start as fold_before
from worklog_tui.logbook.before_start import off_key
from worklog_tui.logbook.closing_up import closing_up as fold_closing
from worklog_tui.logbook.compressions import BeforeAfter, CompressionTest, before_and_after, compression_tests
from worklog_tui.logbook.how_left import do_not_start, how_left, let_go
from worklog_tui.logbook.odd import odd
from worklog_tui.logbook.off_machine import AsFound, as_found, off_machine
from worklog_tui.logbook.outcomes import BeforeStart, ClosingUp, DoNotStart, Left, Odd, OffPart
from worklog_tui.logbook.part_states import Fits, PartState, fits, part_states, shopping_list
from worklog_tui.logbook.standing import standing

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import History, OpenItem
    from worklog_tui.reports.sums_said import SumSaid


@dataclass(frozen=True, slots=True)
class Parts:
    """The parts of a machine."""

    states: tuple[PartState, ...]
    shopping: tuple[OpenItem, ...]
    fits: tuple[Fits, ...]
    sums: tuple[SumSaid, ...] = ()
    "Sums of money that were said; they stay out of everything that is published."


@dataclass(frozen=True, slots=True)
class LeftSo:
    """How a machine was left."""

    forbidden: tuple[DoNotStart, ...]
    left: tuple[Left, ...]
    off: tuple[OffPart, ...]
    as_found: tuple[AsFound, ...]


def parts(desk: Desk, machine: str, words: str = "") -> Parts:
    """The parts of a machine in their states; with `words`, only the sizes and numbers in which they stand."""
    seen = review(desk, machine)
    wanted = words.casefold()
    known = tuple(one for one in fits(seen.history) if wanted in f"{one.what} {one.of}".casefold())
    from worklog_tui.bench.publishing import gate_of
    from worklog_tui.reports.sums_said import sums_said

    sums = sums_said(seen.history, gate_of(desk))
    return Parts(part_states(seen.history, seen.items), shopping_list(seen.items), known, sums)


def left(desk: Desk, machine: str) -> LeftSo:
    """What is off the machine and how it was left, as far as was heard; to be asked about, never claimed."""
    return left_of(review(desk, machine))


def left_of(seen: Review) -> LeftSo:
    """The same for what was worked out already."""
    cleared = cleared_of(seen)
    off = tuple(one for one in off_machine(seen.history) if off_key(one) not in cleared)
    return LeftSo(
        do_not_start(seen.history, cleared), how_left(seen.history, cleared), off, as_found(seen.history)
    )  # fmt: skip


def before_start(desk: Desk, machine: str) -> tuple[BeforeStart, tuple[str, ...]]:
    """What to go through before a start, and the usual cautions."""
    seen = review(desk, machine)
    return fold_before(seen.history, seen.items, cleared_of(seen)), cautions_before_start(desk, seen)


def cautions_before_start(desk: Desk, seen: Review) -> tuple[str, ...]:
    """The usual cautions, each with its source."""
    from worklog_tui.diagnosis.safety import Safety

    if "engine" not in seen.history.machine.kind.casefold() and seen.history.machine.fuel in ("", "none"):
        return Safety(fault_book(desk.grammars)).cautions("switch on", ("general", "mains"))
    return Safety(fault_book(desk.grammars)).cautions("start the engine run", ("general", "run", "co"))


def closing_up(desk: Desk, machine: str, session: int | None = None) -> ClosingUp:
    """What to ask at the end of a session, by default the last one."""
    seen = review(desk, machine)
    return fold_closing(seen.history, seen.items, cleared_of(seen), session)


def oddities(desk: Desk, machine: str) -> tuple[Odd, ...]:
    """What does not add up."""
    return odd_in(desk, review(desk, machine).history)


def odd_in(desk: Desk, known: History) -> tuple[Odd, ...]:
    """The same for a history that is at hand."""
    quantities = desk.book().quantities if desk.reads_with is None else {}
    believable = {name: one.plausible for name, one in quantities.items()}
    return odd(known, fault_book(desk.grammars).words.get("foreign", {}), believable)


def compression(desk: Desk, machine: str) -> tuple[tuple[CompressionTest, ...], tuple[BeforeAfter, ...]]:
    """The compression tests, and every reading that was taken before and after work on its thing."""
    seen = review(desk, machine)
    return compression_tests(seen.history), before_and_after(seen.history)


def cleared_of(seen: Review) -> frozenset[str]:
    """What a person said need not be asked again."""
    return let_go(standing(seen.history.acts))
