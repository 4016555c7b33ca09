"""Small labelled sessions for what the larger cases do not label: what the machine is, and what is no fact yet.

Each file of `small` is one session of an invented machine with lists of what a careful restorer would expect: traits
and numbers (C36); what closing up should ask about, and what it should not, since it was heard done (C39); bad findings
of things that are named only afterwards, with what is wrong with them. A wording is met when all of its words stand in
what was read. The lists were written before the reader saw the lines (17 of the first 37 were read at first; the states
of what is named late were asked for later, when 0 of 5 were read of the right thing).
`pytest tests/cases/test_small_sets.py -s` prints the figures.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench.extract_files import extract
from worklog_tui.logbook.closing_up import closing_up
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Finding, History, Machine, Number, Trait
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import load_faults

SETS = sorted((Path(__file__).parent / "small").glob("*.toml"))
SMALLEST = 0.9
"Share of what is expected that must be read, over all sets; where the reader stands is printed."


def _words(text: str) -> set[str]:
    return set(re.findall(r"[a-z0-9.]+", text.lower().replace("-", " ")))


def _met(expected: str, read: Iterable[str]) -> bool:
    return any(_words(expected) <= _words(one) for one in read)


def _history(path: Path, book: Rulebook, folder: Path) -> tuple[dict[str, list[str]], History]:
    wanted = tomllib.loads(path.read_text(encoding="utf-8"))
    session = folder / "session.txt"
    session.write_text("\n".join(wanted.pop("lines")) + "\n", encoding="utf-8")
    machine = Machine("Machine", kind=wanted.pop("kind"), fuel=wanted.pop("fuel"))
    return wanted, extract(book, load_faults([places.grammars()]), machine, [session]).history


def _asked(history: History) -> list[str]:
    return [f"{q.asks} {q.told}" for q in closing_up(history, open_items(history)).questions]


READ: dict[str, Callable[[History], Sequence[str]]] = {
    "traits": lambda h: [f"{f.trait} {f.value} {f.quote}" for f in h.facts() if isinstance(f, Trait)],
    "numbers": lambda h: [f"{f.number} {f.quote}" for f in h.facts() if isinstance(f, Number)],
    "asked": _asked,
    "bad": lambda h: [
        f"{f.part} {f.name} {f.condition}" for f in h.facts() if isinstance(f, Finding) and f.verdict == "bad"
    ],
}


def test_what_is_expected_is_read(book: Rulebook, tmp_path: Path) -> None:
    found, expected = 0, 0
    print()
    for path in SETS:
        wanted, history = _history(path, book, tmp_path)
        for kind, reads in READ.items():
            if kind in wanted:
                read = reads(history)
                missed = [one for one in wanted[kind] if not _met(one, read)]
                found, expected = found + len(wanted[kind]) - len(missed), expected + len(wanted[kind])
                print(f"{path.stem}, {kind}: {len(wanted[kind]) - len(missed)} of {len(wanted[kind])}; missed {missed}")
    print(f"all: {found} of {expected}")
    assert len(SETS) == 6
    assert found / expected >= SMALLEST


@pytest.mark.parametrize("path", SETS, ids=lambda p: p.stem)
def test_what_was_heard_done_is_not_asked_about(path: Path, book: Rulebook, tmp_path: Path) -> None:
    wanted, history = _history(path, book, tmp_path)
    asked = _asked(history)
    assert not [one for one in wanted.get("done", []) if _met(one, asked)], asked


def test_nothing_is_said_of_what_was_talked_of_before_or_only_set_against_it(book: Rulebook, tmp_path: Path) -> None:
    wanted, history = _history(next(p for p in SETS if p.stem == "named-late"), book, tmp_path)
    read = READ["bad"](history)
    assert not [one for one in wanted["wrong"] if _met(one, read)], read
