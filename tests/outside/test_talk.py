"""Talk that nobody here wrote goes through the whole reader.

Source: captions of the US Department of Defense media service (a US Government work), an excerpt of which lies in
open-data/transcripts-pd.
"""

from __future__ import annotations

from pathlib import Path

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine
from worklog_tui.notes.files import read_session_file
from worklog_tui.notes.keeping import make_notes
from worklog_tui.rulebook import Rulebook


def test_general_talk_of_maintenance_gives_hardly_a_fact(book: Rulebook, open_data: Path) -> None:
    files = sorted((open_data / "transcripts-pd").glob("*.vtt"))
    assert files
    _, notes = make_notes(read_session_file(files[0]), "machine")
    facts = [f for f in read_session(book, Machine("Truck"), notes) if f.confidence >= CONFIDENCE_LINE]
    print(f"\n{len(notes)} caption cues, {len(facts)} facts: {[(f.kind, f.quote) for f in facts]}")
    assert len(notes) >= 15
    assert not [f for f in facts if f.kind == "reading"]
    assert len(facts) <= 1
