"""Regular forms of verbs and nouns."""

from __future__ import annotations

import pytest

from worklog_tui.rulebook.inflect import gerund, past, plural, third, verb_forms


@pytest.mark.parametrize(
    ("verb", "did", "doing", "does"),
    [
        ("clean", "cleaned", "cleaning", "cleans"),
        ("scrape", "scraped", "scraping", "scrapes"),
        ("strip", "stripped", "stripping", "strips"),
        ("dry", "dried", "drying", "dries"),
        ("flush", "flushed", "flushing", "flushes"),
        ("loosen", "loosened", "loosening", "loosens"),
        ("free", "freed", "freeing", "frees"),
        ("fit", "fitted", "fitting", "fits"),
        ("repair", "repaired", "repairing", "repairs"),
        ("seize", "seized", "seizing", "seizes"),
        ("tap", "tapped", "tapping", "taps"),
        ("weld", "welded", "welding", "welds"),
        ("oil", "oiled", "oiling", "oils"),
        ("fix", "fixed", "fixing", "fixes"),
        ("screw", "screwed", "screwing", "screws"),
    ],
)
def test_verbs(verb: str, did: str, doing: str, does: str) -> None:
    assert (past(verb), gerund(verb), third(verb)) == (did, doing, does)


@pytest.mark.parametrize(
    ("one", "many"),
    [
        ("spark plug", "spark plugs"),
        ("bush", "bushes"),
        ("assembly", "assemblies"),
        ("points", "points"),
        ("key", "keys"),
    ],
)
def test_nouns(one: str, many: str) -> None:
    assert plural(one) == many


def test_a_verb_with_a_particle_changes_its_first_word() -> None:
    assert dict(verb_forms("blow out", ("blew out",)))["did"] == "blew out"
    assert dict(verb_forms("back off"))["doing"] == "backing off"


def test_a_compound_verb_changes_its_last_word() -> None:
    assert dict(verb_forms("wire brush"))["did"] == "wire brushed"
