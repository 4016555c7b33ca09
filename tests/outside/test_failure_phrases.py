"""Short failure phrases of maintenance records give a bad finding of the machine that they are noted for.

Source: the failure-mode phrases of MWO2KG (University of Western Australia, MIT licence), written by maintainers and
labelled with ISO 14224 failure modes by its authors; the file is open-data/mwo2kg-fmc/failure_modes_dev.txt.
"""

from __future__ import annotations

from pathlib import Path

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note
from worklog_tui.rulebook import Rulebook

FLOOR = 0.9
"Where the reader stands, and what was aimed at."


def _reads_bad(book: Rulebook, phrase: str) -> bool:
    """Whether the phrase, typed behind the name of a machine, gives a bad finding."""
    note = Note("n", "s", f"pump {phrase}", track="typed")
    facts = read_session(book, Machine("Pump", kind="water pump"), [note])
    return any(isinstance(f, Finding) and f.verdict == "bad" and f.confidence >= CONFIDENCE_LINE for f in facts)


def test_failure_phrases_are_bad_findings(book: Rulebook, open_data: Path) -> None:
    lines = (open_data / "mwo2kg-fmc" / "failure_modes_dev.txt").read_text(encoding="utf-8").splitlines()
    phrases = sorted({line.rpartition(",")[0] for line in lines if line.strip()})
    missed = [p for p in phrases if not _reads_bad(book, p)]
    share = 1 - len(missed) / len(phrases)
    print(f"\n{len(phrases)} failure phrases, {share:.1%} read as bad; not: {missed}")
    assert len(phrases) >= 50
    assert share >= FLOOR
