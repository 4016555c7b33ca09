"""How it is meant: done or planned, found or denied, measured or from the book, said or supposed."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, explain
from worklog_tui.model import Fact, Finding, Machine, Reading, Work
from worklog_tui.rulebook import Rulebook

MILL = Machine(
    "Cider press engine", kind="single-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=1
)


def facts(book: Rulebook, words: str) -> list[Fact]:
    return [f for f in explain(book, MILL, words).facts if f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("words", "verdict"),
    [
        ("the manifold is cracked", "bad"),
        ("the manifold isn't cracked", "good"),
        ("the manifold is not cracked", "good"),
        ("no cracks in the manifold", "good"),
        ("the float bowl is clean", "good"),
        ("the float bowl is not clean", "bad"),
    ],
)
def test_a_denial_turns_a_finding_round(book: Rulebook, words: str, verdict: str) -> None:
    assert [f.verdict for f in facts(book, words) if isinstance(f, Finding)] == [verdict]


@pytest.mark.parametrize(
    "words",
    [
        "if the manifold were cracked we would hear it",
        "had the manifold been cracked, it would have whistled",
        "is the manifold cracked?",
        "the manifold might be cracked",
    ],
)
def test_what_is_supposed_or_asked_is_not_found(book: Rulebook, words: str) -> None:
    assert not [f for f in facts(book, words) if isinstance(f, Finding)]


def test_a_question_tag_asks_nothing(book: Rulebook) -> None:
    assert [f.verdict for f in facts(book, "well, the manifold is cracked, isn't it.") if isinstance(f, Finding)] == [
        "bad"
    ]


@pytest.mark.parametrize(
    "words",
    [
        "I'm going to clean the float bowl",
        "we need to clean the float bowl",
        "don't clean the float bowl with sandpaper",
        "if you clean the float bowl it runs",
        "I didn't clean the float bowl",
    ],
)
def test_what_is_planned_advised_or_not_done_is_no_work(book: Rulebook, words: str) -> None:
    assert not [f for f in facts(book, words) if isinstance(f, Work)]


@pytest.mark.parametrize(
    ("words", "role"),
    [
        ("the plug gap is 25 thou", "measured"),
        ("the plug gap should be 25 thou", "specified"),
        ("the book says 25 thou for the plug gap", "specified"),
        ("plug gap set to 25 thou", "set"),
        ("tightened the head bolts to 40 foot pounds", "set"),
        ("leave it in the paraffin for two hours", "planned"),
    ],
)
def test_what_a_number_is_for(book: Rulebook, words: str, role: str) -> None:
    assert [f.role for f in facts(book, words) if isinstance(f, Reading)] == [role]


def test_found_and_wanted_in_one_breath(book: Rulebook) -> None:
    found = [f for f in facts(book, "the plug gap is 35 thou and it should be 25 thou") if isinstance(f, Reading)]
    assert [(f.value, f.role) for f in found] == [(0.035, "measured"), (0.025, "specified")]


def test_of_a_value_that_is_taken_back_the_last_one_stays(book: Rulebook) -> None:
    found = [f for f in facts(book, "the plug gap is thirty thou, no, thirty five thou") if isinstance(f, Reading)]
    assert [f.value for f in found] == [0.035]


def test_a_value_that_cannot_be_is_kept_and_doubted(book: Rulebook) -> None:
    found = [
        f for f in facts(book, "the battery reads 12000 volts and the plug gap is 40 mm") if isinstance(f, Reading)
    ]
    assert [f.doubtful for f in found if f.quantity == "gap"] == [True]


def test_what_it_got_to_is_there(book: Rulebook) -> None:
    """`Got to` before a figure tells how far it went, not what is owed; `if you rock it` tells how it is felt."""
    got = facts(book, "the bearing cap got to fifty five degrees")
    assert [f.role for f in got if isinstance(f, Reading)] == ["measured"]
    rocked = facts(book, "there's play in it you can feel it if you rock the shaft about ten thou")
    assert [f.value for f in rocked if isinstance(f, Reading)] == [0.01]
    owed = facts(book, "we've got to drain the tank")
    assert not any(isinstance(f, Work) for f in owed)


@pytest.mark.parametrize(
    "words", ["there's water running straight down the cable", "somebody asked what blade I'm running"]
)
def test_what_runs_elsewhere_or_was_asked_shows_nothing(book: Rulebook, words: str) -> None:
    """Water that runs down something praises no machine, and a question is no deed of others."""
    assert not any(isinstance(f, Finding) for f in facts(book, words))
