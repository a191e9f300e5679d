"""A glued cap carries the piece by its bond, which needs a prepared inside."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, GluedJoint, Held, Misfit, Missing, Remedy, Rule


def check(joint: GluedJoint, ask: Ask) -> Answer:
    step, cap = joint.step, joint.cap
    if "to" not in step.parts:
        return None  # a drop on a knot, or a stone that is sewn round as well
    if cap.traits.pressed and ask.plan.steps_that("crimp", part=cap):
        return Held()  # its flaps or tabs carry, and the glue keeps them shut
    done = [str(word) for word in step.node.value.get("prepared", ())]
    lacking = [word for word in ("roughened", "degreased") if word not in done]
    if not lacking:
        return Held()
    if lacking == ["roughened"]:
        return Held(differ="a cap roughened inside or left as it is (common practice, no source)")
    wire = step.parts["to"].thread.springs
    if not wire and not cap.has("metal"):
        raise Missing(f"`metal` of `{cap.name}`, or `prepared` of the step that glues it")
    words, prepared = " and ".join(lacking), (*done, *lacking)
    metal = f"{cap.said('metal')} cap " if cap.has("metal") and not wire else ""
    where, whose = ("end of its wire", "the") if wire else ("inside", "its")
    hole = "" if wire else "; if there is a hole to the eye, plug it"
    do = f"roughen the {where}, wipe it free of grease and write"
    do += f" `prepared: [{', '.join(prepared)}]` in the step{hole}"
    return Misfit(
        says=f"{metal}`{cap.name}` {'holds on' if wire else 'carries'} `{step.get('to')}` by glue"
        f" alone, and the plan does not say that {whose} {where} is {words}: glue peels off smooth"
        " or greasy metal",
        place=step.place_of("prepared"),
        found=f"prepared: [{', '.join(done)}]" if done else "no preparation",
        needed=f"{'a wire' if wire else 'a cap'} {words}{'' if wire else ' inside'}",
        remedies=(
            Remedy(do, (ask.with_field(step.node, "prepared", prepared),)),
            Remedy(do),  # where the same is to be done in another step too
        ),
        also=(cap.key.place,),
    )


RULE = Rule(
    name="cap-bond",
    family="hold",
    subject=GluedJoint,
    check=check,
    fault="cap not prepared for glue",
    title="the inside of a glued cap is roughened and wiped free of grease",
    why="a new cap is polished and oily inside: the glue cures hard, sticks to the thread and"
    " slides out of the metal like a cork",
    sources=(
        "metal is degreased, dried and roughened before it is glued: Preparation of surfaces for"
        " epoxy adhesive bonding, copy seen",
        "no maker can know at the planning stage what a bond bears; the plugged eye: common"
        " practice",
    ),
    bad="{do: glue, part: cap, to: rope, with: glue}",
    good="{do: glue, part: cap, to: rope, with: glue, prepared: [roughened, degreased]}",
    level="warning",
)
