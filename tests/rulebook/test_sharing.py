"""What is kept of the grammars says everything once: equal, of the same kinds, and each part one object."""

from __future__ import annotations

import marshal

from worklog_tui.rulebook.sharing import shared


def test_equal_parts_become_one_object_and_stay_so_in_the_file() -> None:
    made = {
        "valve cover": (("part", "valve cover", frozenset({"a", "b"})),),
        "cover": (("part", "".join(["valve ", "cover"]), frozenset({"b", "a"})),),
    }
    for value in (shared(made), marshal.loads(marshal.dumps(shared(made)))):
        assert value == made
        assert value["cover"][0] is value["valve cover"][0]


def test_what_is_equal_but_of_another_kind_stays_apart() -> None:
    one, true, real = shared(((1,), (True,), (1.0,)))
    assert (type(one[0]), type(true[0]), type(real[0])) == (int, bool, float)


def test_equal_lists_and_tables_become_one_object_too() -> None:
    one, other, more = shared(({"kind": "work", "even": ["not"]}, {"kind": "work", "even": ["not"]}, {"even": ["if"]}))
    assert one is other
    assert more == {"even": ["if"]}
