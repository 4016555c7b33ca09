"""The language of `says`: what a rule's line matches over tokens."""

from __future__ import annotations

import pytest

from worklog_tui.rulebook.compiling import compile_rule
from worklog_tui.rulebook.patterns import Pattern, Rule
from worklog_tui.rulebook.says import Gap, One, SaysError, classes, parse
from worklog_tui.rulebook.signs import Signs

SETS = {
    "pump": {"thing", "part"},
    "hose": {"thing", "joint"},
    "is": {"copula", "=is"},
    "very": {"degree"},
    "worn": {"bad", "state"},
    "sound": {"good", "state"},
    "off": {"=off"},
    "and": {"=and", "other"},
    "well": {"other"},
    ".": {"stop"},
    ",": {"comma"},
    "but": {"break"},
}
SIGNS = Signs.of_sets(frozenset(s) for s in SETS.values())


def pattern(says: str) -> Pattern:
    return compile_rule(Rule("t", says, {}, (), (), 1.0), SIGNS)


def found(says: str, words: str) -> list[str]:
    tokens = words.split()
    signs = "".join(SIGNS.of(frozenset(SETS[t])) for t in tokens)
    return [" ".join(tokens[m.start() : m.end()]) for m in pattern(says).matches(signs)]


def test_a_class_a_word_and_an_optional_word() -> None:
    assert found("<thing> is [<degree>] <bad>", "pump is very worn") == ["pump is very worn"]
    assert found("<thing> is [<degree>] <bad>", "pump is worn") == ["pump is worn"]
    assert found("<thing> is [<degree>] <bad>", "pump well worn") == []


def test_one_of_several() -> None:
    assert found("<thing> (off|is <good>)", "pump off , hose is sound") == ["pump off", "hose is sound"]


def test_a_gap_is_bounded_and_keeps_to_its_clause() -> None:
    assert found("<thing> ..2 <bad>", "pump well and worn") == ["pump well and worn"]
    assert found("<thing> ..2 <bad>", "pump well and well worn") == []
    assert found("<thing> ..2 <bad>", "pump , worn") == []
    assert found("<thing> ..2 <bad>", "pump but worn") == []


def test_a_gap_holds_no_thing_so_that_the_nearest_one_is_meant() -> None:
    assert found("<thing> ..3 <bad>", "pump and hose worn") == ["hose worn"]


def test_a_wide_gap_lets_commas_and_things_in_but_no_new_sentence() -> None:
    assert found("<thing> ~4 <bad>", "pump , hose is worn") == ["pump , hose is worn"]
    assert found("<thing> ~4 <bad>", "pump . hose , worn") == ["hose , worn"]


def test_what_must_not_follow() -> None:
    assert found("<bad> !<thing>", "worn hose") == []
    assert found("<bad> !<thing>", "worn .") == ["worn"]


def test_the_edges_of_a_clause() -> None:
    assert found("^ <bad> $", "worn") == ["worn"]
    assert found("^ <bad> $", "pump , worn .") == ["worn"]
    assert found("^ <bad> $", "very worn") == []


def test_slots_are_named_by_class_or_by_hand() -> None:
    p = pattern("<thing> is state:<bad>")
    assert sorted(name for _, name in p.slots) == ["state", "thing"]


def test_a_rule_is_tried_where_each_element_that_must_be_there_can_be() -> None:
    assert pattern("<thing> [<degree>] off").steps == ((frozenset({"thing"}), 99), (frozenset({"=off"}), 2))


@pytest.mark.parametrize(
    ("says", "complaint"),
    [
        ("<thing> ..40 <bad>", "at most"),
        ("<thing> * <bad>", "cannot understand"),
        ("(<thing>", "missing"),
        ("<thing>)", "closes nothing"),
        ("<thing> | <bad>", "only inside"),
        ("[<thing>]", "nothing in it must be there"),
        ("(<thing>|)", "empty choice"),
    ],
)
def test_what_is_refused(says: str, complaint: str) -> None:
    with pytest.raises(SaysError, match=complaint):
        parse(says)


def test_every_class_is_known_by_name() -> None:
    assert classes(parse("<thing> (is|<copula>) [<degree>] what:<bad>")) == {"thing", "=is", "copula", "degree", "bad"}
    assert parse("..3 <bad>") == (Gap(3, False), One("bad", "bad"))
