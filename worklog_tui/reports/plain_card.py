"""The machine card as plain text and as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any, Protocol

from worklog_tui.model import Machine, Place, Reading
from worklog_tui.reports.json_out import fact
from worklog_tui.reports.json_out import where as place
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.sentence import briefly
from worklog_tui.reports.when import where


class Told(Protocol):
    """What was told of the machine."""

    @property
    def what(self) -> str:
        """The trait, or what a number is of."""
        ...

    @property
    def says(self) -> str:
        """What was told of it."""
        ...

    @property
    def source(self) -> str:
        """Who told it."""
        ...

    @property
    def doubtful(self) -> bool:
        """Whether that was not sure."""
        ...

    @property
    def place(self) -> Place:
        """Where it was told."""
        ...


Missing = tuple[str, Sequence[tuple[str, str]]]
"A fact that the card leaves out, and the first step for each thing that it could be."


def card_text(
    machine: Machine, told: Sequence[Told], figures: Sequence[tuple[Reading, Place]], missing: Sequence[Missing],
    width: int,
) -> str:  # fmt: skip
    """What the card says, what was told, what figures should be, and what is worth finding out."""
    rows = heading(machine.name)
    given = [("kind", machine.kind), ("fuel", machine.fuel), ("ignition", machine.ignition)]
    given += [("cylinders", str(machine.cylinders or "")), ("firing order", " ".join(map(str, machine.firing_order)))]
    rows += [line for name, says in given if says for line in wrapped(f"{name}: {says}", width, "  - ", "    ")]
    for value in machine.specified:
        source = f" ({value.source})" if value.source else ""
        rows += wrapped(f"{value.subject.replace('_', ' ')}: {value.text}{source}", width, "  - ", "    ")
    if told:
        rows += ["", *heading("Told")]
        for one in told:
            marks = [one.source] if one.source else []
            marks += ["doubtful"] if one.doubtful else []
            rows += wrapped(f"{one.what}: {one.says} ({'; '.join([*marks, where(one.place)])})", width, "  - ", "    ")
    if figures:
        rows += ["", *heading("Figures that were said, and are not on the card")]
        for reading, there in figures:
            rows += wrapped(f"{briefly(reading)} ({where(there)})", width, "  - ", "    ")
    for name, steps in missing:
        rows += ["", f"The {name} is not known, and would change what to do first:"]
        rows += [
            line for choice, step in steps for line in wrapped(f"{choice}: {step or 'nothing'}", width, "  - ", "    ")
        ]
    if len(rows) == len(heading("")):
        rows += wrapped("Nothing is known of it yet but its name.", width)
    return "\n".join(rows)


def card_json(
    machine: Machine, told: Sequence[Told], figures: Sequence[tuple[Reading, Place]], missing: Sequence[Missing]
) -> dict[str, Any]:  # fmt: skip
    """The same as JSON data."""
    return {
        "card": asdict(machine),
        "told": [
            {"what": one.what, "says": one.says, "source": one.source or None, "doubtful": one.doubtful,
             "at": place(one.place)}
            for one in told
        ],
        "figures": [fact(reading, there) for reading, there in figures],
        "missing": [{"fact": name, "first_step": dict(steps)} for name, steps in missing],
    }  # fmt: skip
