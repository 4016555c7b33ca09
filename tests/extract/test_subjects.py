"""What is talked of: the thing, which one of several, what `it` means, what a running test measures."""

from __future__ import annotations

from worklog_tui.extract import CONFIDENCE_LINE, Context, explain, feed
from worklog_tui.model import Fact, FactKey, Finding, Machine, Note, Reading, SpecifiedValue, Work
from worklog_tui.rulebook import Rulebook

PUMP = Machine(
    "Yard pump", kind="four-cylinder petrol engine", fuel="petrol", ignition="battery", cylinders=4,
    specified=(SpecifiedValue("", "compression", "120 psi"),),
)  # fmt: skip


def told(book: Rulebook, *lines: str, track: str = "captions") -> list[Fact]:
    """The facts of several notes."""
    context, found = Context.start(), dict[FactKey, Fact]()
    for n, words in enumerate(lines):
        context, changes = feed(book, PUMP, context, Note(f"n{n}", "s", words, track=track, arrival=n))
        for key in changes.withdrawn:
            found.pop(key)
        found.update({f.key: f for f in changes.added})
    return [f for f in found.values() if f.confidence >= CONFIDENCE_LINE]


def test_a_part_keeps_its_side_and_what_it_belongs_to(book: Rulebook) -> None:
    found = explain(book, PUMP, "the gasket on the left exhaust manifold is blown").facts
    assert [f.about for f in found if isinstance(f, Finding)] == ["gasket on the left exhaust manifold"]


def test_it_means_the_thing_that_was_named(book: Rulebook) -> None:
    found = told(book, "Now the impeller.", "It's badly worn.")
    assert [(f.name, f.state) for f in found if isinstance(f, Finding)] == [("impeller", "worn")]
    assert all("part" in f.filled for f in found if isinstance(f, Finding))


def test_it_is_what_the_talk_is_about_and_not_what_stood_beside_it(book: Rulebook) -> None:
    found = told(book, "The impeller came off the shaft with a puller.", "It's cracked.")
    assert [f.name for f in found if isinstance(f, Finding) and f.verdict == "bad"][-1:] == ["impeller"]


def test_a_compression_test_gives_bare_numbers_their_unit(book: Rulebook) -> None:
    found = told(
        book,
        "Compression test, dry.",
        "Number one, a hundred and ten. Two, one fifteen.",
        "Three, ninety. Four, one twelve.",
    )
    readings = [(f.subject, f.value, f.unit) for f in found if isinstance(f, Reading)]
    assert readings == [
        ("cylinder 1", 110.0, "psi"),
        ("cylinder 2", 115.0, "psi"),
        ("cylinder 3", 90.0, "psi"),
        ("cylinder 4", 112.0, "psi"),
    ]


def test_a_typed_list_gives_which_one_and_value(book: Rulebook) -> None:
    found = told(book, "comp dry 1:110 2:115 3:90 4:112", track="typed")
    readings = [(f.subject, f.value) for f in found if isinstance(f, Reading)]
    assert readings == [("cylinder 1", 110.0), ("cylinder 2", 115.0), ("cylinder 3", 90.0), ("cylinder 4", 112.0)]


def test_a_bare_number_takes_the_unit_said_before(book: Rulebook) -> None:
    found = told(book, "the belt gives thirty mil and it should be twelve")
    assert [(f.value, f.unit) for f in found if isinstance(f, Reading)] == [(30.0, "mm"), (12.0, "mm")]


def test_a_verb_and_its_particle_may_stand_apart(book: Rulebook) -> None:
    found = told(book, "I took the cylinder head off this morning.")
    assert [(f.action, f.name) for f in found if isinstance(f, Work)] == [("remove", "cylinder head")]


def test_a_name_that_the_vocabulary_does_not_know_is_still_a_part(book: Rulebook) -> None:
    found = told(book, "The wibblestock is cracked.")
    assert [(f.part, f.name) for f in found if isinstance(f, Finding)] == [("wibblestock", "")]


def test_words_are_the_speakers_and_the_name_is_the_vocabularys(book: Rulebook) -> None:
    found = told(book, "The carb is gummed up.")
    assert [(f.part, f.name) for f in found if isinstance(f, Finding)] == [("carb", "carburettor")]


def test_a_correction_in_the_next_line_replaces_what_was_read(book: Rulebook) -> None:
    found = told(book, "the oil pressure is forty", "five psi")
    assert [(f.value, f.unit) for f in found if isinstance(f, Reading)] == [(45.0, "psi")]
