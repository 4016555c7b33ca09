"""Film chapters and the text below a film, on an invented narrow-gauge hand crane."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.logbook.told import bad, did, good, later, read, suspects
from tests.reports.hostile import HOSTILE
from tests.reports.published import published
from worklog_tui.model import Fact, History, Instant, Machine, Note, Session, SessionRecord, Span, clock
from worklog_tui.reports.chapter_titles import LONGEST, title_of
from worklog_tui.reports.chapters import chapters, problems
from worklog_tui.reports.film import Film, FilmLine, NoFilm, films, joined
from worklog_tui.reports.film_text import LONGEST as TEXT
from worklog_tui.reports.film_text import description, tried_text
from worklog_tui.reports.tried import SILENCE, tried

BRAKE = (bad("brake band", "glazed"), did("remove", "brake band"), did("replace", "brake band", "new lining"))
GEAR = (read("clearance", 0.9, "mm", "pinion"), bad("pinion", "chipped"), did("repair", "pinion"))
HOOK = (bad("hook", "opened out"), later("hook", "part needed"), did("remove", "hook"))


def film(*lines: tuple[int, str, Fact], length: int = 0) -> Film:
    """A film of lines: second, words, one fact."""
    told = tuple(FilmLine(at, words, (fact,)) for at, words, fact in lines)
    return Film("", told, length or told[-1].second + 60)


def three_jobs(step: int = 40) -> Film:
    return film(*((5 + n * step, "", fact) for n, fact in enumerate((*BRAKE, *GEAR, *HOOK))))


def test_a_chapter_begins_where_another_thing_is_taken_in_hand() -> None:
    assert [c.line for c in chapters(three_jobs(), "Crane")] == [
        "0:00 Brake band: glazed, replaced",
        "2:05 Pinion: chipped, repaired",
        "4:05 Hook: opened out, needed",
    ]


def test_chapters_have_no_fixed_length() -> None:
    long_brake = film(
        *((n * 60, "", BRAKE[n % 3]) for n in range(20)),
        *((1300 + n * 30, "", f) for n, f in enumerate((*GEAR, *HOOK))),
    )
    assert [c.second for c in chapters(long_brake, "Crane")] == [0, 1300, 1390]


def test_a_film_that_begins_with_talk_has_a_first_chapter_of_its_own() -> None:
    late = film(*((line.second + 90, "", line.facts[0]) for line in three_jobs().lines))
    assert chapters(late, "Hand crane")[0].line == "0:00 Hand crane"


def test_too_short_a_film_has_no_chapters() -> None:
    assert chapters(three_jobs(step=1), "Crane") == ()
    assert chapters(Film("", (), 900), "Crane") == ()


def test_the_machine_as_a_whole_goes_by_its_name_at_first_and_by_trying_it_later() -> None:
    assert title_of([bad("engine", "dies")], "Cider mill engine", first=True) == "Cider mill engine: dies"
    assert title_of([bad("engine", "steaming")], "Cider mill engine") == "Trying it: steaming"
    assert title_of([bad("engine", "dies")], "The engine of the old mill by the ford", first=True) == "As it came: dies"


@pytest.mark.parametrize("piece", ["not what it was", "you'd want", "o l", "going back"])
def test_a_piece_of_a_sentence_is_no_title(piece: str) -> None:
    assert title_of([bad("Drum Brake", piece), did("replace", "Drum Brake")], "Crane") == "Drum brake: replaced"


TITLES: dict[str, tuple[list[Fact], str]] = {
    "a test of several is one turn, from the lowest to the highest": (
        [read("compression", 90, "psi", "cylinder 1"), read("compression", 118, "psi", "cylinder 2")],
        "Compression: 90 to 118 psi",
    ),
    "what it was set to says more than what was found": (
        [read("clearance", 0.9, "mm", "pinion"), replace(read("clearance", 0.4, "mm", "pinion"), role="set")],
        "Pinion: set to 0.4 mm",
    ),
    "of one thing the last measure: how it stands": (
        [read("temperature", 31, "degC", "axle box"), read("temperature", 64, "degC", "axle box")],
        "Axle box: temperature 64°C",
    ),
    "that it was off goes without saying beside what was found": (
        [did("remove", "strainer"), bad("strainer", "blocked solid")],
        "Strainer: blocked solid",
    ),
    "what was found, then that it was the cause": (
        [replace(suspects("top bearing"), standing="confirmed"), bad("top bearing", "dry")],
        "Top bearing: dry, the cause",
    ),
    "that it was the cause, when no more is told": (
        [replace(suspects("relief valve"), standing="confirmed"), later("relief valve", "question")],
        "Relief valve: the cause",
    ),
    "two words that belong together stay so": ([good("spark", "fat and blue")], "Spark: fat and blue"),
    "a word of praise is no news beside what was done": (
        [did("repair", "jib"), good("jib", "lovely")],
        "Jib: repaired",
    ),
    "rather of the part than of its bolts": (
        [did("replace", "bolt"), bad("impeller", "chipped"), did("fit", "impeller")],
        "Impeller: chipped, fitted",
    ),
    "nothing is filled into a washer": (
        [did("fill", "fibre washer"), good("fibre washer", "dry as a bone")],
        "Fibre washer: dry as a bone",
    ),
    "of several the name has no number": ([did("fit", "glow plugs 2")], "Glow plugs: fitted"),
    "they've is no part": ([bad("they've", "late"), bad("pawl", "worn")], "Pawl: worn"),
}


@pytest.mark.parametrize("rule", TITLES)
def test_a_title_tells_what_a_viewer_looks_for(rule: str) -> None:
    facts, title = TITLES[rule]
    assert title_of(facts, "Crane") == title, rule


def test_a_film_has_no_more_chapters_than_a_viewer_would_look_through() -> None:
    """Ten for ten minutes, twenty-four for hours, though every line tells of another thing."""
    for minutes, most in ((4, 6), (10, 10), (60, 24), (300, 24)):
        rows = [(n * minutes, did("clean", f"part{n:02}x")) for n in range(60)]
        made = chapters(film(*((at, "", fact) for at, fact in rows), length=minutes * 60), "Crane")
        assert 3 <= len(made) <= most


def test_a_thing_that_is_only_mentioned_has_no_chapter() -> None:
    rows: list[tuple[int, Fact]] = [(0, bad("rope", "frayed")), (100, did("clean", "drum"))]
    rows += [(200, bad("jib", "bent")), (300, did("fit", "pin"))]
    plain: list[tuple[int, Fact]] = [(150, later("axle", "question"))]
    made = chapters(film(*((at, "", fact) for at, fact in sorted([*rows, *plain], key=lambda r: r[0]))), "Crane")
    assert all(": " in chapter.title for chapter in made)


_THINGS = ("pawl", "jib", "rope", "drum", "axle", "post")
_TOLD = (lambda t: bad(t, "worn"), lambda t: did("clean", t), lambda t: good(t, "sound"), lambda t: later(t, "fault"))
_FACT = st.builds(lambda tell, thing: tell(thing), st.sampled_from(_TOLD), st.sampled_from(_THINGS))


@given(st.lists(st.tuples(st.integers(0, 4000), _FACT), min_size=1, max_size=120), st.integers(0, 300))
def test_every_list_of_chapters_is_valid_for_the_platforms(rows: list[tuple[int, Fact]], more: int) -> None:
    """The rules: first at 0:00, three or more, ten seconds or more each, in order, time first."""
    told = sorted(rows, key=lambda row: row[0])
    made = film(*((at, "", fact) for at, fact in told), length=told[-1][0] + more)
    lines = [chapter.line for chapter in chapters(made, "Crane")]
    assert not lines or problems(lines, made.length) == []
    assert all(len(line.split(" ", 1)[1]) <= LONGEST + len(", time 99") for line in lines)


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        (["0:01 A", "0:20 B", "0:40 C"], "not at 0:00"),
        (["0:00 A", "0:20 B"], "there are 2"),
        (["0:00 A", "0:09 B", "0:40 C"], "shorter"),
        (["0:00 A", "0:50 B", "0:40 C"], "out of order"),
        (["- 0:00 A", "0:50 B", "1:40 C"], "not a time"),
        (["0:00 ", "0:50 B", "1:40 C"], "not a time"),
    ],
)
def test_a_broken_rule_is_found(lines: list[str], says: str) -> None:
    assert says in " ".join(problems(lines))


@pytest.mark.parametrize("words", HOSTILE)
def test_a_title_holds_nothing_that_a_platform_takes_for_something_else(words: str) -> None:
    title = title_of([bad(words, words)], "Crane")
    assert not set(title) & set("<>[]{}|\n\r\t")
    assert "http" not in title
    assert len(title) <= LONGEST


@pytest.mark.parametrize("words", HOSTILE)
def test_the_text_below_a_film_is_plain_lines(words: str) -> None:
    rows: list[tuple[int, Fact]] = [
        (5, bad(words, words)),
        (90, did("replace", words, words)),
        (150, later(words, "question")),
    ]
    found = published(crane(rows))
    for text in (description(found.log(), [], "Mind."), found.tried()):
        assert not set(text) & (set("<>\r\t\x00\x1b\x07\x9b") | set("\u202e\u200b\u2028"))
        assert text.count("\n") < 40


def test_clips_make_one_film_when_their_lengths_are_told() -> None:
    first, second = three_jobs(), three_jobs()
    whole = joined([first, second], [600, 600])
    lines = [c.line for c in chapters(whole, "Crane")]
    assert problems(lines, whole.length) == []
    assert "10:05 Brake band: glazed, replaced, again" in lines


def test_a_length_that_cannot_be_is_refused_in_words() -> None:
    with pytest.raises(NoFilm, match="after the end"):
        joined([three_jobs()], [60])
    with pytest.raises(NoFilm, match="give the length of each"):
        joined([three_jobs()], [])


def crane(*sessions: Sequence[tuple[int, Fact]], track: str = "captions") -> History:
    """A crane of which each session is filmed."""
    records = []
    for number, rows in enumerate(sessions, 1):
        notes, facts = [], []
        for n, (at, fact) in enumerate(rows):
            uid = f"s{number}n{n}"
            notes.append(Note(uid, f"s{number}", f"line {n}", at, clock(at), track, n))
            facts.append(replace(fact, main=Span(uid, 0, 4), quote=f"line {n}"))
        session = Session(f"s{number}", "crane", Instant(f"2031-05-{number:02}T09:00:00Z"), "import", number)
        records.append(SessionRecord(session, tuple(notes), tuple(facts)))
    return History(Machine("Hand crane"), tuple(records))


def test_each_filmed_session_is_a_film_and_a_typed_one_is_none() -> None:
    rows = [(n * 40, fact) for n, fact in enumerate((*BRAKE, *GEAR))]
    assert [len(f.lines) for f in films(published(crane(rows, rows)).material)] == [6, 6]
    assert films(published(crane(rows, track="typed")).material) == ()


def test_captions_that_begin_at_nought_again_are_a_further_clip() -> None:
    """As they come in: the second clip counted on from 4:00, but its times as they were written."""
    rows = [(n * 40, fact) for n, fact in enumerate((*BRAKE, *GEAR))]
    known = crane([*rows, *((245 + at, fact) for at, fact in rows)])
    (record,) = known.sessions
    notes = tuple(replace(n, said_at=clock(n.at - 245)) if n.at and n.at >= 245 else n for n in record.notes)
    found = films(published(replace(known, sessions=(replace(record, notes=notes),), _places={})).material)
    assert [(film.title[-6:], film.lines[0].second, film.length) for film in found] == [
        ("clip 1", 0, 200),
        ("clip 2", 0, 200),
    ]


def test_a_time_that_is_out_of_step_makes_no_clip() -> None:
    rows = [(n * 40, fact) for n, fact in enumerate((*BRAKE, *GEAR))]
    known = crane(rows)
    (record,) = known.sessions
    notes = tuple(replace(n, said_at="0:01") if k == 3 else n for k, n in enumerate(record.notes))
    found = films(published(replace(known, sessions=(replace(record, notes=notes),), _places={})).material)
    assert [film.length for film in found] == [200]


def test_what_was_tried_is_told_with_what_was_heard_after_it() -> None:
    rows: list[tuple[int, Fact]] = [
        (0, did("replace", "brake band", "new lining")), (60, good("brake band", "holds")),
        (90, did("clean", "hook")), (120, did("fit", "pin")), (150, suspects("rope")),
    ]  # fmt: skip
    told = tried(published(crane(rows)).material)
    assert [(row.text, row.detail) for row in told] == [
        ("brake band replaced, with new lining", "brake band: holds (good)"),
        ("hook cleaned", SILENCE),
        ("pin fitted", SILENCE),
    ]
    assert "- Brake band replaced, with new lining (session 1 at 0:00): brake band: holds (good)" in tried_text(told)


def test_an_attempt_to_start_is_a_trial_only_when_it_was_said_what_came_of_it() -> None:
    rows: list[tuple[int, Fact]] = [(0, did("start", "crane")), (30, did("fit", "pin")), (60, good("pin", "snug"))]
    rows += [(100 + n, later(f"hook {n}", "question")) for n in range(5)]  # long after the first attempt
    rows += [(400, did("start", "engine")), (410, bad("engine", "dies"))]
    told = tried(published(crane(rows)).material)
    assert [(row.text, row.detail) for row in told] == [
        ("pin fitted", "pin: snug (good)"),
        ("engine: start tried", "engine: dies (a fault)"),
    ]


def test_what_it_was_set_to_is_no_result() -> None:
    set_to = replace(read("clearance", 0.4, "mm", "pawl"), role="set")
    told = tried(published(crane([(0, did("adjust", "pawl")), (30, set_to)])).material)
    assert [row.detail for row in told] == [SILENCE]


def test_the_text_below_a_film_keeps_to_the_limit_and_has_no_angle_brackets() -> None:
    rows = [(n * 20, bad(f"pin <{n}>", "worn " * 10)) for n in range(300)] + [
        (n, later(f"why <{n}> squeals", "question")) for n in range(300)
    ]
    found = published(crane(rows))
    text = description(found.log(), [[c.line for c in chapters(three_jobs(), "Crane")]], "Mind the load.")
    assert len(text) <= TEXT
    assert not set("<>") & set(text)
    assert text.rstrip().endswith("Mind the load.")
    assert problems([line for line in text.splitlines() if line[:1].isdigit()]) == []
