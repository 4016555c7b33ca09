"""The chapters of the demo films as they are shown to everybody: valid, and the titles that a person read and kept."""

from __future__ import annotations

import pytest

from tests.reports.published import published
from worklog_tui import places
from worklog_tui.bench.extract_files import extract
from worklog_tui.bench.machines import read_card
from worklog_tui.reports.chapters import chapters, problems
from worklog_tui.reports.film import films
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import load_faults

KEPT = {
    "cider-mill-engine": {
        "Contact breaker points: burnt, repaired",
        "Exhaust: blowing at the flange",
        "Condenser: leaking, replaced",
        "Mill's top bearing: dry, the cause",
    },
    "print-shop-guillotine": {
        "Belt: cracked, needed",
        "Suction strainer: blocked solid",
        "Bearing: rumbling, replaced",
        "Clutch: set to 0.4 mm",
        "Relief valve: the cause",
    },
}
"A few titles of each demo film; a better reading may better them."


@pytest.mark.parametrize("demo", KEPT)
def test_the_chapters_of_a_demo_film(demo: str, book: Rulebook) -> None:
    folder = places.demo_sessions() / demo
    card, _ = read_card(folder / "machine.toml")
    found = extract(book, load_faults([places.grammars()]), card, sorted(folder.glob("session-*.*")))
    titles = set()
    for film in films(published(found.history).material):
        made = chapters(film, found.history.machine.name)
        assert problems([row.line for row in made], film.length) == []
        titles |= {row.title for row in made}
    assert titles >= KEPT[demo]
