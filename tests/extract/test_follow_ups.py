"""What must be come back to: what it is about, and why."""

from __future__ import annotations

from worklog_tui.extract import explain, read_session
from worklog_tui.model import FollowUp, Machine, Note
from worklog_tui.rulebook import Rulebook

PRESS = Machine("Cider press pump", kind="single-cylinder diesel engine", cylinders=1, fuel="diesel", ignition="none")


def follow_ups(book: Rulebook, text: str, track: str = "captions") -> list[tuple[str, str]]:
    facts = explain(book, PRESS, text, track).facts
    return [(f.topic, f.reason) for f in facts if isinstance(f, FollowUp)]


def test_a_stop_gap_is_of_the_thing_not_of_what_it_was_made_from(book: Rulebook) -> None:
    found = follow_ups(book, "The float bowl gasket has split. So I've cut one out of inner tube for today.")
    assert ("float bowl gasket", "temporary") in found


def test_a_fallback_begins_at_its_then(book: Rulebook) -> None:
    found = follow_ups(book, "If it still knocks after I change the oil, then I'm going to pull the sump.")
    assert [reason for _, reason in found] == ["fallback"]
    assert found[0][0] == "pull the sump"


def test_an_if_without_a_plan_is_no_fallback(book: Rulebook) -> None:
    assert follow_ups(book, "If it still leaks, well that's why.") == []


def test_a_part_may_be_named_before_its_order(book: Rulebook) -> None:
    assert ("brushes", "part needed") in follow_ups(book, "brushes I still have to order")


def test_left_for_a_wet_day_is_a_fault_that_was_left(book: Rulebook) -> None:
    found = follow_ups(book, "The radiator weeps at the seam. I'll leave that for a wet day.")
    assert ("radiator", "fault") in found


def test_what_is_listed_is_not_told_as_left_besides(book: Rulebook) -> None:
    said = ("The lift pump weeps.", "So what's left. That bolt, the lift pump, and change the oil before the season.")
    notes = [Note(f"n{k}", "s", words, track="captions", arrival=k) for k, words in enumerate(said)]
    found = [(f.topic, f.reason) for f in read_session(book, PRESS, notes) if isinstance(f, FollowUp)]
    assert [reason for topic, reason in found if topic == "lift pump"] == ["to do"]


def test_an_aside_is_no_member_of_a_list(book: Rulebook) -> None:
    found = follow_ups(book, "what's left is that guard and the chain, but that can wait till spring")
    assert found == [("guard", "to do"), ("chain", "to do")]


def test_a_question_is_about_its_own_thing(book: Rulebook) -> None:
    found = follow_ups(book, "The hose is fine. Does anybody know who makes the lift pump diaphragm?")
    assert [reason for _, reason in found] == ["question"]
    assert "hose" not in found[0][0]


def test_what_soaks_or_charges_till_tomorrow_is_come_back_to_and_no_stop_gap(book: Rulebook) -> None:
    assert follow_ups(book, "the carb is in the cleaner till tomorrow") == [("carb", "to do")]
    assert follow_ups(book, "the battery's on charge till tomorrow") == [("battery", "to do")]
    assert follow_ups(book, "the piston's sitting in diesel till tomorrow") == [("piston", "to do")]
    assert follow_ups(book, "the return hose is taped till tomorrow") == [("return hose", "temporary")]


def test_a_job_of_a_list_is_told_with_its_deed_even_where_the_deed_is_called_as_a_fluid_is(book: Rulebook) -> None:
    assert follow_ups(book, "to do: oil the bellows hinges, replace the belt") == [
        ("oil the bellows hinges", "to do"), ("replace the belt", "to do"),
    ]  # fmt: skip
    assert follow_ups(book, "to do: oil, filter, plugs") == [("oil", "to do"), ("filter", "to do"), ("plugs", "to do")]


def test_the_jobs_of_a_list_are_not_done_yet(book: Rulebook) -> None:
    assert [f.kind for f in explain(book, PRESS, "next: set the points", "typed").facts] == ["follow_up"]
    facts = explain(book, PRESS, "left to do: set points, timing, clean tank", "typed").facts
    assert [(f.kind, f.about) for f in facts] == [
        ("follow_up", "set points"), ("follow_up", "timing"), ("follow_up", "clean tank"),
    ]  # fmt: skip


def test_the_head_of_a_list_leaves_nothing_else_for_later(book: Rulebook) -> None:
    words = "The needles are soaking. Next time: fit the seal, change the brushes."
    assert follow_ups(book, words) == [("fit the seal", "to do"), ("change the brushes", "to do")]


def test_what_tells_when_or_how_a_part_works_is_no_task(book: Rulebook) -> None:
    assert follow_ups(book, "I'll look again at the end.") == []
    assert follow_ups(book, "When the clutch comes in the flywheel's supposed to drop the speed.") == []
    assert ("grease the pump", "to do") in follow_ups(book, "I'm supposed to grease the pump")


def test_what_will_be_ordered_is_needed_each_thing_for_itself(book: Rulebook) -> None:
    assert follow_ups(book, "I'll order a drive belt and a shaft seal") == [
        ("drive belt", "part needed"), ("shaft seal", "part needed"),
    ]  # fmt: skip
    assert follow_ups(book, "I ordered a drive belt") == []


def test_a_look_that_is_owed_is_of_what_was_found_bad(book: Rulebook) -> None:
    found = follow_ups(book, "The stop switch doesn't latch, must look at that before it goes back.")
    assert found == [("look at stop switch", "to do")]
    assert follow_ups(book, "Look at that clutch, lovely.") == []
    assert follow_ups(book, "The hose is perished so that'll need doing.") == [("hose", "to do")]


def test_what_only_stands_so_for_now_is_no_stop_gap(book: Rulebook) -> None:
    assert ("tappets", "temporary") not in follow_ups(book, "Tappets cold for now, ten thou.")
    assert ("pawl", "temporary") not in follow_ups(book, "The pawl's worn. It's on the list for now.")
    assert ("hose", "temporary") in follow_ups(book, "I've taped the hose up for now.")


def test_what_comes_next_time_is_owed(book: Rulebook) -> None:
    assert ("radiator", "to do") in follow_ups(book, "Tomorrow the radiator goes back on.")
    assert ("button", "part needed") in follow_ups(book, "The button sticks so that's coming out for a new one.")
    assert ("tank seam", "temporary") in follow_ups(book, "bunged the tank seam w/ soap, braze later", "typed")
