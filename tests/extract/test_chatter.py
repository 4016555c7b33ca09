"""A page of talk without any shop facts gives no fact at all."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note
from worklog_tui.rulebook import Rulebook

PUMP = Machine("Pump house engine", kind="petrol engine", fuel="petrol", ignition="magneto", cylinders=1)

CHATTER = """
Morning all, welcome back, and thank you for the two thousand new subscribers.
It rained all night and the lane is under a foot of water, so the bus didn't come.
My sister rang at half past seven, which is early for her.
I paid forty quid for these boots and they have never let me down.
The camera is on a bucket this week because the tripod went to a wedding.
If you hear singing, that's the choir next door, they practise on Thursdays.
We had soup. It was good soup. My neighbour makes it with six kinds of beans.
Somebody asked how old I am. Sixty-three in March, and I feel every day of it.
The last video got eleven thousand views, and I've read all the comments, even the rude ones.
My grandson is nine and wants to be a pilot, or a dentist, depending on the day.
There's a blackbird on the roof. He sits there and tells me what to do.
The football was on last night. Three nil, and we deserved every one of them.
I used to work for a man who whistled. Twenty-two years of the same tune.
Let me move this light. Can you see me? Good. Not that it helps.
I'll be honest with you, I didn't sleep much, the wind was terrible.
The post came at ten with a catalogue and a bill for a hundred and twelve pounds.
You can send me a letter, the address is on the website, I answer all of them in the winter.
I've got a new mug. It says world's best uncle on it. I bought it myself.
Right, where was I. I had it in my head a minute ago.
My wife says hello. She doesn't, but she would if she were here.
""".strip().splitlines()


@pytest.mark.parametrize("track", ["captions", "typed"])
def test_chatter_gives_no_fact(book: Rulebook, track: str) -> None:
    notes = [Note(f"n{k}", "s", words, at=k * 9, track=track, arrival=k) for k, words in enumerate(CHATTER)]
    facts = [f for f in read_session(book, PUMP, notes) if f.confidence >= CONFIDENCE_LINE]
    assert [f"{f.kind} by {f.rule}: {f.quote}" for f in facts] == []
