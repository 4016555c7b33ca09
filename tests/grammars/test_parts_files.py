"""The vocabulary of parts, causes and mis-heard words: every file has the form that a restorer may copy."""

from __future__ import annotations

import tomllib
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from worklog_tui import places
from worklog_tui.extract.heard.clean import clean
from worklog_tui.extract.heard.words import split
from worklog_tui.rulebook import Rulebook

GRAMMARS = places.grammars()
PART_FILES = sorted((GRAMMARS / "parts").glob("*.toml"))
PART_KEYS = {"name", "said", "per", "kind", "quantities", "loose"}
KINDS = {"part", "fluid", "joint", "fastener", "machine", "quality", "tool", "material", "control"}
PER = {"cylinder", "valve", "wheel", "cell", "phase"}
QUANTITIES = {
    "compression", "pressure", "gap", "length", "thread", "temperature", "duration", "run_time", "voltage", "current",
    "resistance", "torque", "speed", "angle", "turns", "volume", "mass", "leakage", "density", "ratio",
}  # fmt: skip
SHARED: dict[str, str] = {}
"Ways of saying that two parts share on purpose: the words -> why."


def parsed(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


def parts() -> list[tuple[str, dict[str, Any]]]:
    return [(path.name, part) for path in PART_FILES for part in parsed(path)["part"]]


def entries(name: str, key: str) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = parsed(GRAMMARS / name)[key]
    return found


def tidy(words: str) -> bool:
    return bool(words) and words == words.lower() and words == " ".join(words.split())


@pytest.mark.parametrize("path", PART_FILES, ids=lambda path: path.stem)
def test_a_file_is_one_system_with_parts(path: Path) -> None:
    data = parsed(path)
    assert set(data) == {"system", "part"}
    assert tidy(data["system"])
    assert data["part"]


@pytest.mark.parametrize("path", PART_FILES, ids=lambda path: path.stem)
def test_a_part_has_only_known_keys_and_values(path: Path) -> None:
    for part in parsed(path)["part"]:
        assert set(part) <= PART_KEYS, part["name"]
        assert part.get("kind", "part") in KINDS, part["name"]
        assert part.get("per", "cylinder") in PER, part["name"]
        assert set(part.get("quantities", ())) <= QUANTITIES, part["name"]
        assert part.get("loose", True) is True, part["name"]


def test_words_are_lower_case_with_single_spaces() -> None:
    wrong = [said for _, part in parts() for said in (part["name"], *part.get("said", ())) if not tidy(said)]
    assert wrong == []


def test_a_name_stands_once_in_the_folder() -> None:
    counted = Counter(part["name"] for _, part in parts())
    assert [name for name, count in counted.items() if count > 1] == []


def test_no_way_of_saying_is_the_name_of_another_part_or_stands_under_two() -> None:
    owner = {part["name"]: part["name"] for _, part in parts()}
    wrong = []
    for file, part in parts():
        for said in part.get("said", ()):
            if owner.setdefault(said, part["name"]) != part["name"] and said not in SHARED:
                wrong.append(f"{file}: {said!r} of {part['name']!r} is {owner[said]!r} too")
    assert wrong == []


def test_a_way_of_saying_is_listed_once() -> None:
    assert [part["name"] for _, part in parts() if len(set(part.get("said", ()))) != len(part.get("said", ()))] == []


def test_the_usual_shorthand_of_the_bench_is_known() -> None:
    known = {said for _, part in parts() for said in (part["name"], *part.get("said", ()))}
    shorthand = [
        "plg",
        "pts",
        "gskt",
        "brg",
        "carb",
        "dizzy",
        "mag",
        "rad",
        "alt",
        "gen",
        "hd",
        "vlv",
        "flwhl",
        "govnr",
        "sprng",
    ]
    shorthand += [
        "scrw",
        "air filtr",
        "hd gskt",
        "rockr cvr",
        "cyl",
        "batt",
        "strtr",
        "blt",
        "wshr",
        "tstat",
        "o/p",
        "w/pump",
    ]
    assert [word for word in shorthand if word not in known] == []


def test_both_sides_of_the_ocean_say_the_same_part() -> None:
    name_of = {said: part["name"] for _, part in parts() for said in (part["name"], *part.get("said", ()))}
    pairs = [
        ("gudgeon pin", "wrist pin"), ("sump", "oil pan"), ("silencer", "muffler"), ("earth strap", "ground strap"),
        ("tyre", "tire"), ("plug lead", "plug wire"), ("rocker cover", "valve cover"), ("carburettor", "carburetor"),
        ("fuel tank", "gas tank"), ("valve clearance", "valve lash"), ("bonnet", "hood"), ("prop shaft", "driveshaft"),
    ]  # fmt: skip
    assert [(british, american) for british, american in pairs if name_of.get(british) != name_of.get(american)] == []


def test_causes_have_a_name_ways_of_saying_and_a_system() -> None:
    causes = entries("causes.toml", "cause")
    assert len(causes) >= 150
    for cause in causes:
        assert set(cause) <= {"name", "said", "system"}, cause["name"]
        assert tidy(cause["system"]), cause["name"]
        assert all(tidy(said) for said in (cause["name"], *cause.get("said", ()))), cause["name"]


def test_a_cause_is_named_once_and_no_words_mean_two_causes() -> None:
    owner: dict[str, str] = {}
    wrong = []
    for cause in entries("causes.toml", "cause"):
        for said in (cause["name"], *cause.get("said", ())):
            if said in owner:
                wrong.append(f"{said!r}: {owner[said]!r} and {cause['name']!r}")
            owner[said] = cause["name"]
    assert wrong == []


def test_a_cause_is_more_than_a_part() -> None:
    known = {said for _, part in parts() for said in (part["name"], *part.get("said", ()))}
    assert [c["name"] for c in entries("causes.toml", "cause") if c["name"] in known] == []


def vocabulary() -> set[str]:
    """Every term of the other grammar files, and the words that they are made of."""
    found: set[str] = set()

    def walk(data: Any) -> None:
        if isinstance(data, str):
            low = data.lower()
            found.update((low, low.replace("-", " ")))
        elif isinstance(data, dict):
            for key, value in data.items():
                found.add(str(key).lower())
                walk(value)
        elif isinstance(data, list):
            for value in data:
                walk(value)

    for path in GRAMMARS.rglob("*.toml"):
        if path.name != "misheard.toml":
            walk(parsed(path))
    return found


def test_a_mis_heard_word_means_something_that_the_vocabulary_knows() -> None:
    known = vocabulary()

    def means(words: str) -> bool:
        return (
            words in known
            or words.removesuffix("s") in known
            or all(word in known or word.rstrip("s") in known for word in words.split())
        )

    assert [m["means"] for m in entries("misheard.toml", "misheard") if not means(m["means"])] == []


def test_mis_heard_entries_have_the_form_of_the_loader() -> None:
    found = entries("misheard.toml", "misheard")
    assert len(found) >= 150
    for entry in found:
        assert set(entry) <= {"heard", "means", "near"}, entry["means"]
        assert entry["heard"], entry["means"]
        assert all(tidy(heard) and heard != entry["means"] for heard in entry["heard"]), entry["means"]
        assert all(tidy(near) and " " not in near for near in entry.get("near", ["one"])), entry["means"]
        assert "near" not in entry or entry["near"], entry["means"]


PLAIN_TALK = (
    "i will check the drill again, well, the mill can wait",
    "there are two bolts in the battery tray and the lights are on",
    "give it a nip and tighten the three screws, then break it loose",
    "put the rotor on, and the bottle of petrol is full of muck",
    "it really needs a new switch and we ran out of time for a test",
    "the government sent a letter about the school and the pool",
    "hold the paper over the spindle and call it done, not blocked yet",
    "the number to call about the bearing is on the board in the hall",
)


@pytest.mark.parametrize("words", PLAIN_TALK)
def test_plain_talk_is_left_alone(book: Rulebook, words: str) -> None:
    heard = split(words)
    assert [word.low for word in clean(heard, book.misheard, frozenset())] == [word.low for word in heard]


MISHEARD_TALK = (
    ("the points gab is twelve thousands", "points gap"),
    ("a new head casket and the bolts torqued down", "head gasket"),
    ("all four globe plugs are open", "glow plug"),
    ("thick err in the brake lines so bleed it", "air"),
    ("ten point four bolts with the starter turning", "volts"),
    ("number two cylinder has a bent push rot", "pushrod"),
    ("the jib screws on the cross slide were slack", "gib"),
    ("it is the break shoe that drags on the drum", "brake shoe"),
)


@pytest.mark.parametrize(("words", "meant"), MISHEARD_TALK)
def test_a_mis_heard_word_is_taken_back_beside_what_bears_it_out(book: Rulebook, words: str, meant: str) -> None:
    said = " ".join(word.low for word in clean(split(words), book.misheard, frozenset()))
    assert meant in said
