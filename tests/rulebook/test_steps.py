"""The steps of a rule: they leave out rules that cannot stand in a text, and never one that does."""

from __future__ import annotations

import random

import pytest

from worklog_tui.rulebook.compiling import compile_rule
from worklog_tui.rulebook.patterns import Pattern, Patterns, Rule
from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.step_making import joined

SETS = {
    "pump": {"thing", "part"}, "is": {"copula", "=is"}, "very": {"degree"}, "worn": {"bad", "state"}, "off": {"=off"},
    "and": {"=and", "other"}, "well": {"other"}, ".": {"stop"}, ",": {"comma"}, "but": {"break"},
}  # fmt: skip
SIGNS = Signs.of_sets(frozenset(s) for s in SETS.values())
SAYS = (
    "<thing> is <bad>", "<thing> [<degree>] off", "^ <bad> $", "^ [and|well] <thing>", "<thing> ..2 <bad>",
    "<bad> ~4 <thing>",
    "<thing> (off|is <bad>) $", "(<thing> and|very) [well] <bad>", "off !<bad>", "[^] <thing> <bad>",
    "(^|and) <bad> !<thing>",
    "<bad> $", "well (is very worn|off) and", "<comma> ^ <thing>", "<thing> $ ~2 <bad>",
)  # fmt: skip


def patterns_of(rules: list[Pattern]) -> Patterns:
    return Patterns(rules, SIGNS, joined([pattern.steps for pattern in rules], SIGNS))


def tried(words: str, *says: str) -> list[str]:
    rules = [compile_rule(Rule(s, s, {"kind": "finding"}, (), (), 1.0), SIGNS) for s in says]
    return [p.rule.id for p in patterns_of(rules).triggered(written(words))]


def written(words: str) -> str:
    return "".join(SIGNS.of(frozenset(SETS[word])) for word in words.split())


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("worn is pump", "<thing> ..2 <bad>"),  # in another order
        ("pump is very worn", "<thing> is <bad>"),  # something between that the rule has no place for
        ("pump is worn", "^ <bad> $"),  # not where a clause begins
        ("worn and", "<bad> $"),  # not where one ends
    ],
)
def test_a_rule_is_not_tried_where_its_steps_are_not_met(words: str, says: str) -> None:
    assert tried(words, says) == []


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("well pump is worn", "<thing> is <bad>"),
        ("pump , worn .", "^ <bad> $"),
        ("well pump", "^ [and|well] <thing>"),
        ("pump off", "<thing> (off|is <bad>) $"),
    ],
)
def test_it_is_tried_where_they_are(words: str, says: str) -> None:
    assert tried(words, says) == [says]


def test_rules_come_in_their_order_and_without_those_whose_need_is_not_met() -> None:
    kinds = ("reading", "finding", "reading")
    rules = [compile_rule(Rule(str(n), "<thing>", {"kind": kind}, (), (), 1.0), SIGNS) for n, kind in enumerate(kinds)]
    patterns = patterns_of(rules)
    assert [p.rule.id for p in patterns.triggered(written("pump"))] == ["0", "1", "2"]
    readings = patterns.needing(lambda gives: [gives["kind"]])["reading"]
    assert [p.rule.id for p in patterns.triggered(written("pump"), readings)] == ["1"]


def test_no_rule_that_stands_in_a_text_is_left_out() -> None:
    chance = random.Random(5)
    rules = [compile_rule(Rule(s, s, {"kind": "finding"}, (), (), 1.0), SIGNS) for s in SAYS]
    patterns = patterns_of(rules)
    stood = left_out = 0
    for _ in range(3000):
        signs = written(" ".join(chance.choices(list(SETS), k=chance.randint(1, 9))))
        found = {p.rule.id for p in patterns.triggered(signs)}
        for rule in rules:
            if any(m.end() > m.start() for m in rule.matches(signs)):
                stood += 1
                assert rule.rule.id in found, (rule.rule.says, signs)
            else:
                left_out += rule.rule.id not in found
    assert stood > 2000
    assert left_out > 10_000
