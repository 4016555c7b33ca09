"""The vocabulary of states and actions: what the files of grammars/conditions and grammars/actions.toml hold."""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

GRAMMARS = Path(__file__).parents[2] / "grammars"
FILES = sorted((GRAMMARS / "conditions").glob("*.toml"))
VERDICTS = {"bad", "good", "noted"}
CONDITION_KEYS = {"name", "said", "verdict", "of", "weak", "opposite", "verb", "part"}
ACTION_KEYS = {"means", "name", "verbs", "past", "split", "needs", "short"}
KINDS = {"part", "fluid", "joint", "fastener", "machine", "quality", "tool", "material", "control"}
ACTIONS = """
    remove strip clean check test replace fit adjust repair drain fill flush lubricate soak bleed make order connect
    disconnect charge start free tighten
"""
LABELLED = frozenset(ACTIONS.split())
"The actions of a repair log, as the guide of the labelled cases lists them."
SET_ASIDE = {"loosen", "measure", "move"}
"Known so that they are not mistaken for another; the reader drops them."
FAMILIES = {
    "bad": """
        worn slack seized stuck sticking gummed perished cracked split torn sheared stripped bent warped scored
        pitted glazed burnt corroded rusty blocked leaking weeping dripping wet oily sooty dry loose missing broken
        dead flat shorted drifting noisy rumbling rattling knocking squealing rough notchy hot overheating smoking
        hunting misfiring stalls slipping dragging spongy sinks low empty overfull milky contaminated bodged
        hardened swollen crumbled collapsed snapped frayed chafed melted jammed binding fouled clogged plugged
        finished unserviceable play grooved stale
    """,
    "good": """
        good fine free clean clear dry sound intact tight solid smooth quiet sweet true straight flat even tan fixed
        cured sorted mint lovely healthy reusable serviceable holding charging seals lifts starts works blue strong
    """,
    "noted": "original inconclusive different arrived home-made",
}
PHRASES = {
    "bad": """
        no spark; weak spark; open circuit; no reading; won't start; fires and dies; no compression; no power; u/s;
        no oil pressure; no flow; not charging; won't hold; doesn't seal; no sign of life; out of true; out of line;
        wrong part; wrong size; smells of petrol; past it; had it; no good; not right; does not lift; no fuel;
        does not shut off; does not build up; runs rough; light under it; full of muck; no clearance
    """,
    "good": """
        moves freely; nothing wrong with it; fat blue; no leaks; no cracks; not bent; as it should be; spot on;
        bang on; within limits; in line; shuts off; like new; no complaints; runs well; starts first time;
        good flow; no play
    """,
    "noted": """
        someone has been in here before; painted over; replaced before; no marking; no difference; not sure;
        wrong colour but fits; date stamp
    """,
}
MEANT = """
    take off = remove; take apart = strip; scrape = clean; inspect = check; bench test = test; swap = replace;
    renew = replace; change = replace; refit = fit; put back = fit; gap = adjust; back off = adjust; lap = repair;
    solder = repair; straighten = repair; siphon = drain; top up = fill; back flush = flush; grease = lubricate;
    steep = soak; prime = bleed; knock up = make; fabricate = make; send for = order; hook up = connect;
    unplug = disconnect; trickle charge = charge; fire up = start; kick over = start; hit the button = start;
    unstick = free; nip up = tighten; torque = tighten; do up = tighten; slacken = loosen
"""


def plain(words: str) -> str:
    """The words as the reader compares them: lower case, no apostrophe, single blanks."""
    return " ".join(words.lower().replace("'", "").split())


def read(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


def conditions() -> Iterator[tuple[str, str, dict[str, Any]]]:
    """Each condition with its file's name and its verdict."""
    for path in FILES:
        data = read(path)
        for condition in data["condition"]:
            yield path.name, condition.get("verdict", data["verdict"]), condition


def wordings(condition: dict[str, Any]) -> list[str]:
    return [condition["name"], *condition.get("said", ())]


def said_by(verdict: str) -> set[str]:
    return {plain(said) for _, of, condition in conditions() if of == verdict for said in wordings(condition)}


def actions() -> list[dict[str, Any]]:
    return list(read(GRAMMARS / "actions.toml")["action"])


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_file_of_states_names_its_verdict_and_knows_no_other_keys(path: Path) -> None:
    data = read(path)
    assert set(data) == {"verdict", "condition"}
    assert data["verdict"] in VERDICTS
    for condition in data["condition"]:
        assert set(condition) <= CONDITION_KEYS, condition["name"]
        assert condition.get("verdict", data["verdict"]) in VERDICTS, condition["name"]
        assert condition["name"].strip()
        for flag in ("weak", "verb"):
            assert condition.get(flag, True) is True, f"{condition['name']}: leave {flag} out instead of false"


def test_states_are_written_in_lower_case_with_single_blanks() -> None:
    for file, _, condition in conditions():
        for said in (*wordings(condition), *condition.get("of", ())):
            assert said == " ".join(said.lower().split()), f"{file}: {said!r}"


def test_a_wording_stands_once_within_a_verdict_unless_it_is_bound_to_parts() -> None:
    free = [(verdict, c) for _, verdict, c in conditions() if not c.get("of")]
    seen = Counter((verdict, plain(said)) for verdict, c in free for said in wordings(c))
    assert [key for key, times in seen.items() if times > 1] == []


def test_a_wording_that_is_good_of_one_thing_and_bad_of_another_says_of_what() -> None:
    verdicts: dict[str, set[str]] = {}
    for _, verdict, condition in conditions():
        for said in wordings(condition) if not condition.get("of") else ():
            verdicts.setdefault(plain(said), set()).add(verdict)
    assert {said for said, found in verdicts.items() if len(found) > 1} == set()


def test_a_state_is_bound_to_named_parts_or_to_a_known_kind() -> None:
    bound = {of for _, _, condition in conditions() for of in condition.get("of", ())}
    parts = {part["name"] for path in (GRAMMARS / "parts").glob("*.toml") for part in read(path)["part"]}
    assert bound - parts - {f"kind:{kind}" for kind in KINDS} == set()


@pytest.mark.parametrize("verdict", sorted(VERDICTS))
def test_every_family_of_states_is_there(verdict: str) -> None:
    wanted = {*FAMILIES[verdict].split(), *map(plain, PHRASES[verdict].split(";"))}
    assert wanted - said_by(verdict) == set()


def test_there_is_enough_to_choose_from() -> None:
    everything = [condition for _, _, condition in conditions()]
    assert len({condition["name"] for condition in everything}) >= 400
    assert sum(len(wordings(condition)) for condition in everything) >= 2500


def test_an_opposite_is_itself_a_state() -> None:
    names = {condition["name"] for _, _, condition in conditions()}
    assert {c["opposite"] for _, _, c in conditions() if c.get("opposite")} - names == set()


def test_what_is_denied_is_good_and_what_is_wanting_is_bad() -> None:
    """`no leaks` is good, `no spark` is bad: the longest wording decides, not the word `no`."""
    good, bad = said_by("good"), said_by("bad")
    assert {"no leaks", "no cracks", "no play", "not bent", "not worn"} <= good
    assert {"no spark", "no compression", "no power", "no flow", "not charging"} <= bad
    assert not {"no spark", "no compression", "no power"} & good


def test_everyday_words_count_only_beside_a_part() -> None:
    everyday = {"good", "fine", "ok", "loose", "low", "hot", "rough", "works", "clean", "better", "gone"}
    free = [c for _, _, c in conditions() if not c.get("weak") and not c.get("of")]
    assert everyday & {plain(said) for condition in free for said in wordings(condition)} == set()


def test_the_actions_are_those_of_a_repair_log_and_those_that_are_set_aside() -> None:
    assert {action["name"] for action in actions()} == LABELLED | SET_ASIDE


def test_an_action_knows_no_other_keys_and_lists_each_verb_once() -> None:
    for action in actions():
        assert set(action) <= ACTION_KEYS, action["name"]
        for key in ("verbs", "split", "short"):
            times = Counter(action.get(key, ()))
            assert [verb for verb, n in times.items() if n > 1] == [], f"{action['name']}: {key}"
        for verb in (*action["verbs"], *action.get("split", ()), *action.get("short", ())):
            assert verb == " ".join(verb.lower().split()), verb


def test_a_verb_without_an_object_of_its_own_kind_belongs_to_one_action() -> None:
    times = Counter(verb for action in actions() if not action.get("needs") for verb in action["verbs"])
    assert [verb for verb, n in times.items() if n > 1] == []


def test_irregular_forms_and_particles_belong_to_verbs_of_their_action() -> None:
    for action in actions():
        known = {*action["verbs"], *action.get("split", ())}
        assert set(action.get("past", {})) <= known, action["name"]
        for verb in action.get("split", ()):
            assert " " in verb, f"{verb}: a verb that is split has a particle"


@pytest.mark.parametrize("pair", [pair.strip() for pair in MEANT.split(";")])
def test_a_verb_means_the_action_that_a_mechanic_would_write_down(pair: str) -> None:
    said, action = pair.split(" = ")
    assert action in {a["name"] for a in actions() if said in a["verbs"]}
