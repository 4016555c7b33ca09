"""How far a state goes decides what it is worth; what is denied is not always praised."""

from __future__ import annotations

import pytest

from worklog_tui.rulebook import Rulebook

from .test_findings import found


@pytest.mark.parametrize(
    ("words", "verdict"),
    [
        ("The slip rings are a bit brown.", "noted"),
        ("The slip rings are brown and burnt.", "bad"),
        ("The parking brake works.", "good"),
        ("The parking brake works a little.", "bad"),
        ("The parking brake only works if you stamp on it.", "bad"),
        ("The smoke's gone.", "good"),
        ("The tine bolt has gone.", "bad"),
        ("There's oil on the drive belt.", "bad"),
        ("There's gravel in the chute.", "bad"),
        ("The drive belt is going like a lamb.", "good"),
        ("The armature miked thirty-one ten fine.", "good"),
        ("Four clamps, one snapped.", "bad"),
        ("What's in the gearbox is thick as treacle.", "bad"),
        ("There's a stop button on the tiller, and that works.", "good"),
    ],
)
def test_the_degree_of_a_state_makes_its_verdict(book: Rulebook, words: str, verdict: str) -> None:
    assert [v for _, v in found(book, words)] == [verdict]


@pytest.mark.parametrize(
    "words",
    [
        "The governor spring next, and I'm not touching it for a wedding.",
        "The old flywheel pin is out and it's not going back in.",
        "The idler sits out and it stays unhooked till spring.",
        "I let the cable in two turns. Adjusted the lever so there's a little play at the end.",
    ],
)
def test_what_is_let_be_is_no_finding(book: Rulebook, words: str) -> None:
    assert found(book, words) == []
