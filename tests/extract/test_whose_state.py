"""Whose state it is, and what is no finding: which one of several, judgements after a value, things said in passing."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note
from worklog_tui.rulebook import Rulebook

PUMP = Machine("Quarry pump", kind="four-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=4)


def found(book: Rulebook, *lines: str, track: str = "captions") -> list[tuple[str, str]]:
    """(part, verdict) of all that was surely found."""
    notes = [Note(f"n{i}", "s", line, track=track) for i, line in enumerate(lines)]
    facts = read_session(book, PUMP, notes)
    return [(f.part.lower(), f.verdict) for f in facts if isinstance(f, Finding) and f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("words", "facts"),
    [
        (
            "Top ring's stuck solid. The second's free, and the third one's in three bits.",
            {("top ring", "bad"), ("second ring", "good"), ("third ring", "bad")},
        ),
        ("Tyres. Front is bald. Rear's all right.", {("front tyres", "bad"), ("rear tyres", "good")}),
        ("Left lining is nearly new. Right one is wet.", {("left lining", "good"), ("right lining", "bad")}),
        ("Six plugs out. Number four and number five are wet.", {("4 and 5 plugs", "bad")}),
        ("Blades. One of them is bent and the other one's cracked.", {("blades", "bad"), ("other blades", "bad")}),
        ("Bowls. Left's clean. Right's got sludge in it.", {("left bowls", "good"), ("right bowls", "bad")}),
        ("Number two is wet.", {("number 2", "bad")}),
    ],
)  # fmt: skip
def test_which_one_of_several_stands_for_the_thing_named_before(
    book: Rulebook, words: str, facts: set[tuple[str, str]]
) -> None:
    assert set(found(book, words)) == facts


def test_it_is_one_thing_and_not_several(book: Rulebook) -> None:
    assert found(book, "Thermostat. Two nuts. Out. Eighty degrees and it's stuck shut.") == [("thermostat", "bad")]


@pytest.mark.parametrize(
    ("words", "part"),
    [
        ("Oil pressure next. Fifty psi. Lovely.", "oil pressure"),
        ("Points gap is fifteen thou. Good.", "points gap"),
        ("Compression test. One, a hundred and ten. Two, a hundred and twelve. I'm having that.", "compression"),
    ],
)
def test_a_judgement_after_a_value_is_of_what_was_read(book: Rulebook, words: str, part: str) -> None:
    assert found(book, words) == [(part, "good")]


def test_what_was_found_is_told_once(book: Rulebook) -> None:
    assert found(book, "The drum is cracked. It's cracked right across.", "Cracked, that is.") == [("drum", "bad")]
    assert found(book, "The drum is cracked.", "The drum is free.") == [("drum", "bad"), ("drum", "good")]


def test_what_the_owner_complains_of_is_a_finding_and_what_he_praises_is_not(book: Rulebook) -> None:
    assert found(book, "The owner says the clutch is slipping.") == [("clutch", "bad")]
    assert found(book, "The owner says the clutch is fine.") == []


@pytest.mark.parametrize(
    "words",
    [
        "So it's the lever valve leaking.",
        "That means the check valve is passing.",
        "There's your chatter.",
        "The tubes were slow before.",
        "Terminals cleaned, a smear of grease and back on.",
        "It goes back on with both clips tight.",
        "A cable straight from the stud to the solenoid.",
        "Ram hard against the end.",
        "It took a broken bit of old ring to scrape with.",
        "I put the probe in boiling water.",
        "I've wiggled the lever to let the pressure out.",
        "The sump holds one point six litres.",
        "The pump. It'll clear.",
        "Needle one turn open.",
        "Foot down.",
    ],
)
def test_a_state_that_is_only_mentioned_is_no_finding(book: Rulebook, words: str) -> None:
    assert found(book, words) == []


@pytest.mark.parametrize(
    ("words", "part", "verdict"),
    [
        ("The drum's got a burr on it.", "drum", "bad"),
        ("Roller out. There's a nasty crack across it.", "roller", "bad"),
        ("Now the accelerator pump. Look, a good squirt.", "accelerator pump", "good"),
        ("A smell of petrol from the fuel tap.", "fuel tap", "bad"),
        ("The exhaust valve is a thou tight.", "exhaust valve", "bad"),
        ("I'd say the plates are rusted solid.", "plates", "bad"),
        ("The motor is therefore in order.", "motor", "good"),
        ("Plug out. Let's look at it. Black and wet.", "plug", "bad"),
        ("Forty-five amps. That's a good starter.", "starter", "good"),
    ],
)
def test_findings_in_the_plain_wordings_of_the_trade(book: Rulebook, words: str, part: str, verdict: str) -> None:
    assert (part, verdict) in found(book, words)


@pytest.mark.parametrize(
    ("words", "part", "verdict"),
    [
        ("Lid back on. Screws in. Away it goes, and it's quiet.", "engine", "good"),
        ("Brake fluid. Cap off. It's like gravy.", "brake fluid", "bad"),
        ("Drew the oil out past the drain hose, and it's milky.", "oil", "bad"),
        ("The needle has a groove worn in it.", "needle", "bad"),
        ("The gear. Two teeth on that are chipped.", "teeth", "bad"),
        ("The water pump. I put a washer behind it and it's still noisy.", "water pump", "bad"),
        ("The latch. Made a new spring. Snaps shut like a purse.", "latch", "good"),
        ("The wheel off and the shoes have got oil on them, so they're worn.", "shoes", "bad"),
    ],
)
def test_a_state_goes_to_what_it_is_mostly_said_of(book: Rulebook, words: str, part: str, verdict: str) -> None:
    assert (part, verdict) in found(book, words)


def test_what_was_wrong_is_what_is_right_now(book: Rulebook) -> None:
    assert found(book, "The fuel tap is dripping.", "New washer. And the clip. Dry now.")[-1] == ("fuel tap", "good")
    told = found(book, "The gearbox knocks.", "Two shims under the bearing.", "And the knock is gone.")
    assert told[-1] == ("gearbox", "good")


def test_a_bystander_s_machine_bears_nothing(book: Rulebook) -> None:
    said = found(book, "The impeller. I took it to the grinder. It's scored.")
    assert ("impeller", "bad") in said
    assert all(part != "grinder" for part, _ in said)


@pytest.mark.parametrize(
    ("words", "fact"),
    [
        ("There's six bearings on the shaft. The other five have no play.", ("other bearings on the shaft", "good")),
        ("Four flaps. Number four's cracked right across.", ("flaps 4", "bad")),
        ("Glow plugs. Two is fine and four does not want to come out.", ("glow plugs 4", "bad")),
    ],
)
def test_a_number_stands_for_what_was_counted(book: Rulebook, words: str, fact: tuple[str, str]) -> None:
    assert fact in found(book, words)


def test_a_typed_line_is_said_of_its_heading(book: Rulebook) -> None:
    assert ("brass plate", "bad") in found(book, "brass plate: scored at the top", track="typed")


@pytest.mark.parametrize(
    "words", ["The face it runs on is flat.", "Run on two heaters.", "Bob's your uncle, it stays as it is."]
)
def test_running_on_something_and_staying_somewhere_are_no_states(book: Rulebook, words: str) -> None:
    assert all(part != "engine" for part, _ in found(book, words))


@pytest.mark.parametrize(
    ("lines", "facts"),
    [
        (("left kingpin's worn", "right one's the same"), [("left kingpin", "bad"), ("right kingpin", "bad")]),
        (("left shoe is worn, same on the right",), [("left shoe", "bad"), ("right shoe", "bad")]),
        (("left kingpin is worn, not the same as the book",), [("left kingpin", "bad")]),
        (
            ("two floats in this carb", "left one's good, right one's punctured"),
            [("left floats", "good"), ("right floats", "bad")],
        ),
    ],
)  # fmt: skip
def test_what_was_found_of_one_is_told_of_the_other(
    book: Rulebook, lines: tuple[str, ...], facts: list[tuple[str, str]]
) -> None:
    assert found(book, *lines) == facts


@pytest.mark.parametrize(
    ("line", "facts"),
    [
        ("brk shoes: l oily, r ok", [("left brake shoes", "bad"), ("right brake shoes", "good")]),
        ("springs - left broken, right ok", [("left springs", "bad"), ("right springs", "good")]),
        ("tyres ns ok os perished", [("nearside tyres", "good"), ("offside tyres", "bad")]),
        ("lh brg rough, rh ditto", [("left bearing", "bad"), ("right bearing", "bad")]),
    ],
)
def test_sides_in_shorthand_are_told_apart(book: Rulebook, line: str, facts: list[tuple[str, str]]) -> None:
    assert found(book, line, track="live") == facts


@pytest.mark.parametrize(
    ("lines", "facts"),
    [
        (("the knotter bill hook is worn",), [("knotter bill hook", "bad")]),
        (("the spout", "that has split"), [("spout", "bad")]),
        (("the frobber is bent.", "It's fine now."), [("frobber", "bad"), ("frobber", "good")]),
        (("the whole belt is frayed",), [("belt", "bad")]),
        (("the weather's bad",), []),
    ],
)
def test_a_name_that_the_vocabulary_lacks_is_kept_whole_and_carried_on(
    book: Rulebook, lines: tuple[str, ...], facts: list[tuple[str, str]]
) -> None:
    assert found(book, *lines) == facts


@pytest.mark.parametrize(
    ("lines", "facts"),
    [
        (("Linings are four mil. They're new at five so there's years in them.",), [("linings", "good")]),
        (("Oil pressure says forty cold. I'd be happy with that from a new one.",), [("oil pressure", "good")]),
        (("Oil pressure says forty cold. I'll have that checked.",), []),
    ],
)
def test_what_was_just_read_is_what_the_next_words_are_of(
    book: Rulebook, lines: tuple[str, ...], facts: list[tuple[str, str]]
) -> None:
    assert found(book, *lines) == facts


def test_what_is_named_in_passing_bears_no_state(book: Rulebook) -> None:
    assert found(book, "the fuel line is cut right under the clamp sucking air") == [("fuel line", "bad")]


def test_no_oil_running_down_is_no_leak(book: Rulebook) -> None:
    read = found(book, "Could be the spool valve leaking.", "No oil running down the outside of the cylinder though.")
    assert "bad" not in [verdict for _, verdict in read]


def test_what_oil_comes_from_is_what_weeps(book: Rulebook) -> None:
    told = found(book, "Cover's off.", "Oil on the lining, that's from the gearbox seal, it's weeping.")
    assert ("gearbox seal", "bad") in told
    assert "cover" not in {part for part, _ in told}


def test_a_hum_of_what_runs_up_to_speed_is_no_fault(book: Rulebook) -> None:
    assert found(book, "Plug her in, motor hums up to speed.") == [("motor", "good")]


def test_a_heading_may_be_a_word_that_is_often_no_part(book: Rulebook) -> None:
    assert found(book, "Lead, it's split.") == [("lead", "bad")]


@pytest.mark.parametrize(
    "lines",
    [
        ("New gasket on the cover.", "Kettle's on. It grabs now."),
        ("Washed it all in white spirit.", "It slides under its own weight."),
        ("The condenser is on its bracket.", "The wife wants her tea.", "She always does.", "It is pathetic."),
    ],
)
def test_what_was_named_long_ago_or_only_used_is_not_surely_meant(book: Rulebook, lines: tuple[str, ...]) -> None:
    assert found(book, *lines) == []


@pytest.mark.parametrize(
    ("words", "parts"),
    [
        ("Started it again. Throttle back a touch. That's smooth.", {"engine"}),
        ("Started it. The choke cable is frayed. That's stiff.", {"choke cable"}),
    ],
)
def test_a_state_told_right_after_a_start_is_the_machines_until_a_part_is_found_so(
    book: Rulebook, words: str, parts: set[str]
) -> None:
    assert {part for part, _ in found(book, words)} == parts


@pytest.mark.parametrize(
    ("said", "part"),
    [
        ("One of the springs has snapped.", "springs"),
        ("Two of the teeth are chipped.", "teeth"),
        ("Half of the screws are missing.", "screws"),
    ],
)
def test_so_many_of_some_parts_are_those_parts(book: Rulebook, said: str, part: str) -> None:
    assert (part, "bad") in found(book, "The clutch plate next.", said)


@pytest.mark.parametrize(
    ("words", "part", "verdict"),
    [
        ("The belt keeps snapping.", "belt", "bad"),
        ("Filter is matted with lint.", "filter", "bad"),
        ("That lever won't stay latched.", "lever", "bad"),
        ("The balance wheel is back in beat.", "balance wheel", "good"),
        ("The bearing feels like new.", "bearing", "good"),
    ],
)
def test_what_cloth_clockwork_and_catches_come_to(book: Rulebook, words: str, part: str, verdict: str) -> None:
    assert found(book, words) == [(part, verdict)]


@pytest.mark.parametrize(
    ("line", "part"),
    [
        ("the valve's seating fine it's the spring that's weak", "spring"),
        ("it's the outer cable that's frayed", "outer cable"),
    ],
)
def test_what_is_singled_out_bears_the_state(book: Rulebook, line: str, part: str) -> None:
    """`It's the spring that's weak` tells of the spring, whatever was named before it."""
    said = read_session(book, PUMP, [Note("n", "s", line, track="captions")])
    assert [f.part for f in said if isinstance(f, Finding) and f.verdict == "bad"] == [part]
