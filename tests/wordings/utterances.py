"""Single utterances with what must be read from each: a handbook of wordings, one a line.

    finding | needle valve, valve / good | and the needle valve, you could not ask for a cleaner one
    work | remove / flywheel | T pulled flywheel
    reading | gap / 0.4 mm / points / set | so I've left those || at point four
    nothing | | some people fill these with grease and then wonder why they seize

The fields of a kind, with `,` between wordings that are all right: finding `part / verdict`; work `action / part`;
suspect `cause / standing`; follow_up `about / reason`; reading `quantity / value unit / subject / role`, a range as
`10..12 min`. `T ` before the words: typed; else spoken, and `||` is where one caption ends and the next begins.
`nothing`: not one fact. A line that begins with `#` is a remark.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Finding, FollowUp, Machine, Note, Reading, Suspect, Work
from worklog_tui.rulebook import Rulebook

KINDS: dict[type, str] = {
    Reading: "reading", Finding: "finding", Work: "work", Suspect: "suspect", FollowUp: "follow_up",
}  # fmt: skip
FIELDS = {
    "finding": ("part", "verdict"),
    "work": ("action", "part"),
    "suspect": ("cause", "standing"),
    "follow_up": ("about", "reason"),
    "reading": ("quantity", "value", "subject", "role"),
    "nothing": (),
}
SURE = 0.5
"Below this a fact is a question."
MACHINE = Machine("Machine", kind="four-cylinder petrol engine", fuel="petrol", ignition="battery", cylinders=4)


@dataclass(frozen=True, slots=True)
class Utterance:
    """What somebody says or types, and what must be read from it."""

    kind: str
    wanted: dict[str, Any]
    notes: tuple[Note, ...]
    words: str


def utterances(path: Path) -> Iterator[Utterance]:
    """The utterances of a file; ValueError names the line that has not the form of one."""
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        if line.strip() and not line.startswith("#"):
            parts = [part.strip() for part in line.split("|", 2)]
            if len(parts) < 3 or parts[0] not in FIELDS:
                raise ValueError(f"{path.name}, line {number}: no kind, fields and words")
            yield _utterance(*parts)


def read(book: Rulebook, utterance: Utterance) -> list[dict[str, Any]]:
    """The facts that the program is sure of, as mappings with their kind."""
    facts = read_session(book, MACHINE, utterance.notes)
    return [
        {"kind": kind, **{name: getattr(fact, name) for name in (*FIELDS[kind], "unit") if hasattr(fact, name)}}
        for fact in facts
        if (kind := KINDS.get(type(fact))) and fact.confidence >= SURE
    ]


def _utterance(kind: str, written: str, words: str) -> Utterance:
    typed = words.startswith("T ")
    spoken = words.removeprefix("T ").split("||")
    track = "live" if typed else "captions"
    notes = tuple(Note(f"n{i}", "s", one.strip(), track=track, arrival=i) for i, one in enumerate(spoken))
    values = [[w.strip() for w in field.split(",")] for field in written.split(" / ")]
    wanted: dict[str, Any] = {"kind": kind, **dict(zip(FIELDS[kind], values, strict=False))}
    if kind == "reading":
        said = wanted["value"][0]
        amount, _, unit = said.partition(" ")
        thread = wanted["quantity"] == ["thread"]
        wanted |= {"value": said if thread else _amount(amount), "unit": "" if thread else unit}
    return Utterance(kind, wanted, notes, words)


def _amount(written: str) -> float | list[float]:
    values = [float(part) for part in written.split("..")]
    return values[0] if len(values) == 1 else values
