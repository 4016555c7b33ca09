"""Many texts are kept compressed, some together; each comes back as it was."""

from __future__ import annotations

import pytest

from worklog_tui.rulebook.texts import TOGETHER, Texts, packed

MANY = sorted(f"{part} {n}" for part in ("belt", "cover", "ölstand", "pump", "") for n in range(60))


@pytest.mark.parametrize("count", [0, 1, TOGETHER - 1, TOGETHER, TOGETHER + 1, len(MANY)])
def test_each_comes_back_as_it_was(count: int) -> None:
    some = MANY[:count]
    texts = Texts(packed(some))
    assert list(texts) == [texts[n] for n in range(count)] == texts[:] == some
    assert texts[3:90:7] == some[3:90:7]
    for beyond in (count, -1):
        with pytest.raises(IndexError):
            texts[beyond]


def test_a_text_is_found_by_the_first_of_each_that_are_kept_together() -> None:
    texts = Texts(packed(MANY))
    for sought in (*MANY, "", "a", "belt 1a", "pump 99", "zz", "\ud800"):
        place = texts.place(sought, texts.heads())
        assert all(text < sought for text in MANY[:place])
        assert all(text >= sought for text in MANY[place:])


def test_they_take_a_third_of_the_room_or_less() -> None:
    terms = [
        f"{side} {part} {n}" for side in ("left", "right") for part in ("wheel bearing", "brake") for n in range(99)
    ]
    _, blocks = packed(terms)
    assert sum(map(len, blocks)) * 3 < sum(map(len, terms))


def test_a_text_with_a_zero_byte_cannot_be_kept() -> None:
    with pytest.raises(ValueError, match="zero byte"):
        packed(["belt", "be\0lt"])
