"""Every fact tells which pattern and which steps made it, also what was only implied or filled in.

A fact comes of a rule of the grammars, or of the build of a sentence, which has an id in the code. The lines are those
of the cases in `first`, each read as one note.
"""

from __future__ import annotations

import re
from pathlib import Path

from worklog_tui import extract
from worklog_tui.bench.card import read_card
from worklog_tui.extract import explain
from worklog_tui.rulebook import Rulebook

CASES = sorted(p for p in (Path(__file__).parent / "first").iterdir() if p.is_dir())


def test_every_fact_of_a_line_has_a_trail(book: Rulebook) -> None:
    code = "".join(p.read_text(encoding="utf-8") for p in Path(extract.__file__).parent.rglob("*.py"))
    known = {rule.id for rule in book.rules} | set(re.findall(r'"(\w+\.[\w-]+)"', code))
    known |= {f"{room}.{name}" for room in ("owed", "shown", "worked") for name in re.findall(r'"([\w-]+)"', code)}
    facts, implied, filled, without = 0, 0, 0, []
    for case in CASES:
        card, _ = read_card(case / "machine.toml")
        for session in sorted(case.glob("session-*.txt")):
            for line in session.read_text(encoding="utf-8").splitlines():
                words = re.sub(r"^\s*(\[[\d:]+\]|\d{1,2}:\d{2})\s*", "", line)
                for read in explain(book, card, words, "captions" if line.startswith("[") else "live").read:
                    facts += 1
                    implied += any("implied" in step for step in read.steps)
                    filled += bool(read.fact.filled)
                    told = read.steps[0].removeprefix("pattern ")
                    hidden = bool(read.fact.filled) and not any("filled in" in step for step in read.steps)
                    if hidden or told != read.fact.rule or told not in known:
                        without.append((words, read.steps))
    print(f"{facts} facts, {implied} implied, {filled} with words filled in")
    assert facts > 150
    assert implied >= 3
    assert filled > 20
    assert without == []
