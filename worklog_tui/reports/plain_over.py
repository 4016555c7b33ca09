"""Looking a machine over, as plain text: parts, how it was left, before a start, closing up, what does not add up."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.off_machine import AsFound
from worklog_tui.logbook.outcomes import BeforeStart, ClosingUp, DoNotStart, Left, Odd, OffPart, Question
from worklog_tui.logbook.part_states import Fits, PartState
from worklog_tui.model import OpenItem
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.plain_items import item_lines
from worklog_tui.reports.sentence import amount, briefly, sentence
from worklog_tui.reports.sums_said import SumSaid
from worklog_tui.reports.when import where


def parts_text(
    states: Sequence[PartState], shopping: Sequence[OpenItem], sizes: Sequence[Fits], width: int,
    sums: Sequence[SumSaid] = (),
) -> str:  # fmt: skip
    """What is to be got, what became of parts, the sizes by which they can be found again, and sums that were said."""
    rows: list[str] = []
    if shopping:
        rows += ["", *heading(f"To be got ({len(shopping)})")]
        for one in shopping:
            rows += item_lines(one, width)
    told = [one for one in states if one.state not in ("needed", "ordered") or one.place is None]
    if told:
        rows += ["", *heading("What became of parts")]
        for state in told:
            new = state.used.casefold() in ("new", "new one", f"new {state.part.casefold()}")
            with_it = ", new" if new else f", with {state.used}" if state.used else ""
            said = f"{state.part or 'parts'}: {state.state}{with_it} ({where(state.place)})"
            rows += wrapped(said, width, "  - ", "    ")
    if sizes:
        rows += ["", *heading("Sizes and numbers")]
        for size in sizes:
            rows += wrapped(f"{size.what}: {size.of} ({where(size.place)})", width, "  - ", "    ")
    if sums:
        rows += ["", *heading("Sums that were said (left out of everything that is published)")]
        for money in sums:
            rows += wrapped(f"{money.text}: “{money.told}” ({where(money.place)})", width, "  - ", "    ")
    return "\n".join(rows[1:]) or "Nothing was heard of parts yet."


def left_text(
    forbidden: Sequence[DoNotStart], left: Sequence[Left], off: Sequence[OffPart], found: Sequence[AsFound], width: int
) -> str:  # fmt: skip
    """How it was left, as far as was heard."""
    rows = [*_forbidden(forbidden, width), *_left(left, width), *_off(off, width)]
    if found:
        rows += ["", *heading("As it was found before somebody adjusted it")]
        for one in found:
            rows += wrapped(f"{briefly(one.reading)} ({where(one.place)})", width, "  - ", "    ")
    return "\n".join(rows[1:]) or "Nothing was heard that is still off or left in some state."


def left_head(forbidden: Sequence[DoNotStart], left: Sequence[Left], width: int) -> list[str]:
    """What heads a recap: the marks that forbid a start, and the states that outlived the session."""
    rows = [*_forbidden(forbidden, width), *_left(left, width)]
    return [*rows[1:], ""] if rows else []


def before_start_text(seen: BeforeStart, cautions: Sequence[str], width: int) -> str:
    """The list to go through before a start."""
    rows = [*_forbidden(seen.forbidden, width), *_left(seen.left, width), *_off(seen.off, width)]
    if seen.due:
        rows += ["", *heading("To be done before a start")]
        for item in seen.due:
            rows += item_lines(item, width)
    if seen.fluids:
        rows += ["", *heading("Fluids")]
        for fluid in seen.fluids:
            said = f"last heard of in {where(fluid.place)}" if fluid.place else "nothing heard: look at it"
            rows += wrapped(f"{fluid.name}: {said}", width, "  - ", "    ")
    rows += ["", *heading("How is it stopped?")]
    stops = f"Spoken of in {where(seen.stops_with[-1])}: try it first." if seen.stops_with else ""
    rows += wrapped(stops or "Nothing was heard of what stops it: have a sure way to stop it at hand.", width, "  ")
    if seen.attempts:
        rows += ["", *heading("Start attempts")]
        for one in seen.attempts:
            came = one.outcome.condition if one.outcome else "nothing heard of what came of it"
            rows += wrapped(f"{where(one.place)}: {came}", width, "  - ", "    ")
    rows += ["", *heading("Mind")]
    for caution in cautions:
        rows += wrapped(caution, width, "  - ", "    ")
    return "\n".join(rows[1:])


def closing_up_text(asked: ClosingUp, width: int) -> str:
    """The questions, each with its answers."""
    if not asked.questions:
        return "There is nothing to ask."
    rows = heading(f"Closing up: {len(asked.questions)} to ask, none of them must be answered")
    for number, one in enumerate(asked.questions, 1):
        rows += wrapped(f"{one.asks}{_read(one)} ({where(one.place)})", width, f"{number:>3}  ", "     ")
        rows += wrapped(f"“{one.told}”", width, "     ", "     ") if one.told else []
        rows += wrapped(f"[{' / '.join(one.answers)}]", width, "     ", "     ")
    return "\n".join([*rows, *([f"And {asked.more} more of less weight."] if asked.more else [])])


def _read(one: Question) -> str:
    return f" {sentence(one.read)}" if one.read is not None else ""


def odd_text(found: Sequence[Odd], width: int) -> str:
    """What does not add up."""
    if not found:
        return "Nothing was heard that does not add up."
    rows = heading(f"What does not add up ({len(found)})")
    for one in found:
        rows += wrapped(f"{one.says} ({'; '.join(where(place) for place in one.places)})", width, "  - ", "    ")
    return "\n".join(rows)


def _forbidden(marks: Sequence[DoNotStart], width: int) -> list[str]:
    rows: list[str] = ["", *heading("Do not start it")] if marks else []
    for one in marks:
        rows += wrapped(f"“{one.told}” ({where(one.place)})", width, "  - ", "    ")
    return rows


def _left(left: Sequence[Left], width: int) -> list[str]:
    rows: list[str] = ["", *heading("How it was left: is it still so?")] if left else []
    for one in left:
        about = f", {one.about}" if one.about else ""
        rows += wrapped(f"{one.state}{about}. {one.asks} ({where(one.place)}: “{one.told}”)", width, "  - ", "    ")
    return rows


def _off(off: Sequence[OffPart], width: int) -> list[str]:
    rows: list[str] = ["", *heading("Off the machine: is it back?")] if off else []
    for one in off:
        sizes = "; ".join(f"{amount(r.value, r.unit)} {r.subject}".strip() for r in one.sizes)
        tried = "; a start was tried since" if one.tried else ""
        said = f"{one.work.part}: {one.how}{f', {sizes}' if sizes else ''} ({where(one.place)}{tried})"
        rows += wrapped(said, width, "  - ", "    ")
    return rows
