"""Suspects told several at a time, or as a whole clause."""

from __future__ import annotations

from worklog_tui.extract import explain, read_session
from worklog_tui.model import Machine, Note, Suspect
from worklog_tui.rulebook import Rulebook

BALER = Machine("Hay baler", kind="two-cylinder petrol engine", cylinders=2, fuel="petrol", ignition="battery")


def suspects(book: Rulebook, text: str) -> list[tuple[str, str]]:
    facts = explain(book, BALER, text, "captions").facts
    return [(f.cause, f.standing) for f in facts if isinstance(f, Suspect)]


def test_each_of_several_is_a_suspect(book: Rulebook) -> None:
    found = suspects(book, "It could be the condenser, the coil or the rotor arm.")
    assert found == [("condenser", "suspected"), ("coil", "suspected"), ("rotor arm", "suspected")]


def test_a_clause_is_kept_in_its_words(book: Rulebook) -> None:
    assert suspects(book, "So either the belt's slipping or the bearing's seized.") == [
        ("belt's slipping", "suspected"), ("bearing's seized", "suspected"),
    ]  # fmt: skip


def test_what_is_one_of_several_is_not_yet_confirmed(book: Rulebook) -> None:
    assert ("condenser", "suspected") in suspects(book, "So that's the condenser, or a cracked rotor arm.")


def test_a_question_to_the_viewers_may_name_suspects(book: Rulebook) -> None:
    found = suspects(book, "Does anyone know if that's the coil or the condenser?")
    assert found == [("coil", "suspected"), ("condenser", "suspected")]


def test_what_would_be_so_is_no_suspicion(book: Rulebook) -> None:
    assert suspects(book, "If it's rings or valves you would see it at the exhaust.") == []


def test_a_choice_of_other_things_is_no_suspicion(book: Rulebook) -> None:
    assert suspects(book, "It's Monday or Tuesday, I forget. It's five or six turns.") == []


def test_what_was_suspected_and_is_denied_is_ruled_out(book: Rulebook) -> None:
    found = suspects(book, "It could be a cracked head. The head's not cracked.")
    assert found[0] == ("cracked head", "suspected")
    assert ("head's cracked", "ruled out") in found or ("head cracked", "ruled out") in found


def test_an_alternative_ends_with_its_line(book: Rulebook) -> None:
    lines = ["so either it's the timing or an injector's dribbling", "had both of them out on the bench"]
    notes = [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)]
    causes = [f.cause for f in read_session(book, BALER, notes) if isinstance(f, Suspect)]
    assert causes == ["timing", "injector's dribbling"]


def test_a_second_could_be_is_no_part_of_the_cause(book: Rulebook) -> None:
    causes = [cause for cause, _ in suspects(book, "Could be the bearing's dry or could be the belt is slipping.")]
    assert causes == ["bearing's dry", "belt is slipping"]
