"""Walks the rules of grammars/sayings: each carries its own proof. There is no list of rules here."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from worklog_tui import places
from worklog_tui.extract import explain
from worklog_tui.model import Fact, Machine, SpecifiedValue
from worklog_tui.rulebook import Rulebook

ENGINE = Machine("Bench engine", kind="four-cylinder petrol engine", fuel="petrol", ignition="battery", cylinders=4,
                 specified=(SpecifiedValue("", "compression", "120 psi"),))  # fmt: skip
FIELDS = {"with": "used", "about": "topic"}


def rules() -> Iterator[tuple[str, dict[str, Any]]]:
    for path in sorted((places.grammars() / "sayings").glob("*.toml")):
        for rule in tomllib.loads(path.read_text(encoding="utf-8"))["rule"]:
            yield f"{path.name}:{rule['id']}", rule


RULES = dict(rules())
EXAMPLES = [(name, example) for name, rule in RULES.items() for example in rule["examples"]]
NEVERS = [(name, words) for name, rule in RULES.items() for words in rule["never"]]


def test_ids_are_unique() -> None:
    ids = [rule["id"] for rule in RULES.values()]
    assert len(ids) == len(set(ids)) == len(list(rules()))


@pytest.mark.parametrize("name", RULES)
def test_a_rule_has_two_examples_and_something_that_it_never_matches(name: str) -> None:
    rule = RULES[name]
    assert set(rule) <= {"id", "says", "gives", "examples", "never", "confidence"}
    assert len(rule["examples"]) >= 2
    assert rule["never"]
    assert 0 < rule["confidence"] <= 1


@pytest.mark.parametrize(("name", "example"), EXAMPLES, ids=[f"{n}:{e['text'][:40]}" for n, e in EXAMPLES])
def test_the_examples_hold(book: Rulebook, name: str, example: dict[str, Any]) -> None:
    rule, wanted = RULES[name], {FIELDS.get(k, k): v for k, v in example.items() if k != "text"}
    trail = explain(book, ENGINE, example["text"])
    facts = [f for f in trail.facts if f.kind == rule["gives"]["kind"]]
    assert any(_holds(f, wanted) for f in facts), "\n".join([f"wanted {wanted}", *map(str, facts), *trail.lines])


def _holds(fact: Fact, wanted: dict[str, Any]) -> bool:
    for field, value in wanted.items():
        got = getattr(fact, field)
        if isinstance(value, list):
            value = tuple(value)
        if isinstance(value, float) and isinstance(got, float | int):
            if abs(got - value) > 1e-9:
                return False
        elif str(got).lower() != str(value).lower():
            return False
    return True


@pytest.mark.parametrize(("name", "words"), NEVERS, ids=[f"{n}:{w[:40]}" for n, w in NEVERS])
def test_what_it_must_never_match(book: Rulebook, name: str, words: str) -> None:
    trail = explain(book, ENGINE, words)
    taken = [f for f in trail.facts if f.rule == RULES[name]["id"]]
    assert not taken, "\n".join([*map(str, taken), *trail.lines])


@pytest.mark.parametrize("path", sorted(p.name for p in (places.grammars() / "sayings").glob("*.toml")))
def test_rules_are_short_lines(path: str) -> None:
    text = Path(places.grammars() / "sayings" / path).read_text(encoding="utf-8")
    assert "*" not in "".join(line for line in text.splitlines() if line.startswith("says"))
