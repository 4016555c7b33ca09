"""What a second look showed is told with what was done in between, and a figure with what it was read by. A lift."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

LIFT = Machine("goods lift", kind="lift with an electric motor", fuel="none", ignition="none")


def told(book: Rulebook, *said: str, track: str = "captions") -> list[str]:
    notes = [Note(f"n{k}", "s", words, track=track, arrival=k) for k, words in enumerate(said)]
    return [f.condition for f in read_session(book, LIFT, notes) if isinstance(f, Reading)]


@pytest.mark.parametrize(
    ("said", "how"),
    [
        (("Earth strap, three ohms. Scraped it bright. Nought point one.",), "after scraping"),
        (
            ("Earth strap, three ohms.", "Scraped it back to metal, and again.", "Nought point one ohms."),
            "after",
        ),
        (("The motor insulation was 0.3 megohms. Dried the motor by the stove. It's 60 megohms.",), "after drying"),
    ],
)
def test_what_was_done_in_between_is_told_of_the_second_figure_alone(
    book: Rulebook, said: tuple[str, ...], how: str
) -> None:
    found = told(book, *said)
    assert found[0] == ""
    assert how in found[-1]


def test_work_on_one_thing_is_told_of_no_other(book: Rulebook) -> None:
    assert told(book, "Earth strap, three ohms.", "Cleaned the brushes.", "Brake coil, 90 ohms.")[-1] == ""


@pytest.mark.parametrize(
    ("said", "how"),
    [
        ("The tank cut out at 160 psi by the old gauge.", "by the old gauge"),
        ("journal has a groove, .004 in by nail", "by nail"),
        ("wheel runout .3 mm aft truing", "aft truing"),
    ],
)
def test_what_it_was_read_by_is_told(book: Rulebook, said: str, how: str) -> None:
    assert how in told(book, said, track="typed")[-1]


def test_what_is_wide_by_something_is_no_instrument(book: Rulebook) -> None:
    assert told(book, "The buffer is 40 mm wide by 60 mm.")[0] in ("", "wide", "width")
