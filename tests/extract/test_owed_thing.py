"""Which thing is wanted, owed or asked about where the words only point: `a new one`, `that's temporary`, `is that …?`.

And what is none of the machine's: what other people need, how a thing is meant to work, what was found good.
"""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import FollowUp, Machine, Note
from worklog_tui.rulebook import Rulebook

MANGLE = Machine("Box mangle", kind="electric motor", fuel="none", ignition="none")


def owed(book: Rulebook, *lines: str) -> list[tuple[str, str]]:
    notes = [Note(f"n{n}", "s", line, track="captions", arrival=n) for n, line in enumerate(lines)]
    return [(f.topic, f.reason) for f in read_session(book, MANGLE, notes) if isinstance(f, FollowUp)]


def test_a_new_one_is_wanted_of_what_was_last_found_bad_though_the_vocabulary_has_no_name_for_it(
    book: Rulebook,
) -> None:
    line = "The drain tap's leaking at the back, and the cork's split. It wants a new one."
    assert owed(book, line) == [("cork", "part needed")]


def test_one_is_no_set_of_many_but_what_they_are_on(book: Rulebook) -> None:
    line = "Regulator. Cover off, and the cut-out points are burnt. New one's ordered."
    assert owed(book, line) == [("regulator", "part needed")]


def test_what_is_sent_for_is_no_place_of_a_part(book: Rulebook) -> None:
    assert owed(book, "The drain hose is soft.", "Thirty mil bore. I'll have to send for that.") == [
        ("drain hose", "part needed")
    ]


def test_what_holds_for_now_is_the_stuff_where_its_sentence_names_nothing_else(book: Rulebook) -> None:
    lines = "They sent a drain hose. The tape's still on there, that's still temporary."
    assert owed(book, lines) == [("tape", "temporary")]


def test_a_question_that_points_back_names_what_it_is_of(book: Rulebook) -> None:
    line = "The fuel gauge reads full. Does anyone know if that's the sender or the earth?"
    assert owed(book, line) == [("fuel gauge: sender or the earth", "question")]


@pytest.mark.parametrize(
    "line",
    [
        "He wants a bearing for his gate.",
        "My neighbour's car needs a battery.",
        "There's a loose ring that ought to carry the oil up.",
        "The water pump's dry and there's no play in it. I'll leave that alone then.",
    ],
)
def test_nothing_is_owed_where_others_need_it_or_where_it_works(book: Rulebook, line: str) -> None:
    assert owed(book, line) == []


def test_what_a_clause_names_counts_not_what_is_only_guessed(book: Rulebook) -> None:
    assert owed(book, "The exhaust is blowing.", "I still owe it a head retorque.") == [("head retorque", "to do")]


def test_who_is_wanted_is_called_by_his_trade_and_no_part_is_needed(book: Rulebook) -> None:
    assert owed(book, "I want the gas fitter to look at that.") == [("gas fitter", "to do")]


def test_what_one_guesses_stands_behind_the_guess(book: Rulebook) -> None:
    ((topic, reason),) = owed(book, "If they don't sell them then I guess I'm making a gauge glass.")
    assert reason == "fallback"
    assert topic.endswith("gauge glass")
    assert "guess" not in topic
