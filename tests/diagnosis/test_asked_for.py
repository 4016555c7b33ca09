"""The job in words that end with how a thing should be, said as one would ask for it."""

from __future__ import annotations

from pathlib import Path

import pytest

from worklog_tui.bench.extract_files import extract
from worklog_tui.diagnosis.fitting import fit_proper, order_and_fit
from worklog_tui.diagnosis.phrases import asked_for
from worklog_tui.model import Machine
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import FaultBook

VERBS = frozenset({"flush", "skim", "weld"})


@pytest.mark.parametrize(
    ("about", "job"),
    [
        ("coolant flushed", "flush the coolant"),
        ("radiator flushed out", "flush out the radiator"),
        ("flywheel skimmed", "skim the flywheel"),
        ("new dust cover sewn", "sew the new dust cover"),
        ("chute wants welding", "weld the chute"),
        ("handlebar rebushed", "have the handlebar rebushed"),
        ("front wheel", ""),
        ("out", ""),
    ],
)
def test_a_job_is_its_verb_and_its_thing(about: str, job: str) -> None:
    assert asked_for(about, VERBS) == job


def test_oil_is_put_in_and_not_fitted() -> None:
    assert [fit_proper("gearbox oil"), fit_proper("hopper lid")] == [
        "put proper gearbox oil in",
        "fit a proper new hopper lid",
    ]
    assert [order_and_fit("coolant"), order_and_fit("drive belts")] == [
        "get new coolant and put it in",
        "order and fit new drive belts",
    ]


@pytest.mark.parametrize(
    ("told", "step"),
    [
        ("The fan cowl's gonna have to be taken off.", "take off the fan cowl"),
        ("The radiator will have to be flushed out.", "flush out the radiator"),
        ("A new dust cover has to be sewn.", "sew the new dust cover"),
        ("The wheel bearings will have to be repacked.", "have the wheel bearings repacked"),
        ("The head bolts will need to be torqued down again.", "torque down the head bolts"),
        ("The cylinder head's off tomorrow.", "take the cylinder head off"),
    ],
)
def test_what_was_put_on_the_list_is_asked_for_in_plain_words(
    book: Rulebook, faults: FaultBook, tmp_path: Path, told: str, step: str
) -> None:
    path = tmp_path / "session-1.txt"
    path.write_text(f"[0:10] {told}\n", encoding="utf-8")
    found = extract(book, faults, Machine("Sack hoist", "single-cylinder diesel engine", "diesel", "none", 1), [path])
    assert step in [one.step for one in found.advice.steps]
