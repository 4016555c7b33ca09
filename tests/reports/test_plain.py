"""The log as plain text: short, in trade words, within the width of the terminal."""

from __future__ import annotations

import re

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, suspects
from worklog_tui.logbook.open_items import open_items
from worklog_tui.logbook.outcomes import Recap
from worklog_tui.model import Advice, Comment, CommentReading, History, Step
from worklog_tui.reports.lines import columns, table, wrapped
from worklog_tui.reports.plain import whole_log
from worklog_tui.reports.plain_comments import comments_text
from worklog_tui.reports.plain_items import items_text
from worklog_tui.reports.plain_readings import readings_text
from worklog_tui.reports.plain_recap import recap_text
from worklog_tui.reports.plain_steps import steps_text
from worklog_tui.reports.plain_timeline import timeline_text

FORMAT_WORDS = re.compile(r"\b(role|verdict|follow_up|fallback|specified|run_time)\b|N\*m|ft_lb|degC")
STEP = Step(
    "Check the belt tension",
    "it slipped when warm",
    5,
    ("Stop the engine first.",),
    ("tight: look at the pulley",),
    ("belt guard",),
)
ASKED = (
    CommentReading(Comment(0, "how loud?"), "question", "how loud"),
    CommentReading(Comment(1, "how loud is it"), "question", "how loud"),
    CommentReading(Comment(2, "nice"), "chatter"),
)


def blower() -> History:
    told = Told().say("the trunk is split " * 8, bad("wind trunk", "split"), later("wind trunk", "fault"))
    told.say("gap", read("gap", 0.035, "in", "plug"), read("gap", (0.020, 0.025), "in", "plug", "specified"))
    told.say(
        "nuts", read("torque", 20, "N*m", "head nuts", "set"), suspects("belt slip"), did("fit", "belt", "new belt")
    )
    told.say("else the bellows come off", later("bellows off", "fallback")).session()
    return told.say("glued", did("repair", "wind trunk", "glue"), good("wind trunk", "tight")).history()


@pytest.mark.parametrize("width", [40, 60, 100])
def test_everything_fits_the_width_and_speaks_trade_words(width: int) -> None:
    known = blower()
    said = whole_log(known, open_items(known, ASKED), Advice("no wind", steps=(STEP,)), ASKED, width)
    assert max(columns(line) for line in said.splitlines()) <= width
    assert not FORMAT_WORDS.search(said)


def test_open_items_stand_in_groups_with_reason_and_place() -> None:
    said = items_text(open_items(blower()), 100)
    assert "Open items (1)" in said
    assert "bellows off (if the rest does not help; session 1 at 3:00)" in said
    assert "wind trunk (session 1 at 0:00; dealt with in session 2 at 0:00)" in said


def test_a_fault_that_nobody_came_back_to_is_listed_apart() -> None:
    told = Told().say("the belt is frayed", bad("belt", "frayed"))
    said = items_text(open_items(told.history()), 100)
    assert "Noticed, nothing planned (1)" in said
    assert "belt frayed (session 1 at 0:00)" in said


def test_what_dealt_with_an_item_is_told() -> None:
    known = blower()
    said = items_text(open_items(known), 120, known)
    assert "dealt with by “wind trunk repaired, with glue” in session 2 at 0:00" in " ".join(said.split())


def test_readings_are_laid_beside_what_they_should_be() -> None:
    from worklog_tui.logbook.readings import readings

    said = readings_text(readings(blower()), 100)
    assert re.search(r"plug: gap\s+0\.035 in\s+0\.02 to 0\.025 in\s+too high", said)
    assert re.search(r"head nuts: torque\s+20 Nm \(set\)", said)


def test_a_step_says_what_why_how_long_and_what_to_mind() -> None:
    said = steps_text(Advice("no wind", steps=(STEP,)), 100)
    for words in (
        "1. Check the belt tension (about 5 min)",
        "Why: it slipped",
        "Comes off first: belt guard",
        "Caution: Stop the engine",
    ):
        assert words in said


def test_the_same_question_from_many_is_told_once() -> None:
    said = comments_text(ASKED, 80)
    assert "how loud (not answered yet, 2 viewers)" in said
    assert "1 more say nothing that needs an answer." in said


def test_cylinders_are_drawn_side_by_side() -> None:
    from worklog_tui.logbook.readings import readings

    told = Told().say(
        "",
        read("compression", 112, "psi", "cylinder 1", condition="dry"),
        read("compression", 56, "psi", "cylinder 2", condition="dry"),
    )
    rows = readings_text(
        readings(told.say("", read("compression", 100, "psi", "cylinder 2", condition="wet")).history()), 80
    )
    one, two, wet = (row for row in rows.splitlines() if "█" in row)
    assert one.count("█") == 2 * two.count("█")
    assert "wet" in wet


def test_an_empty_log_says_so() -> None:
    assert timeline_text((), 80) == "Nothing is in the log yet."
    assert readings_text((), 80) == "Nothing has been measured yet."
    assert items_text((), 80) == "Nothing is open."
    assert recap_text(Recap(0, None), None, 80).startswith("There is no session yet")
    assert steps_text(Advice(""), 80).endswith("Nothing to advise.")


def test_long_words_and_wide_letters_keep_within_the_width() -> None:
    assert all(columns(line) <= 40 for line in wrapped("x" * 300, 40, "  - "))
    assert all(columns(line) <= 40 for line in table(("a", "b"), [("漢" * 40, "1 mm")], 40))
