"""What a search tells: the line, what was read from it where its words do not say it, and items."""

from __future__ import annotations

from tests.logbook.told import Told, did, later
from worklog_tui.logbook.finding_items import holding
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Hit, ItemHit
from worklog_tui.reports.found import found_json, found_text


def hits(told: Told) -> list[Hit]:
    """Every line as if it had been found."""
    known = told.history()
    return [
        Hit("Loom", None, note, tuple(f for f in record.facts if f.main.note == note.uid))
        for record in known.sessions
        for note in record.notes
    ]


def test_what_was_read_is_told_where_the_line_has_other_words() -> None:
    found = hits(Told().say("a squirt on the cam", did("lubricate", "cam")))
    assert "cam lubricated" in found_text(found, (), "lubricate", 80)
    assert "cam lubricated" not in found_text(found, (), "squirt", 80)


def test_items_are_told_with_their_reason_and_state() -> None:
    known = Told().say("need a new picker", later("picker", "part needed")).history()
    listed = [ItemHit("Loom", one) for one in holding(open_items(known), "pickers")]
    assert "Loom: picker (part needed; open; session 1 at" in found_text((), listed, "pickers", 80)
    assert found_json((), listed)["items"][0]["about"] == "picker"
    assert found_text((), (), "shuttle", 80) == "Nothing was found."


def test_no_words_find_no_item() -> None:
    assert not list(holding(open_items(Told().say("need a picker", later("picker", "part needed")).history()), " ?"))
