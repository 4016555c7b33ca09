"""Machines: the card file, the list, and finding one by its name."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.bench.conftest import Clock
from worklog_tui import extract
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history, keep_comments, remember_items
from worklog_tui.bench.machines import (
    BadCard,
    UnknownMachine,
    add_machine,
    find_machine,
    machines,
    read_card,
    with_specified,
)  # fmt: skip
from worklog_tui.bench.record import import_sessions, keep_note
from worklog_tui.model import FactKey, Instant, Machine, OpenItem, SpecifiedValue


def test_the_same_name_again_changes_the_card_and_keeps_the_uid(desk: Desk, saw: Machine) -> None:
    again = add_machine(desk, Machine("band SAW", kind="meat saw", uid="another"))
    assert again.uid == saw.uid
    assert find_machine(desk, "band SAW").kind == "meat saw"
    assert len(machines(desk)) == 1


def test_a_machine_without_a_uid_gets_one(desk: Desk, saw: Machine) -> None:
    assert saw.uid
    assert add_machine(desk, Machine("Lathe", uid="given")).uid == "given"


@pytest.fixture
def shed(desk: Desk) -> Desk:
    """A desk with several machines."""
    for name in ("Band saw", "Band saw, small", "Lathe", "LATHE bench", "Shaper", "Forge blower", "Post drill"):
        add_machine(desk, Machine(name))
    return desk


@pytest.mark.parametrize(
    ("said", "meant"),
    [("Lathe", "Lathe"), ("lathe", "Lathe"), ("band saw", "Band saw"), ("sha", "Shaper"),
     ("  post   DRILL ", "Post drill"), ("band saw,", "Band saw, small"), ("lathe b", "LATHE bench"),
     ("drill", "Post drill"), ("Bench", "LATHE bench")],
)  # fmt: skip
def test_a_machine_is_found_by_its_name_or_an_unmistakable_part_of_it(shed: Desk, said: str, meant: str) -> None:
    assert find_machine(shed, said).name == meant


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("band", "More than one machine is meant by “band”: “Band saw”, “Band saw, small”."),
        ("Shapper", "There is no machine “Shapper”; did you mean “Shaper”?"),
        ("Combine", "the logbook holds “Band saw”, “Band saw, small”, “Lathe”, “LATHE bench”, “Shaper” and 2 more."),
        ("", "There is no machine “”"),
    ],
)
def test_a_name_that_leads_nowhere_is_told_with_what_comes_close(shed: Desk, said: str, told: str) -> None:
    with pytest.raises(UnknownMachine) as refused:
        find_machine(shed, said)
    assert told in str(refused.value)


def test_the_list_tells_what_there_is_of_each(desk: Desk, clock: Clock, tmp_path: Path) -> None:
    saw, lathe = add_machine(desk, Machine("Band saw", "saw")), add_machine(desk, Machine("Lathe"))
    keep_note(desk, "Band saw", "one")
    clock.go_on(minutes=5)
    keep_note(desk, "Band saw", "two")
    old = tmp_path / "old.txt"
    old.write_text("session 2029-01-02 10:00\n10:00 one\n10:20 two\n")
    import_sessions(desk, lathe, [old])
    first, second = machines(desk)
    assert (first.uid, first.name, first.kind, first.sessions, first.notes) == (saw.uid, "Band saw", "saw", 1, 2)
    assert first.last_worked == desk.instant(), "the one last worked on comes first"
    assert (second.sessions, second.notes) == (1, 2)
    assert second.last_worked == Instant("2029-01-02T10:20:00Z", known="header")


def test_a_machine_that_was_never_worked_on_comes_last(desk: Desk) -> None:
    add_machine(desk, Machine("Lathe"))
    add_machine(desk, Machine("Band saw"))
    keep_note(desk, "Band saw", "one")
    assert [(line.name, line.last_worked is None) for line in machines(desk)] == [("Band saw", False), ("Lathe", True)]


@pytest.mark.usefixtures("saw")
def test_open_items_are_counted_from_what_was_last_worked_out(desk: Desk) -> None:
    assert [line.open_items for line in machines(desk)] == [None]
    item = OpenItem((FactKey("n", "follow_up", 0, 3),), "new guide", "guide", "part needed", "open", None)
    remember_items(desk, "Band saw", [item])
    assert [line.open_items for line in machines(desk)] == [1]
    keep_note(desk, "Band saw", "one")
    assert [line.open_items for line in machines(desk)] == [None]


@pytest.mark.usefixtures("saw")
def test_comments_belong_to_the_machine(desk: Desk) -> None:
    assert keep_comments(desk, "Band saw", ["Which blade?\x1b[2J", " ", "Nice"]) == 2
    assert keep_comments(desk, "Band saw", ["Which blade?", "Nice"]) == 0
    assert [comment.words for comment in history(desk, "Band saw").comments] == ["Which blade?", "Nice"]


def test_no_logbook_is_no_machines(desk: Desk) -> None:
    assert machines(desk) == []


# The card


def card(folder: Path, text: str) -> Path:
    path = folder / "machine.toml"
    path.write_text(text, encoding="utf-8")
    return path


WHOLE = """
name = "Forge  blower"
kind = "two-cylinder petrol engine"
fuel = "Petrol"
ignition = "magneto"
cylinders = 2
firing_order = [1, 2]
measures = "british"
[specified]
plug_gap = "0.025 in"
tank = 5
weights = ["2 lb", "3 lb"]
"""


def test_a_card_is_read_whole(tmp_path: Path) -> None:
    machine, warnings = read_card(card(tmp_path, WHOLE))
    assert warnings == []
    assert machine == Machine(
        "Forge blower", "two-cylinder petrol engine", "petrol", "magneto", 2, (1, 2), "british",
        (SpecifiedValue("", "plug_gap", "0.025 in"), SpecifiedValue("", "tank", "5"),
         SpecifiedValue("", "weights", "2 lb, 3 lb")),
    )  # fmt: skip


def test_what_is_not_known_is_warned_about_and_passed_over(tmp_path: Path) -> None:
    machine, warnings = read_card(card(tmp_path, 'name = "Lathe"\ncolour = "grey"\nfuel = "whale oil"\n'))
    assert (machine.name, machine.fuel) == ("Lathe", "whale oil")
    assert [warning.split(": ", 1)[1] for warning in warnings] == [
        "the key “colour” is not known and was passed over.",
        "fuel is “whale oil”; known are petrol, diesel, paraffin, gas, none.",
    ]


@pytest.mark.parametrize(
    ("said", "read"), [("gasoline", "petrol"), ("Kerosene", "paraffin"), ("propane", "gas"), ("DIESEL", "diesel")]
)
def test_both_sides_of_the_ocean(tmp_path: Path, said: str, read: str) -> None:
    machine, warnings = read_card(card(tmp_path, f'name = "x"\nfuel = "{said}"'))
    assert (machine.fuel, warnings) == (read, [])


def test_a_card_without_a_name_is_called_after_its_folder(tmp_path: Path) -> None:
    folder = tmp_path / "old-lathe"
    folder.mkdir()
    machine, warnings = read_card(card(folder, ""))
    assert machine.name == "old-lathe"
    assert len(warnings) == 1


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("name = 5", "name must be text in quotes"),
        ("cylinders = 'four'", "cylinders must be a whole number from 0 to 64"),
        ("cylinders = true", "cylinders must be a whole number"),
        ("firing_order = [1, 'x']", "firing_order must be a list of cylinders"),
        ("firing_order = [1, 1]", "firing_order must be a list of cylinders"),
        ("cylinders = 4\nfiring_order = [1, 3, 4]", "firing_order must name each of the 4 cylinders once"),
        ("specified = 3", "specified must be a table"),
        ("[specified.plug]\ngap = 'x'", "specified.plug must be text with its unit"),
        ("name = ", "is not a card in TOML"),
    ],
)
def test_a_bad_value_is_told_with_file_and_key(tmp_path: Path, text: str, told: str) -> None:
    path = card(tmp_path, text)
    with pytest.raises(BadCard) as refused:
        read_card(path)
    assert str(refused.value).startswith(f"{path}: {told}")


def test_a_figure_of_a_card_may_say_whose_it_is(tmp_path: Path) -> None:
    card = tmp_path / "machine.toml"
    card.write_text(
        'name = "Pump"\n[specified]\npoints = { is = "0.015 in", source = "handbook of a similar machine" }\n'
    )
    read, warnings = read_card(card)
    assert [(one.subject, one.text, one.source) for one in read.specified] == [
        ("points", "0.015 in", "handbook of a similar machine")
    ]
    assert not warnings


def test_a_card_that_cannot_be_read_is_told(tmp_path: Path) -> None:
    with pytest.raises(BadCard, match="cannot be read"):
        read_card(tmp_path / "absent.toml")
    (tmp_path / "machine.toml").write_bytes(b"name = '\xff'")
    with pytest.raises(BadCard, match="save it as UTF-8"):
        read_card(tmp_path / "machine.toml")


def test_specified_texts_are_read_as_far_as_they_can_be(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    def read(book: object, key: str, text: str) -> SpecifiedValue:
        assert key == "plug_gap"
        return SpecifiedValue("gap", "spark plug", text, nominal=0.025, unit="in")

    monkeypatch.setattr(extract, "read_specified", read, raising=False)
    monkeypatch.setattr(Desk, "book", lambda self: object())
    known = SpecifiedValue("torque", "head", "30 ft lb", nominal=30, unit="ft_lb")
    read_in = with_specified(desk, Machine("x", specified=(known, SpecifiedValue("", "plug_gap", "0.025 in"))))
    assert read_in.specified == (known, SpecifiedValue("gap", "spark plug", "0.025 in", nominal=0.025, unit="in"))
