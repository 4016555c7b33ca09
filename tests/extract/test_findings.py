"""Findings: what was found, of which part, and what is said of parts without anything being found."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note
from worklog_tui.rulebook import Rulebook

PRESS = Machine("Cider press", kind="petrol engine", fuel="petrol", ignition="magneto", cylinders=2)


def found(book: Rulebook, *lines: str, track: str = "captions") -> list[tuple[str, str]]:
    """(part, verdict) of all that was surely found."""
    notes = [Note(f"n{i}", "s", line, track=track) for i, line in enumerate(lines)]
    facts = read_session(book, PRESS, notes)
    return [(f.part.lower(), f.verdict) for f in facts if isinstance(f, Finding) and f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("words", "part"),
    [
        ("The gasket behind the pulley on the shaft is torn.", "gasket behind the pulley"),
        ("The seal between the pump and the gearbox is perished.", "seal"),
        ("Belt guard off. It's cracked right across.", "belt"),
        (
            "fan belt I pushed on it an inch and the radiator look at this it's packed solid you can't see daylight",
            "radiator",
        ),
        ("I pulled on the chain and it's stretched.", "chain"),
        ("Look at that rotor. It's cracked.", "rotor"),
        ("Pulleys. The motor one's loose.", "motor pulley"),
        ("Plugs next. Left one. Oh, that's sooty.", "left plugs"),
        ("The bearings are washed in paraffin, a drop of oil on the pins, and now it's rusted solid.", "bearings"),
        ("Oil pressure next. Fifty psi. I'm happy with that.", "oil pressure"),
    ],
)
def test_a_state_belongs_to_what_the_talk_is_about(book: Rulebook, words: str, part: str) -> None:
    assert {p for p, _ in found(book, words)} == {part}


@pytest.mark.parametrize(
    "words",
    [
        "Crank it till it fires.",
        "Wait until it squeals and then let go.",
        "Once it's hot I'll go round the bolts.",
        "The burnt terminal I cut off.",
        "The cracked pulley has been replaced.",
        "I rubbed the valve plate flat.",
        "Set the lock nut tight.",
        "I've blued the shaft.",
        "The engine is stone cold.",
        "is she stuck has she got spark let's find out",
        "First push of the pedal.",
        "I bent the lever a bit.",
        "Make sure you get that tank clean.",
        "Pump it a few times and see.",
    ],
)
def test_what_is_only_mentioned_is_not_found(book: Rulebook, words: str) -> None:
    assert found(book, words) == []


def test_what_is_sensed_is_so_though_one_can(book: Rulebook) -> None:
    assert found(book, "The left tyre, you can hear it hissing.") == [("left tyre", "bad")]


def test_the_same_said_again_is_one_finding(book: Rulebook) -> None:
    assert found(book, "The strap is green all the way through so that's junk.") == [("strap", "bad")]


def test_each_of_several_has_its_own(book: Rulebook) -> None:
    assert found(book, "plugs out. #1 tan. #2 wet, rusty at the tip", track="typed") == [
        ("plugs 1", "good"), ("plugs 2", "bad"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ("The motor hums.", ("motor", "bad")),
        ("The boom drops overnight.", ("boom", "bad")),
        ("The relay won't click.", ("relay", "bad")),
        ("The grease has gone like toffee.", ("grease", "bad")),
        ("The lip seal is like cardboard.", ("lip seal", "bad")),
        ("The pump runs like a sewing machine.", ("pump", "good")),
        ("The brakes work.", ("brakes", "good")),
        ("Grit in the float bowl.", ("float bowl", "bad")),
        ("No ridge on the liner.", ("liner", "good")),
        ("The whine has gone, and the gearbox is quiet.", ("gearbox", "good")),
        ("The wheel cylinder is solid.", ("wheel cylinder", "bad")),
        ("The front bearing is dry as a bone.", ("front bearing", "bad")),
    ],
)
def test_families_of_the_trade(book: Rulebook, words: str, wanted: tuple[str, str]) -> None:
    assert wanted in found(book, words)


@pytest.mark.parametrize(
    ("words", "verdict"),
    [
        ("Oil pressure next. Fifty psi. Lovely.", ["good"]),
        ("Oil pressure next. Fifty psi. Right.", []),
        ("Oil pressure next. Lovely morning for it.", []),
    ],
)
def test_a_word_of_praise_after_a_figure_judges_it(book: Rulebook, words: str, verdict: list[str]) -> None:
    assert [v for _, v in found(book, words)] == verdict


def test_a_question_further_on_takes_nothing_back(book: Rulebook) -> None:
    assert found(book, "the lamp's really dim so is that an earth or what") == [("lamp", "bad")]
    assert found(book, "before I do anything the cap comes off and it's cracked") == [("cap", "bad")]


@pytest.mark.parametrize(
    "words", ["The tank is soaking in cleaner.", "The jets are soaking.", "Belt is soaking in degreaser."]
)
def test_what_is_put_to_soak_was_not_found_wet(book: Rulebook, words: str) -> None:
    assert found(book, words) == []


def test_what_is_wet_that_should_be_dry_was_found_so(book: Rulebook) -> None:
    assert found(book, "The plug is soaking.") == [("plug", "bad")]
    assert found(book, "The belt is soaking.") == [("belt", "bad")]


def test_how_a_thing_is_set_is_no_fault_of_its_run(book: Rulebook) -> None:
    assert found(book, "Runs 1420 on slow and more on fast.") == []
    assert found(book, "Runs slow.") != []


@pytest.mark.parametrize(
    ("words", "verdict"),
    [
        ("The engine ran sweet all morning, not a cough.", "good"),
        ("Running again, not a splutter from the engine.", "good"),
        ("Swung the engine twenty times, not a cough.", "bad"),
        ("The engine won't run, not a cough.", "bad"),
    ],
)
def test_a_cough_that_is_not_heard_is_praise_of_what_runs(book: Rulebook, words: str, verdict: str) -> None:
    assert {v for _, v in found(book, words)} == {verdict}


@pytest.mark.parametrize(
    ("words", "condition"),
    [
        ("The sump is full of water and I'm not surprised.", "full of water"),
        ("The strainer was packed with straw.", "packed with straw"),
        ("The drive belt's cracked and the pulley's bent.", "cracked"),
    ],
)
def test_a_state_that_waits_for_more_is_told_whole(book: Rulebook, words: str, condition: str) -> None:
    facts = read_session(book, PRESS, [Note("n0", "s", words, track="captions")])
    assert next(f.condition for f in facts if isinstance(f, Finding)) == condition
