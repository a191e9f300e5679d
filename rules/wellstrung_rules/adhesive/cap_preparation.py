"""Roughening and degreasing before glue: dust and solvent, one caution at the steps that do it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Glues, Rule


def check(glues: Glues, ask: Ask) -> Answer:
    done = {step: step.node.value.get("prepared", ()) for step in ask.plan.steps_that("glue")}
    texts = [text for word, text in _CARE.items() if any(word in each for each in done.values())]
    steps = tuple(step for step, each in done.items() if any(word in _CARE for word in each))
    if not steps:
        return None
    says = f"{'; '.join(texts)}; the safety data sheet of the solvent and local rules come first"
    return Caution(says, steps[0].place_of("prepared"), steps)


#: what the plan says is done, and what to take care of then
_CARE = {
    "roughened": "roughening a metal cap makes fine sharp dust: wear eye protection and a dust"
    " mask, work over a damp cloth and wipe the dust up, never blow it away",
    "degreased": "the solvent that takes off the grease is flammable and its vapour dulls the"
    " senses: a little on a cloth, in moving fresh air, away from flames, hot tools and uncured"
    " glue, in gloves that its sheet names, and let the cap dry before you glue",
}

RULE = Rule(
    name="cap-preparation",
    family="adhesive",
    subject=Glues,
    check=check,
    fault="dust and solvent",
    title="steps that roughen or degrease a cap come with a reminder of dust and solvent",
    why="a burr throws brass dust at the face, and a saucer of acetone beside a soldering iron or"
    " a thread burner is a fire",
    sources=(
        "acetone and alcohols: highly flammable (H225), eye irritation (H319), drowsiness (H336):"
        " from memory, the product's own sheet decides",
        "dust mask, eye protection and wiping damp: common practice, no source",
    ),
    good="{do: glue, part: cap, to: rope, with: glue, prepared: [roughened, degreased]}",
    level="caution",
)
