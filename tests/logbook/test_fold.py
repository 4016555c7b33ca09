"""The fold: step by step as at once, and the same whatever the order in which things were merged."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.logbook.told import Told, bad, did, good, later, read
from worklog_tui.logbook.changes import changes
from worklog_tui.logbook.matters import Matters, anchor_text
from worklog_tui.logbook.open_items import as_items, fold, open_items, step
from worklog_tui.logbook.readings import readings
from worklog_tui.model import Act, Fact, History, Instant

NOW = Instant("2031-05-01T10:00:00Z")
PARTS = st.sampled_from(["drive belt", "left bellows", "right bellows", "relief valve", "float needle"])
FACTS: st.SearchStrategy[Fact] = st.one_of(
    st.builds(later, PARTS, st.sampled_from(["part needed", "temporary", "to do", "fault", "fallback", "question"])),
    st.builds(bad, PARTS, st.just("worn")),
    st.builds(good, PARTS, st.just("fine")),
    st.builds(did, st.sampled_from(["fit", "replace", "clean", "order", "remove", "check"]), PARTS),
)
LINES = st.lists(st.lists(FACTS, max_size=3), min_size=1, max_size=12)


def history_of(lines: list[list[Fact]]) -> History:
    told = Told()
    for n, facts in enumerate(lines):
        if n % 5 == 4:
            told.session()
        told.say(f"line {n}", *facts)
    return told.history()


@given(LINES, st.integers(0, 40))
@settings(max_examples=60, deadline=None)
def test_in_two_parts_as_in_one(lines: list[list[Fact]], cut: int) -> None:
    row = changes(history_of(lines))
    whole = fold(Matters(), row)
    assert as_items(fold(fold(Matters(), row[:cut]), row[cut:])) == as_items(whole)


@given(LINES)
@settings(max_examples=60, deadline=None)
def test_a_step_leaves_the_state_before_it_alone(lines: list[list[Fact]]) -> None:
    state = Matters()
    for change in changes(history_of(lines)):
        before = as_items(state)
        after = step(state, change)
        assert as_items(state) == before
        state = after


@given(LINES, st.randoms(use_true_random=False))
@settings(max_examples=60, deadline=None)
def test_the_order_of_merging_does_not_matter(lines: list[list[Fact]], chance: object) -> None:
    known = history_of(lines)
    anchors = [anchor_text(fact.key) for fact in known.facts()]
    if not anchors:
        return
    acts = [
        Act(f"a{n}", f"bench-{n % 2}", n, NOW, verb, chance.choice(anchors), (), {"state": "done"})  # type: ignore[attr-defined]
        for n, verb in enumerate(("close item", "reopen item", "close item"))
    ]
    shuffled = acts[:]
    chance.shuffle(shuffled)  # type: ignore[attr-defined]
    mixed = tuple(
        replace(record, facts=tuple(chance.sample(record.facts, len(record.facts))))  # type: ignore[attr-defined]
        for record in known.sessions
    )
    straight = History(known.machine, known.sessions, tuple(acts))
    merged = History(known.machine, mixed, tuple(shuffled))
    assert open_items(merged) == open_items(straight)


ANY = st.text(max_size=30)
ANYTHING: st.SearchStrategy[Fact] = st.one_of(
    st.builds(later, ANY, st.sampled_from(["part needed", "temporary", "to do", "fallback", "question"]), ANY),
    st.builds(bad, ANY, ANY, ANY),
    st.builds(good, ANY, ANY),
    st.builds(did, st.sampled_from(["fit", "clean", "remove"]), ANY, ANY, ANY),
    st.builds(read, st.just("gap"), st.floats(allow_nan=False), st.sampled_from(["mm", "pint", "?"]), ANY),
)


@given(st.lists(st.lists(ANYTHING, max_size=4), max_size=5))
@settings(max_examples=150, deadline=None)
def test_no_words_do_harm(lines: list[list[Fact]]) -> None:
    known = history_of(lines)
    assert len(open_items(known)) <= len(known.facts())
    assert sum(len(one.points) for one in readings(known)) <= len(known.facts())
