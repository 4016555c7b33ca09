"""What a job is called: the thing and the deed, without the long word of duty that stood between them."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

HELPS = frozenset("will have has had are is going".split())
"Words with which a duty begins: `will need to`, `have got to be`."
LONG_DUTY = 2
"Words of duty that are still told with the thing: `wants`, `has to`."


def without_duty(scene: Scene, made: Draft) -> str:
    """What it is about: of `the frame has got to be painted`, `frame painted`; with a short duty as it was said."""
    thing = scene.tokens[made.main].thing
    between = range(made.main + 1, made.last)
    duty = [k for k in between if scene.tokens[k].sense("must", "want") or scene.tokens[k].low.endswith("to be")]
    if thing is None or not duty or sum(len(scene.tokens[k].low.split()) for k in between) <= LONG_DUTY:
        return scene.said(made.main, made.last)
    new = "new " if made.main and scene.tokens[made.main - 1].sense("new") else ""
    first = next(
        k for k in between if k == duty[0] or scene.tokens[k].sense("copula", "plan") or scene.tokens[k].low in HELPS
    )
    called = thing.words if first == made.main + 1 else scene.said(made.main, first - 1)
    return f"{new}{called} {scene.said(made.last, made.last)}"
