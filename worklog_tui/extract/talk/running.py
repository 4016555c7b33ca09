"""The running test: what bare numbers are, of what, in which unit, and how they are taken."""

from __future__ import annotations

from worklog_tui.extract.context import Topic
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.carry import scale_of
from worklog_tui.extract.tokens import Thing, Token

ASIDE = frozenset({"tool", "unknown"})


def topic_after(scene: Scene, drafts: list[Draft], topic: Topic | None, upto: int) -> Topic | None:
    """The running test after the tokens before `upto` and the readings among them."""
    for token, found in zip(scene.tokens[:upto], scene.announcements(), strict=False):
        if found or (topic is not None and token.thing is not None):
            topic = _named(found, token, topic)
    if (topic is None or topic.quantity != "compression") and _cranked_against_a_gauge(scene, upto):
        topic = Topic("compression")
    if topic is not None and topic.quantity in SETTABLE:
        role = _role(scene, upto, topic.role)
        topic = topic if role == topic.role else topic._replace(role=role)
    if upto >= len(scene.tokens) and (turned_to := _turned_to(scene, topic)) is not None:
        topic = turned_to
    for draft in drafts:
        if draft.main < upto and draft.kind == "reading" and _tested(scene, draft) and draft.fields["role"] != "rated":
            topic = _read(scene, draft, topic)
    return topic


def _turned_to(scene: Scene, topic: Topic | None) -> Topic | None:
    """`Points while the cover's off.`, `Valves, cold.`: a part that opens a short sentence without a number is what is
    measured next, if there is one thing that is measured on it.
    """
    tokens = scene.tokens
    words = [t for t in tokens if t.kind not in ("stop", "comma")]
    if not words or len(words) > SHORT or any(t.kind in ("number", "amount") or t.sense("did", "bad") for t in words):
        return None
    thing = next((t.thing for t in words[:2] if t.thing is not None), None)
    if any(t.sense("copula", "reads", "off") or t.low in AWAY for t in words[1:3]):
        return None
    if thing is not None and not _is_measured(thing):
        return None
    if thing is None or thing.kind != "part" or not thing.quantities or thing.quantities[0] not in TURNED_TO:
        return None
    if topic is None or topic.quantity in thing.quantities:
        return None
    return _begun(thing.quantities[0], thing)


SHORT = 6
AWAY = frozenset({"off", "out", "apart", "away"})
"`Clutch off.`: what was taken away is not measured next."
TURNED_TO = frozenset({"gap", "pressure", "voltage", "resistance", "compression"})


def _cranked_against_a_gauge(scene: Scene, upto: int) -> bool:
    """`Throttle wide, and I swing the handle`, `gauge in, five good pulls`: so only compression is tested."""
    if TESTING.isdisjoint(scene.words()):
        return False
    words = {w for t in scene.tokens[:upto] for w in t.low.split()}
    ready = ("throttle" in words and bool(words & scene.book.lists["throttle_wide"])) or {"gauge", "in"} <= words
    return ready and bool(words & scene.book.lists["cranking"]) and not any(t.amount for t in scene.tokens[:upto])


TESTING = frozenset({"throttle", "gauge"})


def _named(found: str, token: Token, topic: Topic | None) -> Topic | None:
    """The test after one token: a word may announce one, `found`, a thing is what it is of."""
    if found and (topic is None or topic.quantity != found):
        topic = _begun(found, token.thing)
        if token.thing is None and token.low.endswith(" test"):
            topic = topic._replace(words=token.low, name=token.low, quality=True)
    elif found and topic is not None and topic.age:
        topic = topic._replace(age=0)
    if topic is None:
        return None
    if token.thing is not None and topic.quantity in token.thing.quantities and _is_measured(token.thing):
        quality = token.thing.kind == "quality"
        if quality or not (topic.quality and " " in topic.name and topic.age <= 1):
            topic = topic._replace(words=token.thing.words, name=token.thing.name, quality=quality)
    return topic


def _is_measured(thing: Thing) -> bool:
    return thing.kind not in ASIDE and thing.system != "instruments and gauges"


SETTABLE = frozenset({"gap", "angle", "pressure", "turns", "speed", "torque", "voltage", "length"})
BESIDE = frozenset({"duration", "temperature", "speed", "length", "torque", "volume", "turns", "angle"})
"Quantities that are told beside another test without ending it."


def _begun(quantity: str, thing: Thing | None) -> Topic:
    if thing is None or not _is_measured(thing):
        return Topic(quantity)
    return Topic(quantity, words=thing.words, name=thing.name, quality=thing.kind == "quality")


def _read(scene: Scene, draft: Draft, topic: Topic | None) -> Topic | None:
    """The test after one reading: its unit and size are those of the bare numbers to come."""
    quantity, thing, value = draft.fields["quantity"], draft.thing, draft.fields["value"]
    amount = scene.tokens[draft.main].amount
    scale = scale_of(amount) if amount else topic.scale if topic else 1.0
    low = value[0] if isinstance(value, tuple) else value if isinstance(value, float) else 0.0
    if topic is not None and topic.quantity != quantity and topic.age <= 1 and (quantity in BESIDE or not topic.value):
        return topic
    if quantity == "torque" and (topic is None or topic.quantity != quantity):
        return topic
    if topic is None or topic.quantity != quantity:
        return _begun(quantity, thing)._replace(unit=draft.fields["unit"], scale=scale, value=low)
    topic = topic._replace(unit=draft.fields["unit"], scale=scale, value=low, age=0)
    if thing is not None and "subject" not in draft.filled and quantity in thing.quantities:
        topic = topic._replace(words=thing.words, name=thing.name, quality=thing.kind == "quality")
    return topic


def _tested(scene: Scene, draft: Draft) -> bool:
    """Whether the quantity of a reading is one that is tested in rows."""
    quantity = scene.book.quantities.get(draft.fields["quantity"])
    return bool(quantity and quantity.topic)


def _role(scene: Scene, upto: int, before: str) -> str:
    """`Gaps set.` makes the bare numbers that follow settings; a look, a check, a `reads` or some other talk makes
    them measurements again.
    """
    tokens = scene.tokens[:upto]
    actions: set[str] = set()
    if scene.holds("did", "doing"):
        actions = {s.name for t in tokens for s in t.senses if s.cls in ("did", "doing")}
    if "adjust" in actions or ("set" in scene.lows() and any(t.low == "set" for t in tokens)):
        return "set"
    talk = actions or (scene.holds(*TALK) and any(t.sense(*TALK) for t in tokens))
    return "measured" if talk else before


TALK = ("book", "reads", "copula", "person", "pronoun")
"Classes of words of which other talk is made."
