"""Work: what was done, to what, and with what; and what is no work of this session."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Work
from worklog_tui.rulebook import Rulebook

SAW = Machine("Bow saw", kind="petrol engine", fuel="petrol", ignition="magneto", cylinders=1)


def work(book: Rulebook, *lines: str, track: str = "captions") -> list[tuple[str, str, str]]:
    """(action, part, what it was done with) of all that was surely done."""
    notes = [Note(f"n{i}", "s", line, track=track) for i, line in enumerate(lines)]
    facts = [f for f in read_session(book, SAW, notes) if isinstance(f, Work) and f.confidence >= CONFIDENCE_LINE]
    return [(f.action, f.part, f.used) for f in facts]


@pytest.mark.parametrize(
    ("words", "done"),
    [
        ("The blade guide is rusted to the table, so I soaked it.", ("soak", "blade guide", "")),
        ("The wheels turn on one shaft. The bearings are dry, so I greased them.", ("lubricate", "bearings", "grease")),
        ("There's the coolant, thick with rust. I drained it.", ("drain", "coolant", "")),
    ],
)
def test_it_and_them_mean_what_suits(book: Rulebook, words: str, done: tuple[str, str, str]) -> None:
    assert done in work(book, words)


def test_two_verbs_share_their_object(book: Rulebook) -> None:
    assert [a for a, _, _ in work(book, "I cleaned and greased the chain.")] == ["clean", "lubricate"]


def test_an_order_is_one_piece_of_work_for_each_thing(book: Rulebook) -> None:
    assert [p for _, p, _ in work(book, "Ordered a fan belt, two brushes and a gasket set.")] == [
        "fan belt", "brushes", "gasket set",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "used"),
    [
        ("I scrubbed the filter bowl with a toothbrush.", "toothbrush"),
        ("Washed the filter bowl in paraffin.", "paraffin"),
        ("I fitted a new recoil spring.", "new recoil spring"),
        ("So I taped up the plug lead.", "tape"),
    ],
)
def test_what_it_was_done_with(book: Rulebook, words: str, used: str) -> None:
    assert used in [u.removeprefix("a ") for _, _, u in work(book, words)]


@pytest.mark.parametrize(
    "words",
    [
        "He rebuilt the carburettor in the spring.",
        "Somebody's cleaned the float bowl with a chisel.",
        "The tank has to be drained before the winter.",
        "Have you ever cleaned the float bowl?",
        "It dropped to ten volts with the motor off.",
        "You put the cover back and it leaks.",
        "Breaker off, lights off.",
    ],
)
def test_what_is_no_work_of_this_session(book: Rulebook, words: str) -> None:
    assert work(book, words) == []


def test_a_bare_verb_is_done_while_filming_and_a_plan_when_typed(book: Rulebook) -> None:
    assert work(book, "So tighten the locknut.") == [("tighten", "locknut", "")]
    assert work(book, "tighten the locknut", track="typed") == []


def test_a_row_of_compressions_is_one_test(book: Rulebook) -> None:
    lines = ("Compression next. Number one is ninety psi.", "Number two is eighty-five.", "Number three is ninety.")
    assert [w[:2] for w in work(book, *lines)] == [("test", "compression")]


def test_what_was_found_bad_last_is_what_is_put_right(book: Rulebook) -> None:
    lines = ("The carburettor. The bowl's full of muck.", "Wiped out.")
    notes = [Note(f"n{i}", "s", line) for i, line in enumerate(lines)]
    facts = read_session(book, Machine("Quarry pump"), notes)
    assert ("clean", "bowl") in [(f.action, f.part) for f in facts if isinstance(f, Work)]


@pytest.mark.parametrize(
    "words",
    [
        "It stays parked till there's a new blade guard on.",
        "Nothing runs until the drive belt has been replaced.",
        "Not till the new tyre is on.",
    ],
)
def test_what_is_waited_for_was_not_done(book: Rulebook, words: str) -> None:
    assert work(book, words) == []


def test_a_carburettor_is_stripped_by_someone_and_a_bolt_of_itself(book: Rulebook) -> None:
    assert [a for a, _, _ in work(book, "the carburettor is stripped")] == ["strip"]
    assert work(book, "the drain plug is stripped") == []
    assert work(book, "the gear is stripped") == []


def test_who_comes_back_was_not_fitted(book: Rulebook) -> None:
    assert work(book, "that wasp is back") == []
    assert [a for a, _, _ in work(book, "blade guide back and the cover on", track="live")] == ["fit", "fit"]


def test_a_second_deed_is_of_what_it_names_itself(book: Rulebook) -> None:
    found = work(book, "I took the tank off and hung this little lamp off the rail")
    assert ("remove", "tank", "") in found
    assert ("fit", "tank", "") not in found
    assert "lamp" in [part for action, part, _ in found if action == "fit"]


def test_a_needle_on_a_figure_was_not_fitted(book: Rulebook) -> None:
    assert work(book, "And the needle's on... one twenty-eight.") == []
    assert ("fit", "cover", "") in work(book, "The cover's on.")


def test_what_was_had_done_is_done(book: Rulebook) -> None:
    assert ("replace", "lining", "") in work(book, "The lining was worn. I've had it relined.")
    assert work(book, "That lining's had it.") == []


def test_so_many_in(book: Rulebook) -> None:
    assert work(book, "wheel studs x3 in", track="typed") == [("fit", "wheel studs", "")]


def test_a_figure_that_was_wrong_and_is_right_now_was_adjusted(book: Rulebook) -> None:
    lines = ("Points are at ten thou.", "It should be fifteen.", "And that's fifteen thou now.")
    assert work(book, *lines) == [("adjust", "points", "")]


def test_the_figure_of_a_deed_is_no_second_deed(book: Rulebook) -> None:
    lines = ("The points gap. Twelve thou.", "Opened them up to fifteen thou.")
    assert [(action, part) for action, part, _ in work(book, *lines)] == [("adjust", "points gap")]
