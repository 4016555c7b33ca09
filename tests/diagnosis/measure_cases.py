"""T8: what would have been advised along the labelled cases, and whether the true cause stood among the first three.

A case holds several troubles; each cause that its labels call confirmed is one count. The log is cut at its middle, and
just before the note that confirms the cause. A cause is named when a fault that its words mean is among the first three
causes of the advice, or one of the first three steps has all words of one of its wordings.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from tests.cases.conftest import UNLOOKED_AT
from tests.cases.test_next_steps import is_one_of, words
from worklog_tui import places
from worklog_tui.bench.card import read_card
from worklog_tui.bench.extract_files import extract
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Advice, History
from worklog_tui.rulebook import load
from worklog_tui.rulebook.faults import FaultBook

CASES = Path(__file__).parents[1] / "cases"
THREE = 3


@dataclass
class Counted:
    """Counts over all cases."""

    cases: int = 0
    good: int = 0
    bad: int = 0
    causes: int = 0
    held: int = 0
    "Confirmed causes that some fault of the files means."
    before: int = 0
    "Of these among the first three just before they were confirmed."
    about_it: int = 0
    "Of those held: the complaint that the advice is about, just before, can come from that cause."
    about_it_before: int = 0
    "Of these among the first three."
    late: int = 0
    "Confirmed in the second half of the log, and held."
    middle: int = 0
    "Of these among the first three at the middle of the log."
    lines: list[str] = field(default_factory=list)


def cases(folder: Path) -> list[Path]:
    """The labelled cases of a folder but for those that nobody looks at."""
    return sorted(p.parent for p in folder.rglob("gold.json") if UNLOOKED_AT.isdisjoint(p.parts))


def cut(history: History, notes: int) -> History:
    """The first so many notes of a history."""
    kept = set([n.uid for r in history.sessions for n in r.notes][:notes])
    rows = (
        replace(
            r, notes=tuple(n for n in r.notes if n.uid in kept), facts=tuple(f for f in r.facts if f.main.note in kept)
        )
        for r in history.sessions
    )
    return replace(history, sessions=tuple(r for r in rows if r.notes), comments=())


def along(faults: FaultBook, folder: Path, count: Counted) -> Counted:
    """Adds the cases of a folder to a count."""
    book = load([places.grammars()], places.cache())
    for case in cases(folder):
        card, _ = read_card(case / "machine.toml")
        got = extract(book, faults, card, sorted(case.glob("session-*.txt")))
        whole = sum(len(r.notes) for r in got.history.sessions)
        count.lines.append(f"  {case.name}")
        for ends, name in _ends(got.history, whole):
            first = _advised(got.history, ends, faults).steps[:1]
            count.lines.append(f"    {name}: {first[0].step if first else 'nothing to advise'}")
        steps = [s.step for s in got.advice.steps[:THREE]]
        count.cases += 1
        count.good += bool(steps) and is_one_of(steps[0], case, "good")
        count.bad += any(is_one_of(s, case, "bad") for s in steps)
        _causes(case, got.history, whole, faults, count)
    return count


def _ends(history: History, whole: int) -> Iterator[tuple[int, str]]:
    """Where a log is cut: each quarter of it, and the end of each session."""
    for quarter in (1, 2, 3, 4):
        yield max(1, whole * quarter // 4), f"after {quarter} of 4"
    done = 0
    for number, record in enumerate(history.sessions[:-1], 1):
        done += len(record.notes)
        yield done, f"after session {number}"


def _causes(case: Path, history: History, whole: int, faults: FaultBook, count: Counted) -> None:
    labelled = json.loads((case / "gold.json").read_text(encoding="utf-8"))["facts"]
    signs = Signs(Log(history), faults)
    for fact in labelled:
        if fact["kind"] != "suspect" or fact["standing"] != "confirmed":
            continue
        count.causes += 1
        wordings = [fact["cause"]] if isinstance(fact["cause"], str) else fact["cause"]
        meant = {f for w in wordings for f in signs.causes("", w)}
        at = _number(history, fact["session"], fact["at"])
        if not meant or at is None:
            continue
        count.held += 1
        before = _advised(history, at, faults)
        named = _named(before, meant, wordings)
        count.before += named
        if any(s.says == before.complaint and meant & s.causes.keys() for s in signs.symptoms.values()):
            count.about_it += 1
            count.about_it_before += named
        if at > whole // 2:
            count.late += 1
            count.middle += _named(_advised(history, whole // 2, faults), meant, wordings)


def _number(history: History, session: int, said_at: str) -> int | None:
    """How many notes come before one."""
    before = sum(len(r.notes) for r in history.sessions[: session - 1])
    notes = history.sessions[session - 1].notes
    return next((before + n for n, note in enumerate(notes) if note.said_at == said_at), None)


def _advised(history: History, notes: int, faults: FaultBook) -> Advice:
    part = cut(history, max(1, notes))
    return advise(part, open_items(part), faults, None)


def _named(advice: Advice, meant: set[str], wordings: Sequence[str]) -> bool:
    three = advice.causes[:THREE]
    named = any(cause.id in meant or any(words(w) <= words(cause.name) for w in wordings) for cause in three)
    return named or any(words(w) <= words(s.step) for w in wordings for s in advice.steps[:THREE])
