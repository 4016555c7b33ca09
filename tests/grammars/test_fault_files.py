"""The fault files are sound, and a mistake in one is named with its file, its line and its cure."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.grammars.broken_files import PUMP
from worklog_tui import places
from worklog_tui.rulebook.faults import FaultBook, load_faults
from worklog_tui.rulebook.mistakes import GrammarMistake


def load(folder: Path, text: str) -> FaultBook:
    (folder / "diagnosis").mkdir(exist_ok=True)
    (folder / "diagnosis" / "pump.toml").write_text(text, encoding="utf-8")
    return load_faults([folder])


@pytest.fixture(scope="module")
def shipped() -> FaultBook:
    return load_faults([places.grammars()])


def test_the_shipped_files_have_no_mistake(shipped: FaultBook) -> None:
    assert len(shipped.faults) >= 40
    assert len(shipped.cautions) >= 18


def test_every_complaint_has_causes_of_its_own_machines(shipped: FaultBook) -> None:
    for symptom in shipped.symptoms.values():
        assert symptom.first, symptom.id
        assert all(0.0 < q <= 1.0 for q in symptom.causes.values())


def test_every_caution_names_its_source(shipped: FaultBook) -> None:
    assert all(c.source for c in shipped.cautions.values())


def test_a_small_file_is_read(tmp_path: Path) -> None:
    book = load(tmp_path, PUMP)
    assert book.faults["pump.dry"].repair.say == "prime the pump"
    assert book.symptoms["no_water"].causes == {"pump.dry": 0.9}


def test_the_persons_own_file_adds_to_ours(tmp_path: Path) -> None:
    own = tmp_path / "own"
    (own / "diagnosis").mkdir(parents=True)
    text = PUMP.replace("pump.", "own.").replace("no_water", "own.no_water")
    (own / "diagnosis" / "mine.toml").write_text(text, encoding="utf-8")
    assert "own.dry" in load_faults([places.grammars(), own]).faults


@pytest.mark.parametrize(
    ("old", "new", "says", "cure"),
    [
        (
            'causes = { "pump.dry" = 0.9 }',
            'causes = { "pump.wet" = 0.9 }',
            "pump.wet, which is nowhere",
            "mend the name",
        ),
        ("base = [0.9, 0.1]", "base = [0.9, 0.2]", "does not add up to 1", "mend the numbers"),
        ("[0.1, 0.9]", "[0.95, 0.05]", "likelier than it is without any fault", "those of base"),
        ("prior = 0.2", "prior = 0.7", "the prior of pump.dry is 0.7", "at most 0.5"),
        ("leak = 0.02", "leak = 1.5", "outside 0 to 1 (leak = 1.5)", "such as 0.3"),
        ("minutes = 5 }", 'minutes = 5, cautions = ["dragons"] }', "the caution dragons", "mend the name"),
        ("minutes = 5 }", 'minutes = 5, access = ["lid"] }', "the access lid", "mend the name"),
        ("minutes = 1 }", "minutes = 0 }", "takes no time", "above 0"),
        ('name = "no water to prime it"', "", "fault pump.dry has no 'name'", "give it"),
        ('name = "no water to prime it"', 'name = "dry"\npriro = 0.1', "unknown key 'priro'", "did you mean 'prior'?"),
        ("minutes = 5 }", "minuts = 5, minutes = 5 }", "unknown key 'minuts'", "did you mean 'minutes'?"),
        (
            "prior = 0.2",
            'prior = 0.2\napplies_when = { has = ["wings"] }',
            "the trait of a machine wings",
            "mend the name",
        ),
        (
            "[[symptom]]",
            '[[discovery]]\nid = "x"\nheard = { parts = ["tap"] }\nvoids = ["nothing"]\n[[symptom]]',
            "the sign nothing",
            "mend the name",
        ),
        ("prior = 0.2", 'prior = "often"', "wrong kind", "neighbours"),
        ('system = "pump"', "system = pump", "it is not TOML", "mend that line"),
    ],
)
def test_a_mistake_is_named_with_its_cure(old: str, new: str, says: str, cure: str, tmp_path: Path) -> None:
    with pytest.raises(GrammarMistake) as caught:
        load(tmp_path, PUMP.replace(old, new, 1))
    told = [m for m in caught.value.mistakes if says in m.says]
    assert told, caught.value.mistakes
    assert told[0].file == "diagnosis/pump.toml"
    assert cure in told[0].cure


def test_a_mistake_names_its_line(tmp_path: Path) -> None:
    with pytest.raises(GrammarMistake) as caught:
        load(tmp_path, PUMP.replace("prior = 0.2", "prior = 0.7"))
    assert [m.line for m in caught.value.mistakes] == [4]


def test_an_unknown_key_and_an_id_said_twice_name_their_lines(tmp_path: Path) -> None:
    twice = '[[access]]\nid = "lid"\nsays = "lid"\nminutes = 1\n[[access]]\nid = "lid"\nsays = "lid"\nminuets = 1\n'
    with pytest.raises(GrammarMistake) as caught:
        load(tmp_path, twice)
    told = {m.says: (m.line, m.cure) for m in caught.value.mistakes}
    assert told["access lid stands there twice"] == (5, "take one out, or rename it (line 1)")
    assert told["access lid has the unknown key 'minuets'"] == (8, "did you mean 'minutes'?")
    assert told["access lid has no 'minutes'"][0] == 5


def test_a_fault_that_nothing_shows_or_reaches_is_told(tmp_path: Path) -> None:
    lost = '[[fault]]\nid = "pump.lost"\nname = "lost"\nprior = 0.1\nrepair = { say = "find it", minutes = 5 }\n'
    with pytest.raises(GrammarMistake) as caught:
        load(tmp_path, PUMP + lost)
    assert {m.says for m in caught.value.mistakes} == {
        "no symptom and no check reaches pump.lost",
        "nothing can show pump.lost",
    }


def test_covers_that_need_each_other_are_told(tmp_path: Path) -> None:
    circle = (
        '[[access]]\nid = "a"\nsays = "lid"\nminutes = 1\nneeds = ["b"]\n'
        '[[access]]\nid = "b"\nsays = "hood"\nminutes = 1\nneeds = ["a"]\n'
    )
    with pytest.raises(GrammarMistake, match="needs itself"):
        load(tmp_path, PUMP + circle)


def test_two_kinds_of_part_do_not_claim_one_word(tmp_path: Path) -> None:
    kind = '[[kind]]\nid = "{}"\nwords = ["link"]\ncheck = "feel it"\nminutes = {}\nbad = "renew it"\ngood = "go on"\n'
    with pytest.raises(GrammarMistake) as caught:
        load(tmp_path, PUMP + kind.format("rod", 2) + kind.format("chain", 0))
    told = {m.says: m.cure for m in caught.value.mistakes}
    assert told['kind chain and kind rod both claim the word "link"'] == "leave it to one of them"
    assert told["kind chain takes no time"] == "give it minutes above 0"
