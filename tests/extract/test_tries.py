"""How a try went: told with nothing but `There!`, `and away`, `nothing`; of the engine, or of the spark."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.extract.context import Context
from worklog_tui.model import Finding, Machine, Note
from worklog_tui.rulebook import Rulebook

SAW = Machine("Estate saw", kind="single-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=1)


def found(book: Rulebook, *lines: str) -> set[tuple[str, str]]:
    """(part, verdict) of all that was surely found."""
    facts = read_session(book, SAW, [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)])
    return {(f.part.lower(), f.verdict) for f in facts if isinstance(f, Finding) and f.confidence >= CONFIDENCE_LINE}


@pytest.mark.parametrize(
    ("words", "verdict"),
    [
        ("Choke on. Pull. Pull. There!", "good"),
        ("so we try it. One. Two. Three. And away.", "good"),
        ("throw the switch and off she goes", "good"),
        ("one kick nothing", "bad"),
        ("Give it a kick. Nothing. Again. Nothing.", "bad"),
        ("press the starter and click, just a click", "bad"),
    ],
)
def test_a_try_of_the_engine_is_told_in_a_word(book: Rulebook, words: str, verdict: str) -> None:
    assert ("engine", verdict) in found(book, words)


def test_the_outcome_may_come_with_the_next_note(book: Rulebook) -> None:
    assert ("engine", "good") in found(book, "Swing the handle.", "And away she goes.")


def test_where_the_spark_is_looked_at_the_try_is_of_the_spark(book: Rulebook) -> None:
    assert ("spark", "bad") in found(book, "now for a spark, plug on the head. Kick. Nothing at all.")
    assert ("spark", "good") in found(book, "Spark next.", "Points cleaned up.", "kick it over. Fat and blue.")


@pytest.mark.parametrize(
    "lines",
    [
        ("Pull the cover off. There.",),
        ("If you swing the handle and nothing, look at the points.",),
        ("Start her up.", "Oil on the bench, a rag on the flange. Nothing."),
        ("Start her up.", "The gasket goes on dry. There."),
    ],
)
def test_no_try_no_outcome(book: Rulebook, lines: tuple[str, ...]) -> None:
    assert not {fact for fact in found(book, *lines) if fact[0] == "engine"}


def test_how_a_later_try_went_is_told_anew(book: Rulebook) -> None:
    facts = read_session(
        book,
        SAW,
        [
            Note(f"n{i}", "s", w, track="captions")
            for i, w in enumerate(("Start her up. There.", "Start her up. There."))
        ],
    )
    assert len([f for f in facts if isinstance(f, Finding)]) == 2


def test_the_context_keeps_what_is_tried() -> None:
    context = Context(tried="spark", tried_age=1)
    assert Context.from_json(context.to_json()) == context
