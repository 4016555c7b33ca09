"""The timeline keeps every line; the recap tells the last session in short."""

from __future__ import annotations

from tests.logbook.told import Told, bad, did, good, later, read
from worklog_tui.logbook.open_items import open_items
from worklog_tui.logbook.recap import recap
from worklog_tui.logbook.timeline import only, timeline
from worklog_tui.model import Work


def two_sessions() -> Told:
    told = Told().say("trunk is split", bad("wind trunk", "split"), later("wind trunk", "fault")).quiet(2).session()
    told.say("glued the trunk", did("repair", "wind trunk", "glue")).say(
        "blows ninety", read("pressure", 3, "in", "wind")
    )
    told.say("next the bellows come off", later("take the bellows off", "to do")).say("it runs", good("engine", "runs"))
    return told


def test_every_line_is_there_with_its_facts() -> None:
    first, second = timeline(two_sessions().history())
    assert [len(line.facts) for line in first.lines] == [2, 0, 0]
    assert second.lines[0].place.at == "0:00"


def test_only_the_work() -> None:
    (second,) = only(timeline(two_sessions().history()), lambda fact: isinstance(fact, Work))
    assert [line.note.words for line in second.lines] == ["glued the trunk"]


def test_the_recap_is_of_the_last_session() -> None:
    known = two_sessions().history()
    found = recap(known, open_items(known))
    assert found.session == 2
    assert [w.part for w in found.done] == ["wind trunk"]
    assert [r.value for r in found.measured] == [3]
    assert [i.about for i in found.closed] == ["wind trunk"]
    assert [i.about for i in found.planned] == ["take the bellows off"]


def test_a_machine_without_sessions_has_nothing_to_look_back_on() -> None:
    known = Told().history()
    empty = type(known)(known.machine)
    assert recap(empty, ()).session == 0
