"""The cost of everything in a piece, bought in whole packs, against the budget."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Budgeted, Misfit, Quantity, Remedy, Rule, exact, kept


def check(limit: Budgeted, ask: Ask) -> Answer:
    cost = ask.cost(limit.currency)
    margin = exact("budget", limit.amount, limit.currency, source=f"written `{limit.text}`") - cost
    if answer := kept(margin):
        return answer
    return Misfit(
        says=f"everything for the piece costs {_money(cost)}; the budget is {limit.text}",
        place=limit.place,
        found=_money(cost),
        needed=f"{limit.text} or less",
        remedies=(
            Remedy(f"find {_dearest(cost)} for less, or plan with a budget of {_money(cost)}"),
        ),
        margin=margin,
    )


def _money(cost: Quantity) -> str:
    amount = f"{cost.middle:.2f}"
    return f"{amount} {cost.unit}" if cost.unit.isalpha() else f"{cost.unit}{amount}"


def _dearest(cost: Quantity) -> str:
    """The two things that cost most, with what they cost."""
    most = sorted(cost.args.values(), key=lambda line: -line.middle)[:2]
    return " or ".join(f"`{line.name}` ({_money(line)})" for line in most)


RULE = Rule(
    name="cost-limit",
    family="supply",
    subject=Budgeted,
    check=check,
    fault="over the budget",
    title="everything for the piece, bought in whole packs, stays within its `budget:`",
    why=(
        "beads are priced by the gram and bought by the tube: the last two rounds of a rope can"
        " cost a whole tube, and the fee of a class is set before the shopping is done"
    ),
    sources=("prices of the bench file; counting in whole packs",),
    bad="budget: 30 EUR where beads, findings and thread cost 40.68 EUR",
    good="budget: 45 EUR where beads, findings and thread cost 40.68 EUR",
    level="warning",
)
