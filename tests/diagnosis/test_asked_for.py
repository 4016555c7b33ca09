"""The job in words that end with how a thing should be, said as one would ask for it."""

from __future__ import annotations

import pytest

from worklog_tui.diagnosis.phrases import asked_for

VERBS = frozenset({"flush", "skim", "weld"})


@pytest.mark.parametrize(
    ("about", "job"),
    [
        ("coolant flushed", "flush the coolant"),
        ("radiator flushed out", "flush out the radiator"),
        ("flywheel skimmed", "skim the flywheel"),
        ("new dust cover sewn", "sew the new dust cover"),
        ("chute wants welding", "weld the chute"),
        ("front wheel", ""),
        ("out", ""),
    ],
)
def test_a_job_is_its_verb_and_its_thing(about: str, job: str) -> None:
    assert asked_for(about, VERBS) == job
