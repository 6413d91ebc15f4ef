"""Every leaf of every kind, changed, left out and put in one by one: reported once, at its place, with the effect its sense asks for.

What is expected is written by hand here, a line a sense; the comparison has its own way to it.
"""

from __future__ import annotations

import pytest

from specgen.comparison.changes import Comparison, Effect
from specgen.comparison.compare import Side, compare
from specgen.model.declaring import Polarity
from specgen.model.outline import value_type
from specgen.model.spec import Spec
from specgen.model.walk import declaration
from tests.comparison.full_spec import ROOTS, Leaf, at, built, every_leaf, place, samples, stated, tree
from tests.comparison.way_back import mirrored

LEAVES = list(every_leaf())

# The effect where the second sample, which is more or wider, takes the place of the first; None where it goes by the leaf.
RAISED = {
    Polarity.AT_LEAST: Effect.TIGHTENED,
    Polarity.AT_MOST: Effect.RELAXED,
    Polarity.WITHIN: Effect.RELAXED,
    Polarity.EXACTLY: Effect.SHIFTED,
    Polarity.ONE_OF: Effect.SHIFTED,
    Polarity.PERMISSION: Effect.RELAXED,
    Polarity.SCOPE: Effect.SHIFTED,
    Polarity.REPLACED: Effect.REPLACED,
    Polarity.WAIVER: Effect.SHIFTED,
    Polarity.FACT: Effect.FACT,
    Polarity.REQUIREMENT_TEXT: Effect.REWORDED,
    Polarity.WORDING: Effect.EDITORIAL,
    Polarity.NOTE: Effect.EDITORIAL,
}
# Ladders by name: whether the second word of the list, or row of the table, asks for more.
LADDERS = {
    "corrosivity": Effect.TIGHTENED,  # C2 to C3
    "durability": Effect.TIGHTENED,  # low to medium
    "signal_word": Effect.RELAXED,  # Danger to Warning
    "grade": Effect.TIGHTENED,  # Sa 1 to Sa 2
    "least_grade": Effect.TIGHTENED,
    "edge_grade": Effect.TIGHTENED,  # P1 to P2
    "force": Effect.TIGHTENED,  # permitted to advised
    "attendance": Effect.TIGHTENED,  # review to witness
    **dict.fromkeys(("contractor", "quality", "customer", "third_party"), Effect.TIGHTENED),  # review to surveillance
}
# Limits of a test by name; the method is the first of its table, a film thickness.
TEST_LIMITS = {
    "limit": Effect.REWORDED,  # words that no scale can read: a person decides
    "floor": Effect.REWORDED,  # no more film is better film, so which of two is worse is for a person
}
# The effect where a list loses its last value.
SHORTENED = {
    Polarity.ALL_OF: Effect.RELAXED,
    Polarity.ONE_OF: Effect.TIGHTENED,
    Polarity.SCOPE: Effect.RELAXED,
    Polarity.FACT: Effect.FACT,
    Polarity.WORDING: Effect.EDITORIAL,
    Polarity.NOTE: Effect.EDITORIAL,
}
# The effect where a leaf that was stated is left out: a limit then accepts everything, a permission nothing.
LEFT_OUT = {
    Polarity.AT_LEAST: Effect.RELAXED,
    Polarity.AT_MOST: Effect.RELAXED,
    Polarity.WITHIN: Effect.RELAXED,
    Polarity.EXACTLY: Effect.RELAXED,
    Polarity.ONE_OF: Effect.RELAXED,
    Polarity.ALL_OF: Effect.RELAXED,
    Polarity.PERMISSION: Effect.TIGHTENED,
    Polarity.LADDER: Effect.RELAXED,
    Polarity.SCOPE: Effect.SHIFTED,
    Polarity.TEST_LIMIT: Effect.RELAXED,
    Polarity.REPLACED: Effect.RELAXED,
    Polarity.FACT: Effect.FACT,
    Polarity.REQUIREMENT_TEXT: Effect.RELAXED,
    Polarity.WORDING: Effect.EDITORIAL,
    Polarity.NOTE: Effect.EDITORIAL,
}
# Leaves whose own nature goes before their sense, each with its reason.
OWN = {
    "jobs.first.waivers.first.until changed": Effect.RELAXED,  # a waiver that holds longer
    "concessions.first.until changed": Effect.RELAXED,  # a concession that holds longer
    "products.first.hazards.protection.first.task changed": Effect.SHIFTED,
    "jobs.first.vehicles left out": Effect.RELAXED,  # a list of scope: fewer are treated
    "jobs.first.items.first.system left out": Effect.EDITORIAL,  # then the job's counts, which is the same here
    "jobs.first.items.first.preparation left out": Effect.EDITORIAL,
    "jobs.first.items.first.exposure left out": Effect.EDITORIAL,
    "jobs.first.system left out": Effect.REPLACED,
    "jobs.first.preparation left out": Effect.REPLACED,
    "systems.first.layers.first.product left out": Effect.REPLACED,  # then another is offered
    "jobs.first.inspection.first.items shortened": Effect.RELAXED,
    "jobs.first.inspection.first.items left out": Effect.TIGHTENED,  # then it looks at all of them
    "jobs.first.inspection.first.hold_point left out": Effect.EDITORIAL,  # no is what counts anyway
    "jobs.first.inspection.first.criterion.level changed": Effect.RELAXED,  # level 5 of SSPC-PA 2 holds all of level 4
    "jobs.first.inspection.first.criterion.level left out": Effect.REPLACED,  # which one then counts is not said
    "jobs.first.inspection.first.criterion.rule left out": Effect.REPLACED,  # limits stay, nobody says how they are counted
    "jobs.first.inspection.first.criterion.edition left out": Effect.REPLACED,
    "jobs.first.inspection.first.criterion.governs left out": Effect.EDITORIAL,
    "jobs.first.inspection.first.criterion.as_specified left out": Effect.EDITORIAL,  # no is what counts anyway
    "project.policies.approvals_needed left out": Effect.RELAXED,  # from four to the default of one
    "project.policies.approvals.first.signed left out": Effect.EDITORIAL,  # no is what counts anyway
    "project.policies.revision_forced_by left out": Effect.TIGHTENED,  # then every ground forces one
    "project.policies.means left out": Effect.EDITORIAL,  # from exact to the default of exact
    "project.jurisdictions left out": Effect.SHIFTED,
    "jobs.first.inspection.first.after_sanding left out": Effect.EDITORIAL,  # from no to the default of no
    "project.policies.approvals.first.count left out": Effect.RELAXED,  # from four to the default of one
    "project.distribution.first.documents left out": Effect.TIGHTENED,  # then all are held
    "contract_documents.first.clauses.first.limit.materials left out": Effect.TIGHTENED,  # then it applies to all of them
    "jobs.first.made_to.first.items left out": Effect.TIGHTENED,  # then all are made to it
    "jobs.first.made_to.first.answers.first.applies left out": Effect.TIGHTENED,  # from no to the default of yes
}


def _compared(old: Spec, new: Spec) -> Comparison:
    return compare(Side(old, place), Side(new, place))


def _only(found: Comparison, leaf: Leaf, expected: Effect) -> None:
    (change,) = found.changes
    assert (change.path, change.effect) == (str(leaf), expected)
    assert change.difference.old_path == leaf.path
    assert change.old_place == place(leaf.path)
    assert change.new_place == place(leaf.path)
    said = declaration(leaf.model, leaf.name)
    assert said is not None
    assert (change.concern, change.difference.audience) == (said.concern, said.audience)


def _sense(leaf: Leaf) -> Polarity:
    said = declaration(leaf.model, leaf.name)
    assert said is not None
    return said.polarity


def _id(leaf: Leaf) -> str:
    return str(leaf)


def _one_word(leaf: Leaf) -> bool:
    """What can be one thing only cannot change; today that is `project.language`. A list of it can be emptied."""
    kind = value_type(leaf.model.model_fields[leaf.name])
    return kind is not None and len(set(samples(kind))) == 1


@pytest.mark.parametrize("leaf", [leaf for leaf in LEAVES if not leaf.many and not _one_word(leaf)], ids=_id)
def test_value_changed(leaf: Leaf) -> None:
    kind = value_type(leaf.model.model_fields[leaf.name])
    assert kind is not None
    old, new = stated(leaf.root), tree(ROOTS[leaf.root], "first")
    _, second = samples(kind)
    at(new, leaf.steps)[leaf.name] = second
    sense = _sense(leaf)
    own = OWN.get(f"{leaf} changed")
    by_name = {Polarity.LADDER: LADDERS, Polarity.TEST_LIMIT: TEST_LIMITS}.get(sense)
    expected = own or (by_name[leaf.name] if by_name else RAISED[sense])
    other = built(leaf.root, new)
    _only(_compared(old, other), leaf, expected)
    _only(_compared(other, old), leaf, mirrored(expected))


@pytest.mark.parametrize("leaf", [leaf for leaf in LEAVES if leaf.many], ids=_id)
def test_list_shortened(leaf: Leaf) -> None:
    old, new = stated(leaf.root), tree(ROOTS[leaf.root], "first")
    held = at(new, leaf.steps)
    whole = held[leaf.name]
    held[leaf.name] = whole[:-1]
    expected = OWN.get(f"{leaf} shortened") or SHORTENED[_sense(leaf)]
    other = built(leaf.root, new)
    _only(_compared(old, other), leaf, expected)
    _only(_compared(other, old), leaf, mirrored(expected))
    held[leaf.name] = whole[::-1]
    assert _compared(old, built(leaf.root, new)).is_empty, "the order of a list of values says nothing"


@pytest.mark.parametrize(
    "leaf", [leaf for leaf in LEAVES if not leaf.model.model_fields[leaf.name].is_required()], ids=_id
)
def test_value_left_out(leaf: Leaf) -> None:
    old, new = stated(leaf.root), tree(ROOTS[leaf.root], "first")
    del at(new, leaf.steps)[leaf.name]
    expected = OWN.get(f"{leaf} left out") or LEFT_OUT[_sense(leaf)]
    other = built(leaf.root, new)
    _only(_compared(old, other), leaf, expected)
    _only(_compared(other, old), leaf, mirrored(expected))


def test_every_kind_is_there() -> None:
    assert {leaf.root for leaf in LEAVES} == set(ROOTS)
    assert {_sense(leaf) for leaf in LEAVES} == set(Polarity)
    assert {str(leaf) for leaf in LEAVES if not leaf.many and _one_word(leaf)} <= {"project.language"}
    named = {str(leaf) for leaf in LEAVES}
    assert {name.rsplit(" ", 2)[0].removesuffix(" left") for name in OWN} <= named
