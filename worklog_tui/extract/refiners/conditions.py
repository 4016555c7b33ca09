"""How a reading was taken: dry, wet, hot, at idle, under load, said in its clause or still true of the running test."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

BOUNDS = {"under": "under", "over": "over"}


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with their condition."""
    for draft in drafts:
        if draft.kind != "reading" or draft.fields["condition"]:
            continue
        said = [scene.said(k, k) for k in scene.clause(draft.main) if k != draft.main and scene.tokens[k].sense("how")]
        topic = scene.context.topic
        if (
            not said
            and topic
            and topic.quantity == draft.fields["quantity"]
            and topic.condition
            and draft.fields["role"] == "measured"
        ):
            said = [topic.condition]
            draft.filled.add("condition")
        if not said and (bound := BOUNDS.get(draft.fields["bound"])):
            said = [bound]
        draft.fields["condition"] = ", ".join(dict.fromkeys(said))
    return drafts
