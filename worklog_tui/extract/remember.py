"""What a sentence leaves behind: the thing that `it` will mean, and the running test that gives bare numbers their unit."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.context import Context, Subject, Topic
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing

FORGETTABLE = frozenset({"tool", "unknown"})
TESTS = ("compression", "gap", "density", "voltage", "resistance", "temperature", "speed", "pressure", "torque", "turns", "leakage", "angle", "current")


def remember(scene: Scene, drafts: list[Draft], context: Context, upto: int) -> Context:
    """The context after the tokens before `upto`."""
    subject = _subject(scene, drafts, upto) or context.subject
    topic = _topic(scene, drafts, context, upto)
    return replace(context, subject=subject, topic=topic, system=_system(scene, upto) or context.system)


def _subject(scene: Scene, drafts: list[Draft], upto: int) -> Subject | None:
    for draft in sorted(drafts, key=lambda d: -d.main):
        if draft.main < upto and draft.thing is not None and draft.thing.kind not in FORGETTABLE and not draft.filled and draft.kind != "suspect":
            return _as_subject(draft.thing)
    things = [scene.tokens[k].thing for k in scene.things(range(min(upto, len(scene.tokens))))]
    firm = [t for t in things if t is not None and t.kind not in FORGETTABLE]
    return _as_subject(firm[-1]) if firm else None


def _as_subject(thing: Thing) -> Subject:
    return Subject(thing.words, thing.name, thing.kind, thing.which, thing.quantities)


def _topic(scene: Scene, drafts: list[Draft], context: Context, upto: int) -> Topic | None:
    topic = context.topic
    for k, token in enumerate(scene.tokens[:upto]):
        found = _test_of(scene, token.low, token.thing)
        if found and (topic is None or topic.quantity != found):
            words = token.thing.words if token.thing else ""
            topic = Topic(found, words=words, name=token.thing.name if token.thing else "")
        elif found and topic is not None:
            topic = replace(topic, age=0)
        if topic and token.sense("how") and topic.age == 0 and scene.clause(k):
            topic = replace(topic, condition=token.low) if token.low in ("dry", "wet", "cold", "hot", "warm", "with oil") else topic
    for draft in drafts:
        if draft.main >= upto or draft.kind != "reading" or draft.fields["quantity"] not in TESTS or draft.fields["role"] == "rated":
            continue
        quantity, unit = draft.fields["quantity"], draft.fields["unit"]
        thing = draft.thing
        if topic is not None and topic.quantity == quantity:
            topic = replace(topic, unit=unit, age=0)
        elif topic is None or topic.age > 1:
            topic = Topic(quantity, unit, thing.words if thing else "", thing.name if thing else "")
    return topic


def _test_of(scene: Scene, low: str, thing: Thing | None) -> str:
    """The quantity whose running test a word announces."""
    for name in TESTS:
        quantity = scene.book.quantities.get(name)
        if quantity and (low in quantity.topic or thing is not None and thing.name in quantity.topic):
            return name
    return ""


def _system(scene: Scene, upto: int) -> str:
    systems = [t.thing.system for t in scene.tokens[:upto] if t.thing is not None and t.thing.system]
    return systems[-1] if systems else ""
