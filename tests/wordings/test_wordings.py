"""The reader is measured on single utterances of many trades and voices, in bulk.

Each file of this folder was written before anybody looked at what the reader makes of it; its head says how many of
its lines were read then. `pytest tests/wordings -s` prints how many are read today, and what was made up.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from tests.cases.judge import same
from tests.wordings.utterances import FIELDS, read, utterances
from worklog_tui.rulebook import Rulebook

FILES = sorted(Path(__file__).parent.glob("*.txt"))
FLOORS = {"finding": 0.72, "work": 0.69, "suspect": 0.84, "follow_up": 0.74, "reading": 0.92}
"The share of utterances of a kind, over all files, whose fact must be read; floors may only rise."
MADE_UP = 0.2
"The share of the lines that state nothing from which something may be read; may only fall."


@pytest.fixture(scope="module")
def counted(book: Rulebook) -> Counter[tuple[str, str]]:
    """How many utterances of each kind there are (`all`), and of how many the fact was read (`read`)."""
    total: Counter[tuple[str, str]] = Counter()
    print()
    for path in FILES:
        here: Counter[tuple[str, str]] = Counter()
        for one in utterances(path):
            facts = read(book, one)
            met = bool(facts) if one.kind == "nothing" else any(_meets(fact, one.wanted) for fact in facts)
            here += Counter({(one.kind, "all"): 1, (one.kind, "read"): int(met)})
        total += here
        print(f"{path.stem}: " + "; ".join(_told(here, kind) for kind in FIELDS if here[kind, "all"]))
    return total


def _meets(fact: dict[str, object], wanted: dict[str, object]) -> bool:
    return fact["kind"] == wanted["kind"] and same(fact, wanted)


def _told(counts: Counter[tuple[str, str]], kind: str) -> str:
    name = "made up from nothing" if kind == "nothing" else kind
    return f"{name} {counts[kind, 'read']} of {counts[kind, 'all']}"


@pytest.mark.parametrize("kind", FLOORS)
def test_utterances_are_read(kind: str, counted: Counter[tuple[str, str]]) -> None:
    assert counted[kind, "read"] >= FLOORS[kind] * counted[kind, "all"], _told(counted, kind)


def test_little_is_made_up(counted: Counter[tuple[str, str]]) -> None:
    assert counted["nothing", "read"] <= MADE_UP * counted["nothing", "all"], _told(counted, "nothing")


def test_a_line_without_the_form_is_named(tmp_path: Path) -> None:
    path = tmp_path / "odd.txt"
    path.write_text("# a remark\nfinding | seal / bad\n", encoding="utf-8")
    with pytest.raises(ValueError, match=r"odd\.txt, line 2"):
        list(utterances(path))
