"""A line about the same part is no answer: it must tell what was asked of it. All on one invented founder's crane."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench.extract_files import extract
from worklog_tui.model import CommentReading, Machine
from worklog_tui.reports.json_out import comment
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import load_faults

Asking = Callable[[str], CommentReading]
TOLD = """
[0:05] So the founder's crane. The brake first, the lining's down to two millimetres.
[0:15] Chain's got a kink in it. I've ordered a chain from a chap in the harbour.
[0:25] Gearbox oil, that was like milk. Drained it.
[0:35] Motor. It pulls nine amps on the meter with nothing on the hook.
[0:45] New lining riveted on, with copper rivets, because the iron ones score the drum.
[0:55] The limit switch works, it stops the motor dead.
[1:05] Rope drum's fine, I wiped it with a rag.
"""


@pytest.fixture(scope="module")
def asked(book: Rulebook, tmp_path_factory: pytest.TempPathFactory) -> Asking:
    folder = tmp_path_factory.mktemp("crane")
    (folder / "session-1.txt").write_text(TOLD.strip(), encoding="utf-8")
    faults = load_faults([places.grammars()])

    def one(comment: str) -> CommentReading:
        (folder / "comments.txt").write_text(comment, encoding="utf-8")
        machine = Machine("crane", kind="workshop crane with an electric motor")
        sessions: list[Path] = [folder / "session-1.txt"]
        (read,) = extract(book, faults, machine, sessions, folder / "comments.txt").comments
        return read

    return one


def sure(read: CommentReading) -> str:
    """The time of the line that answers; empty where there is none, or only perhaps."""
    return read.answered.at if read.answered and not read.perhaps else ""


@pytest.mark.parametrize(
    ("comment", "at"),
    [
        ("How thick was the brake lining?", "0:05"),
        ("Where did you order the chain?", "0:15"),
        ("Why copper rivets?", "0:45"),
        ("Why copper rivets and not iron ones?", "0:45"),
        ("How many amps does the motor pull?", "0:35"),
        ("Did you drain the gearbox oil?", "0:25"),
        ("Does the limit switch work?", "0:55"),
    ],
)
def test_what_the_line_tells_of_the_part_answers(asked: Asking, comment: str, at: str) -> None:
    assert sure(asked(comment)) == at


@pytest.mark.parametrize(
    ("comment", "wants"),
    [
        ("Why is the chain kinked?", "the reason"),
        ("How big is the motor?", "its size"),
        ("Which way round does the motor turn?", "the way it turns"),
        ("Did you grease the rope drum?", "whether it was greased"),
        ("Did you regrind the drum while the brake was off?", "whether it was ground"),
        ("Is the gearbox a worm drive or a bevel drive?", "one of the two"),
        ("How many links has the chain?", "their number"),
        ("How much was the motor?", "a price"),
        ("Where did the motor come from?", "where it came from"),
        ("Is the limit switch new?", "whether it is a new one"),
        ("Was the rope drum cast iron?", "what it is made of"),
        ("How thick is the brake lining when new?", "the size of a new one"),
        ("Could the kink be straightened out?", "whether that can be done"),
    ],
)
def test_what_it_does_not_tell_of_the_part_stays_open(asked: Asking, comment: str, wants: str) -> None:
    assert sure(asked(comment)) == "", f"no line tells {wants}"


@pytest.mark.parametrize(
    "comment",
    [
        "Grease the rope drum, don't leave it dry.",  # wiped is not greased
        "Make the lining from cork, copper won't last.",  # of what nobody spoke
        "Fit a chain the next size up.",  # a chain was ordered, of no other size
        "Grease the chain and the kink comes out.",  # that it has the kink is no deed
    ],
)
def test_a_suggestion_is_met_only_by_its_own_deed(asked: Asking, comment: str) -> None:
    assert asked(comment).answered is None


def test_what_only_perhaps_answers_is_printed_apart(asked: Asking) -> None:
    read = CommentReading(asked("How thick was the brake lining?").comment, "question", "lining")
    place = asked("How thick was the brake lining?").answered
    sure, unsure = comment(replace(read, answered=place)), comment(replace(read, answered=place, perhaps=True))
    assert sure["answered_at"] == unsure["perhaps_at"] == [1, "0:05"]
    assert sure["perhaps_at"] is unsure["answered_at"] is None
