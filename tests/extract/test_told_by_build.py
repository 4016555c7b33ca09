"""What the build of a clause tells where no pattern of words has read it: what a look showed, and what was done."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Work
from worklog_tui.rulebook import Rulebook

PRESS = Machine("Loft press", kind="hand-fed platen press, driven by an electric motor", fuel="none", ignition="none")


def found(book: Rulebook, words: str) -> set[tuple[str, str]]:
    """(part, verdict) of all that was surely found."""
    facts = read_session(book, PRESS, [Note("n", "s", words, track="captions")])
    return {(f.part.lower(), f.verdict) for f in facts if isinstance(f, Finding) and f.confidence >= CONFIDENCE_LINE}


def done(book: Rulebook, words: str) -> set[tuple[str, str]]:
    """(action, part) of all that was surely done."""
    facts = read_session(book, PRESS, [Note("n", "s", words, track="captions")])
    return {(f.action, f.part.lower()) for f in facts if isinstance(f, Work) and f.confidence >= CONFIDENCE_LINE}


@pytest.mark.parametrize(
    ("words", "fact"),
    [
        ("hardly any lining left on those shoes", ("shoes", "bad")),
        ("way too much end play in the crankshaft", ("crankshaft", "bad")),
        ("not a trace of rust in the tank", ("tank", "good")),
        ("the idler runs as quiet as you like", ("idler", "good")),
        ("the gear pump refuses to pick up", ("gear pump", "bad")),
        ("somebody has brazed the bracket at some point", ("bracket", "noted")),
    ],
)
def test_what_a_look_showed(book: Rulebook, words: str, fact: tuple[str, str]) -> None:
    assert fact in found(book, words)


@pytest.mark.parametrize(
    "words",
    [
        "the new seal is fitted, with a bit of oil on the lip",
        "adjusted it so there's a little play in the cable",
        "some people run these with hardly any oil in the sump",
        "spray some water round the flange",
    ],
)
def test_what_was_used_set_or_only_talked_of_is_no_finding(book: Rulebook, words: str) -> None:
    assert not {fact for fact in found(book, words) if fact[1] == "bad"}


@pytest.mark.parametrize(
    ("words", "fact"),
    [
        ("gave the chain a good oiling", ("lubricate", "chain")),
        ("pressed the new bush in", ("fit", "bush")),
        ("took the slop out of the cable", ("adjust", "cable")),
        ("Ram out of the cylinder.", ("remove", "ram")),
    ],
)
def test_what_was_done(book: Rulebook, words: str, fact: tuple[str, str]) -> None:
    assert fact in done(book, words)


@pytest.mark.parametrize(
    "words",
    [
        "the cover is bolted to the block",
        "manifold off when it's cool",
        "they used to press the bush in cold",
        "the bolt is stripped",
    ],
)
def test_how_it_is_built_what_waits_and_what_others_did_is_no_work(book: Rulebook, words: str) -> None:
    assert not done(book, words)
