"""What the next owner reads first: where a machine stands, and what was seen and is on no list. A bakery's hoist."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, suspects
from tests.reports.published import published
from worklog_tui.model import Machine
from worklog_tui.reports.log_items import NOTICED
from worklog_tui.reports.repair_log import RepairLog
from worklog_tui.reports.what_measured import what_measured


def hoist() -> Told:
    return Told(Machine("Bakery flour hoist", kind="sack hoist with an electric motor"))


def log_of(told: Told) -> RepairLog:
    return published(told.history()).log()


def noticed(log: RepairLog) -> list[str]:
    return [row.text for group in log.open_items if group.title == NOTICED for row in group.rows]


@pytest.mark.parametrize(
    "words",
    [
        "a limit switch is coming, until then the padlock stays on",
        "not lifting anything yet, the pawl is not right",
        "nobody uses it till the guard is back",
    ],
)
def test_what_was_forbidden_is_read_first(words: str) -> None:
    told = hoist().say("limit switch sticks", bad("limit switch", "sticks")).say(words)
    if "nobody" in words:
        told = hoist().say("nobody uses it, the guard is off")
    stands = log_of(told).where_it_stands
    assert stands.headline.startswith("Not to be started yet")
    assert stands.rows[0][0] == "Do not start it"
    assert stands.rows[0][1].startswith("“")


def test_a_fault_is_told_with_its_part() -> None:
    log = log_of(hoist().say("a tear in the sack hook's tape", bad("drum", "a groove")))
    assert noticed(log) == ["drum: a groove"]


def test_what_the_same_line_puts_on_the_list_is_not_told_twice() -> None:
    line = hoist().say("the sheave is grooved, it wants a bush", bad("sheave", "grooved"), later("bush", "part needed"))
    assert noticed(log_of(line)) == []


def test_what_the_machine_was_found_rid_of_is_no_longer_noticed() -> None:
    told = hoist().say("hoist hums", bad("hoist", "hums")).say("and now the motor runs", good("motor", "runs"))
    assert noticed(log_of(told)) == []


def test_what_was_put_down_to_a_cause_and_mended_is_told_with_the_mending() -> None:
    told = (
        hoist()
        .say("a knock in the machine", bad("machine", "a knock"))
        .say("it's the top bush", suspects("top bush", "confirmed"))
        .say("greased the top bush", did("lubricate", "top bush"))
    )
    log = log_of(told)
    assert noticed(log) == []
    assert ("Last heard of it", "machine: a knock (a fault); since then top bush lubricated") in [
        row[:2] for row in log.where_it_stands.rows
    ]


def test_attempts_of_which_nothing_was_said_are_counted() -> None:
    told = hoist()
    for _ in range(3):
        told = told.say("tried it", did("start", "hoist")).say("tea").say("tea").say("tea").say("tea").say("tea")
    told = told.say("tried it", did("start", "hoist")).say("it runs", good("motor", "runs"))
    assert [row.text for row in log_of(told).starts] == ["runs", "3 attempts of which nothing was said"]


def test_a_compression_with_oil_in_the_bore_is_laid_beside_nothing() -> None:
    told = Told(Machine("Barn engine", kind="petrol engine"))
    told = told.say("should be 60 to 70", read("compression", (60.0, 70.0), "psi", "cylinder 1", "specified"))
    told = told.say("55", read("compression", 55.0, "psi", "cylinder 1"))
    told = told.say("68 with oil", read("compression", 68.0, "psi", "cylinder 1", condition="wet"))
    log = log_of(told)
    assert [row.compares for row in log.readings] == ["too low", ""]
    (scale,) = log.charts[0].scales
    assert [mark.said for mark in scale.marks if mark.last] == ["55 psi"]
    assert scale.verdict == "too low"


@pytest.mark.parametrize(
    ("subject", "quantity", "unit", "said"),
    [
        ("points", "gap", "mm", "points, gap"),
        ("exhaust valve clearance", "gap", "mm", "exhaust valve clearance"),
        ("belt", "length", "mm", "belt"),
        ("oiler", "leakage", "drops a minute", "oiler, drip"),
        ("", "speed", "rpm", "machine, speed"),
    ],
)
def test_what_was_measured_is_said_once(subject: str, quantity: str, unit: str, said: str) -> None:
    assert what_measured(subject, quantity, unit) == said
