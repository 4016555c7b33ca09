"""Reading note after note gives what reading the whole session gives, also through a context kept as JSON."""

from __future__ import annotations

import gc

from hypothesis import given, settings
from hypothesis import strategies as st

from worklog_tui import places
from worklog_tui.extract import Context, feed, read_session
from worklog_tui.model import Fact, FactKey, Machine, Note
from worklog_tui.rulebook import load

BOOK = load([places.grammars()], places.cache())
BILGE = Machine(
    "Bilge pump engine", kind="single-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=1
)

LINES = st.sampled_from(
    [
        "right then, the impeller cover is off and the impeller is badly worn", "two vanes cracked",
        "so that needs a new one", "points gap is",
        "eighteen thou", "no, twenty thou", "set it to fifteen", "compression test now", "ninety five",
        "with oil in, one hundred and ten", "it's seized",
        "could be the rings or a", "sticking valve", "cleaned the float bowl and the jets",
        "taped the hose up for now", "battery is at twelve point",
        "four volts", "does anybody know which way round the thermostat goes", "Cooling hose. Perished.",
        "number two 85. number three 90.", "",
    ]
)  # fmt: skip


def notes_of(lines: list[str], track: str) -> list[Note]:
    return [
        Note(f"n{k}", "s", words, at=k * 7, said_at=f"0:{k:02}", track=track, arrival=k)
        for k, words in enumerate(lines)
    ]


def step_by_step(notes: list[Note], kept: bool) -> tuple[dict[FactKey, Fact], list[int]]:
    context, facts, sizes = Context.start(), {}, []  # type: ignore[var-annotated]
    for note in notes:
        context, changes = feed(BOOK, BILGE, context, note)
        assert {k.note for k in changes.withdrawn} <= {n.uid for n in notes[-12:]} | {n.uid for n in notes}
        for key in changes.withdrawn:
            del facts[key]
        facts.update({fact.key: fact for fact in changes.added})
        sizes.append(len(context.to_json().encode()))
        if kept:
            context = Context.from_json(context.to_json())
    return facts, sizes


@settings(max_examples=60, deadline=None)
@given(st.lists(LINES, max_size=14), st.sampled_from(["captions", "typed"]))
def test_incremental_is_batch(lines: list[str], track: str) -> None:
    notes = notes_of(lines, track)
    facts, sizes = step_by_step(notes, kept=True)
    assert set(facts.values()) == set(read_session(BOOK, BILGE, notes))
    assert max(sizes, default=0) <= 8192


@settings(max_examples=30, deadline=None)
@given(st.lists(LINES, min_size=2, max_size=10), st.data())
def test_reading_on_from_a_kept_context_is_reading_from_the_start(lines: list[str], data: st.DataObject) -> None:
    notes = notes_of(lines, "captions")
    cut = data.draw(st.integers(1, len(notes) - 1))
    context = Context.start()
    for note in notes[:cut]:
        context, _ = feed(BOOK, BILGE, context, note)
    again = Context.from_json(context.to_json())
    for note in notes[cut:]:
        context, first = feed(BOOK, BILGE, context, note)
        again, second = feed(BOOK, BILGE, again, note)
        assert first == second
    assert context == again


def test_a_thought_that_breaks_across_lines_is_one_reading() -> None:
    facts = read_session(BOOK, BILGE, notes_of(["the battery is at twelve point", "four volts at rest"], "captions"))
    readings = [f for f in facts if f.kind == "reading"]
    assert [(r.value, r.unit) for r in readings] == [(12.4, "V")]  # type: ignore[attr-defined]
    assert {span.note for span in readings[0].evidence} == {"n0", "n1"}


def test_reading_leaves_nothing_that_points_to_itself() -> None:
    """So that a long talk is read without the collector, and nothing of it stays behind."""
    lines = [
        "the impeller is worn, I should fit a new one", "hardly any grease left in it", "somebody has had this apart",
        "they didn't have the seal, the spring hasn't come", "points gap is", "eighteen thou", "cleaned the jets",
    ]  # fmt: skip
    read_session(BOOK, BILGE, notes_of(lines, "captions"))
    gc.collect()
    gc.disable()
    try:
        facts = read_session(BOOK, BILGE, notes_of(lines, "captions"))
        assert len(facts) > 3
        assert gc.collect() == 0
    finally:
        gc.enable()
