"""Viewers' comments: their words, and nobody's name."""

from __future__ import annotations

import pytest

from worklog_tui.notes.comments import looks_like_comments, read_comments


def words(text: str) -> list[str]:
    return [comment.words for comment in read_comments(text)]


def test_one_comment_a_paragraph_in_order() -> None:
    comments = read_comments("Why does the gate stick?\nIt did last year.\n\n \t\nNice work.\r\n\r\nGrease it\n")
    assert [(comment.number, comment.words) for comment in comments] == [
        (0, "Why does the gate stick? It did last year."),
        (1, "Nice work."),
        (2, "Grease it"),
    ]


@pytest.mark.parametrize(
    ("pasted", "kept"),
    [
        ("@gatefan_12\n2 weeks ago\nWhy does it stick?\nReply", "Why does it stick?"),
        ("@gatefan_12 \u2022 3 days ago (edited)\nWhy does it stick?\n12 likes\n4 replies", "Why does it stick?"),
        ("Petra Q 1 year ago\nWhy does it stick?", "Why does it stick?"),
        ("@someone.else why does it stick", "why does it stick"),
        ("write to me at some.one+x@mail.example.org please", "write to me at please"),
        ("see https://a.example/b?c=d and www.gate.example", "see and"),
        ("try gatefans.com/forum first", "try first"),
        ("Grease it. Cheers, Petra", "Grease it. Cheers,"),
        ("Grease it.\n- Petra from Northtown", "Grease it."),
    ],
)
def test_names_handles_links_and_addresses_go(pasted: str, kept: str) -> None:
    assert words(pasted) == [kept]


@pytest.mark.parametrize(
    "said", ["9 volts @ 2000 rpm", "150 psi @idle", "12V@5A", "set it @TDC", "use SAE 30. Then wait"]
)
def test_shop_talk_stays(said: str) -> None:
    assert words(said) == [said]


def test_a_comment_that_is_only_a_link_keeps_its_place() -> None:
    assert words("first\n\nhttps://a.example/b\n\nlast") == ["first", "", "last"]


def test_hostile_comments_are_cleaned() -> None:
    assert words("a\x1b[2Jb [/] \u202e<script>") == ["ab [/] <script>"]


def test_a_paste_from_a_page_of_comments_is_known_by_what_stands_beside_them() -> None:
    assert looks_like_comments("@gatefan_12\n2 weeks ago\nWhy does it stick?\nReply\n\n@b\n1 day ago\nGrease it\nReply")
    assert not looks_like_comments("took the guard off\nthe belt is worn\nReply from the maker: 18 thou\nback on")
    assert not looks_like_comments("[0:02] two weeks ago it ran\n[0:05] took the guard off")
