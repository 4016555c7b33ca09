"""Several things named in one breath: `rings or valves` are two suspects, `belt, seal and plug to order` three parts
needed.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.finders.alike_numbers import numbered
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing, Token

TEXT = {"suspect": "cause", "follow_up": "topic"}


def spread(draft: Draft, scene: Scene) -> list[Draft]:
    """The draft, or one for each thing that it is said of; `each` of a rule takes all things after it in the
    sentence.
    """
    if draft.kind == "number":
        return numbered(draft, scene)
    if draft.kind == "work" and draft.rule.gives.get("each"):
        return _each_work(draft, scene)
    if draft.kind not in TEXT or draft.thing is None:
        return [draft]
    things = [(draft.main, draft.thing)]
    if draft.rule.gives.get("each"):
        things = [
            (k, t)
            for k in scene.things(range(draft.main, len(scene.tokens)))
            if (t := scene.tokens[k].thing) is not None and t.known and not _is_deed(scene, k)
        ]
        things = (
            sorted(things + _unnamed(draft, scene), key=lambda row: row[0]) if draft.kind == "follow_up" else things
        )
    asks = draft.kind == "follow_up" and draft.fields["reason"] == "question"
    if len(things) == 1 and (asks or not things[0][1].also) and things[0] == (draft.main, draft.thing):
        return [draft]
    found = []
    for k, thing in things:
        for one in (thing, *thing.also):
            found.append(_of(draft, k, one, thing, scene))
        if draft.rule.gives.get("each") and not thing.also:
            found[-1].fields[TEXT[draft.kind]] = _deed_of(draft, k, scene) or found[-1].fields[TEXT[draft.kind]]
    return found


DEEDS = ("fluid", "material")
"Kinds of things whose names are deeds too: `oil the hinges`, `paint the guard`."


def _is_deed(scene: Scene, k: int) -> bool:
    """Whether the thing at token k heads a member of a list and is what is to be done to the thing behind it."""
    token, before = scene.tokens[k], scene.tokens[k - 1 : k]
    if token.thing is None or token.thing.kind not in DEEDS or any(t.kind not in ("comma", "stop") for t in before):
        return False
    rest = (t for t in scene.tokens[k + 1 :] if not t.sense("article", "all"))
    return next((t.thing is not None for t in rest), False)


def _deed_of(draft: Draft, k: int, scene: Scene) -> str:
    """What is to be done to the thing at token k, in the words of its member: `to do: oil the hinges, set the points`;
    empty where the member tells no deed.
    """
    first = k
    while first > draft.first_used and scene.tokens[first - 1].kind not in ("comma", "stop"):
        first -= 1
    deed = first < k and (_is_deed(scene, first) or scene.tokens[first].sense("do"))
    return scene.said(first, k) if deed else ""


def _unnamed(draft: Draft, scene: Scene) -> list[tuple[int, Thing]]:
    """The members of a list that name no part that is known: `left to do: hose, timing at full speed, the wobble`."""
    rows, first = [], draft.main
    while first < len(scene.tokens):
        end = next((k for k in range(first, len(scene.tokens)) if scene.tokens[k].kind in ("comma", "stop")), None)
        end = len(scene.tokens) if end is None else end
        tokens = scene.tokens[first:end]
        if 0 < len(tokens) <= LONGEST_MEMBER and _names_something(tokens):
            words = scene.said(first, end - 1)
            rows.append((first, Thing(words, "", "unknown", own=words, known=False)))
        first = end + 1
    return rows


def first_member(scene: Scene, first: int) -> Thing | None:
    """The first member of a list that begins at token `first`, in its own words; None where the words end."""
    end = next((k for k in range(first, len(scene.tokens)) if scene.tokens[k].kind in ("comma", "stop")), None)
    end = len(scene.tokens) if end is None else end
    if end == first:
        return None
    words = scene.said(first, end - 1)
    return Thing(words, "", "unknown", own=words, known=False)


def _names_something(tokens: list[Token]) -> bool:
    """Whether a member of a list has words of its own, and no verb and no known part, which is found as it is."""
    if tokens[0].sense("break", "later"):
        return False  # `but that can wait till spring`
    said = not any(
        (t.sense(*TALK) and not t.sense("do")) or (t.thing is not None and t.thing.known) for t in tokens
    )  # of `set the points` the vocabulary knows one word, asked or done
    return said and not all(t.sense("filler") for t in tokens)


def _each_work(draft: Draft, scene: Scene) -> list[Draft]:
    """One piece of work for each thing of a list, up to the end of the sentence: `ordered coil, points and plugs`."""
    assert draft.thing_at is not None
    found, last = [], draft.thing_at
    for k in scene.things(range(draft.thing_at, len(scene.tokens))):
        thing = scene.tokens[k].thing
        if thing is None or k - last > LIST_GAP:
            break
        found += [
            replace(
                draft, main=k, last=k, thing=_alone(one, thing), thing_at=k, fields={**draft.fields, "part": one.own}
            )
            for one in ((thing,) if _is_set(thing) else (thing, *thing.also))
            if one.kind not in ("quality", "machine")
        ]
        last = k
    return found


def _alone(one: Thing, whole: Thing) -> Thing:
    """One of a list by its own words."""
    return one if one is whole and _is_set(whole) else replace(one, words=one.own or one.words)


def _is_set(thing: Thing) -> bool:
    """`Reed and gasket set` is one thing, not a list."""
    words = thing.words.lower()
    return words.endswith((" set", " kit", "parts")) and not {"a", "an", "the"} & set(words.split())


LONGEST_MEMBER = 4
TALK = ("person", "pronoun", "did", "doing", "copula", "must", "want", "plan", "phrase")
"Classes of words that a member of a list does not have."
LIST_GAP = 4
"Tokens from one thing of a list to the next."


def _of(draft: Draft, k: int, one: Thing, whole: Thing, scene: Scene) -> Draft:
    """The draft said of one thing of several."""
    field = TEXT[draft.kind]
    text = str(draft.fields[field])
    if whole.words in text:
        text = text.replace(whole.words, one.own or one.words)
    elif k != draft.main:
        text = (one.own or one.words) if whole.also else one.words
    last = draft.last if k == draft.main else k
    fields = {**draft.fields, field: text, "name": one.name, "part": one.own}
    if not one.known and any(t.sense("trouble", "bad") for t in scene.tokens[k : k + LONGEST_MEMBER]):
        fields["reason"] = "fault"  # `left: the hose, the wobble`
    return replace(draft, main=k, last=last, thing=one, fields=fields)
