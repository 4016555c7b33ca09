"""What a stop-gap stands for where the person says so, and a job in short said in full."""

from __future__ import annotations

import pytest

from tests.diagnosis.workshop import Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.log import Log as Read
from worklog_tui.diagnosis.phrases import taken_off
from worklog_tui.diagnosis.put_right import put_right
from worklog_tui.diagnosis.stands_for import stands_for
from worklog_tui.model import Finding, FollowUp, Machine, OpenItem, Span
from worklog_tui.rulebook.faults import FaultBook


def _bad(note: str) -> Finding:
    return Finding(main=Span(note, 0, 14), part="guide pin", condition="bent", verdict="bad", name="pin", state="bent")


def _for_now(note: str) -> FollowUp:
    return FollowUp(main=Span(note, 28, 42), topic="bolt", reason="temporary", quote="bolt for now", name="bolt")


@pytest.mark.parametrize(
    ("topic", "words", "step"),
    [
        ("nail", "there's a nail in place of the split pin for now", "fit a proper new split pin"),
        ("fence wire", "fence wire where the clevis pin should be, for now", "fit a proper new clevis pin"),
        ("bootlace", "a bootlace instead of the throttle spring", "fit a proper new throttle spring"),
        ("coach bolt", "a coach bolt doing duty for the hinge pin till I find one", "fit a proper new hinge pin"),
        ("tape on the fuel hose", "tape on the fuel hose for now", "fit a proper new fuel hose"),
    ],
)
def test_a_stop_gap_is_replaced_by_what_it_stands_for(topic: str, words: str, step: str, faults: FaultBook) -> None:
    log = Log().later(topic, "temporary", words)
    assert [s.step for s in advise(log.history(), log.items(), faults, None).steps] == [step]


def test_what_was_swapped_for_another_thing_is_what_was_bad() -> None:
    log = Log()
    span = log.note("guide pin bent, swapped for a bolt for now")
    facts = log.sessions[-1][1]
    facts.append(_bad(span.note))
    facts.append(_for_now(span.note))
    read = Read(log.history())
    assert stands_for(read, log.items()[0], "bolt") == "guide pin"
    assert stands_for(read, log.items()[0], "wire") == ""


def test_what_stands_in_for_a_lost_part_is_replaced_by_it() -> None:
    log = Log()
    span = log.note("the cap rivet is missing so there's a bolt in it for the moment")
    rivet = Finding(main=Span(span.note, 4, 24), part="cap rivet", condition="missing", verdict="bad", name="rivet")
    log.sessions[-1][1].extend([rivet, _for_now(span.note)])
    assert stands_for(Read(log.history()), log.items()[0], "bolt") == "cap rivet"


def test_what_is_missing_is_replaced_and_no_name_is_made_up(faults: FaultBook) -> None:
    assert put_right("locknut", "missing", False, {}) == "replace the missing locknut"
    log = Log(Machine("Bread line", "bread divider, electric motor", "none", "none"))
    span = log.note("the bore and the knives are blunt as a spoon")
    log.sessions[-1][1].append(
        Finding(
            main=span, part="bore and the knives", condition="blunt", verdict="bad", name="cylinder bore", state="blunt"
        )
    )
    item = OpenItem(
        (log.sessions[-1][1][0].key,),
        "bore and the knives blunt",
        "cylinder bore",
        "fault",
        "noticed",
        log.history().place(span.note),
    )
    steps = [s.step for s in advise(log.history(), [item], faults, None).steps]
    assert "cylinder" not in " ".join(steps)


@pytest.mark.parametrize(
    ("job", "full"),
    [("head off", "take the head off"), ("the side cover off", "take the side cover off"),
     ("plug out and clean it", "plug out and clean it"), ("put it back", "put it back")],
)  # fmt: skip
def test_a_job_in_short(job: str, full: str) -> None:
    assert taken_off(job) == full
