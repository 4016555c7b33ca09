"""Rules made into patterns over signs."""

from __future__ import annotations

from collections.abc import Iterable

from worklog_tui.rulebook.patterns import Pattern, Rule
from worklog_tui.rulebook.says import Edge, Element, Gap, One, classes, parse
from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.step_making import steps_of
from worklog_tui.rulebook.steps import ENDS


def compile_rule(rule: Rule, signs: Signs) -> Pattern:
    """The pattern of a rule; a SaysError for a `says` that cannot be understood."""
    slots: list[str] = []
    elements = parse(rule.says)
    text = "".join(_text(e, signs, slots) for e in elements)
    return Pattern(rule, tuple(enumerate(slots, 1)), (text,), steps=steps_of(elements, signs))


def _set(chars: str, denied: bool = False) -> str:
    return f"[{'^' if denied else ''}{_runs(chars)}]" if chars else ("." if denied else "(?!)")


def _runs(chars: str) -> str:
    """Characters as an expression takes them, those that follow one another as from-to: they are read sooner so."""
    runs: list[list[str]] = []
    for char in sorted(set(chars)):
        if runs and ord(char) == ord(runs[-1][1]) + 1:
            runs[-1][1] = char
        else:
            runs.append([char, char])
    return "".join(first if first == last else f"{first}-{last}" for first, last in runs)


def _text(e: Element, signs: Signs, slots: list[str]) -> str:
    if isinstance(e, Gap):
        shut = "".join(signs.having(c) for c in (("stop",) if e.wide else (*ENDS, "thing")))
        return f"{_set(shut, denied=True)}{{0,{e.most}}}?"
    if isinstance(e, Edge):
        ends = "".join(signs.having(c) for c in ENDS)
        return f"(?![^{ends}])" if e.end else f"(?<![^{ends}])"
    if isinstance(e, One):
        chars = signs.having(e.cls)
        if e.denied:
            return f"(?!{_set(chars)})"
        if not e.slot:
            return _set(chars)
        slots.append(e.slot)
        return f"({_set(chars)})"
    ways = "|".join("".join(_text(x, signs, slots) for x in way) for way in e.ways)
    return f"(?:{ways}){'?' if e.optional else ''}"


def named_classes(rules: Iterable[Rule]) -> set[str]:
    """Every class that the rules name, literals as `=word`."""
    found: set[str] = set()
    for rule in rules:
        found |= classes(parse(rule.says))
    return found
